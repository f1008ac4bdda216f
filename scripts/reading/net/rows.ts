/**
 * What fit.py learns from, written to a folder: `npx tsx scripts/reading/net/rows.ts FOLDER`. rows.jsonl has each run of clauses of the
 * examples with its words and what it tells; messages.jsonl each example message with its runs, and what the marks speak for in them
 * where they were fitted on the other two thirds of the files. Takes five minutes.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Clause } from '../../../bot/reading/examples/clauses.js';
import { MOST_CLAUSES, WORTH_ASKING } from '../../../bot/reading/examples/likely.js';
import { STEP, type Weights } from '../../../bot/reading/examples/weights.js';
import {
  clausesIn,
  exampleFiles,
  examplesIn,
  HOW,
  keyOfAnswer,
  marksOf,
  phraseExamples,
  rowsOf,
} from '../example-rows.js';
import type { Example } from '../examples.js';
import { fitAlone } from '../fit-weights.js';

const PHRASES = 'phrases';
const FOLDS = 3;

interface Filed {
  readonly file: string;
  readonly fold: number;
  readonly example: Example;
}

/** Each clause's words and, where it is asked, a question mark; clauses are parted by null. */
const wordsOf = (clauses: readonly Clause[]): readonly (string | null)[] =>
  clauses.flatMap(({ sentence, from, to }, i) => [
    ...(i > 0 ? [null] : []),
    ...sentence.tokens
      .slice(from, to)
      .flatMap(({ kind, word, known }) => (kind === 'word' ? [known?.word ?? word] : [])),
    ...(sentence.asks ? ['?'] : []),
  ]);

/** As the reader takes them: each clause, it with the next, and three of one sentence; not what is asked throughout. */
const runsOf = (clauses: readonly Clause[]): readonly (readonly Clause[])[] =>
  clauses
    .flatMap(({ number }, i) => [
      clauses.slice(i, i + 1),
      ...(clauses[i + 1] === undefined ? [] : [clauses.slice(i, i + 2)]),
      ...(clauses[i + 2]?.number === number ? [clauses.slice(i, i + 3)] : []),
    ])
    .filter((run) => run.some(({ sentence }) => !sentence.asks));

/** What marks speak for, where that is worth asking the net about: answer → how much. */
const speaker = ({ answers, marks, starts, of, steps }: Weights) => {
  const numbers = new Map(marks.map((mark, i) => [mark, i]));
  return (own: readonly string[]): Readonly<Record<string, number>> => {
    const known = own.flatMap((mark) => numbers.get(mark) ?? []);
    const sums = new Float64Array(answers.length);
    for (const mark of known)
      for (let k = starts[mark] ?? 0; k < (starts[mark + 1] ?? 0); k++)
        sums[of[k] ?? 0] = (sums[of[k] ?? 0] ?? 0) + (steps[k] ?? 0);
    const scale = STEP / Math.sqrt(known.length + 1);
    return Object.fromEntries(
      answers.flatMap((answer, a) => {
        const spoken = (sums[a] ?? 0) * scale;
        return spoken < WORTH_ASKING ? [] : [[answer, Math.round(1000 * spoken) / 1000]];
      }),
    );
  };
};

const folder = process.argv[2];
if (folder === undefined) throw new Error('name a folder to write to');
mkdirSync(folder, { recursive: true });
const filed: readonly Filed[] = [
  ...exampleFiles.flatMap((file) =>
    examplesIn(file).map((example) => ({ file, fold: Number(/\d+/u.exec(file)?.[0] ?? 0) % FOLDS, example })),
  ),
  // No writer's: in each part.
  ...phraseExamples().map((example) => ({ file: PHRASES, fold: FOLDS, example })),
];
const write = (name: string, lines: readonly unknown[]): void =>
  writeFileSync(join(folder, name), lines.map((line) => `${JSON.stringify(line)}\n`).join(''));

write(
  'rows.jsonl',
  filed.flatMap(({ fold, example }) =>
    rowsOf(example).map(({ clauses, tells, weight, others }) => ({
      fold,
      words: wordsOf(clauses),
      tells: tells.map((answer) => [keyOfAnswer(answer), answer]),
      weight,
      others,
    })),
  ),
);
write(
  'messages.jsonl',
  Array.from({ length: FOLDS }, (_, fold) => fold).flatMap((fold) => {
    const others = filed.filter((one) => one.fold !== fold);
    const speaks = speaker(
      fitAlone(
        others.flatMap(({ example }) => rowsOf(example)),
        HOW,
        keyOfAnswer,
      ),
    );
    return filed
      .filter((one) => one.fold === fold && !one.example.whole)
      .map(({ example: { text, facts } }) => ({
        fold,
        labels: [...new Set(facts.map(({ label }) => label))],
        runs: runsOf(clausesIn(text, MOST_CLAUSES)).map((run) => ({
          words: wordsOf(run),
          speaks: speaks(marksOf(run)),
        })),
      }));
  }),
);
