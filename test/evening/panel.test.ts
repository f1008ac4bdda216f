/* eslint-disable max-lines -- the rules of one panel, each with its source, stand together */
/**
 * A panel of sixty nights (five latitudes, four seasons, three Moons) with written rules on what must or must not be in the list, and
 * lists asked for by kind, equipment and sky. Each rule names its source; "common practice" is what handbooks for beginners agree on,
 * from memory, with no one source.
 */
import { isProblem } from '../../bot/ground/problem.js';
import { describe, expect, it } from 'vitest';
import { resolveTarget, type Target } from '../../bot/catalogue/index.js';
import { separationDeg } from '../../bot/sky/angles.js';
import { nextMoonPhase } from '../../bot/sky/moon-phase.js';
import { moonAt } from '../../bot/sky/moon.js';
import { horizontalOf, placeOf } from '../../bot/sky/place.js';
import { SUN } from '../../bot/sky/twilight.js';
import type { SolarSystemBody } from '../../bot/sky/types.js';
import { answer, realDeps } from '../commands/real-deps.js';
import { shippedCatalogue } from '../shipped.js';

const catalogue = shippedCatalogue();
const deps = await realDeps();
const NOW = Date.UTC(2026, 10, 25, 12);
const HOUR = 3_600_000;

const LATITUDES = [69.65, 52.71, 40.1, 19.6, -33.9] as const;
const SEASONS = { January: [2027, 0], April: [2027, 3], July: [2027, 6], October: [2027, 9] } as const;
const MOONS = { new: 0, quarter: 90, full: 180 } as const;
type Season = keyof typeof SEASONS;
type MoonName = keyof typeof MOONS;

interface PickData {
  readonly name: string;
  readonly type: string;
  readonly magnitude: number | null;
  readonly bestUtc: string;
  readonly bestAltitudeDeg: number;
}
interface Night {
  readonly latitude: number;
  readonly season: Season;
  readonly moon: MoonName;
  readonly date: string;
  readonly picks: readonly PickData[];
  readonly hours: { readonly startUtc: string; readonly endUtc: string } | null;
  readonly isDark: boolean;
  readonly summary: string;
}

const ask = async (line: string, date: string, latitude: number): Promise<Night> => {
  const { data, summary } = await answer(deps, `${line} site:${latitude},0.12 on:${date}`, NOW);
  return {
    ...(data as unknown as Night),
    isDark: data['dark'] !== null,
    summary,
    latitude,
    date,
    season: 'July',
    moon: 'new',
  };
};

const dateOf = (season: Season, moon: MoonName): string => {
  const [year, month] = SEASONS[season];
  // The evening of the phase; a full Moon that is full in the morning was so the evening before.
  return new Date(nextMoonPhase(MOONS[moon], Date.UTC(year, month, 1)) - 6 * HOUR).toISOString().slice(0, 10);
};

const nights: Night[] = [];
for (const latitude of LATITUDES)
  for (const season of Object.keys(SEASONS) as Season[])
    for (const moon of Object.keys(MOONS) as MoonName[])
      nights.push({ ...(await ask('tonight', dateOf(season, moon), latitude)), season, moon });

const targetOf = ({ name }: PickData): Target => {
  const found = resolveTarget(catalogue, name);
  if (isProblem(found)) throw new Error(`${name} is no target`);
  return found.target;
};
const names = (night: Night): readonly string[] => night.picks.map(({ name }) => name);
const observerAt = (latitudeDeg: number) => ({ latitudeDeg, longitudeDeg: 0.12, elevationM: 0 });
const lit = (night: Night): number =>
  moonAt(observerAt(night.latitude), Date.parse(`${night.date}T21:00Z`)).illuminatedFraction;

