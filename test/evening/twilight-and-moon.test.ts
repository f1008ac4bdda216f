/**
 * The best hour as an observer has it: planets in twilight, faint things after the Moon has set, what is over told as over, and
 * variable stars as they are this night. Common practice, no source, unless one is named.
 */
import { describe, expect, it } from 'vitest';
import { answer, realDeps } from '../commands/real-deps.js';

const deps = await realDeps();
const NOON = Date.UTC(2026, 10, 25, 12);
const BEFORE_DAWN = Date.UTC(2026, 10, 26, 4, 24);
const FEN = 'site:52.71,0.12';
type Told = Awaited<ReturnType<typeof answer>>;
const fact = ({ facts }: Told, label: string): string => facts.find((each) => each.label === label)?.value ?? '';
const bestUtcMs = ({ data }: Told): number => Date.parse(data['bestUtc'] as string);

describe('a planet low in twilight', () => {
  // Greatest elongations of Mercury: 20 November 2026 (morning), 3 February 2027 (evening), 15 July 2027 (morning); astronomical almanacs.
  it.each([
    ['Mercury', '2026-11-25', FEN, 'morning'],
    ['Mercury', '2027-02-03', FEN, 'evening'],
    ['Mercury', '2027-02-03', 'site:34.05,-118.24', 'evening'],
    ['Mercury', '2027-07-14', 'site:1.35,103.8', 'morning'],
    ['Venus', '2026-11-25', FEN, 'morning'],
  ])('%s, %s %s: once the Sun is 6° down, as high as it then is', async (name, date, site, half) => {
    const reply = await answer(deps, `up ${name} ${site} on:${date}`, NOON);
    const sun = await answer(deps, `dark ${site} on:${date}`, NOON);
    const civil = sun.data['civil'] as { duskUtc: string; dawnUtc: string };
    const edge = Date.parse(half === 'morning' ? civil.dawnUtc : civil.duskUtc);
    expect(reply.data['hindrance']).toBeNull();
    expect(Math.abs(bestUtcMs(reply) - edge)).toBeLessThan(90_000);
    expect(reply.summary).toMatch(/in nautical twilight/u);
    expect(reply.summary).not.toMatch(/too faint|only by day/u);
  });

  it('is no less low for that', async () => {
    const reply = await answer(deps, 'up Venus site:64.15,-21.94 on:2027-01-10', NOON);
    expect(reply.data['hindrance']).toBe('low');
    expect(reply.summary).toMatch(/^Up but low, best at/u);
  });

  it('is left in the dark where it stands high there', async () => {
    const reply = await answer(deps, `up Jupiter ${FEN} on:2027-01-09`, NOON);
    expect(reply.data['sky']).toBe('dark');
  });

  it('is listed by tonight before dawn at the hour that up gives', async () => {
    const { data } = await answer(deps, `tonight kind:planet ${FEN}`, BEFORE_DAWN);
    const picks = data['picks'] as { name: string; bestUtc: string }[];
    const venus = await answer(deps, `up Venus ${FEN}`, BEFORE_DAWN);
    const listed = Date.parse(picks.find(({ name }) => name === 'Venus')?.bestUtc ?? '');
    expect(Math.abs(listed - bestUtcMs(venus))).toBeLessThan(16 * 60_000);
    expect(picks.map(({ name }) => name)).toContain('Mercury');
  });
});

describe('moonlight', () => {
  // The Moon of 12 August 2027 is 84 % lit and sets at 01:03 BST (skyfield 1.55, DE421: 00:03:01 UTC, 83.6 % lit at 22:00 UTC), two hours before dawn.
  it('is waited out where it drowns a target and sets in time', async () => {
    const reply = await answer(deps, `up NGC 7000 ${FEN} on:2027-08-12`, NOON);
    expect(reply.summary).toMatch(/^Up, best at 01:0\d BST.*with the Moon down/u);
    expect(fact(reply, 'Shows')).not.toMatch(/not to be seen/u);
    expect(fact(reply, 'Moon')).toMatch(/^down then/u);
    expect(fact(reply, 'This evening')).toBe('');
  });

  it('is said once where it drowns a target all night', async () => {
    const reply = await answer(deps, `up M 1 ${FEN} on:2026-12-24`, NOON);
    expect(reply.summary).toMatch(/drowned in moonlight/u);
    expect(fact(reply, 'Shows')).not.toMatch(/moonlight|not to be seen|dims/u);
  });

  it('beside any target is said by tonight', async () => {
    // The Moon stands 4.6° from Jupiter on 27 December 2026 at 22:00 UTC (`ahead`), 5.6° two hours later (skyfield 1.55, DE421).
    const reply = await answer(deps, `tonight all:yes ${FEN} on:2026-12-27`, NOON);
    expect(reply.facts.find(({ value }) => value.startsWith('Jupiter'))?.value).toMatch(/the Moon \d° from it/u);
  });

  it('has its hours under the list, and its absence too', async () => {
    expect((await answer(deps, `tonight ${FEN} on:2027-08-12`, NOON)).notes[0]).toMatch(
      /Moon 8[34] % lit, sets 01:0\d\./u,
    );
    expect((await answer(deps, `tonight ${FEN} on:2027-02-05`, NOON)).notes[0]).toMatch(/No Moon\./u);
  });
});

