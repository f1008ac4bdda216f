/**
 * What comes near the Sun in words that no rule knows, and what only speaks of it. The held lines were written by somebody who knew neither rules nor
 * marks, and nothing is fitted on them; what each kind means is common practice, no source.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { heardHarm, isTalkOfSun } from '../../bot/commands/asking/sun-likeness/heard.js';
import { likelySun } from '../../bot/commands/asking/sun-likeness/likely-sun.js';
import { sunWeights } from '../../bot/commands/asking/sun-likeness/shipped-weights.js';
import { sunMarks } from '../../bot/commands/asking/sun-likeness/sun-marks.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { NOTHING, type Weights } from '../../bot/reading/index.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { ask, realDeps, strangers } from './real-deps.js';

const EVENING = Date.UTC(2026, 11, 12, 20, 30);
/** The Sun is up. */
const NOON = Date.UTC(2026, 11, 12, 12, 30);
const HOURS = [
  ['in the evening', EVENING],
  ['by day', NOON],
] as const;

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const alone = strangers('fenja');

const isNo = (outcome: Outcome): boolean => isProblem(outcome) && outcome.problem === 'not-safe';
const wordsOf = (outcome: Outcome): string =>
  isProblem(outcome)
    ? outcome.message
    : [outcome.title, outcome.summary, ...outcome.cautions, ...outcome.notes].map(String).join(' ');
/** That something of it hurts is said, whatever else. */
const WARNS = /\bcap(?:s|ped)?\b|solar filter|blind|burns|see a doctor|uncapped|unattended/iu;

