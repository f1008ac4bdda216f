/**
 * Rules that an observer of long practice wrote down before it was seen whether they hold. Common practice of handbooks for beginners, no one
 * source, where none is named.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { resolveTarget, type Target } from '../../bot/catalogue/index.js';
import { separationDeg } from '../../bot/sky/angles.js';
import { nextMoonPhase } from '../../bot/sky/moon-phase.js';
import { horizontalOf, placeOf } from '../../bot/sky/place.js';
import { SUN } from '../../bot/sky/twilight.js';
import { answer, realDeps } from '../commands/real-deps.js';
import { shippedCatalogue } from '../shipped.js';

const catalogue = shippedCatalogue();
const deps = await realDeps();
const NOW = Date.UTC(2026, 10, 25, 12);
const HOUR = 3_600_000;

interface PickData {
  readonly name: string;
  readonly bestUtc: string;
  readonly moonSeparationDeg: number;
  readonly why: string;
}
interface Night {
  readonly said: string;
  readonly latitude: number;
  readonly picks: readonly PickData[];
  readonly summary: string;
  readonly facts: readonly { readonly label: string; readonly value: string }[];
}

const targetOf = ({ name }: PickData): Target => {
  const found = resolveTarget(catalogue, name);
  if (isProblem(found)) throw new Error(`${name} is no target`);
  return found.target;
};
const ask = async (line: string, date: string, latitude: number): Promise<Night> => {
  const { data, summary, facts } = await answer(deps, `${line} all:yes site:${latitude},0.12 on:${date}`, NOW);
  return {
    said: `${line} ${date} at ${latitude}°`,
    latitude,
    summary,
    facts,
    picks: data['picks'] as unknown as PickData[],
  };
};
/** The evening of a phase of the Moon after a month begins. */
const at = (elongationDeg: number, year: number, month: number): string =>
  new Date(nextMoonPhase(elongationDeg, Date.UTC(year, month, 1)) - 6 * HOUR).toISOString().slice(0, 10);
const namesOf = ({ picks }: Night): readonly string[] => picks.map(({ name }) => name);
const kindsOf = ({ picks }: Night): readonly string[] => picks.map((pick) => targetOf(pick).kind);
const observerAt = (latitudeDeg: number) => ({ latitudeDeg, longitudeDeg: 0.12, elevationM: 0 });

const nights: Night[] = [];
beforeAll(async () => {
  for (const latitude of [60, 52.71, 30, -35])
    for (const month of [0, 2, 4, 6, 8, 10])
      for (const moon of [0, 90, 180]) nights.push(await ask('tonight', at(moon, 2027, month), latitude));
}, 60_000);

describe('72 evenings of 2027 at four latitudes', () => {
  it('hold nothing twice, and never the Sun', () => {
    for (const night of nights) {
      expect(new Set(namesOf(night)).size, night.said).toBe(night.picks.length);
      expect(namesOf(night), night.said).not.toContain('Sun');
    }
  });

  it('hold nothing within 15° of the Sun', () => {
    for (const night of nights)
      for (const pick of night.picks) {
        const observer = observerAt(night.latitude);
        const utcMs = Date.parse(pick.bestUtc);
        const apart = separationDeg(
          placeOf(targetOf(pick).body, observer, utcMs).ofDate,
          placeOf(SUN, observer, utcMs).ofDate,
        );
        // The youngest Moon is looked at nearer to it.
        if (pick.name !== 'Moon') expect(apart, `${night.said}: ${pick.name}`).toBeGreaterThan(15);
      }
  });

  it('tell the hours in order', () => {
    for (const night of nights) {
      const hours = night.facts.map(({ label }) => label).filter((label) => /^\d\d:\d\d/u.test(label));
      const fromNoon = hours.map((label) => ((Number(label.slice(0, 2)) + 12) % 24) * 60 + Number(label.slice(3, 5)));
      expect(fromNoon, night.said).toEqual([...fromNoon].sort((a, b) => a - b));
    }
  });

  it('are of four kinds or more where ten are listed', () => {
    for (const night of nights)
      if (night.picks.length === 10) expect(new Set(kindsOf(night)).size, night.said).toBeGreaterThanOrEqual(4);
  });

  it('give no constellation more than four of the ten', () => {
    for (const night of nights) {
      const places = night.picks.map((pick) => targetOf(pick).constellation).filter((name) => name !== null);
      for (const place of new Set(places))
        expect(places.filter((other) => other === place).length, `${night.said}: ${place}`).toBeLessThanOrEqual(4);
    }
  });

  it('look at what is faint with the Sun 12° down or more, where it goes so far down', () => {
    for (const night of nights.filter(({ latitude }) => latitude < 60))
      for (const pick of night.picks)
        if (
          ['galaxy', 'globular-cluster', 'nebula', 'planetary-nebula', 'supernova-remnant'].includes(
            targetOf(pick).kind,
          )
        ) {
          const { altitudeDeg } = horizontalOf(SUN, observerAt(night.latitude), Date.parse(pick.bestUtc));
          expect(altitudeDeg, `${night.said}: ${pick.name}`).toBeLessThan(-11.9);
        }
  });

  it('say how far the Moon is from what stands within 15° of it', () => {
    for (const night of nights)
      for (const pick of night.picks)
        if (pick.name !== 'Moon' && pick.moonSeparationDeg < 8)
          expect(night.facts.find(({ value }) => value.startsWith(pick.name))?.value, night.said).toMatch(/Moon/u);
  });

  it('have two double stars or more under a full Moon that is up', () => {
    for (const [i, night] of nights.entries())
      if (i % 3 === 2 && night.picks.length === 10 && namesOf(night).includes('Moon'))
        expect(kindsOf(night).filter((kind) => kind === 'double-star').length, night.said).toBeGreaterThanOrEqual(2);
  });
});

