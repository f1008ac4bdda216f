import fc from 'fast-check';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { KnowledgeError, loadTriage } from '../../bot/triage/index.js';
import { anyText, counted, fragments, harmful } from './inputs.js';

const LONG = 240_000;
const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-overlay-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

// A small model of our own: reading the shipped one each time would leave too few runs.
const shipped = path.join(folder, 'shipped');
mkdirSync(shipped);
const source = 'common practice, no source';
const SHIPPED = {
  paths: [
    {
      id: 'socket',
      title: 'Hand controller socket',
      description: 'A lead from the hand controller.',
      stages: ['power', 'cable'],
      systems: ['linux'],
      clients: ['direct'],
      source,
    },
  ],
  stages: [
    { id: 'power', title: 'Power' },
    { id: 'cable', title: 'Cable' },
  ],
  faults: [
    {
      id: 'no-power',
      stage: 'power',
      title: 'The mount has no power',
      why: 'The plug is out.',
      weight: 1,
      answers: { lamp: 'dark' },
      remedy: { steps: ['Put the plug in.'], minutes: 1 },
      verify: { text: 'The lamp is lit.', check: 'lamp', answer: 'lit' },
      source,
    },
  ],
  checks: [
    {
      id: 'lamp',
      stage: 'power',
      question: 'Is the lamp lit?',
      how: 'Look at it.',
      answers: [
        { id: 'lit', label: 'Lit' },
        { id: 'dark', label: 'Dark' },
      ],
      good: 'lit',
      minutes: 1,
      source,
    },
  ],
  evidence: [
    {
      id: 'no-lamp',
      pattern: 'no lamp',
      example: 'there is no lamp',
      answers: { lamp: 'dark' },
      says: 'It has no power.',
      source,
    },
  ],
} as const;
for (const [kind, entries] of Object.entries(SHIPPED))
  writeFileSync(path.join(shipped, `${kind}.yaml`), stringify(entries));

const kinds = fc.constantFrom('paths', 'stages', 'faults', 'checks', 'evidence');
let run = 0;
/** Loads with an overlay of these files; returns its problems in words, or null when it was taken. */
const load = (files: readonly (readonly [string, string])[]): string | null => {
  const overlay = path.join(folder, `overlay-${run++ % 8}`);
  rmSync(overlay, { recursive: true, force: true });
  mkdirSync(overlay);
  for (const [name, text] of files) writeFileSync(path.join(overlay, name), text);
  try {
    loadTriage(shipped, overlay);
    return null;
  } catch (error) {
    if (!(error instanceof KnowledgeError)) throw error;
    expect(error.problems.length).toBeGreaterThan(0);
    for (const { line, message } of error.problems) {
      expect(line).toBeGreaterThanOrEqual(1);
      expect(message.trim()).not.toBe('');
    }
    return error.message;
  }
};

const nastyValue = fc.oneof(
  anyText,
  harmful,
  fc.integer(),
  fc.double(),
  fc.boolean(),
  fc.constant(null),
  fc.constant([]),
  fc.constant({}),
  fc.constantFrom('no-power', 'lamp', 'lit', 'power', 'socket', 'linux'),
);

describe("a club's own knowledge files", () => {
  it(
    'of any text at all are taken or refused by file and line',
    () => {
      const yamlish = fc.oneof(
        anyText,
        fragments(
          [
            '- id: no-power\n',
            '  weight: 2\n',
            '  answers: {lamp: dark}\n',
            '- ',
            '? ',
            '&a ',
            '*a ',
            '<<: *a\n',
            '!!js/function ',
            '|\n',
            '>-\n',
            '{',
            '}',
            '[',
            ']',
            '---\n',
            '...\n',
            '%YAML 1.2\n',
            '\t',
            '  remove: true\n',
            '"',
            '- id: *a\n',
          ],
          14,
        ),
      );
      fc.assert(
        fc.property(kinds, yamlish, (kind, text) => {
          load([[`${kind}.yaml`, text]]);
        }),
        counted('overlay files of any text', 6000),
      );
    },
    LONG,
  );

  it(
    'with any field of an entry replaced by anything are taken or refused by file and line',
    () => {
      const changed = kinds.chain((kind) => {
        const entry = SHIPPED[kind][0] as Record<string, unknown>;
        return fc
          .tuple(
            fc.constant(kind),
            fc.dictionary(
              fc.constantFrom(...Object.keys(entry), 'remove', '__proto__', 'only', 'surplus'),
              nastyValue,
              { minKeys: 1, maxKeys: 3 },
            ),
            fc.boolean(),
          )
          .map(
            ([name, fields, isNew]) =>
              [name, [{ ...entry, ...fields, ...(isNew ? { id: 'of-the-club' } : {}) }]] as const,
          );
      });
      fc.assert(
        fc.property(changed, ([kind, entries]) => {
          load([[`${kind}.yaml`, stringify(entries)]]);
        }),
        counted('overlay entries with fields replaced', 6000),
      );
    },
    LONG,
  );

  it(
    'that grow when read (aliases of aliases), or nest without end, are refused and do not hang',
    () => {
      const bomb = [
        '- id: a0\n  title: &a0 [x, x, x, x, x, x, x, x, x]\n',
        ...Array.from(
          { length: 12 },
          (_, i) => `- id: a${i + 1}\n  title: &a${i + 1} [${Array.from({ length: 9 }, () => `*a${i}`).join(', ')}]\n`,
        ),
      ].join('');
      expect(load([['stages.yaml', bomb]])).not.toBeNull();
      expect(load([['stages.yaml', `- id: deep\n  title: ${'['.repeat(5000)}${']'.repeat(5000)}\n`]])).not.toBeNull();
      expect(
        load([['stages.yaml', `- id: deep\n  title: ${'{a: '.repeat(5000)}1${'}'.repeat(5000)}\n`]]),
      ).not.toBeNull();
      expect(load([['stages.yaml', '- &self\n  id: round\n  title: *self\n']])).not.toBeNull();
      expect(load([['stages.yaml', '- id: power\n  title: Current\n']])).toBeNull();
    },
    LONG,
  );

  it(
    'over the shipped model are taken or refused as well',
    () => {
      const real = path.join(folder, 'real');
      cpSync('knowledge/connection', real, { recursive: true });
      const overlay = path.join(folder, 'over-real');
      fc.assert(
        fc.property(
          kinds,
          fc.array(
            fc.record({
              id: fc.oneof(fc.constantFrom('usb-cable-broken', 'power', 'kernel-log', 'null-modem'), anyText),
              remove: fc.boolean(),
              weight: nastyValue,
              answers: nastyValue,
            }),
            { maxLength: 3 },
          ),
          (kind, entries) => {
            rmSync(overlay, { recursive: true, force: true });
            mkdirSync(overlay);
            writeFileSync(path.join(overlay, `${kind}.yaml`), stringify(entries));
            try {
              loadTriage(real, overlay);
            } catch (error) {
              if (!(error instanceof KnowledgeError)) throw error;
            }
          },
        ),
        { ...counted('overlays over the shipped model', 100), numRuns: process.env['FUZZ'] === 'full' ? 100 : 4 },
      );
    },
    LONG,
  );
});
