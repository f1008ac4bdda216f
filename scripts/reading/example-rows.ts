/** The examples as rows to fit on: runs of clauses, each with its marks and what it tells. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { keyOf } from '../../bot/reading/index.js';
import { clausesOf, type Clause } from '../../bot/reading/examples/clauses.js';
import { BY_NAME, makeMarker } from '../../bot/reading/examples/marks.js';
import { sentencesOf } from '../../bot/reading/words/sentences.js';
import { loadTriage } from '../../bot/triage/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';
import { readExamples, type Example } from './examples.js';
import type { AloneRow, FitHow } from './fit-weights.js';

export const KNOWLEDGE = 'knowledge/connection';
const FOLDER = 'scripts/reading/examples';

export const HOW: FitHow = { rounds: 10, rate: 0.45, shrink: 1e-5, leastRows: 3, leastWeight: 0.5 };

const model = loadTriage(KNOWLEDGE);
export const { lexicon } = model.reading.sayings;
const isAnswer = (label: string): boolean => {
  const [check = '', answer = ''] = label.split('.');
  return model.check(check)?.answers.some(({ id }) => id === answer) === true;
};

export const keyOfAnswer = (label: string): string => {
  const [check = '', answer = ''] = label.split('.');
  return keyOf(check, answer);
};

export const clausesIn = (text: string, most?: number): readonly Clause[] =>
  clausesOf(sentencesOf(lexicon, text), most);

const placesOf = (clauses: readonly Clause[]): readonly { readonly start: number; readonly end: number }[] =>
  clauses.map(({ sentence: { tokens }, from, to }) => ({
    start: tokens[from]?.start ?? 0,
    end: tokens[to - 1]?.end ?? 0,
  }));

const markClause = makeMarker(BY_NAME);

export const marksOf = (clauses: readonly Clause[]): readonly string[] => {
  const marks = new Set<string>();
  for (const clause of clauses) markClause(clause, (name) => marks.add(name));
  return [...marks];
};

export interface Row extends AloneRow {
  readonly clauses: readonly Clause[];
}

/** More clauses than any run has. */
const TOO_MANY = 5;

/** Each quote with the clauses it touches; clauses that no quote touches tell nothing, alone, in twos, and beside one that tells. */
const rowsOfPieces = ({ text, facts }: Example): readonly Row[] => {
  const clauses = clausesIn(text);
  const at = placesOf(clauses);
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
  const row = (run: readonly number[], labels: readonly string[], weight: number): Row => {
    const own = run.flatMap((i) => clauses[i] ?? []);
    return { clauses: own, marks: marksOf(own), tells: labels, weight, others: 1 };
  };
  const rows = [...runs.values()].map(({ run, labels }) => row(run, [...labels], 1));
  for (const [i, own] of tells.entries()) {
    const next = tells[i + 1];
    if (own.length === 0) rows.push(row([i], [], 0.5));
    if (next?.length === 0) rows.push(row([i, i + 1], own, 0.5));
  }
  return rows;
};

/** Its writer was asked what it tells of one check; it may tell of others. */
const OF_OTHERS = 0.2;

const wholeRow = ({ text, facts }: Example): Row => {
  const clauses = clausesIn(text);
  return { clauses, marks: marksOf(clauses), tells: facts.map(({ label }) => label), weight: 1, others: OF_OTHERS };
};

export const rowsOf = (example: Example): readonly Row[] =>
  example.whole ? [wholeRow(example)] : rowsOfPieces(example);

export const exampleFiles: readonly string[] = readdirSync(FOLDER).filter((name) => name.endsWith('.jsonl'));

export const examplesIn = (file: string, folder = FOLDER): readonly Example[] =>
  readExamples(readFileSync(join(folder, file), 'utf8'), isAnswer);

/** The phrases that members put an answer in. */
export const phraseExamples = (): readonly Example[] =>
  readEntries(KNOWLEDGE).entries.wordedAnswers.flatMap(({ id, said }) =>
    Object.entries(said).flatMap(([answer, list]) =>
      list.map((text) => ({ text, facts: [{ label: `${id}.${answer}`, quote: text }], whole: true })),
    ),
  );
