/**
 * Whether words speak of what a question asks at all: how much likelier they are among the phrases that its answers are put in than
 * among those of all questions, as a log likelihood ratio of smoothed word counts (Jurafsky and Martin, Speech and Language
 * Processing, 3rd edition draft, chapters 3 and 4). Without it the nearest of a question's few answers is found in any sentence.
 */
import { onceOf } from '../../ground/once.js';
import type { SaidWord } from './said-words.js';

interface Counts {
  readonly of: ReadonlyMap<string, number>;
  readonly total: number;
}

export interface PhraseCounts {
  readonly all: Counts;
  readonly ofCheck: ReadonlyMap<string, Counts>;
}

/** A question is taken to have this many words more, spread as in all phrases. */
const SPREAD = 20;
const UNSEEN = 0.5;
/** A word that the question's phrases lack says little against it. */
const LEAST = -1;

/** The words that carry something, and the entries of the vocabulary they belong to, each once. */
export const marksOf = (words: readonly SaidWord[]): ReadonlySet<string> => {
  const marks = new Set<string>();
  for (const { stem, entries, isTelling } of words) {
    if (!isTelling) continue;
    marks.add(stem);
    for (const entry of entries) marks.add(`<${entry}>`);
  }
  return marks;
};

const count = (phrases: readonly (readonly SaidWord[])[]): Counts => {
  const of = new Map<string, number>();
  let total = 0;
  for (const mark of phrases.flatMap((words) => [...marksOf(words)])) {
    of.set(mark, (of.get(mark) ?? 0) + 1);
    total += 1;
  }
  return { of, total };
};

export const countPhrases = (
  checks: readonly { readonly id: string; readonly phrases: readonly (readonly SaidWord[])[] }[],
): PhraseCounts => {
  const ofCheck = new Map(checks.map(({ id, phrases }) => [id, count(phrases)]));
  const of = new Map<string, number>();
  let total = 0;
  for (const own of ofCheck.values()) {
    for (const [mark, times] of own.of) of.set(mark, (of.get(mark) ?? 0) + times);
    total += own.total;
  }
  return { all: { of, total }, ofCheck };
};

const countOnce = onceOf(count);

/**
 * @param own what else is known to be said of the check: its answers' labels
 * @returns above 0: they speak of it; below: rather of something else; null where there is nothing to judge by
 */
export const speaksOf = (
  { all, ofCheck }: PhraseCounts,
  check: string,
  own: readonly (readonly SaidWord[])[],
  words: readonly SaidWord[],
): number | null => {
  const phrased = ofCheck.get(check);
  const marks = marksOf(words);
  if (phrased === undefined || marks.size === 0) return null;
  const labelled = countOnce(own);
  const total = phrased.total + labelled.total;
  let sum = 0;
  for (const mark of marks) {
    const everywhere = ((all.of.get(mark) ?? 0) + UNSEEN) / (all.total + UNSEEN * all.of.size);
    const here = (phrased.of.get(mark) ?? 0) + (labelled.of.get(mark) ?? 0);
    sum += Math.max(LEAST, Math.log((here + SPREAD * everywhere) / (total + SPREAD) / everywhere));
  }
  return sum / Math.sqrt(marks.size);
};
