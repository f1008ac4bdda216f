/**
 * Which answer a text is likeliest to mean, from the phrases that members put each answer in: naive Bayes over the words that occur in
 * the phrases (Manning, Raghavan and Schütze, Introduction to Information Retrieval, 2008, chapter 13). A second opinion beside the
 * weighing of words in `weigh-words.ts`: each is wrong about one time in five by itself, and they seldom err alike.
 */
import { onceOf } from '../../ground/once.js';
import type { SaidWord } from './said-words.js';

export interface Phrased {
  readonly id: string;
  /** The answer's label first, then the phrases. */
  readonly parts: readonly { readonly words: readonly SaidWord[] }[];
}

export interface Likeliest {
  readonly id: string;
  /** 0 to 1, among the answers. */
  readonly probability: number;
  /** Beside the answers, in their order: the logarithm of each one's likelihood, but for a common term. */
  readonly logLikelihoods: readonly number[];
  /** How many words of the text that carry something are known to the phrases. */
  readonly known: number;
}

/** Added to each count, so that a word nobody put an answer in does not rule it out. */
const SMOOTHING = 0.3;
/** Two phrases' worth: the label is what the member has just read. */
const LABEL_WEIGHT = 2;
/** "Not", "still", "no": little by themselves. */
const SMALL_WORD_WEIGHT = 0.3;

/** A word, or the entry of the vocabulary it belongs to, as counted: "dark" and "not dark" are two. */
export const marksOf = (words: readonly SaidWord[]): ReadonlyMap<string, number> => {
  const marks = new Map<string, number>();
  for (const { stem, entries, denied, isTelling } of words) {
    const sign = denied ? '!' : '';
    marks.set(`${sign}${stem}`, isTelling ? 1 : SMALL_WORD_WEIGHT);
    for (const entry of entries) marks.set(`${sign}<${entry}>`, 1);
  }
  return marks;
};

interface Counts {
  readonly of: Map<string, number>;
  total: number;
}

const countsOf = ({ parts }: Phrased): Counts => {
  const counts: Counts = { of: new Map(), total: 0 };
  for (const [at, { words }] of parts.entries())
    for (const [mark, weight] of marksOf(words)) {
      const added = weight * (at === 0 && weight === 1 ? LABEL_WEIGHT : 1);
      counts.of.set(mark, (counts.of.get(mark) ?? 0) + added);
      counts.total += added;
    }
  return counts;
};

interface Counted {
  readonly counted: readonly { readonly id: string; readonly counts: Counts }[];
  /** All marks of the answers. */
  readonly vocabulary: ReadonlySet<string>;
}

const countedOnce = onceOf((answers: readonly Phrased[]): Counted => {
  const counted = answers.map((answer) => ({ id: answer.id, counts: countsOf(answer) }));
  return { counted, vocabulary: new Set(counted.flatMap(({ counts }) => [...counts.of.keys()])) };
});

/** @returns null where none of the words occurs in any phrase */
export const likeliestAnswer = (answers: readonly Phrased[], words: readonly SaidWord[]): Likeliest | null => {
  const { counted, vocabulary } = countedOnce(answers);
  const marks = [...marksOf(words)].filter(([mark]) => vocabulary.has(mark));
  if (marks.length === 0) return null;
  const logLikelihoods = counted.map(({ counts }) =>
    marks.reduce(
      (sum, [mark, weight]) =>
        sum +
        weight * Math.log(((counts.of.get(mark) ?? 0) + SMOOTHING) / (counts.total + SMOOTHING * vocabulary.size)),
      0,
    ),
  );
  const most = Math.max(...logLikelihoods);
  const best = answers[logLikelihoods.indexOf(most)];
  if (best === undefined) return null;
  const sum = logLikelihoods.reduce((all, own) => all + Math.exp(own - most), 0);
  const known = marks.filter(([, weight]) => weight === 1).length;
  return { id: best.id, probability: 1 / sum, logLikelihoods, known };
};