describe('what is over for this night', () => {
  it.each(['NGC 253', 'Mira', 'χ Cyg', 'Saturn'])(
    '%s before dawn is told as past, with when it was best',
    async (name) => {
      const { summary, data } = await answer(deps, `up ${name} ${FEN}`, BEFORE_DAWN);
      expect(summary).toMatch(/^Past its best for this night: that was at \d\d:\d\d GMT, \d+° high/u);
      expect(summary).toContain('on:tomorrow');
      expect(data['hindrance']).toBe('past');
    },
  );
});

describe('galaxies of low surface brightness', () => {
  // Handbooks call these hard or faint in a 150 mm telescope, and those plain or easy; from memory.
  it.each(['NGC 891', 'M 33', 'M 101', 'M 74', 'M 110', 'NGC 6946', 'IC 342', 'M 109'])(
    '%s is not called easy',
    async (name) => {
      const reply = await answer(deps, `up ${name} ${FEN} on:2026-12-12`, NOON);
      expect(fact(reply, 'Shows')).toMatch(/^(?:faint|not to be seen) in a 150 mm/u);
    },
  );
  it.each(['M 31', 'M 81', 'M 82', 'NGC 2903', 'M 77', 'NGC 4565'])('%s is not called faint', async (name) => {
    const reply = await answer(deps, `up ${name} ${FEN} on:2026-12-12`, NOON);
    expect(fact(reply, 'Shows')).toMatch(/^(?:plain to see|easy) in a 150 mm/u);
  });
});

describe('a variable star', () => {
  it.each([
    // Its elements: maximum about 28 April 2027, so near minimum in the winter before.
    ['R Leo', '2026-12-12', /about mag (?:9|10) by its period.*near its faintest/u],
    ['T CrB', '2027-05-12', /about mag 10\.8, unless/u],
    ['R Sct', '2027-08-12', /not to be told ahead, and it may be faint/u],
  ])('%s on %s is not praised without its brightness then', async (name, date, says) => {
    const reply = await answer(deps, `up ${name} ${FEN} on:${date}`, NOON);
    expect(reply.level).not.toBe('good');
    expect(fact(reply, 'Now')).toMatch(says);
  });

  it('at its brightest, or of a small range, is good', async () => {
    for (const [name, date] of [
      ['Algol', '2026-12-12'],
      ['Mira', '2027-02-02'],
      ['Betelgeuse', '2026-12-12'],
    ] as const)
      expect((await answer(deps, `up ${name} ${FEN} on:${date}`, NOON)).level).toBe('good');
  });

  it('in eclipse says so: Algol at a minimum', async () => {
    const before = await answer(deps, `up Algol ${FEN} on:2026-12-12`, NOON);
    const when = /next minimum about (\w+ \d+ \w+ \d+)/u.exec(fact(before, 'It is'))?.[1] ?? '';
    expect(fact(before, 'Now')).toMatch(/about mag 2\.1/u);
    expect(when).not.toBe('');
  });
});

describe('what stands in the same field', () => {
  it('is said to be in it where it is', async () => {
    const reply = await answer(deps, `tonight ${FEN} on:2026-12-12`, NOON);
    const great = reply.facts.find(({ value }) => value.startsWith('M 42'))?.value;
    expect(great).toMatch(/Trapezium in it|θ¹ Ori in it/u);
    expect(great).not.toMatch(/Ori beside it/u);
  });
});
