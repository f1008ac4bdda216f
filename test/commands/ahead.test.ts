import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { answer, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 25, 18);
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

describe('moon', () => {
  it('says phase, light, age, the four quarters in order and the next dark weekend', async () => {
    const { summary, facts } = await answer(deps, 'moon site:52.71,0.12', NOW);
    expect(summary).toMatch(/^Waning gibbous, 9\d % lit, 16\.\d days old, \d\d h after full Moon;/);
    // Quarters: skyfield on DE421 (test/reference/ahead.json).
    expect(facts.map(({ label }) => label)).toEqual([
      'This night',
      'Last quarter',
      'New Moon',
      'First quarter',
      'Full Moon',
      'Dark weekend',
      'Tipped to us',
    ]);
    expect(facts.find(({ label }) => label === 'New Moon')?.value).toMatch(/^Wed 9 Dec, 00:5[123]$/);
  });
});

describe('a month or a year ahead', () => {
  it.each([
    // New Moon 16 December 2028 (NASA's table of phases, from memory): the Geminids have a dark sky, the Perseids a Moon near its last quarter.
    ['best shower of 2028', /^The Geminids are the best of 2028: night of Wed 13 Dec/u],
    ['meteor shower i can watch in december', /^The Geminids are the best of December 2026: night of Sun 13 Dec/u],
    ['any meteors in january?', /^The Quadrantids are the best of January 2027/u],
    // Espenak and Meeus, Five Millennium Canon of Solar Eclipses: 2 August 2027.
    ['solar eclipses in 2027', /^Next: Partial eclipse of the Sun, Mon 2 Aug/u],
    // Total eclipse of the Moon of 31 December 2028, greatest 16:52 UT (Espenak and Meeus, lunar canon).
    ['total lunar eclipse in 2028', /^Next total one: Total eclipse of the Moon, Sun 31 Dec/u],
    // Opposition of 25 March 2029 (Meeus, Astronomical Tables; from memory).
    ['mars opposition 2029', /^Next: Mars, opposition Sun 25 Mar/u],
  ])('%s', async (line, summary) => {
    expect((await answer(deps, `${line} site:52.71,0.12`, NOW)).summary).toMatch(summary);
  });

  it('names the year, and lists the best of it in the order they come', async () => {
    const { title, facts } = await answer(deps, 'ahead showers in:2028 best:yes site:52.71,0.12', NOW);
    expect(title).toBe('What is coming in 2028: showers');
    expect(facts.map(({ label }) => label)).toContain('Geminids');
    expect(facts.map(({ label }) => label)).toContain('Quadrantids');
  });
});

describe('ahead', () => {
  it('warns of the filter where an eclipse of the Sun is seen, and only there', async () => {
    const eclipses = await answer(deps, 'ahead eclipses site:52.71,0.12', NOW);
    expect(eclipses.facts.map(({ label }) => label)).toContain('Partial eclipse of the Sun');
    expect(eclipses.cautions.join()).toContain('ISO 12312-2');
    const showers = await answer(deps, 'ahead showers site:52.71,0.12', NOW);
    expect(showers.cautions).toEqual([]);
    expect(showers.facts[0]?.label).toBe('Geminids');
  });

  it('keeps to a phone screen for the next weeks, and looks further for one kind', async () => {
    const all = await answer(deps, 'ahead site:52.71,0.12', NOW);
    expect(all.facts.length).toBeLessThanOrEqual(16);
    expect(all.facts[0]?.value).toMatch(/last quarter Tue 1 Dec, new Wed 9 Dec/);
    expect((await answer(deps, 'ahead planets site:52.71,0.12', NOW)).facts.map(({ label }) => label)).toContain(
      'Jupiter',
    );
  });
});

