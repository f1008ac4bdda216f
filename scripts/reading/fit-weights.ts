/**
 * Fits weights to rows of marks: a multinomial logistic model, of all answers or of each check's alone, fitted by AdaGrad (Duchi, Hazan
 * and Singer 2011, Journal of Machine Learning Research 12), kept sparse and in whole steps.
 */
import { LEANING, MOST_STEPS, NOTHING, STEP, type Weights } from '../../bot/reading/examples/weights.js';

export interface Row {
  readonly marks: readonly string[];
  /** Empty: nothing. */
  readonly tells: readonly string[];
  readonly weight: number;
}

export interface FitHow {
  readonly rounds: number;
  readonly rate: number;
  readonly shrink: number;
  /** A mark met in fewer rows tells nothing. */
  readonly leastRows: number;
  /** What is fainter is left out. */
  readonly leastWeight: number;
}

export const FIRST_SQUARES = 1e-2;
/** Too small a push to be worth making. */
export const LEAST_PUSH = 1e-4;
export const SEED = 7;

export const randomFrom = (seed: number): (() => number) => {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
};

export const shuffle = (order: Int32Array, random: () => number): void => {
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [order[i], order[j]] = [order[j] ?? 0, order[i] ?? 0];
  }
};

export const sparse = (
  weights: Float32Array,
  answers: readonly string[],
  marks: ReadonlyMap<string, number>,
  leastWeight: number,
): Weights => {
  const starts = new Uint32Array(marks.size + 1);
  const [of, steps]: [number[], number[]] = [[], []];
  for (let mark = 0; mark < marks.size; mark++) {
    for (let a = 0; a < answers.length; a++) {
      const weight = weights[mark * answers.length + a] ?? 0;
      if (Math.abs(weight) < leastWeight) continue;
      of.push(a);
      steps.push(Math.max(-MOST_STEPS, Math.min(MOST_STEPS, Math.round(weight / STEP))));
    }
    starts[mark + 1] = of.length;
  }
  return { answers, marks: [...marks.keys()], starts, of: Uint16Array.from(of), steps: Int8Array.from(steps) };
};

/** Marks that are met often enough, each with its number. */
export const marksOf = (rows: readonly Pick<Row, 'marks'>[], leastRows: number): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const { marks } of rows) for (const mark of marks) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  const names = [...counts].filter(([, count]) => count >= leastRows).map(([mark]) => mark);
  return new Map(names.map((mark, i) => [mark, i]));
};

/** The same rows always give the same weights. */
export const fitWeights = (rows: readonly Row[], how: FitHow): Weights => {
  const { rounds, rate, shrink, leastRows } = how;
  const marks = marksOf(rows, leastRows);
  const answers = [NOTHING, ...new Set(rows.flatMap(({ tells }) => tells))].sort();
  const numbers = new Map(answers.map((answer, i) => [answer, i]));
  const single = rows.flatMap((row) => {
    const own = Int32Array.from(row.marks.flatMap((mark) => marks.get(mark) ?? []));
    const told = row.tells.length === 0 ? [NOTHING] : row.tells;
    return told.map((label) => ({ own, answer: numbers.get(label) ?? 0, weight: row.weight / told.length }));
  });
  const size = answers.length;
  const weights = new Float32Array(marks.size * size);
  const squares = new Float32Array(marks.size * size).fill(FIRST_SQUARES);
  const odds = new Float64Array(size);
  const order = Int32Array.from(single, (_, i) => i);
  const random = randomFrom(SEED);
  for (let round = 0; round < rounds; round++) {
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
          const slope = push - shrink * (weights[k] as number);
          squares[k] = (squares[k] as number) + slope * slope;
          weights[k] = (weights[k] as number) + (rate / Math.sqrt(squares[k])) * slope;
        }
      }
    }
  }
  return sparse(weights, answers, marks, how.leastWeight);
};

