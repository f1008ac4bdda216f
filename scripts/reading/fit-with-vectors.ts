/**
 * Fits weights to rows of marks as fit-weights.ts does, and beside them a direction in the space of the net's word vectors for each answer, so
 * that a word which no row holds speaks as its likes do. Both are laid together: each word that has a vector becomes a mark with a weight of its
 * own, and whoever reads needs no vectors.
 */
import type { NetParts } from '../../bot/reading/examples/net.js';
import { NOTHING, type Weights } from '../../bot/reading/examples/weights.js';
import { FIRST_SQUARES, LEAST_PUSH, marksOf, randomFrom, SEED, shuffle, sparse, type FitHow } from './fit-weights.js';

export interface VectorRow {
  readonly marks: readonly string[];
  /** NOTHING where it tells none. */
  readonly tells: string;
  readonly weight: number;
  /** Whether its marks may be learnt; else it only says what they do not tell. */
  readonly isTaught: boolean;
}

export interface VectorsHow extends FitHow {
  /** How much a word's vector counts beside its own weight. */
  readonly share: number;
  /** A word that no row holds is kept where it speaks as much as this for some answer. */
  readonly leastUnmet: number;
}

/** Word → its vector, one long. */
export const vectorsOf = ({ words, size, vectors }: NetParts): ReadonlyMap<string, Float32Array> =>
  new Map(
    words.map((word, i) => {
      const own = Float32Array.from(vectors.subarray(i * size, (i + 1) * size));
      const length = Math.hypot(...own) || 1;
      return [word, own.map((value) => value / length)];
    }),
  );

/** A letter of another kind than a word's begins what is no word: pairs, runs, kinds. */
const IS_WORD = /^\p{L}+$/u;

interface Fitted {
  readonly weights: Float32Array;
  readonly directions: Float32Array;
}

interface Sample {
  readonly own: Int32Array;
  /** The sum of its words' vectors. */
  readonly sum: Float32Array;
  readonly answer: number;
  readonly weight: number;
  readonly scale: number;
}

const fitSamples = (samples: readonly Sample[], marks: number, size: number, how: VectorsHow, dims: number): Fitted => {
  const { rounds, rate, shrink, share } = how;
  const weights = new Float32Array(marks * size);
  const squares = new Float32Array(marks * size).fill(FIRST_SQUARES);
  const directions = new Float32Array(dims * size);
  const turns = new Float32Array(dims * size).fill(FIRST_SQUARES);
  const odds = new Float64Array(size);
  const order = Int32Array.from(samples, (_, i) => i);
  const random = randomFrom(SEED);
  const learn = (own: Float32Array, own2: Float32Array, k: number, push: number): void => {
    const slope = push - shrink * (own[k] as number);
    own2[k] = (own2[k] as number) + slope * slope;
    own[k] = (own[k] as number) + (rate / Math.sqrt(own2[k])) * slope;
  };
  const weigh = ({ own, sum, scale }: Sample): void => {
    odds.fill(0);
    for (const mark of own)
      for (let a = 0, k = mark * size; a < size; a++, k++) odds[a] = (odds[a] as number) + (weights[k] as number);
    for (let d = 0, k = 0; d < dims; d++) {
      const along = share * (sum[d] as number);
      for (let a = 0; a < size; a++, k++) odds[a] = (odds[a] as number) + along * (directions[k] as number);
    }
    const most = Math.max(...odds) * scale;
    let all = 0;
    for (let a = 0; a < size; a++) all += odds[a] = Math.exp((odds[a] as number) * scale - most);
    for (let a = 0; a < size; a++) odds[a] = (odds[a] as number) / all;
  };
  for (let round = 0; round < rounds; round++) {
    shuffle(order, random);
    for (const at of order) {
      const sample = samples[at] as Sample;
      weigh(sample);
      for (let a = 0; a < size; a++) {
        const off = (a === sample.answer ? 1 : 0) - (odds[a] as number);
        if (Math.abs(off) < LEAST_PUSH) continue;
        const push = off * sample.scale * sample.weight;
        for (const mark of sample.own) learn(weights, squares, mark * size + a, push);
        for (let d = 0; d < dims; d++) learn(directions, turns, d * size + a, push * share * (sample.sum[d] as number));
      }
    }
  }
  return { weights, directions };
};

/** The same rows always give the same weights. */
export const fitWithVectors = (
  rows: readonly VectorRow[],
  vectors: ReadonlyMap<string, Float32Array>,
  how: VectorsHow,
): Weights => {
  const dims = vectors.values().next().value?.length ?? 0;
  const met = marksOf(
    rows.filter(({ isTaught }) => isTaught),
    how.leastRows,
  );
  const isUnmet = (mark: string): boolean => !met.has(mark) && IS_WORD.test(mark) && vectors.has(mark);
  const answers = [...new Set([NOTHING, ...rows.map(({ tells }) => tells)])].sort();
  const samples = rows.map((row): Sample => {
    const own = Int32Array.from(row.marks.flatMap((mark) => met.get(mark) ?? []));
    const sum = new Float32Array(dims);
    for (const mark of row.marks) {
      const vector = IS_WORD.test(mark) ? vectors.get(mark) : undefined;
      if (vector !== undefined) for (let d = 0; d < dims; d++) sum[d] = (sum[d] as number) + (vector[d] as number);
    }
    const known = own.length + row.marks.filter(isUnmet).length;
    return { own, sum, answer: answers.indexOf(row.tells), weight: row.weight, scale: 1 / Math.sqrt(known + 1) };
  });
  const { weights, directions } = fitSamples(samples, met.size, answers.length, how, dims);
  const size = answers.length;
  const ofVector = (vector: Float32Array): readonly number[] =>
    answers.map((_, a) =>
      vector.reduce((sum, value, d) => sum + how.share * value * (directions[d * size + a] as number), 0),
    );
  const all = new Map(met);
  const laid = [...weights];
  for (const [word, vector] of vectors) {
    if (!IS_WORD.test(word)) continue;
    const speaks = ofVector(vector);
    const known = met.get(word);
    if (known !== undefined)
      for (const [a, own] of speaks.entries()) laid[known * size + a] = (laid[known * size + a] ?? 0) + own;
    else if (Math.max(...speaks.map(Math.abs)) >= how.leastUnmet) {
      all.set(word, all.size);
      laid.push(...speaks);
    }
  }
  return sparse(Float32Array.from(laid), answers, all, how.leastWeight);
};
