/** Which answers the clauses of a text are likely to tell, judged by what thousands of members' clauses told. */
import { keyOf } from '../reading.js';
import type { Clauses } from '../words/sentences.js';
import { clausesOf, type Clause } from './clauses.js';
import { makeMarker } from './marks.js';
import { makeNet, type NetParts, type Pool } from './net.js';
import { NO_MARK, numberMarks } from './number-marks.js';
import { LEANING, STEP, type Weights } from './weights.js';

/** An answer that a text is likely to tell. */
export interface Likely {
  readonly check: string;
  readonly answer: string;
  /** 0 to 1, in the run of clauses in which it is likeliest, less what a rival answer of its check takes. */
  readonly probability: number;
  readonly clauses: readonly Clause[];
}

/** How likely a text tells each answer. */
export interface Weighed {
  /** Of an answer ("check.answer"): 0 where it is less than LEAST, or no example tells it. */
  readonly probabilityOf: (answer: string) => number;
  /** Of each check (or, where it holds several, check and answer) its likeliest answer, where that is as likely as this. */
  readonly likeliest: (least: number) => readonly Likely[];
  /** How many the text has, MOST_CLAUSES at most. */
  readonly clauseCount: number;
}

export type WeighClauses = (sentences: Iterable<Clauses>) => Weighed;

/** Of a long text the rest is left to the sayings. */
export const MOST_CLAUSES = 40;
/** What is less likely is not kept. */
const LEAST = 0.001;
/** An answer that the marks speak less for is less likely than that. */
const FAINT = Math.log(LEAST) - LEANING;
/** Where the net is asked too: an answer that the marks speak less for is left. */
export const WORTH_ASKING = 5;
/** How much of its likeliness another answer takes from the likeliest of a check: a text that tells both tells of two evenings. */
const RIVALRY = 0.5;

interface Answer {
  readonly check: string;
  readonly answer: string;
  /** What only one of can be told: the check, or the answer itself. */
  readonly key: string;
}

const answerOf = (name: string): Answer => {
  const dot = name.indexOf('.');
  const [check, answer] = [name.slice(0, dot), name.slice(dot + 1)];
  return { check, answer, key: keyOf(check, answer) };
};

/** Answer → how likely it is where it is likeliest, and from which clause to before which that is. */
const blankFound = (size: number) => ({
  best: new Float64Array(size),
  whereFrom: new Int32Array(size),
  whereTo: new Int32Array(size),
});

/**
 * Of each check a multinomial logistic model over the marks of a run of clauses: which of its answers they tell, or nothing of it. What
 * they tell of one check takes nothing from another. With a net, both are asked and the mean of what they say holds.
 */
