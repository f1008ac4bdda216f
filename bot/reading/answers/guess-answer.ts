/**
 * Which answer a member's words are nearest to where they are not plainly one, and how likely that is meant: a linear model over a few
 * measures of nearness to each answer's phrases, then a logistic one over how near the nearest is. Both were fitted to the phrases of all
 * questions, each left out once (`scripts/reading/fit-answers.ts`). A guess is only ever asked back, never taken.
 */
import { GUESS_WEIGHTS } from './guess-weights.js';
import { likeliestAnswer, marksOf, type Phrased } from './likeliest-answer.js';
import { linear } from './linear.js';
import { onceOf } from '../../ground/once.js';
import type { SaidWord } from './said-words.js';

export interface Guess {
  readonly id: string;
  /** 0 to 1: that this answer is meant, and not another or none. */
  readonly probability: number;
}

/** The words, and what the weighing of them by itself made of them. */
export interface Heard {
  readonly answers: readonly Phrased[];
  readonly said: { readonly words: readonly SaidWord[] };
  readonly meant: { readonly id: string; readonly isSure: boolean } | null;
  /** How far they speak of what the question asks, above 0 or below; null: nothing to judge by. */
  readonly ratio: number | null;
}

/** Likelihoods further apart than this say no more. */
const MOST_APART = 6;
const MOST_RATIO = 5;

type Marks = ReadonlyMap<string, number>;

/** Pairs of words that follow each other. */
const pairsOf = (words: readonly SaidWord[]): Marks =>
  new Map(words.slice(1).map(({ stem }, at) => [`${words[at]?.stem ?? ''} ${stem}`, 1]));

/** Runs of three letters: what a slip of the thumb leaves of a word. */
const lettersOf = (words: readonly SaidWord[]): Marks => {
  const runs = new Map<string, number>();
  for (const { word, isTelling } of words) {
    const padded = `^${word}$`;
    for (let at = 0; at + 3 <= padded.length; at++) runs.set(padded.slice(at, at + 3), isTelling ? 1 : 0.3);
  }
  return runs;
};

type KindOf = (words: readonly SaidWord[]) => Marks;

const KINDS: readonly KindOf[] = [marksOf, pairsOf, lettersOf];

/** The marks of one kind in all phrases of a question's answers, which are numbered through. */
interface Marked {
  /** Mark → the phrases that hold it, and its weight in each. */
  readonly holders: ReadonlyMap<string, { readonly phrases: number[]; readonly weights: number[] }>;
  /** How much a mark tells: the more, the fewer answers have it. */
  readonly rarity: (mark: string) => number;
  /** Of each phrase the sum of its marks' squares, each by its rarity. */
  readonly squares: readonly number[];
  /** Of each answer the number of its first phrase, and last of all the number of phrases. */
  readonly from: readonly number[];
}

const markedBy =
  (kindOf: KindOf) =>
  (answers: readonly Phrased[]): Marked => {
    const marks = answers.map(({ parts }) => parts.map(({ words }) => kindOf(words)));
    const times = new Map<string, number>();
    for (const own of marks)
      for (const mark of new Set(own.flatMap((part) => [...part.keys()]))) times.set(mark, (times.get(mark) ?? 0) + 1);
    const rarityOf = (answersWithIt: number): number => Math.log(1 + answers.length / answersWithIt);
    const rarities = new Map([...times].map(([mark, own]) => [mark, rarityOf(own)]));
    const ofNone = rarityOf(1);
    const rarity = (mark: string): number => rarities.get(mark) ?? ofNone;
    const holders = new Map<string, { readonly phrases: number[]; readonly weights: number[] }>();
    const squares = marks.flat().map((part, phrase) => {
      let sum = 0;
      for (const [mark, weight] of part) {
        sum += (weight * rarity(mark)) ** 2;
        const own = holders.get(mark) ?? { phrases: [], weights: [] };
        holders.set(mark, own);
        own.phrases.push(phrase);
        own.weights.push(weight);
      }
      return sum;
    });
    const from = [0];
    for (const own of marks) from.push((from.at(-1) ?? 0) + own.length);
    return { holders, rarity, squares, from };
  };

const MARKED = KINDS.map((kindOf) => ({ kindOf, markedIn: onceOf(markedBy(kindOf)) }));

const NO_PHRASES = { phrases: [], weights: [] };

/** The cosines between the words and each phrase, each mark weighed by its rarity among the answers. */
const cosines = (said: Marks, { holders, rarity, squares }: Marked): readonly number[] => {
  const both = new Array<number>(squares.length).fill(0);
  let ofSaid = 0;
  for (const [mark, weight] of said) {
    const rare = rarity(mark);
    const own = weight * rare;
    ofSaid += own * own;
    const { phrases, weights } = holders.get(mark) ?? NO_PHRASES;
    for (let i = 0; i < phrases.length; i++) {
      const phrase = phrases[i] ?? 0;
      both[phrase] = (both[phrase] ?? 0) + own * (weights[i] ?? 0) * rare;
    }
  }
  return both.map((sum, phrase) => (sum === 0 ? 0 : sum / Math.sqrt(ofSaid * (squares[phrase] ?? 0))));
};

