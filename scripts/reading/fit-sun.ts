/**
 * Fits the weights by which lines near the Sun are known: `npx tsx scripts/reading/fit-sun.ts [--write] [--show]`. The lines are sun/*.jsonl; see
 * sun/README.md. Prints how a line is judged by what was fitted to the others, and how often ordinary talk is taken for a harm; `--held`
 * prints the lines of test/reading/corpus/sun as well, which nothing is fitted on. Takes a minute or two.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { likelySun, SUN_KINDS, type LikelySun } from '../../bot/commands/asking/sun-likeness/likely-sun.js';
import { SUN_WEIGHTS } from '../../bot/commands/asking/sun-likeness/shipped-weights.js';
import { sunMarks } from '../../bot/commands/asking/sun-likeness/sun-marks.js';
import type { SunCaution } from '../../bot/commands/asking/sentence/sun-guards.js';
import { sunCautionIn } from '../../bot/commands/asking/sentence/looking-at-sun.js';
import { decodeNet } from '../../bot/reading/examples/net-file.js';
import { decodeWeights, encodeWeights, NOTHING, type Weights } from '../../bot/reading/examples/weights.js';
import { fitWithVectors, vectorsOf, type VectorRow, type VectorsHow } from './fit-with-vectors.js';
import { linesIn } from './json-lines.js';

const HOW: VectorsHow = {
  rounds: 20,
  rate: 0.1,
  shrink: 3e-4,
  leastRows: 2,
  leastWeight: 0.3,
  share: 3,
  leastUnmet: 1.5,
};
/** What is said of mounts and of the night is much. */
const WEIGHT_OF_ORDINARY = 0.35;
/** Written against the rules. */
const WEIGHT_OF_TESTS = 0.6;
const WEIGHT_OF_MOUNTS = 0.05;
const PARTS = 5;

interface Line {
  readonly kind: string;
  readonly text: string;
  readonly from: 'sun' | 'tests' | 'ordinary' | 'mounts';
}

const linesOf = (folder: string, begins: string, from: Line['from']): readonly Line[] =>
  linesIn<{ readonly kind?: string; readonly text: string }>(folder, begins).map(({ kind, text }) => ({
    kind: from === 'sun' ? (kind ?? '') : 'nothing',
    text,
    from,
  }));

/** What the rules make of the tests' own lines is what they tell. */
const KIND_OF: Readonly<Partial<Record<SunCaution, string>>> = {
  eyes: 'harmed',
  'sun-now': 'harmed',
  'sun-open': 'open',
  'sun-left': 'open',
  'sun-how': 'guarded',
  'sun-guarded': 'guarded',
  'sun-still-yours': 'guarded',
  'sun-guards': 'guarded',
  'sun-wedge': 'guarded',
  'sun-pinhole': 'guarded',
  'sun-filter': 'guarded',
};
const linesOfTests = (file: string): readonly Line[] =>
  readFileSync(join('test/commands', file), 'utf8')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line): Line => {
      if (line.startsWith('~ ')) return { kind: 'nothing', text: line.slice(2), from: 'tests' };
      const caution = sunCautionIn(line.toLowerCase(), null);
      return { kind: (caution === null ? undefined : KIND_OF[caution]) ?? 'looks', text: line, from: 'tests' };
    });

/** Said of a mount, some lines speak of the Sun all the same. */
const NAMES_SUN = /\b(?:sun|solar|eclips\w*|totality|daylight)\b/iu;
const lines: readonly Line[] = [
  ...linesOf('scripts/reading/sun', 'lines-', 'sun'),
  ...linesOf('scripts/reading/sun', 'ordinary-', 'ordinary'),
  ...linesOfTests('sun-harm.txt'),
  ...linesOfTests('sun-now.txt'),
  ...[
    ...linesOf('scripts/reading/examples', 'sentences-', 'mounts'),
    ...linesOf('scripts/reading/outcomes', '', 'mounts'),
    ...linesOf('scripts/reading/talk', '', 'mounts'),
  ].filter(({ text }) => !NAMES_SUN.test(text)),
];

const WEIGHTS: Readonly<Record<Line['from'], number>> = {
  sun: 1,
  tests: WEIGHT_OF_TESTS,
  ordinary: WEIGHT_OF_ORDINARY,
  mounts: WEIGHT_OF_MOUNTS,
};
const rowOf = ({ kind, text, from }: Line): VectorRow => ({
  marks: [...sunMarks(text)],
  tells: SUN_KINDS.some((one) => one === kind) ? kind : NOTHING,
  weight: WEIGHTS[from],
  isTaught: from !== 'mounts',
});
const rows = lines.map(rowOf);

interface Judged extends Line {
  readonly likely: LikelySun;
}
const judge = (weights: Weights, own: readonly Line[]): readonly Judged[] =>
  own.map((line) => ({ ...line, likely: likelySun(weights, line.text) }));

const LEVELS = [0.4, 0.5, 0.6, 0.7, 0.8, 0.9] as const;
const report = (name: string, judged: readonly Judged[]): void => {
  console.log(`${name}: taken for a harm from ${LEVELS.join(', ')}; harmless from 0.7, 0.8, 0.9`);
  const groups = new Map<string, Judged[]>();
  for (const one of judged) {
    const group = one.from === 'sun' ? one.kind : `${one.from}${one.from === 'tests' ? ` ${one.kind}` : ''}`;
    groups.set(group, [...(groups.get(group) ?? []), one]);
  }
  for (const [group, own] of groups) {
    const taken = LEVELS.map((level) => own.filter(({ likely }) => likely.danger >= level).length);
    const harmless = [0.7, 0.8, 0.9].map((level) => own.filter(({ likely }) => likely.harmless >= level).length);
    const right = own.filter(({ kind, likely }) => likely.harm === kind).length;
    console.log(
      `  ${group.padEnd(9)} of ${own.length}: ${taken.join(', ')}; ${harmless.join(', ')}; its own kind ${right}`,
    );
  }
};

const vectors = vectorsOf(decodeNet(readFileSync('knowledge/connection/reading/net.bin')));
/** The same part for the same words, however many lines there are. */
const partOf = (text: string): number =>
  [...text].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) % 9973, 7) % PARTS;
const fitted = (own: readonly VectorRow[]): Weights => decodeWeights(encodeWeights(fitWithVectors(own, vectors, HOW)));
const parted = Array.from({ length: PARTS }, (_, part) =>
  judge(
    fitted(rows.filter((_row, i) => partOf((lines[i] as Line).text) !== part)),
    lines.filter(({ text }) => partOf(text) === part),
  ),
).flat();
report('left out in turn', parted);
if (process.argv.includes('--show'))
  for (const { kind, text, from, likely } of parted)
    if (from === 'sun' ? ['looks', 'open', 'harmed'].includes(kind) !== likely.danger >= 0.5 : likely.danger >= 0.5)
      console.log(`    ${from === 'sun' ? kind : from} ${likely.danger.toFixed(2)} ${likely.harm}: ${text}`);
if (process.argv.includes('--write') || process.argv.includes('--held')) {
  const bytes = encodeWeights(fitWithVectors(rows, vectors, HOW));
  if (process.argv.includes('--held'))
    report('held', judge(decodeWeights(bytes), linesOf('test/reading/corpus/sun', '', 'sun')));
  console.log(`${lines.length} lines, ${bytes.length} bytes`);
  if (process.argv.includes('--write')) writeFileSync(SUN_WEIGHTS, bytes);
}