export const makeWeighing = (weights: Weights, parts: NetParts | null = null): WeighClauses => {
  const { answers, starts, of, steps } = weights;
  const named = answers.map(answerOf);
  const numberOf = new Map(answers.map((name, a) => [name, a]));
  const size = answers.length;
  const markClause = makeMarker(numberMarks(weights.marks));
  const net = parts === null ? null : makeNet(parts, answers);
  const soberly = net?.soberly ?? ((_: number, probability: number) => probability);
  const keys = [...new Set(named.map(({ key }) => key))];
  const numberOfKey = new Map(keys.map((key, i) => [key, i]));
  /** Answer → the number of what only one of can be told. */
  const groups = Int32Array.from(named, ({ key }) => numberOfKey.get(key) ?? 0);

  // Room to work in, used again for each text.
  /** Of each clause, how much its marks speak for each answer, in steps; then the same of some together. */
  const sums = new Int32Array((MOST_CLAUSES + 1) * size);
  const together = MOST_CLAUSES * size;
  /** Mark → the last round that had it. */
  const met = new Int32Array(weights.marks.length);
  let round = 0;
  const odds = new Float64Array(size);
  const worth = new Int32Array(size);
  /** Of a group, its answers' odds together; 0 between runs. */
  const all = new Float64Array(keys.length);

  let found = blankFound(size);

  const nextRound = (): void => {
    if (round === 2 ** 31 - 1) {
      met.fill(0);
      round = 0;
    }
    round += 1;
  };
  /** Whether the round has not met it before. */
  const meets = (mark: number): boolean => {
    if (met[mark] === round) return false;
    met[mark] = round;
    return true;
  };
  const add = (at: number, mark: number, sign: 1 | -1): void => {
    for (let k = starts[mark] as number, end = starts[mark + 1] as number; k < end; k++) {
      const answer = at + (of[k] as number);
      sums[answer] = (sums[answer] as number) + sign * (steps[k] as number);
    }
  };
  /** Sums up clause i; gives its marks, each once. */
  const sumUp = (clause: Clause, i: number): readonly number[] => {
    const marks: number[] = [];
    nextRound();
    sums.fill(0, i * size, (i + 1) * size);
    markClause(clause, (mark) => {
      if (mark === NO_MARK || !meets(mark)) return;
      marks.push(mark);
      add(i * size, mark, 1);
    });
    return marks;
  };
  /** Adds clause i to those together, a mark that they have only once; gives how many it has that they had not. */
  const join = (i: number, marks: readonly number[]): number => {
    for (let a = 0, k = i * size; a < size; a++, k++)
      sums[together + a] = (sums[together + a] as number) + (sums[k] as number);
    let added = 0;
    for (const mark of marks)
      if (meets(mark)) added += 1;
      else add(together, mark, -1);
    return added;
  };

  /**
   * @param at where the sums of clauses `from` to before `to` begin
   * @param pool what the net makes of them
   */
  const weigh = (at: number, marks: number, from: number, to: number, pool: Pool | null): void => {
    const { best, whereFrom, whereTo } = found;
    const scale = STEP / Math.sqrt(marks + 1);
    const speaks = pool === null ? null : (net?.weigher(pool) ?? null);
    const faint = (speaks === null ? FAINT : WORTH_ASKING) / scale;
    let count = 0;
    for (let a = 0; a < size; a++) {
      const sum = sums[at + a] as number;
      if (sum < faint) continue;
      const group = groups[a] as number;
      const heard = speaks?.(a) ?? NaN;
      const odd = Math.exp((Number.isNaN(heard) ? sum * scale : (sum * scale + heard) / 2) + LEANING);
      odds[a] = odd;
      all[group] = (all[group] as number) + odd;
      worth[count++] = a;
    }
    for (let i = 0; i < count; i++) {
      const a = worth[i] as number;
      const probability = (odds[a] as number) / (1 + (all[groups[a] as number] as number));
      if (probability < LEAST || probability <= (best[a] as number)) continue;
      best[a] = probability;
      whereFrom[a] = from;
      whereTo[a] = to;
    }
    for (let i = 0; i < count; i++) all[groups[worth[i] as number] as number] = 0;
  };

  const poolOf = (clause: Clause): Pool | null => net?.poolOf(clause) ?? null;
  const joinPools = (together: Pool | null, next: Pool | null): void => {
    if (together !== null && next !== null) net?.join(together, next);
  };
  const lengthOf = (marks: readonly (readonly number[])[], i: number): number => marks[i]?.length ?? 0;

  /** Each clause, it with the next, and three of one sentence; not what is asked throughout. */
  const weighAll = (clauses: readonly Clause[]): void => {
    const marks = clauses.map(sumUp);
    const pools = clauses.map(poolOf);
    for (const [i, { sentence, number }] of clauses.entries()) {
      let count = lengthOf(marks, i);
      let told = !sentence.asks;
      const pool = pools[i] ?? null;
      if (told) weigh(i * size, count, i, i + 1, pool);
      if (i + 1 === clauses.length) return;
      nextRound();
      for (const mark of marks[i] ?? []) meets(mark);
      sums.copyWithin(together, i * size, (i + 1) * size);
      const to = clauses[i + 2]?.number === number ? i + 3 : i + 2;
      for (let j = i + 1; j < to; j++) {
        count += join(j, marks[j] ?? []);
        // Its own is not asked for again.
        joinPools(pool, pools[j] ?? null);
        told ||= clauses[j]?.sentence.asks === false;
        if (told) weigh(together, count, i, j + 1, pool);
      }
    }
  };

  return (sentences) => {
    const clauses = clausesOf(sentences, MOST_CLAUSES);
    found = blankFound(size);
    weighAll(clauses);
    const { best, whereFrom, whereTo } = found;
    const likelyAt = (a: number, rival: number): Likely => {
      const { check, answer } = named[a] as Answer;
      return {
        check,
        answer,
        probability: soberly(a, (best[a] as number) * (1 - RIVALRY * rival)),
        clauses: clauses.slice(whereFrom[a], whereTo[a]),
      };
    };
    return {
      probabilityOf: (answer) => {
        const a = numberOf.get(answer) ?? -1;
        return soberly(a, best[a] ?? 0);
      },
      likeliest: (least) => {
        const first = new Int32Array(keys.length).fill(-1);
        const rivals = new Float64Array(keys.length);
        for (let a = 0; a < size; a++) {
          const own = best[a] as number;
          if (own === 0) continue;
          const group = groups[a] as number;
          const before = first[group] as number;
          const most = best[before] ?? 0;
          if (own > most) first[group] = a;
          rivals[group] = Math.max(rivals[group] as number, Math.min(own, most));
        }
        return [...first.entries()]
          .filter(([, a]) => a >= 0)
          .map(([group, a]) => likelyAt(a, rivals[group] as number))
          .filter(({ probability }) => probability >= least);
      },
      clauseCount: clauses.length,
    };
  };
};
