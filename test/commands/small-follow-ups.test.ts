/** A few words after an answer get a short answer of their own: an hour, a distance, whether it has set; "tomorrow" in the small hours. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps } from './real-deps.js';

const SITE = '54.97,-2.10';
const SMALL_HOURS = Date.UTC(2026, 10, 28, 2, 13);
const MS = 20_000;

const talk = async (lines: readonly string[], nowUtcMs = SMALL_HOURS): Promise<Reply> => {
  const deps = await realDeps({ clubSiteText: SITE });
  let last: Reply | null = null;
  for (const [i, line] of lines.entries()) {
    const outcome = await ask(deps, line, nowUtcMs + i * MS);
    if (isProblem(outcome)) throw new Error(`${line}: ${outcome.message}`);
    last = outcome;
  }
  if (last === null) throw new Error('nothing asked');
  return last;
};

describe('a small question of what stands answered above', () => {
  it.each([
    [['how high is jupiter tonight', 'and mars', 'at 4am?'], /^At 04:00 GMT \d+° high/u],
    [['is m13 up', 'um 4 uhr?'], /^Yes, but low: \d+° high .* at 04:00/u],
    [['up jupiter', 'has it set'], /^No, it sets at/u],
    [['up jupiter', 'am i too late for it'], /^No/u],
    [['up M 57', 'how far is it'], /^How far M 57 is I do not keep/u],
    [['up jupiter', 'distance?'], /^Jupiter is 5\.\d\d astronomical units/u],
  ] as const)('is answered in short, with no picture: %s', async (lines, told) => {
    const { summary, chart, facts } = await talk(lines);
    expect(summary).toMatch(told);
    expect(chart).toBeUndefined();
    expect(facts.map(({ label }) => label)).not.toContain('Dark');
  });

  it('another target, or another night, has its whole sheet', async () => {
    expect((await talk(['up jupiter', 'and mars'])).chart).toBeDefined();
    expect((await talk(['up jupiter', 'and tomorrow?'])).chart).toBeDefined();
  });

  it('the colour tells which one stands beside it', async () => {
    // Mars stood 4° from Jupiter: the conjunction of 16 November 2026, almanacs.
    expect((await talk(['up jupiter', 'orangey one next to it'])).summary).toMatch(/^Most likely Mars/u);
  });
});

describe('how far a star is', () => {
  // Parallaxes of the Hipparcos catalogue's new reduction (van Leeuwen 2007): Vega 130.23 mas, Sirius 379.21 mas.
  it.each([
    ['how far away is vega', /^Vega is 25 light years away/u],
    ['how many light years is sirius', /^Sirius is 8\.6 light years away/u],
    ['how far away is deneb', /^Deneb is some 1,000 light years away or more/u],
  ])('%s', async (line, told) => expect((await talk([line])).summary).toMatch(told));
});

describe('what has gone down', () => {
  it('is not yet to come', async () => {
    // Saturn, two months before its conjunction of April 2027, follows the Sun down: it rises again by day.
    const late = Date.UTC(2027, 1, 20, 23, 40);
    expect((await talk(['is satrun still up'], late)).summary).toMatch(/^No, it set at 21:1\d GMT and rises again/u);
  });
});

describe('"tomorrow" in the small hours is the evening to come, whatever is asked', () => {
  it.each([
    ['up m42 tmrw', /night of Sat 28 Nov 2026/u],
    ['what can i see tmrw', /night of Sat 28 Nov 2026/u],
    ['dark tmrw', /Sat 28 Nov 2026/u],
    ['moon tmrw', /Sat 28 Nov 2026, 22:00/u],
    ['bright tomorrow 10pm', /Sat 28 Nov 2026, 22:00/u],
    ['altitude jupiter at:"tomorrow 22:00"', /Sat 28 Nov 2026, 22:00/u],
  ])('%s', async (line, told) => {
    const { title, summary } = await talk([line]);
    expect(`${title} ${summary}`).toMatch(told);
  });
});

describe('a name and a town in another language', () => {
  it.each([
    ['andromeda stasera da Roma', /Rom[ea]/u],
    ['m31 ce soir de Lyon', /Lyon/u],
    ['orion heute abend aus Köln', /K[öo]ln/u],
  ])('%s', async (line, place) => {
    const byDay = Date.UTC(2026, 10, 27, 12, 30);
    const { notes } = await talk([line], byDay);
    expect(notes.join(' ')).toMatch(place);
    expect(notes.join(' ')).not.toMatch(/Not used/u);
  });
});

describe('what is said of an answer as a whole', () => {
  it.each([
    [['up m33', 'why not'], /drowned in moonlight/u],
    [['is m13 visible', 'warum nicht'], /^From 05:10/u],
    [['up m42', 'is it any good'], /04:0\d GMT/u],
    [['up jupiter', 'is there anything near it'], /^Most likely Mars/u],
    [['up m31', 'anything else nearby'], /^Most likely Mirach/u],
  ] as const)('after a target: %s', async (lines, told) => expect((await talk(lines)).summary).toMatch(told));

  it.each([
    [['tonight', 'nah too faint'], /^Bright and easy/u],
    [['tonight', 'got anything easier'], /^Bright and easy/u],
    [['up m1', 'too faint'], /^Bright and easy/u],
    [['something easy in the south before 4'], /^Bright and easy in the south/u],
    [['anything 4 my daughter shes 6'], /^Bright and easy, night of Fri 27/u],
    [['was kann ich meiner tochter zeigen'], /^Bright and easy/u],
  ] as const)('what is easy is listed: %s', async (lines, told) => expect((await talk(lines)).title).toMatch(told));

  it('the next of a list is all of it spelled out', async () => {
    const first = await talk(['tonight']);
    const all = await talk(['tonight', 'ok and the next one']);
    expect(first.facts.at(-1)?.label).toBe('Also');
    expect(all.facts.length).toBeGreaterThan(first.facts.length);
  });

  it.each(['anything easy to fix the cable', 'why not use usb'])('is nothing of the sky: %s', async (line) => {
    const outcome = await ask(await realDeps({ clubSiteText: SITE }), line, SMALL_HOURS);
    expect(isProblem(outcome) ? '' : outcome.title).not.toMatch(/^(?:Bright and easy|Worth seeing)/u);
  });
});

describe('the time', () => {
  // 54.97° N, 2.10° W: sidereal time by the Astronomical Almanac's formula is Greenwich's less 8 min 24 s.
  it.each(['whats the time', 'what time is it', 'wie spät ist es', 'che ore sono', 'quelle heure est-il'])(
    '%s',
    async (line) =>
      expect((await talk([line])).summary).toMatch(/^Sat 28 Nov 2026, 02:13(?::\d\d)? GMT; sidereal time 06h 3\dm/u),
  );

  it('is not asked for where the best hour is', async () =>
    expect((await talk(['what time is jupiter best'])).title).toMatch(/^Jupiter/u));
});