describe('ahead about: something', () => {
  const FEN = 'site:52.71,0.12';

  it.each([
    ['planets', 'Venus'],
    ['planet', 'Venus'],
    ['eclipses', 'Penumbral eclipse of the Moon'],
    ['meteors', 'Geminids'],
  ])('%s takes a kind for a kind', async (about, label) => {
    const { facts } = await answer(deps, `ahead about:${about} ${FEN}`, NOW);
    expect(facts.map((fact) => fact.label)).toContain(label);
    expect(facts.map((fact) => fact.label)).not.toContain('Moonless Saturdays');
  });

  // Astronomical almanacs: greatest elongation of Mercury 3 February 2027, opposition of Jupiter 10 to 11 February 2027.
  it('looks as far ahead as its own kind, and leaves out what is about something else', async () => {
    const mercury = await answer(deps, `ahead about:mercury ${FEN}`, NOW);
    expect(mercury.summary).toMatch(/^Next: Mercury, 18° from the Sun.*Wed 3 Feb 2027/u);
    expect(mercury.facts.every(({ label }) => label === 'Mercury' || label.startsWith('Moon and'))).toBe(true);
    expect((await answer(deps, `ahead about:saturn ${FEN}`, NOW)).summary).toMatch(/opposition Mon 18 Oct 2027/u);
    expect((await answer(deps, `ahead about:sun ${FEN}`, NOW)).summary).toMatch(/eclipse of the Sun, Mon 2 Aug 2027/u);
  });

  it('names what comes first, whatever kind it is', async () => {
    expect((await answer(deps, `ahead about:jupiter ${FEN}`, NOW)).summary).toMatch(/^Next: Moon and Jupiter/u);
  });

  it('of nothing that is known says what it takes', async () => {
    for (const about of ['constructor', 'quasars'])
      expect((await answer(deps, `ahead about:${about} ${FEN}`, NOW)).summary).toMatch(/takes a shower, a planet/u);
  });

  it('says how high an elongation has its planet here, or that it is too low', async () => {
    const { facts } = await answer(deps, `ahead planets ${FEN}`, NOW);
    const of = (date: string): string => facts.find(({ value }) => value.includes(date))?.value ?? '';
    // skyfield 1.55, DE421, airless: 9.0° with the Sun 6° down on 3 February 2027, 0.1° before sunrise on 17 March 2027.
    expect(of('3 Feb 2027')).toMatch(/9° high from here at civil dusk/u);
    expect(of('17 Mar 2027')).toMatch(/too low in twilight/u);
  });

  it('tells an eclipse that others see first', async () => {
    // The annular eclipse of 6 February 2027 (Espenak's canon, from memory) crosses South America and Africa.
    const { notes } = await answer(deps, `ahead eclipses ${FEN}`, NOW);
    expect(notes.join()).toContain('not seen from here: Annular eclipse of the Sun, Sat 6 Feb 2027');
  });
});

describe('a plain question about what is coming', () => {
  // Dates: Espenak's five-millennium eclipse canons, and the opposition of 2027 February 19 (both from memory).
  it.each([
    [
      'when is the next lunar eclipse',
      /^Next: Partial eclipse of the Moon, Wed 12 Jan 2028.*Before it only a faint shading of the Moon, in the night of Sat 20 Feb 2027/u,
    ],
    ['when is the next eclipse', /^Next: Partial eclipse of the Sun, Mon 2 Aug 2027.*Sat 20 Feb 2027\.$/u],
    ['when is mars at opposition', /^Next: Mars, opposition Fri 19 Feb 2027/u],
    ['perseids', /^Next: Perseids, night of Thu 12 Aug 2027/u],
    ['next moonless saturday', /^Next: \d+ (?:Nov|Dec) \(/u],
  ])('%s: the answer comes first', async (question, summary) => {
    expect((await answer(deps, `${question} site:52.71,0.12`, NOW)).summary).toMatch(summary);
  });

  it('of the Moon needs no place', async () => {
    expect((await answer(deps, 'when is full moon', NOW)).facts.map(({ label }) => label)).toContain('Full Moon');
  });
});

describe('moons', () => {
  it('draws the four about the disc, east to the left', async () => {
    const { facts, data } = await answer(deps, 'moons at:2026-12-20T23:00Z site:52.71,0.12', NOW);
    const picture = facts[0]?.value ?? '';
    expect(picture).toMatch(/^E .+●.+ W$/u);
    for (const { name, westRadii, state } of data['moons'] as readonly {
      readonly name: string;
      readonly westRadii: number;
      readonly state: string;
    }[]) {
      if (state !== 'beside') continue;
      const disc = picture.indexOf('●');
      const moon = picture.indexOf(name.charAt(0), name === 'Europa' ? 1 : 0);
      expect(moon > disc, name).toBe(westRadii > 0);
    }
  });
});
