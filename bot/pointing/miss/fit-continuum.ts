/** Fits the size of a mistake to what was seen, and weighs the mistake by its marginal likelihood (Laplace's approximation). */
import type { Sized } from './mistake-types.js';
import { inverted, times } from './small-matrix.js';

export interface ContinuumFit {
  /** Standardised parameters at the best point. */
  readonly parameters: readonly number[];
  /** Log marginal likelihood, relative to a prediction of no size that fits exactly. */
  readonly logEvidence: number;
  /** Covariance of the standardised parameters at the best point. */
  readonly covariance: readonly (readonly number[])[];
}

type Residuals = (parameters: readonly number[]) => readonly number[];

const STEP = 1e-4;
const TURNS = 30;
const ENOUGH_GAIN = 5e-3;
/** Keeps a parameter that nothing depends on from dividing by nought. */
const TINY = 1e-9;

const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);

interface Problem {
  readonly residuals: Residuals;
  /** 1 where the parameter is standard normal before anything is seen, 0 where any value is as likely. */
  readonly priorWeights: readonly (0 | 1)[];
}

/** Half the sum of squares with the prior's. */
const costOf = (r: readonly number[], p: readonly number[], priorWeights: readonly number[]): number =>
  (sumOfSquares(r) + p.reduce((sum, value, i) => sum + priorWeights[i]! * value * value, 0)) / 2;

interface Normal {
  /** JᵀJ. */
  readonly information: number[][];
  /** Jᵀr + p. */
  readonly gradient: number[];
  readonly cost: number;
}

const normalEquations = (
  { residuals, priorWeights }: Problem,
  p: readonly number[],
  r: readonly number[] = residuals(p),
): Normal => {
  const columns = p.map((_, i) => {
    const forward = residuals(p.map((value, j) => value + (i === j ? STEP : 0)));
    return r.map((value, k) => (forward[k]! - value) / STEP);
  });
  return {
    information: columns.map((a) => columns.map((b) => a.reduce((sum, value, k) => sum + value * b[k]!, 0))),
    gradient: columns.map((a, i) => a.reduce((sum, value, k) => sum + value * r[k]!, 0) + priorWeights[i]! * p[i]!),
    cost: costOf(r, p, priorWeights),
  };
};

/** With so much added to every diagonal element, and a share of itself. */
const loaded = (matrix: readonly (readonly number[])[], added: readonly number[], damping: number): number[][] =>
  matrix.map((row, i) => row.map((value, j) => (i === j ? (value + added[i]! + TINY) * (1 + damping) : value)));

const descend = (problem: Problem, start: readonly number[]): ContinuumFit => {
  let p = start;
  let here = normalEquations(problem, p);
  let damping = 1e-3;
  for (let turn = 0; turn < TURNS; turn++) {
    const { inverse } = inverted(loaded(here.information, problem.priorWeights, damping));
    const step = times(inverse, here.gradient);
    const next = p.map((value, i) => value - step[i]!);
    const r = problem.residuals(next);
    const gain = here.cost - costOf(r, next, problem.priorWeights);
    if (gain > 0) {
      p = next;
      here = normalEquations(problem, next, r);
      damping = Math.max(1e-9, damping / 10);
      if (gain < ENOUGH_GAIN) break;
    } else {
      damping *= 10;
      if (damping > 1e7 || Math.abs(gain) < ENOUGH_GAIN) break;
    }
  }
  // A flat parameter of which nothing is known weighs as much as a normal one; the added 1 keeps it at that.
  const { inverse, determinant } = inverted(
    loaded(
      here.information,
      p.map(() => 1),
      0,
    ),
  );
  return { parameters: p, covariance: inverse, logEvidence: -here.cost - 0.5 * Math.log(determinant) };
};

/** The best of several descents (K. Levenberg 1944, D. Marquardt 1963) from the most promising starts, since angles wrap and minima are several. */
export const fitContinuum = (sized: Sized, residuals: Residuals, descents = 3): ContinuumFit => {
  const problem: Problem = { residuals, priorWeights: sized.isFlat.map((isFlat) => (isFlat ? 0 : 1)) };
  return sized.seeds
    .map((start) => ({ start, cost: costOf(residuals(start), start, problem.priorWeights) }))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, descents)
    .map(({ start }) => descend(problem, start))
    .reduce((best, fit) => (fit.logEvidence > best.logEvidence ? fit : best));
};
