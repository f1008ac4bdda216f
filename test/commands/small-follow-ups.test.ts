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
