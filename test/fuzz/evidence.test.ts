import fc from 'fast-check';
import { RE2JS } from 're2js';
import { describe, expect, it } from 'vitest';
import { startWalk, tellText } from '../../bot/triage/index.js';
import { compilePattern, foldText, MOST_WAYS } from '../../bot/reading/messages/compile-pattern.js';
import { NUMBER_FORMS } from '../../bot/reading/messages/numbers.js';
import { patternTree } from '../../bot/reading/messages/pattern-tree.js';
import { waysOf } from '../../bot/reading/messages/pattern-ways.js';
import { readText, TEXT_LIMIT } from '../../bot/reading/index.js';
import { anyText, counted, isFull } from './inputs.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const LONG = 240_000;
/** All but what the readers of tables find. */
const patterned = model.evidence.flatMap(({ pattern, ...entry }) =>
  pattern === undefined ? [] : [{ ...entry, pattern }],
);
const examples = model.evidence.flatMap(({ example, nonExample }) => [
  example,
  ...(nonExample === undefined ? [] : [nonExample]),
]);
/** Log lines cut up and joined with noise. */
const pasted = fc
  .array(
    fc.oneof(
      {
        weight: 3,
        arbitrary: fc
          .tuple(fc.constantFrom(...examples), fc.nat(200), fc.nat(200))
          .map(([text, from, length]) => text.slice(from % text.length, (from % text.length) + length)),
      },
      { weight: 1, arbitrary: anyText },
    ),
    { maxLength: 6 },
  )
  .map((parts) => parts.join('\n'));

/** The letters of a pattern without its signs, again and again: what makes a backtracking engine try hardest. */
const provoking = (pattern: string): string => pattern.replace(/\\[a-z]/gu, '7').replace(/[^A-Za-z0-9 :]/gu, '');

describe('evidence read from pasted text', () => {
  it(
    "any text is read, and gives answers of the model's own checks alone",
    () => {
      fc.assert(
        fc.property(pasted, (text) => {
          const { facts } = readText(model.reading, text);
          for (const { what, answer } of facts) {
            const check = model.check(what);
            if (check !== undefined) expect(check.answers.map(({ id }) => id)).toContain(answer);
            else expect(['path', 'system', 'client']).toContain(what);
          }
        }),
        counted('pasted texts matched against all patterns', 9000),
      );
    },
    LONG,
  );

  it(
    'any text goes into a walk, and the record stays JSON',
    () => {
      fc.assert(
        fc.property(pasted, (text) => {
          const { state } = tellText(model, startWalk({ member: 'Mbali', helper: null }), text, 'member');
          expect(JSON.parse(JSON.stringify(state))).toEqual(state);
        }),
        counted('pasted texts told to a walk', 3000),
      );
    },
    LONG,
  );

  it(
    'every pattern is RE2, and runs on the platform’s engine only where it can be tried in few ways from a place',
    () => {
      for (const { pattern, id, compiled } of patterned) {
        expect(() => RE2JS.compile(pattern, RE2JS.CASE_INSENSITIVE), id).not.toThrow();
        expect(waysOf(patternTree(pattern)), id).toBeLessThanOrEqual(MOST_WAYS);
        expect(compiled.matches(provoking(pattern).repeat(50).slice(0, TEXT_LIMIT)), id).toBeTypeOf('boolean');
      }
      for (const form of NUMBER_FORMS) expect(waysOf(patternTree(form)), form).toBeLessThanOrEqual(MOST_WAYS);
      for (const pattern of ['(a)\\1', '(?=a)a', '(?<!b)a']) expect(() => compilePattern(pattern)).toThrow();
    },
    LONG,
  );

  // The classes of slow patterns: OWASP, Regular expression Denial of Service (nested and overlapping repeats).
  it('patterns that a backtracking engine is slow at go to the linear engine, and both engines find the same', () => {
    const slow = ['(a+)+b', '(?:a|aa)+b', '(?:a|a)*b', '\\w+\\w+\\w+b', '.*.*.*b', '(?:x?a?){30}b'];
    for (const pattern of slow) {
      expect(waysOf(patternTree(pattern)), pattern).toBeGreaterThan(MOST_WAYS);
      expect(compilePattern(pattern).matches('a'.repeat(2000)), pattern).toBe(false);
    }
    for (const { pattern, example, nonExample, compiled, id } of patterned) {
      const linear = RE2JS.compile(pattern, RE2JS.CASE_INSENSITIVE);
      for (const text of [example, nonExample ?? '', `x ${example} y ${example}`].map(foldText))
        expect(compiled.matches(text), id).toBe(linear.test(text));
    }
  });

  // Printed for people, not judged: figures of a busy machine would judge the machine.
  it.runIf(isFull)(
    'time grows with the text as a line does (printed)',
    () => {
      const text = patterned.map(({ pattern }) => provoking(pattern).repeat(3)).join(' ');
      const costMs = (length: number): number => {
        const piece = text.repeat(Math.ceil(length / text.length)).slice(0, length);
        const runs = Array.from({ length: 9 }, () => {
          const before = process.cpuUsage();
          for (const { compiled } of model.evidence) compiled.matches(piece);
          const { user, system } = process.cpuUsage(before);
          return (user + system) / 1000;
        });
        return runs.sort((a, b) => a - b)[4] ?? Number.NaN;
      };
      costMs(8000);
      const costs = [1000, 2000, 4000, 8000].map((length) => ({ length, ms: costMs(length) }));
      for (const { length, ms } of costs)
        console.log(
          `all ${model.evidence.length} patterns over ${length} provoking characters: ${ms.toFixed(2)} ms of processor time, ${((1e6 * ms) / length / model.evidence.length).toFixed(0)} ns a character and pattern`,
        );
      expect(costs.every(({ ms }) => Number.isFinite(ms))).toBe(true);
    },
    LONG,
  );
});