const linesIn = (file: string): readonly string[] =>
  readFileSync(new URL(`../reading/corpus/${file}`, import.meta.url), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'));

describe('lines that nothing was fitted on', () => {
  const held = linesIn('sun/held.jsonl').map(
    (line) => JSON.parse(line) as { readonly kind: string; readonly text: string },
  );

  it.each(HOURS)(
    'are warned of where they hurt, and seldom where they do not, %s',
    async (_name, nowUtcMs) => {
      const all = new Map<string, { lines: number; warned: number; no: number }>();
      for (const { kind, text } of held) {
        const outcome = await ask(deps, text, nowUtcMs, alone());
        const own = all.get(kind) ?? { lines: 0, warned: 0, no: 0 };
        own.lines += 1;
        own.no += isNo(outcome) ? 1 : 0;
        own.warned += isNo(outcome) || WARNS.test(wordsOf(outcome)) ? 1 : 0;
        all.set(kind, own);
      }
      console.log(
        [...all].map(([kind, { lines, warned, no }]) => `${kind}: No ${no}, warned ${warned} of ${lines}`).join('; '),
      );
      const share = (kind: string, what: 'warned' | 'no'): number => {
        const own = all.get(kind);
        return own === undefined ? NaN : own[what] / own.lines;
      };
      // By rules alone 46, 24 and 30 in a hundred were warned of, and 22 in a hundred of talk got the No.
      expect(share('looks', 'warned')).toBeGreaterThanOrEqual(0.75);
      expect(share('open', 'warned')).toBeGreaterThanOrEqual(0.75);
      expect(share('harmed', 'warned')).toBeGreaterThanOrEqual(0.85);
      expect(share('talk', 'no')).toBeLessThanOrEqual(0.14);
      expect(share('nothing', 'no')).toBeLessThanOrEqual(0.1);
    },
    120_000,
  );

  it('of mounts and of the rest of life are taken for a harm one time in a hundred', () => {
    const text = (line: string): string => (JSON.parse(line) as { readonly text: string }).text;
    const lines = [
      ...linesIn('rest-of-life.txt'),
      ...linesIn('does-now.txt').map((line) => line.split('\t').at(-1) ?? ''),
      ...['talk/held', 'outcomes/held', 'outcomes/fresh', 'outcomes/fresh-2', 'outcomes/played', 'told'].flatMap(
        (file) => linesIn(`${file}.jsonl`).map(text),
      ),
    ];
    const taken = lines.filter((line) => heardHarm(line) !== null);
    console.log(`${taken.length} of ${lines.length} ordinary lines are taken for a harm`);
    expect(taken.length / lines.length).toBeLessThanOrEqual(0.011);
  });
});

describe.each(HOURS)('%s', (_name, nowUtcMs) => {
  it.each([
    'chase the ball of fire with the mount',
    'the golden disc in the eyepiece',
    'point at the thing that warms us all',
    'slew 5 degrees west of our nearest star at noon',
    'is a moon filter enough for the daytime disc',
    'my dob is out for the barbecue no caps on',
    'set the scope by the window for the afternoon',
    'asleep with the scope imaging jupiter till 9am',
    'sweep for venus 10 minutes after dawn',
    'search mercury in the finder ten minutes after sunrise',
  ])('warned of: %s', async (line) => {
    expect(wordsOf(await ask(deps, line, nowUtcMs, alone()))).toMatch(WARNS);
  });

  it.each([
    ['is the sun a planet', /is a star/u],
    ['how many earths fit in the sun', /1\.3 million Earths/u],
    ['sunspot number', /no live numbers/u],
    ['what is the sunspot number today', /no live numbers/u],
    ['how far is the sun', /150 million km/u],
    ['how big is the sun', /109 Earths/u],
    ['sun like stars', /Tau Ceti/u],
    ['are there stars like our sun', /Tau Ceti/u],
    ['wo geht die sonne auf', /when it rises and sets/u],
    ['can i use eclipse glasses for bare eyes', /^Yes, for bare eyes alone/u],
    ['are eclipse glasses ok to look at the eclipse', /^Yes, for bare eyes alone/u],
    ['are eclipse glasses ok to look at the eclipse with my dob', /^No, not with a telescope/u],
  ])('%s', async (line, told) => {
    expect(wordsOf(await ask(deps, line, nowUtcMs, alone()))).toMatch(told);
  });

  it.each([
    'solar system order',
    'i work sundays',
    'will it be sunny on sunday',
    'solar panel',
    'sun sign of my wife is leo',
  ])('is no more of the Sun after a warning: %s', async (line) => {
    const asker = alone();
    await ask(deps, 'can i look at the sun with my dob', nowUtcMs, asker);
    const outcome = await ask(deps, line, nowUtcMs + 20_000, asker);
    expect(wordsOf(outcome)).not.toMatch(/full-aperture|Finding the connection fault/u);
  });
});

describe('a mount in trouble out of doors', () => {
  it.each([
    'triage Fine on the terrace, at the far end of the garden it loses the mount all the time.',
    'Fine on the terrace, at the far end of the garden it loses the mount all the time.',
  ])('is met by the walk: %s', async (line) => {
    expect(wordsOf(await ask(deps, line, EVENING, alone()))).toMatch(/Finding the connection fault/u);
  });
});

describe('a mount that is to run by itself until an hour', () => {
  it.each(['image mars till 10 in the morning', "i'll track jupiter until lunch", 'guide on m31 until 9:30 am'])(
    'of day is warned of: %s',
    async (line) => {
      expect(wordsOf(await ask(deps, line, EVENING, alone()))).toMatch(
        /^Only if it stops and parks by itself well before sunrise/u,
      );
    },
  );

  it.each(['image mars till 3 in the morning', 'track jupiter until 5 am'])('of night is not: %s', async (line) => {
    expect(isNo(await ask(deps, line, EVENING, alone()))).toBe(false);
  });
});

describe('the likeness of a line', () => {
  const steps = fc.array(fc.integer({ min: -127, max: 127 }), { minLength: 6, maxLength: 6 });
  const anyWeights = fc
    .tuple(fc.array(fc.string({ maxLength: 8 }), { maxLength: 20 }), steps)
    .map(([words, own]): Weights => ({
      answers: [NOTHING, 'guarded', 'harmed', 'looks', 'open', 'talk'],
      marks: [...new Set([...words, '=asks false', '@sun'])],
      starts: Uint32Array.from({ length: new Set([...words, '=asks false', '@sun']).size + 1 }, (_, i) => i * 6),
      of: Uint16Array.from({ length: 6 * 22 }, (_, i) => i % 6),
      steps: Int8Array.from({ length: 6 * 22 }, (_, i) => own[i % 6] ?? 0),
    }));

  it('is bounded whatever is written and whatever the weights', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 300, unit: 'grapheme' }), anyWeights, (text, weights) => {
        for (const own of [weights, sunWeights()]) {
          const { danger, harmless } = likelySun(own, text);
          for (const odds of [danger, harmless]) {
            expect(odds).toBeGreaterThanOrEqual(0);
            expect(odds).toBeLessThanOrEqual(1 + 1e-9);
          }
          expect(danger + harmless).toBeLessThanOrEqual(1 + 1e-9);
        }
      }),
    );
  });

  it('reads of a long line no more than its first words', () => {
    const words = Array.from({ length: 60 }, (_, i) => `wort${String.fromCharCode(97 + (i % 26))}x`).join(' ');
    expect(sunMarks(`${words} ${'more '.repeat(1000)}`).size).toBe(sunMarks(`${words} more`).size);
  });

  it('calls no line of a telescope, a camera or no filter mere talk', () => {
    const acts = ['with my dob', 'through the camera', 'without a filter', 'in the finder of my telescope'];
    for (const act of acts) expect(isTalkOfSun(`is the sun a planet ${act}`), act).toBe(false);
  });
});
