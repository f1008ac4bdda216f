/** A small net that reads what a run of clauses tells from their words in order: what it knows of a word it knows of its likes. */
import { createKept } from '../../ground/kept.js';
import type { Clause } from './clauses.js';

/**
 * A word's vector stands for what it means. `filters` patterns are looked for at each word with the one before and the one after, and the
 * most that any place has of each pattern, with the vectors' sum, speak for each answer.
 */
export interface NetParts {
  /** "check.answer" */
  readonly answers: readonly string[];
  readonly words: readonly string[];
  /** Numbers in a vector. */
  readonly size: number;
  readonly filters: number;
  /** Word → `size` numbers, in steps of its own. */
  readonly vectors: Int8Array;
  readonly vectorSteps: Float32Array;
  /** Filter → `size` numbers each for the word before, the word and the word after; then where it starts from. */
  readonly taps: Float32Array;
  readonly tapStarts: Float32Array;
  /** Answer → `filters` + `size` numbers; then where it starts from. */
  readonly speaks: Float32Array;
  readonly speakStarts: Float32Array;
  /** How often what seems so likely was told by people who were not learnt from: the log of the odds is `slope` times what it seems, and for each answer this more. */
  readonly slope: number;
  readonly leans: Float32Array;
}

/** What a clause, or some together, have of each pattern. */
export interface Pool {
  readonly most: Float32Array;
  /** Of their words' vectors. */
  readonly sum: Float32Array;
  /** Words that are known. */
  words: number;
}

export interface Net {
  readonly poolOf: (clause: Clause) => Pool;
  /** Adds a clause to those together. */
  readonly join: (together: Pool, clause: Pool) => void;
  /** What speaks for an answer in what is known of a run of clauses (one at a time is asked of), on the scale of the marks' sums; NaN: it does not know the answer. */
  readonly weigher: (run: Pool) => (answer: number) => number;
  /** How likely an answer is that seems so likely. */
  readonly soberly: (answer: number, probability: number) => number;
}

/** A word's vector, and what it adds to each pattern as the word before, itself and after, in steps of its own. */
interface OfWord {
  readonly vector: Float32Array;
  readonly before: Int16Array;
  readonly own: Int16Array;
  readonly after: Int16Array;
  readonly step: number;
}

/** Words whose part is kept, 1.5 kB each: to work one out takes as long as all else that is done with it in a long text. */
const KEPT = 1000;
const MOST_STEPS = 32767;
const DIGITS = /\d+/gu;
/** Of a longer clause the rest is not heard, nor was it when it was fitted. */
const MOST_WORDS = 40;
/** Stands for a question mark. */
const ASKED = '?';

/** @param a `b` begins at `at` and is as long as `a` */
const dot = (a: Float32Array, b: Float32Array, at: number): number => {
  let [one, two, three, four] = [0, 0, 0, 0];
  for (let i = 0, k = at; i < a.length; i += 4, k += 4) {
    one += (a[i] as number) * (b[k] as number);
    two += (a[i + 1] as number) * (b[k + 1] as number);
    three += (a[i + 2] as number) * (b[k + 2] as number);
    four += (a[i + 3] as number) * (b[k + 3] as number);
  }
  return one + two + (three + four);
};

