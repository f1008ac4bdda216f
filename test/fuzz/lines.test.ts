import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import type { Asker } from '../../bot/commands/core/command.js';
import { completeOption } from '../../bot/commands/core/complete.js';
import { checkOptions, runCommand, runLine } from '../../bot/commands/core/dispatch.js';
import { BARE_WORDS, parseLine } from '../../bot/commands/core/grammar.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { type Outcome } from '../../bot/reply/reply.js';
import { ODALYS, realDeps } from '../commands/real-deps.js';
import { outcomeTroubles, textTroubles } from './harmless.js';
import { anyText, counted, fragments, harmful } from './inputs.js';

const LONG = 240_000;
const names = allCommands.map(({ name }) => name);
const optionNames = [...new Set(allCommands.flatMap(({ options }) => Object.keys(options).map((name) => `${name}:`)))];

/** A line that begins with a command and goes on with options, their own values and whatever else. */
const lines: fc.Arbitrary<string> = fc.oneof(
  { weight: 1, arbitrary: anyText },
  { weight: 3, arbitrary: fc.tuple(fc.constantFrom(...names), anyText).map(([name, rest]) => `${name} ${rest}`) },
  {
    weight: 4,
    arbitrary: fc
      .constantFrom(...allCommands)
      .chain((command) =>
        fc.tuple(
          fc.constantFrom(...command.examples, command.name),
          fc.array(
            fc.tuple(
              fc.constantFrom(...optionNames, ...Object.keys(command.options).map((name) => `${name}:`)),
              anyText,
              fc.boolean(),
            ),
            { maxLength: 3 },
          ),
        ),
      )
      .map(([start, rest]) =>
        [start, ...rest.map(([name, value, quoted]) => name + (quoted ? `"${value}"` : value))].join(' '),
      ),
  },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom(...allCommands.flatMap(({ examples }) => examples)), fc.nat(), harmful)
      .map(([example, at, what]) => example.slice(0, at % example.length) + what + example.slice(at % example.length)),
  },
);

describe('whatever line is typed', () => {
  it(
    'is read as a command with values of its own options, or refused in words',
    () => {
      fc.assert(
        fc.property(lines, (line) => {
          const parsed = parseLine(line, allCommands);
          if ('problem' in parsed) expect(outcomeTroubles(parsed, line), line).toEqual([]);
          else {
            const raw = new Map(parsed.raw);
            raw.delete(BARE_WORDS);
            for (const name of raw.keys()) expect(Object.hasOwn(parsed.command.options, name), line).toBe(true);
            const checked = checkOptions(parsed.command, raw);
            if ('problem' in checked) expect(outcomeTroubles(checked, line), line).toEqual([]);
          }
        }),
        counted('lines read', 330_000),
      );
    },
    LONG,
  );

  it(
    'is answered or refused, harmlessly and within bounds; every choice it offers can be picked',
    async () => {
      const deps = await realDeps({ clubSiteText: '52.71,0.12' });
      const askers: Asker[] = Array.from({ length: 5 }, (_, i) => ({
        ...ODALYS,
        memberId: `console:member-${i}`,
        isManager: i < 3,
        isPrivate: i % 2 === 0,
        displayName: ['Tamsin', '@everyone', '\u202eIngo', '**Ravi**', ''][i] ?? '',
      }));
      const faults: unknown[] = [];
      // Saved names come back in later answers; these words are kept for what the program itself lets slip.
      const plain = lines.map((line) => line.replace(/undefined|NaN|object/gu, 'nothing'));
      const ask = (line: string, asker: Asker): Promise<Outcome> =>
        runLine(deps, line, {
          asker,
          nowUtcMs: Date.UTC(2026, 10, 25, 18),
          onError: (error) => {
            faults.push(error);
          },
        });
      try {
        await fc.assert(
          fc.asyncProperty(plain, fc.constantFrom(...askers), async (line, asker) => {
            const outcome = await ask(line, asker);
            expect(faults, line).toEqual([]);
            expect(outcomeTroubles(outcome, line), line).toEqual([]);
            for (const { run } of outcome.choices ?? []) {
              const parsed = parseLine(run, allCommands);
              expect('problem' in parsed ? parsed.message : '', `${line} offers ${run}`).toBe('');
            }
          }),
          counted('lines answered by the real commands', 12_000),
        );
      } finally {
        await deps.store.close();
      }
    },
    LONG,
  );

  it(
    'is a word like any other where a language gives it a meaning',
    async () => {
      const deps = await realDeps({ clubSiteText: '52.71,0.12' });
      const faults: string[] = [];
      const words = [...Object.getOwnPropertyNames(Object.prototype), 'length', 'prototype'];
      const typed = words.flatMap((word) => [
        word,
        `the mount says ${word} at 9600 and drops`,
        ...allCommands.flatMap(({ name, options }) => [
          `${name} ${word}`,
          ...Object.keys(options).map((option) => `${name} ${option}:${word}`),
        ]),
      ]);
      try {
        for (const line of typed) {
          const outcome = await runLine(deps, line, {
            asker: { ...ODALYS, memberId: `console:${line}`, isManager: true, isPrivate: true },
            nowUtcMs: Date.UTC(2026, 10, 25, 18),
            onError: (error) => faults.push(`${line}: ${String(error)}`),
          });
          expect(outcomeTroubles(outcome, line), line).toEqual([]);
        }
      } finally {
        await deps.store.close();
      }
      expect(faults).toEqual([]);
    },
    LONG,
  );

  it(
    'typed values of any kind, as a platform may send them, are checked before a command sees them',
    async () => {
      const deps = await realDeps({ clubSiteText: '52.71,0.12' });
      const faults: unknown[] = [];
      try {
        await fc.assert(
          fc.asyncProperty(
            fc.constantFrom(...allCommands),
            fc.dictionary(
              fc.constantFrom(...optionNames.map((name) => name.slice(0, -1)), '__proto__', 'constructor'),
              fc.oneof(anyText, fc.integer(), fc.double(), fc.boolean()),
              { maxKeys: 4 },
            ),
            async (command, values) => {
              const outcome = await runCommand(deps, command, new Map(Object.entries(values)), {
                asker: { ...ODALYS, isManager: true },
                nowUtcMs: Date.UTC(2026, 10, 25, 18),
                onError: (error) => {
                  faults.push(error);
                },
              });
              expect(faults, JSON.stringify([command.name, values])).toEqual([]);
              if (isProblem(outcome) || command.name !== 'mydata')
                expect(
                  outcomeTroubles(outcome, JSON.stringify(values)),
                  JSON.stringify([command.name, values]),
                ).toEqual([]);
            },
          ),
          counted('commands run with values of any kind', 12_000),
        );
      } finally {
        await deps.store.close();
      }
    },
    LONG,
  );

  it(
    'suggestions for any option fit every platform and hold nothing harmful',
    async () => {
      const deps = await realDeps();
      const spots = allCommands.flatMap((command) => Object.keys(command.options).map((name) => ({ command, name })));
      try {
        await fc.assert(
          fc.asyncProperty(
            fc.constantFrom(...spots),
            fc.oneof(anyText, fragments(['n', 'to', 'gal', 'ce', 'yes'], 2)),
            async ({ command, name }, partial) => {
              for (const { label, value } of await completeOption(deps, command, name, partial, ODALYS)) {
                expect([...textTroubles(label), ...textTroubles(value)]).toEqual([]);
                expect(Math.max(label.length, value.length)).toBeLessThanOrEqual(100);
              }
            },
          ),
          counted('suggestions for options', 20_000),
        );
      } finally {
        await deps.store.close();
      }
    },
    LONG,
  );
});
