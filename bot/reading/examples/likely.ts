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
const MOST_CLAUSES = 60;
/** What is less likely is not kept. */
const LEAST = 0.001;
/** An answer so far below the likeliest adds nothing to the sum of all. */
const FAINT = 12;

interface Summed {
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
  return { marks: [...numbers], sums };
};

/** Both clauses' marks, each once. */
const joined = (weights: Weights, own: Summed, other: Summed): Summed => {
  const sums = own.sums.slice();
  for (let a = 0; a < sums.length; a++) sums[a] = (sums[a] as number) + (other.sums[a] as number);
  const known = new Set(own.marks);
  for (const mark of other.marks)
    if (known.has(mark)) add(sums, weights, mark, -1);
    else known.add(mark);
  return { marks: [...known], sums };
};

/** @returns answer ("check.answer") → the run of clauses it is likeliest in; a multinomial logistic model, after its softmax */
export const likelyIn = (weights: Weights, sentences: readonly Clauses[]): ReadonlyMap<string, Likely> => {
  const { answers } = weights;
  const clauses = clausesOf(sentences).slice(0, MOST_CLAUSES);
  const single = clauses.map((clause) => summed(weights, clause));
  const best = new Map<string, Likely>();
  const odds = new Float64Array(answers.length);
  const weigh = (own: readonly Clause[], { marks, sums }: Summed): void => {
    if (own.every(({ sentence }) => sentence.asks)) return;
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
      if ((odds[a] as number) < LEAST) continue;
      const probability = (odds[a] as number) / all;
      const answer = answers[a] ?? '';
      if (probability >= LEAST && probability > (best.get(answer)?.probability ?? 0))
        best.set(answer, { probability, clauses: own });
    }
  };
  for (const [first, clause] of clauses.entries()) {
    const [own, next, third] = [single[first], clauses[first + 1], clauses[first + 2]];
    if (own === undefined) break;
    weigh([clause], own);
    const second = single[first + 1];
    const two = next === undefined || second === undefined ? null : joined(weights, own, second);
    if (next === undefined || two === null) continue;
    weigh([clause, next], two);
    const last = single[first + 2];
    if (third?.number === clause.number && last !== undefined) weigh([clause, next, third], joined(weights, two, last));
  }
  return best;
};