/** The greatest altitude of a body in the hours of the list, −90 where there are none. */
const highest = (body: SolarSystemBody, night: Night): number => {
  if (night.hours === null) return -90;
  let top = -90;
  for (let at = Date.parse(night.hours.startUtc); at <= Date.parse(night.hours.endUtc); at += HOUR / 3)
    top = Math.max(top, horizontalOf({ kind: 'solarSystem', body }, observerAt(night.latitude), at).altitudeDeg);
  return top;
};
const elongation = (body: SolarSystemBody, night: Night): number => {
  const at = Date.parse(`${night.date}T22:00Z`);
  const observer = observerAt(night.latitude);
  return separationDeg(placeOf({ kind: 'solarSystem', body }, observer, at).ofDate, placeOf(SUN, observer, at).ofDate);
};

interface Rule {
  readonly says: string;
  readonly source: string;
  readonly applies: (night: Night) => boolean;
  readonly holds: (night: Night) => boolean;
}

const isNorth = ({ latitude }: Night): boolean => latitude > 35 && latitude < 55;
const must = (says: string, name: string, applies: (night: Night) => boolean, among = 10): Rule => ({
  says,
  source: 'common practice',
  applies,
  holds: (night) => names(night).slice(0, among).includes(name),
});

const RULES: readonly Rule[] = [
  must(
    'M 42 is in the first three of a moonless January evening from 52° N to 34° S',
    'M 42',
    (n) => n.season === 'January' && n.moon === 'new' && n.latitude < 60,
    3,
  ),
  must(
    'M 42 is listed in January whatever the Moon from 40° N southward',
    'M 42',
    (n) => n.season === 'January' && n.latitude < 45,
  ),
  must('The Pleiades are listed in January in the north', 'M 45', (n) => n.season === 'January' && n.latitude > 15),
  must('M 13 is listed in July in the north', 'M 13', (n) => n.season === 'July' && isNorth(n)),
  must('M 57 is listed in July in the north', 'M 57', (n) => n.season === 'July' && isNorth(n) && n.moon !== 'full'),
  must(
    'The Andromeda galaxy is listed in October without the Moon',
    'M 31',
    (n) => n.season === 'October' && n.moon === 'new' && n.latitude > 15 && n.latitude < 60,
  ),
  must(
    'The Double Cluster is listed in October in the north',
    'C 14',
    (n) => n.season === 'October' && n.latitude > 35,
  ),
  must(
    'The Carina nebula is in the first three in the southern autumn without the Moon',
    'NGC 3372',
    (n) => n.season === 'April' && n.latitude < 0 && n.moon === 'new',
    3,
  ),
  must(
    'Omega Centauri is in the first three in the southern autumn',
    'NGC 5139',
    (n) => n.season === 'April' && n.latitude < 0 && n.moon !== 'full',
    3,
  ),
  must('47 Tucanae is listed in the southern spring', 'NGC 104', (n) => n.season === 'October' && n.latitude < 0),
  must(
    'The Beehive is listed on April evenings in the north',
    'M 44',
    (n) => n.season === 'April' && n.latitude > 15 && n.latitude < 60 && n.moon !== 'full',
  ),
  {
    says: 'A southern July evening without the Moon has the Lagoon nebula or M 22',
    source: 'common practice',
    applies: (n) => n.season === 'July' && n.latitude < 25 && n.moon === 'new',
    holds: (n) => names(n).some((name) => ['M 8', 'M 22', 'M 17', 'M 7', 'M 6'].includes(name)),
  },
  {
    says: 'A moonless spring evening has a galaxy',
    source: 'common practice (galaxy season)',
    applies: (n) => n.season === 'April' && n.moon === 'new' && n.isDark,
    holds: (n) => n.picks.some(({ type }) => /galaxy/u.test(type)),
  },
  {
    says: 'With a full Moon up no galaxy is listed but the brightest three',
    source: 'Krisciunas and Schaefer (1991): a full Moon takes 2 to 4 mag; common practice',
    applies: (n) => n.moon === 'full' && highest('Moon', n) > 15,
    holds: (n) => n.picks.every((pick) => !/galaxy/u.test(pick.type) || (pick.magnitude ?? 99) < 4),
  },
  {
    says: 'With a full Moon up no nebula without a bright core is listed',
    source: 'common practice',
    applies: (n) => n.moon === 'full' && highest('Moon', n) > 15,
    holds: (n) =>
      n.picks.every((pick) => !/emission nebula|supernova/u.test(pick.type) || targetOf(pick).showpieceRank === 1),
  },
  {
    says: 'The first-quarter Moon is listed when it stands 15° up in those hours',
    source: 'common practice: the best Moon for beginners, shadows along the terminator',
    applies: (n) => n.moon === 'quarter' && highest('Moon', n) > 15,
    holds: (n) => names(n).includes('Moon'),
  },
  ...(['Mars', 'Jupiter', 'Saturn'] as const).map((body): Rule => ({
    says: `${body} near opposition is listed when it stands 15° up in those hours`,
    source: 'common practice',
    applies: (n) => elongation(body, n) > (body === 'Mars' ? 140 : 150) && highest(body, n) > 15,
    holds: (n) => names(n).includes(body),
  })),
  {
    says: 'Jupiter and Saturn are listed whenever they stand 25° up in those hours',
    source: 'common practice',
    applies: (n) => (['Jupiter', 'Saturn'] as const).some((body) => highest(body, n) > 25 && elongation(body, n) > 30),
    holds: (n) =>
      (['Jupiter', 'Saturn'] as const).every(
        (body) => highest(body, n) <= 25 || elongation(body, n) <= 30 || names(n).includes(body),
      ),
  },
  {
    says: 'Each entry is a Moon, a planet or something known: a showpiece or of Messier or Caldwell',
    source: 'common practice',
    applies: () => true,
    holds: (n) =>
      n.picks.every(
        (pick) =>
          targetOf(pick).kind === 'planet' || targetOf(pick).kind === 'moon' || targetOf(pick).showpieceRank !== null,
      ),
  },
  {
    says: 'No two entries are one stop at the eyepiece',
    source: "the list's own promise",
    applies: () => true,
    holds: (n) => {
      const fixed = n.picks.map(targetOf).filter(({ body }) => body.kind === 'fixed');
      return fixed.every((a, i) =>
        fixed.slice(i + 1).every((b) => {
          if (a.body.kind !== 'fixed' || b.body.kind !== 'fixed') return true;
          const apart = separationDeg(
            { raHours: a.body.raHoursJ2000, decDeg: a.body.decDegJ2000 },
            { raHours: b.body.raHoursJ2000, decDeg: b.body.decDegJ2000 },
          );
          return apart > 0.6 && (a.groupId === null || a.groupId !== b.groupId);
        }),
      );
    },
  },
  {
    says: 'No kind but planets has more than three entries',
    source: 'common practice: an evening is varied',
    applies: () => true,
    holds: (n) => {
      const kinds = n.picks.map((pick) => targetOf(pick).kind).filter((kind) => kind !== 'planet');
      return kinds.every((kind) => kinds.filter((other) => other === kind).length <= 3);
    },
  },
  {
    says: 'Entries stand 20° up, Moon and planets 10°, in the hours of the list',
    source: 'common practice',
    applies: (n) => n.hours !== null,
    holds: (n) =>
      n.picks.every((pick) => {
        const isNear = ['planet', 'moon'].includes(targetOf(pick).kind);
        const at = Date.parse(pick.bestUtc);
        return (
          pick.bestAltitudeDeg >= (isNear ? 9.9 : 19.9) &&
          at >= Date.parse(n.hours!.startUtc) - 1000 &&
          at <= Date.parse(n.hours!.endUtc) + 1000
        );
      }),
  },
  {
    says: 'A dark evening fills the list',
    source: "the list's own promise",
    applies: (n) => n.isDark && n.latitude < 60,
    holds: (n) => n.picks.length === 10,
  },
  {
    says: 'Where the Sun does not set nothing is listed, and the answer says why',
    source: 'midnight Sun: north of the Arctic circle about the June solstice',
    applies: (n) => n.latitude > 66.6 && n.season === 'July' && Number(n.date.slice(-2)) < 20,
    holds: (n) => n.picks.length === 0 && n.summary.includes('the Sun does not set'),
  },
];

