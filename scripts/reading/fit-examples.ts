/**
 * Fits the weights of `bot/reading/examples`: `npx tsx scripts/reading/fit-examples.ts [--write] [--held FILE …]`. The examples are
 * members' sentences and messages in examples/*.jsonl, written by people who knew neither the reader nor its vocabulary, each with what
 * it tells; see examples/README.md. Prints how far files named by --held, which are then not fitted on, are found and how rightly.
 * A multinomial logistic model over the marks of a run of clauses, fitted by AdaGrad (Duchi, Hazan and Singer 2011, Journal of Machine
 * Learning Research 12), kept sparse and in whole steps. Takes a minute or three.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { clausesOf, type Clause } from '../../bot/reading/examples/clauses.js';
import { makeWeighing } from '../../bot/reading/examples/likely.js';
import { BY_NAME, makeMarker } from '../../bot/reading/examples/marks.js';
import { encodeWeights, MOST_STEPS, NOTHING, STEP, type Weights } from '../../bot/reading/examples/weights.js';
import { sentencesOf } from '../../bot/reading/words/sentences.js';
import { loadTriage } from '../../bot/triage/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { readExamples, type Example } from './examples.js';

const KNOWLEDGE = 'knowledge/connection';
const FOLDER = 'scripts/reading/examples';
const OUT = `${KNOWLEDGE}/reading/examples.bin`;
const ROUNDS = 10;
const RATE = 0.45;
const SHRINK = 1e-5;
const FIRST_SQUARES = 1e-2;
/** Too small a push to be worth making. */
const LEAST_PUSH = 1e-4;
/** A mark met in fewer rows tells nothing. */
const LEAST_ROWS = 3;
/** What is fainter is left out of the file. */
const LEAST_WEIGHT = 0.5;
const SEED = 7;

interface Row {
  readonly marks: readonly string[];
  /** Empty: nothing. */
  readonly tells: readonly string[];
  readonly weight: number;
}

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
const rowsOf = ({ text, facts }: Example): readonly Row[] => {
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
  const row = (run: readonly number[], labels: readonly string[], weight: number): Row => ({
    marks: marksOf(run.flatMap((i) => clauses[i] ?? [])),
    tells: labels,
    weight,
  });
  const rows = [...runs.values()].map(({ run, labels }) => row(run, [...labels], 1));
  for (const [i, own] of tells.entries()) {
    const next = tells[i + 1];
    if (own.length === 0) rows.push(row([i], [], 0.5));
    if (next?.length === 0) rows.push(row([i, i + 1], own, 0.5));
  }
  return rows;
};

const randomFrom = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
};

const shuffle = (order: Int32Array, random: () => number): void => {
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j] ?? 0, order[i] ?? 0];
  }
};

const fit = (rows: readonly Row[]): Weights => {
  const counts = new Map<string, number>();
  for (const { marks } of rows) for (const mark of marks) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  const names = [...counts].filter(([, count]) => count >= LEAST_ROWS).map(([mark]) => mark);
  const marks = new Map(names.map((mark, i) => [mark, i]));
  const answers = [NOTHING, ...new Set(rows.flatMap(({ tells }) => tells))].sort();
  const numbers = new Map(answers.map((answer, i) => [answer, i]));
  const single = rows.flatMap((row) => {
    const own = Int32Array.from(row.marks.flatMap((mark) => marks.get(mark) ?? []));
    const told = row.tells.length === 0 ? [NOTHING] : row.tells;
    return told.map((label) => ({ own, answer: numbers.get(label) ?? 0, weight: row.weight / told.length }));
  });
  const size = answers.length;
  const weights = new Float32Array(names.length * size);
  const squares = new Float32Array(names.length * size).fill(FIRST_SQUARES);
  const odds = new Float64Array(size);
  const order = Int32Array.from(single, (_, i) => i);
  const random = randomFrom(SEED);
  for (let round = 0; round < ROUNDS; round++) {
    shuffle(order, random);
    for (const at of order) {
      const row = single[at];
      if (row === undefined) continue;
      const { own } = row;
      const scale = 1 / Math.sqrt(own.length + 1);
      odds.fill(0);
      for (const mark of own)
        for (let a = 0, k = mark * size; a < size; a++, k++) odds[a] = (odds[a] as number) + (weights[k] as number);
      let [most, all] = [-Infinity, 0];
      for (let a = 0; a < size; a++) most = Math.max(most, (odds[a] as number) * scale);
      for (let a = 0; a < size; a++) {
        const odd = Math.exp((odds[a] as number) * scale - most);
        odds[a] = odd;
        all += odd;
      }
      for (let a = 0; a < size; a++) {
        const off = (a === row.answer ? 1 : 0) - (odds[a] as number) / all;
        if (Math.abs(off) < LEAST_PUSH) continue;
        const push = off * scale * row.weight;
        for (const mark of own) {
          const k = mark * size + a;
          const slope = push - SHRINK * (weights[k] as number);
          squares[k] = (squares[k] as number) + slope * slope;
          weights[k] = (weights[k] as number) + (RATE / Math.sqrt(squares[k])) * slope;
        }
      }
    }
  }
  return sparse(weights, answers, marks);
};

const sparse = (weights: Float32Array, answers: readonly string[], marks: ReadonlyMap<string, number>): Weights => {
  const starts = new Uint32Array(marks.size + 1);
  const [of, steps]: [number[], number[]] = [[], []];
  for (let mark = 0; mark < marks.size; mark++) {
    for (let a = 0; a < answers.length; a++) {
      const weight = weights[mark * answers.length + a] ?? 0;
      if (Math.abs(weight) < LEAST_WEIGHT) continue;
      of.push(a);
      steps.push(Math.max(-MOST_STEPS, Math.min(MOST_STEPS, Math.round(weight / STEP))));
    }
    starts[mark + 1] = of.length;
  }
  return { answers, marks: [...marks.keys()], starts, of: Uint16Array.from(of), steps: Int8Array.from(steps) };
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
const wholeRow = ({ text, facts }: Example): Row => ({
  marks: marksOf(placed(text).clauses),
  tells: facts.map(({ label }) => label),
  weight: 1,
});
const weights = fit(examples.flatMap((example) => (example.whole ? [wholeRow(example)] : rowsOf(example))));
console.log(`${examples.length} examples, ${weights.marks.length} marks, ${weights.steps.length} weights`);
if (held.length > 0) measure(weights, load(held));
if (process.argv.includes('--write')) {
  const bytes = encodeWeights(weights);
  writeFileSync(OUT, bytes);
  console.log(`${OUT}: ${(bytes.length / 1e6).toFixed(2)} MB`);
}