export interface AloneRow extends Row {
  /** How far it tells that it tells nothing of other checks, 0 to 1. */
  readonly others: number;
}

/** Runs of answers that only one of can be told. */
const groupsOf = (
  answers: readonly string[],
  keyOf: (answer: string) => string,
): readonly (readonly [number, number])[] => {
  const starts = answers.flatMap((answer, a) => (a > 0 && keyOf(answers[a - 1] ?? '') === keyOf(answer) ? [] : [a]));
  return starts.map((from, g) => [from, starts[g + 1] ?? answers.length] as const);
};

interface Known {
  readonly own: Int32Array;
  readonly told: ReadonlySet<number>;
  readonly weight: number;
  readonly others: number;
}

/** In place of what a group's marks speak for each answer, how far that is to be pushed. */
const pushInto = (odds: Float64Array, [from, to]: readonly [number, number], scale: number, row: Known): void => {
  // What tells nothing of it has odds of 1.
  let [all, count] = [1, 0];
  for (let a = from; a < to; a++) {
    const odd = Math.exp((odds[a] as number) * scale + LEANING);
    odds[a] = odd;
    all += odd;
    if (row.told.has(a)) count += 1;
  }
  const weight = count === 0 ? row.weight * row.others : row.weight;
  for (let a = from; a < to; a++) {
    const off = (row.told.has(a) ? 1 / count : 0) - (odds[a] as number) / all;
    odds[a] = Math.abs(off) < LEAST_PUSH ? 0 : off * weight;
  }
};

/**
 * Each check alone: one piece tells of several, so that what speaks for one is not lost to another. Before any mark speaks, an answer is
 * LEANING from told. The same rows always give the same weights.
 * @param keyOf what only one answer of can be told
 */
export const fitAlone = (rows: readonly AloneRow[], how: FitHow, keyOf: (answer: string) => string): Weights => {
  const { rounds, rate, shrink, leastRows } = how;
  const marks = marksOf(rows, leastRows);
  const byKey = (answer: string): string => `${keyOf(answer)} ${answer}`;
  const answers = [...new Set(rows.flatMap(({ tells }) => tells))].sort((a, b) => (byKey(a) < byKey(b) ? -1 : 1));
  const numbers = new Map(answers.map((answer, i) => [answer, i]));
  const groups = groupsOf(answers, keyOf);
  const known = rows.map((row): Known => ({
    own: Int32Array.from(row.marks.flatMap((mark) => marks.get(mark) ?? [])),
    told: new Set(row.tells.map((answer) => numbers.get(answer) ?? -1)),
    weight: row.weight,
    others: row.others,
  }));
  const size = answers.length;
  const weights = new Float32Array(marks.size * size);
  const squares = new Float32Array(marks.size * size).fill(FIRST_SQUARES);
  const odds = new Float64Array(size);
  const order = Int32Array.from(known, (_, i) => i);
  const random = randomFrom(SEED);
  for (let round = 0; round < rounds; round++) {
    shuffle(order, random);
    for (const at of order) {
      const row = known[at];
      if (row === undefined) continue;
      const { own } = row;
      const scale = 1 / Math.sqrt(own.length + 1);
      odds.fill(0);
      for (const mark of own)
        for (let a = 0, k = mark * size; a < size; a++, k++) odds[a] = (odds[a] as number) + (weights[k] as number);
      for (const group of groups) pushInto(odds, group, scale, row);
      for (let a = 0; a < size; a++) {
        const push = odds[a] as number;
        if (push === 0) continue;
        for (const mark of own) {
          const k = mark * size + a;
          const slope = push * scale - shrink * (weights[k] as number);
          squares[k] = (squares[k] as number) + slope * slope;
          weights[k] = (weights[k] as number) + (rate / Math.sqrt(squares[k])) * slope;
        }
      }
    }
  }
  return sparse(weights, answers, marks, how.leastWeight);
};