describe('the panel of sixty nights', () => {
  it('is sixty nights', () => expect(nights.length).toBe(60));

  it.each(RULES.map((rule) => [rule.says, rule] as const))('%s', (_says, rule) => {
    const asked = nights.filter(rule.applies);
    expect(asked.length, 'nights to judge').toBeGreaterThan(0);
    const broken = asked
      .filter((night) => !rule.holds(night))
      .map(
        (n) => `${n.latitude}° ${n.season} ${n.moon} (${n.date}, Moon ${lit(n).toFixed(2)}): ${names(n).join(', ')}`,
      );
    expect(broken, rule.source).toEqual([]);
  });
});

describe('lists of one kind, for an equipment, under a sky', () => {
  const moonless = (season: Season): string => dateOf(season, 'new');

  it('puts M 42 first among nebulae in January, and the Ring and Dumbbell in July (common practice)', async () => {
    expect(names(await ask('tonight kind:nebula', moonless('January'), 52.71))[0]).toBe('M 42');
    const july = names(await ask('tonight kind:nebula', moonless('July'), 40.1));
    expect(july).toContain('M 57');
    expect(july).toContain('M 27');
  });

  it.each([
    ['double-star', 'July', 'Albireo'],
    ['star', 'July', 'Albireo'],
    ['double-star', 'January', 'Castor'],
    ['galaxy', 'April', 'M 51'],
    ['globular', 'July', 'M 13'],
    ['cluster', 'January', 'M 45'],
  ] as const)('kind:%s in %s has %s (common practice)', async (kind, season, name) =>
    expect(names(await ask(`tonight kind:${kind}`, moonless(season), 52.71)).slice(0, 5)).toContain(name),
  );

  it('lists stars people come for: doubles of rank, or the brightest (common practice)', async () => {
    for (const pick of (await ask('tonight kind:star', moonless('January'), 40.1)).picks) {
      const { showpieceRank, magnitude } = targetOf(pick);
      expect(showpieceRank !== null || (magnitude ?? 9) < 2, pick.name).toBe(true);
    }
  });

  it('for binoculars leaves out what they do not show, and the eye sees fewer still (common practice)', async () => {
    const list = (await ask('tonight with:binoculars', moonless('January'), 52.71)).picks.map(targetOf);
    expect(list.map(({ name }) => name)).toEqual(expect.arrayContaining(['M 45', 'M 42']));
    for (const { name, kind, sizeArcmin, double } of list) {
      expect(kind === 'planetary-nebula' && (sizeArcmin ?? 0) < 3, name).toBe(false);
      expect(double !== null && double.separationArcsec < 15, name).toBe(false);
    }
    const eyes = (await ask('tonight with:eyes', moonless('January'), 52.71)).picks.map(targetOf);
    expect(eyes.map(({ name }) => name)).toContain('M 45');
    for (const { magnitude, name } of eyes) expect(magnitude ?? 0, name).toBeLessThan(6);
  });

  it('in a city has no galaxies but the brightest, and more of them as the sky darkens (common practice)', async () => {
    const galaxies = async (sky: string): Promise<number> =>
      (await ask(`tonight kind:galaxy sky:${sky}`, moonless('April'), 52.71)).picks.length;
    expect(await galaxies('city')).toBeLessThanOrEqual(2);
    expect(await galaxies('country')).toBe(10);
  });

  it('keeps to the hours asked for', async () => {
    const night = await ask('tonight from:21:00 until:22:30', moonless('January'), 52.71);
    for (const { bestUtc } of night.picks) {
      expect(bestUtc.slice(11, 16) >= '20:59').toBe(true);
      expect(bestUtc.slice(11, 16) <= '22:30').toBe(true);
    }
    expect(night.picks.length).toBe(10);
  });

  it('tells no hour that is past', async () => {
    const lateUtcMs = Date.UTC(2027, 0, 9, 23);
    const { data } = await answer(deps, 'tonight site:52.71,0.12', lateUtcMs);
    for (const { bestUtc } of data['picks'] as unknown as PickData[])
      expect(Date.parse(bestUtc)).toBeGreaterThanOrEqual(lateUtcMs - 1000);
  });
});
