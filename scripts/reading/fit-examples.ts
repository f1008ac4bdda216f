/**
 * Fits the weights of `bot/reading/examples`: `npx tsx scripts/reading/fit-examples.ts [--write] [--held FILE …]`. The examples are
 * members' sentences and messages in examples/*.jsonl, written by people who knew neither the reader nor its vocabulary, each with what
 * it tells; see examples/README.md. Prints how far files named by --held, which are then not fitted on, are found and how rightly.
 * Takes a minute or three.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { keyOf } from '../../bot/reading/index.js';
import { clausesOf, type Clause } from '../../bot/reading/examples/clauses.js';
import { makeWeighing } from '../../bot/reading/examples/likely.js';
import { BY_NAME, makeMarker } from '../../bot/reading/examples/marks.js';
import { encodeWeights, type Weights } from '../../bot/reading/examples/weights.js';
import { sentencesOf } from '../../bot/reading/words/sentences.js';
import { loadTriage } from '../../bot/triage/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { readExamples, type Example } from './examples.js';
import { fitAlone, type AloneRow, type FitHow } from './fit-weights.js';

const KNOWLEDGE = 'knowledge/connection';
const FOLDER = 'scripts/reading/examples';
const OUT = `${KNOWLEDGE}/reading/examples.bin`;

const HOW: FitHow = { rounds: 10, rate: 0.45, shrink: 1e-5, leastRows: 3, leastWeight: 0.5 };

const model = loadTriage(KNOWLEDGE);
const { lexicon } = model.reading.sayings;
const isAnswer = (label: string): boolean => {
  const [check = '', answer = ''] = label.split('.');
  return model.check(check)?.answers.some(({ id }) => id === answer) === true;
};

interface Placed {
  readonly clauses: readonly Clause[];
  readonly at: readonly { readonly start: number; readonly end: number }[];
}

const placed = (text: string): Placed => {
  const clauses = clausesOf(sentencesOf(lexicon, text));
  const at = clauses.map(({ sentence: { tokens }, from, to }) => ({
    start: tokens[from]?.start ?? 0,
    end: tokens[to - 1]?.end ?? 0,
  }));
  return { clauses, at };
};

const markClause = makeMarker(BY_NAME);

const marksOf = (clauses: readonly Clause[]): readonly string[] => {
  const marks = new Set<string>();
  for (const clause of clauses) markClause(clause, (name) => marks.add(name));
  return [...marks];
};

/** More clauses than any run has. */
const TOO_MANY = 5;

/** Each quote with the clauses it touches; clauses that no quote touches tell nothing, alone, in twos, and beside one that tells. */
const rowsOf = ({ text, facts }: Example): readonly AloneRow[] => {
  const { clauses, at } = placed(text);
  const touching = facts.map(({ label, quote }) => {
    const start = text.indexOf(quote);
    const touched = at.flatMap((own, i) => (start < own.end && own.start < start + quote.length ? [i] : []));
    return { label, touched };
  });
  const tells = clauses.map((_, i) => touching.filter(({ touched }) => touched.includes(i)).map(({ label }) => label));
  const runs = new Map<string, { readonly run: readonly number[]; readonly labels: Set<string> }>();
  for (const { label, touched } of touching) {
    if (touched.length === 0 || touched.length >= TOO_MANY) continue;
    const known = runs.get(touched.join(' ')) ?? { run: touched, labels: new Set() };
    known.labels.add(label);
    if (touched.length > 1) for (const i of touched) for (const inner of tells[i] ?? []) known.labels.add(inner);
    runs.set(touched.join(' '), known);
  }
  const row = (run: readonly number[], labels: readonly string[], weight: number): AloneRow => ({
    marks: marksOf(run.flatMap((i) => clauses[i] ?? [])),
    tells: labels,
    weight,
    others: 1,
  });
  const rows = [...runs.values()].map(({ run, labels }) => row(run, [...labels], 1));
  for (const [i, own] of tells.entries()) {
    const next = tells[i + 1];
    if (own.length === 0) rows.push(row([i], [], 0.5));
    if (next?.length === 0) rows.push(row([i, i + 1], own, 0.5));
  }
  return rows;
};

const LEVELS = [0.3, 0.5, 0.6, 0.7, 0.8, 0.9] as const;

const measure = (weights: Weights, examples: readonly Example[]): void => {
  const weighClauses = makeWeighing(weights);
  const met = examples.flatMap(({ text, facts }) => {
    const labels = new Set(facts.map(({ label }) => label));
    return weighClauses(sentencesOf(lexicon, text))
      .likeliest(LEVELS[0])
      .map(({ check, answer, probability }) => ({
        probability,
        isRight: labels.has(`${check}.${answer}`),
      }));
  });
  const said = examples.reduce((sum, { facts }) => sum + new Set(facts.map(({ label }) => label)).size, 0);
  for (const level of LEVELS) {
    const taken = met.filter(({ probability }) => probability >= level);
    const right = taken.filter(({ isRight }) => isRight).length;
    const percent = (part: number, whole: number): string => `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;
    console.log(`from ${level}: found ${percent(right, said)} of ${said}, right ${percent(right, taken.length)}`);
  }
};

const names = readdirSync(FOLDER).filter((name) => name.endsWith('.jsonl'));
const heldAt = process.argv.indexOf('--held');
const held = heldAt < 0 ? [] : process.argv.slice(heldAt + 1).map((name) => basename(name));
const load = (all: readonly string[]): readonly Example[] =>
  all.flatMap((name) => readExamples(readFileSync(join(FOLDER, name), 'utf8'), isAnswer));
const phrases = readEntries(KNOWLEDGE).entries.wordedAnswers.flatMap(({ id, said }) =>
  Object.entries(said).flatMap(([answer, list]) =>
    list.map((text) => ({ text, facts: [{ label: `${id}.${answer}`, quote: text }], whole: true })),
  ),
);
const examples = [...load(names.filter((name) => !held.includes(name))), ...phrases];
/** Its writer was asked what it tells of one check; it may tell of others. */
const OF_OTHERS = 0.2;
const wholeRow = ({ text, facts }: Example): AloneRow => ({
  marks: marksOf(placed(text).clauses),
  tells: facts.map(({ label }) => label),
  weight: 1,
  others: OF_OTHERS,
});
const keyOfAnswer = (label: string): string => {
  const [check = '', answer = ''] = label.split('.');
  return keyOf(check, answer);
};
const weights = fitAlone(
  examples.flatMap((example) => (example.whole ? [wholeRow(example)] : rowsOf(example))),
  HOW,
  keyOfAnswer,
);
console.log(`${examples.length} examples, ${weights.marks.length} marks, ${weights.steps.length} weights`);
if (held.length > 0) measure(weights, load(held));
if (process.argv.includes('--write')) {
  const bytes = encodeWeights(weights);
  writeFileSync(OUT, bytes);
  console.log(`${OUT}: ${(bytes.length / 1e6).toFixed(2)} MB`);
}