/** How near the words are to each answer by one kind of mark: to the nearest of its phrases, and a little to the rest. */
const nearnessBy = (
  answers: readonly Phrased[],
  words: readonly SaidWord[],
  { kindOf, markedIn }: (typeof MARKED)[number],
): readonly number[] => {
  const marked = markedIn(answers);
  const all = cosines(kindOf(words), marked);
  return answers.map((_, at) => {
    const near = all.slice(marked.from[at], marked.from[at + 1]).sort((a, b) => b - a);
    const [first = 0, second = 0, third = 0] = near;
    return 0.7 * first + 0.1 * (first + second + third);
  });
};

/** Each value, and how far it is ahead of the best other. */
const withLead = (values: readonly number[]): readonly (readonly [number, number])[] =>
  values.map((own, at) => [own, own - Math.max(...values.filter((_, i) => i !== at), 0)]);

const isDenied = onceOf((words: readonly SaidWord[]): boolean =>
  words.some(
    ({ word }) => word === 'not' || word === 'no' || word === 'never' || word === 'nothing' || word === 'none',
  ),
);

const stemsIn = onceOf(
  (answers: readonly Phrased[]): ReadonlySet<string> =>
    new Set(answers.flatMap(({ parts }) => parts.flatMap((part) => part.words.map(({ stem }) => stem)))),
);

export interface Measured {
  /** Of each answer, in order. */
  readonly measures: readonly (readonly number[])[];
  /** Of the words, whichever answer they are: the share of them that some phrase knows, and how many carry something. */
  readonly known: number;
  readonly carrying: number;
}

export const measureAnswers = ({ answers, said: { words }, meant }: Heard): Measured => {
  const likeliest = likeliestAnswer(answers, words);
  const logs = likeliest?.logLikelihoods ?? answers.map(() => 0);
  const most = Math.max(...logs);
  const total = logs.reduce((sum, own) => sum + Math.exp(own - most), 0);
  const likelihoods = logs.map((own, at) => {
    const other = Math.max(...logs.filter((_, i) => i !== at));
    return [Math.exp(own - most) / total, Math.max(-MOST_APART, Math.min(MOST_APART, own - other))] as const;
  });
  const nearness = MARKED.map((kind) => withLead(nearnessBy(answers, words, kind)));
  const denied = isDenied(words);
  const measures = answers.map(({ id, parts }, at) => [
    ...(likelihoods[at] ?? [0, 0]),
    ...nearness.flatMap((own) => own[at] ?? [0, 0]),
    meant?.id === id && meant.isSure ? 1 : 0,
    meant?.id === id && !meant.isSure ? 1 : 0,
    parts.filter((part) => isDenied(part.words) === denied).length / Math.max(1, parts.length),
  ]);
  const all = stemsIn(answers);
  const carrying = words.filter(({ isTelling }) => isTelling);
  const known = carrying.filter(({ stem }) => all.has(stem)).length;
  return { measures, known: known / Math.max(1, carrying.length), carrying: carrying.length };
};

/** What tells whether the nearest answer is meant. */
export const measureNearest = (
  { measures, known, carrying }: Measured,
  scores: readonly number[],
  { meant, ratio }: Pick<Heard, 'meant' | 'ratio'>,
): { readonly best: number; readonly values: readonly number[] } => {
  const most = Math.max(...scores);
  const best = scores.indexOf(most);
  const shares = scores.map((score) => Math.exp(score - most));
  const total = shares.reduce((sum, share) => sum + share, 0);
  const [, second = 0] = [...shares].sort((a, b) => b - a);
  const own = measures[best] ?? [];
  return {
    best,
    values: [
      1 / total,
      (1 - second) / total,
      own[2] ?? 0,
      own[4] ?? 0,
      own[6] ?? 0,
      known,
      Math.log(1 + carrying),
      own[8] ?? 0,
      own[9] ?? 0,
      meant === null ? 1 : 0,
      Math.log(scores.length),
      Math.max(-MOST_RATIO, Math.min(MOST_RATIO, ratio ?? 0)),
    ],
  };
};

/** @returns null where there is nothing to choose from */
export const guessAnswer = (heard: Heard): Guess | null => {
  const { answers } = heard;
  if (answers.length < 2) return null;
  const measured = measureAnswers(heard);
  const scores = measured.measures.map((own) => linear(GUESS_WEIGHTS.which, own));
  const { best, values } = measureNearest(measured, scores, heard);
  const id = answers[best]?.id;
  if (id === undefined) return null;
  return { id, probability: 1 / (1 + Math.exp(-linear(GUESS_WEIGHTS.whether, values))) };
};