describe('what observers would go out for', () => {
  it.each([
    ['M 42', 52.71, at(0, 2027, 0)],
    ['M 45', 52.71, at(0, 2027, 0)],
    ['M 13', 52.71, at(0, 2027, 6)],
    ['M 57', 52.71, at(0, 2027, 6)],
    ['M 31', 52.71, at(0, 2027, 9)],
    ['NGC 104', -35, at(0, 2027, 10)],
    ['NGC 5139', -35, at(0, 2027, 4)],
    ['Mars', 52.71, '2027-02-19'],
    ['Jupiter', 52.71, '2027-02-10'],
    ['Saturn', 52.71, '2026-12-05'],
    ['Moon', 52.71, at(90, 2027, 2)],
  ])('%s at %f° on %s', async (name, latitude, date) =>
    expect(namesOf(await ask('tonight', date, latitude))).toContain(name),
  );

  it('lists no Moon within a day of new Moon', async () => {
    for (const month of [0, 3, 6, 9])
      expect(namesOf(await ask('tonight', at(0, 2027, month), 52.71))).not.toContain('Moon');
  });

  it('has two galaxies or more on a moonless April evening under a dark sky with 200 mm', async () => {
    const night = await ask('tonight sky:dark with:200mm', at(0, 2027, 3), 52.71);
    expect(kindsOf(night).filter((kind) => kind === 'galaxy').length).toBeGreaterThanOrEqual(2);
  });

  it('keeps Mercury, Uranus and Neptune for those who can see them', async () => {
    for (const month of [0, 8, 10]) {
      const eyes = await ask('tonight with:eyes', at(0, 2027, month), 52.71);
      expect(namesOf(eyes)).not.toContain('Neptune');
      expect(namesOf(eyes)).not.toContain('Uranus');
    }
  });

  it.each([
    ['globular', /^globular-cluster$/u],
    ['galaxies', /^galaxy$/u],
    ['double', /^double-star$/u],
    ['planets', /^(?:planet|moon)$/u],
  ])('kind:%s is of that kind alone', async (kind, pattern) => {
    for (const moon of [0, 180]) {
      const night = await ask(`tonight kind:${kind}`, at(moon, 2027, 3), 40);
      for (const pick of night.picks) {
        const { kind: own } = targetOf(pick);
        expect(own, pick.name).toMatch(pattern);
      }
      expect(night.picks.length, night.said).toBeGreaterThan(0);
    }
  });

  it('says that a night is bad for galaxies under a full Moon, and names the least bad', async () => {
    const night = await ask('tonight kind:galaxies', at(180, 2027, 0), 52.71);
    expect(night.summary).toMatch(/poor night|least bad/iu);
    expect(night.picks.length).toBeGreaterThan(0);
  });

  it('looks only where it is asked to', async () => {
    const east = await ask('tonight towards:east', at(0, 2027, 0), 52.71);
    expect(east.picks.length).toBeGreaterThan(3);
    for (const { value } of east.facts.filter(({ label }) => /^\d\d:\d\d/u.test(label)))
      expect(value).toMatch(
        / in the (?:north-north-east|north-east|east-north-east|east|east-south-east|south-east|south-south-east):/u,
      );
    const overhead = await ask('tonight towards:overhead', at(0, 2027, 0), 52.71);
    for (const { value } of overhead.facts.filter(({ label }) => /^\d\d:\d\d/u.test(label)))
      expect(Number(/(\d+)° in the/u.exec(value)?.[1])).toBeGreaterThanOrEqual(60);
  });

  it('offers Moon, planets and stars and no galaxy where it does not get dark', async () => {
    const night = await ask('tonight', at(90, 2027, 5), 60);
    expect(night.picks.length).toBeGreaterThan(0);
    expect(kindsOf(night)).not.toContain('galaxy');
  });
});
