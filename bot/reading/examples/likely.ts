/** Which answers the clauses of a text are likely to tell, judged by what thousands of members' clauses told. */
import type { Clauses } from '../words/sentences.js';
import { clausesOf, type Clause } from './clauses.js';
import { markClause } from './marks.js';
import { STEP, type Weights } from './weights.js';

export interface Likely {
  /** 0 to 1. */
  readonly probability: number;
  /** The clauses that tell it. */
  readonly clauses: readonly Clause[];
}

/** Of a long text the rest is left to the sayings. */
const MOST_CLAUSES = 40;
/** What is less likely is not kept. */
const LEAST = 0.001;
/** An answer so far below the likeliest adds nothing to the sum of all. */
const FAINT = 12;

interface Summed {
  readonly clauses: readonly Clause[];
  /** The numbers of its marks, each once. */
  readonly marks: readonly number[];
  /** Answer → how much its marks speak for it, in steps. */
  readonly sums: Int32Array;
}

const add = (sums: Int32Array, { starts, of, steps }: Weights, mark: number, sign: 1 | -1): void => {
  const end = starts[mark + 1] ?? 0;
  for (let k = starts[mark] ?? 0; k < end; k++) {
    const answer = of[k] as number;
    sums[answer] = (sums[answer] as number) + sign * (steps[k] as number);
  }
};

const summed = (weights: Weights, clause: Clause): Summed => {
  const numbers = new Set<number>();
  markClause(clause, (name) => {
    const number = weights.marks.get(name);
    if (number !== undefined) numbers.add(number);
  });
  const sums = new Int32Array(weights.answers.length);
  for (const mark of numbers) add(sums, weights, mark, 1);
  return { clauses: [clause], marks: [...numbers], sums };
};

/** Both together, with their marks each once. */
const joined = (weights: Weights, own: Summed, other: Summed): Summed => {
  const sums = own.sums.slice();
  for (let a = 0; a < sums.length; a++) sums[a] = (sums[a] as number) + (other.sums[a] as number);
  const known = new Set(own.marks);
  for (const mark of other.marks)
    if (known.has(mark)) add(sums, weights, mark, -1);
    else known.add(mark);
  return { clauses: [...own.clauses, ...other.clauses], marks: [...known], sums };
};

/**
 * @param asked whether questions count too
 * @returns answer ("check.answer") → the run of clauses it is likeliest in; a multinomial logistic model, after its softmax
 */
export const likelyIn = (
  weights: Weights,
  sentences: readonly Clauses[],
  { asked = false } = {},
): ReadonlyMap<string, Likely> => {
  const { answers } = weights;
  const single = clausesOf(sentences)
    .slice(0, MOST_CLAUSES)
    .map((clause) => ({ number: clause.number, ...summed(weights, clause) }));
  const best = new Float64Array(answers.length);
  const where: (readonly Clause[])[] = [];
  const odds = new Float64Array(answers.length);
  const weigh = ({ clauses, marks, sums }: Summed): void => {
    if (!asked && clauses.every(({ sentence }) => sentence.asks)) return;
    const scale = STEP / Math.sqrt(marks.length + 1);
    let most = 0;
    for (let a = 0; a < sums.length; a++) if ((sums[a] as number) > most) most = sums[a] as number;
    let all = 0;
    for (let a = 0; a < sums.length; a++) {
      const below = (most - (sums[a] as number)) * scale;
      const odd = below > FAINT ? 0 : Math.exp(-below);
      odds[a] = odd;
      all += odd;
    }
    for (let a = 1; a < sums.length; a++) {
      const odd = odds[a] as number;
      if (odd < LEAST * all || odd <= (best[a] as number) * all) continue;
      best[a] = odd / all;
      where[a] = clauses;
    }
  };
  for (const [i, own] of single.entries()) {
    const [next, last] = [single[i + 1], single[i + 2]];
    weigh(own);
    if (next === undefined) break;
    const two = joined(weights, own, next);
    weigh(two);
    if (last?.number === own.number) weigh(joined(weights, two, last));
  }
  const likely = new Map<string, Likely>();
  for (const [a, answer] of answers.entries()) {
    const own = where[a];
    if (own !== undefined) likely.set(answer, { probability: best[a] as number, clauses: own });
  }
  return likely;
};