/** @param answers those that are asked for, by number: what the marks' weights are fitted for */
export const makeNet = (parts: NetParts, answers: readonly string[]): Net => {
  const { size, filters, vectors, vectorSteps, taps, tapStarts, speaks, speakStarts, slope, leans } = parts;
  const numbers = new Map(parts.words.map((word, i) => [word, i]));
  const places = new Map(parts.answers.map((answer, i) => [answer, i]));
  const placeOf = Int32Array.from(answers, (answer) => places.get(answer) ?? -1);
  const kept = createKept<number, OfWord>(KEPT);
  const width = filters + size;

  /** Pattern by pattern, each for the word before, itself and after; used again for each word. */
  const adds = new Float32Array(3 * filters);
  const make = (number: number): OfWord => {
    const vectorStep = vectorSteps[number] ?? 0;
    const vector = new Float32Array(size);
    for (let i = 0; i < size; i++) vector[i] = (vectors[number * size + i] as number) * vectorStep;
    let most = 0;
    for (let i = 0; i < adds.length; i++) {
      const added = dot(vector, taps, i * size);
      adds[i] = added;
      most = Math.max(most, Math.abs(added));
    }
    const step = most / MOST_STEPS || 1;
    const inSteps = (tap: number): Int16Array => {
      const steps = new Int16Array(filters);
      for (let f = 0; f < filters; f++) steps[f] = Math.round((adds[3 * f + tap] as number) / step);
      return steps;
    };
    return { vector, before: inSteps(0), own: inSteps(1), after: inSteps(2), step };
  };
  /** null: not known. */
  const ofWord = (word: string): OfWord | null => {
    const number = numbers.get(word) ?? numbers.get(word.replace(DIGITS, '0'));
    return number === undefined ? null : kept(number, () => make(number));
  };
  const wordsOf = ({ sentence, from, to }: Clause): readonly (OfWord | null)[] => {
    const words: (OfWord | null)[] = [];
    for (let i = from; i < to && words.length < MOST_WORDS; i++) {
      const token = sentence.tokens[i];
      if (token?.kind === 'word') words.push(ofWord(token.known?.word ?? token.word));
    }
    if (sentence.asks) words.push(ofWord(ASKED));
    return words;
  };
  const nothing: OfWord = {
    vector: new Float32Array(size),
    before: new Int16Array(filters),
    own: new Int16Array(filters),
    after: new Int16Array(filters),
    step: 0,
  };
  /** Of the run in hand: the most of each pattern, then the vectors' sum. */
  const all = new Float32Array(width);
  const addTo = (sums: Float32Array, added: Float32Array): void => {
    for (let i = 0; i < sums.length; i++) sums[i] = (sums[i] as number) + (added[i] as number);
  };
  /** Looks for each pattern at one word. */
  const lookAt = (most: Float32Array, wordBefore: OfWord, word: OfWord, wordAfter: OfWord): void => {
    const { before, step: stepBefore } = wordBefore;
    const { own, step } = word;
    const { after, step: stepAfter } = wordAfter;
    for (let f = 0; f < filters; f++) {
      const has =
        (tapStarts[f] as number) +
        (before[f] as number) * stepBefore +
        (own[f] as number) * step +
        (after[f] as number) * stepAfter;
      if (has > (most[f] as number)) most[f] = has;
    }
  };
  const keepMost = (most: Float32Array, other: Float32Array): void => {
    for (let f = 0; f < filters; f++) if ((other[f] as number) > (most[f] as number)) most[f] = other[f] as number;
  };

  return {
    poolOf: (clause) => {
      const words = wordsOf(clause);
      const pool: Pool = { most: new Float32Array(filters), sum: new Float32Array(size), words: 0 };
      for (const [i, word] of words.entries()) {
        if (word === null) continue;
        lookAt(pool.most, words[i - 1] ?? nothing, word, words[i + 1] ?? nothing);
        addTo(pool.sum, word.vector);
        pool.words += 1;
      }
      return pool;
    },
    join: (together, { most, sum, words }) => {
      keepMost(together.most, most);
      addTo(together.sum, sum);
      together.words += words;
    },
    weigher: ({ most, sum, words }) => {
      const scale = 1 / Math.sqrt(words + 1);
      all.set(most);
      for (let i = 0; i < size; i++) all[filters + i] = (sum[i] as number) * scale;
      return (answer) => {
        const place = placeOf[answer] ?? -1;
        return place < 0 ? NaN : dot(all, speaks, place * width) + (speakStarts[place] as number);
      };
    },
    soberly: (answer, probability) => {
      const place = placeOf[answer] ?? -1;
      if (place < 0 || probability <= 0 || probability >= 1) return probability;
      return 1 / (1 + Math.exp(-slope * Math.log(probability / (1 - probability)) - (leans[place] as number)));
    },
  };
};
