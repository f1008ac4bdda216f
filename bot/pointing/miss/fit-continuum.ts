/** Fits the size of a mistake to what was seen, and weighs the mistake by its marginal likelihood (Laplace's approximation). */
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

const sumOfSquares = (values: readonly number[]): number => values.reduce((sum, value) => sum + value * value, 0);

/** Inverse and determinant of a symmetric 1×1 or 2×2 matrix. */
const inverted = (
  m: readonly (readonly number[])[],
): { readonly inverse: number[][]; readonly determinant: number } => {
  if (m.length === 1) return { inverse: [[1 / m[0]![0]!]], determinant: m[0]![0]! };
  const [[a, b], [, d]] = m as [[number, number], [number, number]];
  const determinant = a * d - b * b;
  return {
    inverse: [
      [d / determinant, -b / determinant],
      [-b / determinant, a / determinant],
    ],
    determinant,
  };
};

/** Half the sum of squares with the prior's, which is standard normal. */
const costOf = (r: readonly number[], p: readonly number[]): number => (sumOfSquares(r) + sumOfSquares(p)) / 2;

/** JᵀJ + I and Jᵀr + p. */
const normalEquations = (
  residuals: Residuals,
  p: readonly number[],
  r = residuals(p),
): { readonly matrix: number[][]; readonly gradient: number[]; readonly cost: number } => {
  const columns = p.map((_, i) => {
    const forward = residuals(p.map((value, j) => value + (i === j ? STEP : 0)));
    return r.map((value, k) => (forward[k]! - value) / STEP);
  });
  return {
    matrix: columns.map((a, i) =>
      columns.map((b, j) => a.reduce((sum, value, k) => sum + value * b[k]!, 0) + (i === j ? 1 : 0)),
    ),
    gradient: columns.map((a, i) => a.reduce((sum, value, k) => sum + value * r[k]!, 0) + p[i]!),
    cost: costOf(r, p),
  };
};

const descend = (residuals: Residuals, start: readonly number[]): ContinuumFit => {
  let p = start;
  let here = normalEquations(residuals, p);
  let damping = 1e-3;
  for (let turn = 0; turn < TURNS; turn++) {
    const damped = here.matrix.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) : value)));
    const { inverse } = inverted(damped);
    const next = p.map((value, i) => value - inverse[i]!.reduce((sum, entry, j) => sum + entry * here.gradient[j]!, 0));
    const r = residuals(next);
    const gain = here.cost - costOf(r, next);
    if (gain > 0) {
      p = next;
      here = normalEquations(residuals, next, r);
      damping = Math.max(1e-9, damping / 10);
      if (gain < 1e-9) break;
    } else {
      damping *= 10;
      if (damping > 1e9) break;
    }
  }
  const { inverse, determinant } = inverted(here.matrix);
  return { parameters: p, covariance: inverse, logEvidence: -here.cost - 0.5 * Math.log(determinant) };
};

/** The best of several descents (K. Levenberg 1944, D. Marquardt 1963), since angles wrap and minima are several. */
export const fitContinuum = (dimensions: 1 | 2, residuals: Residuals): ContinuumFit => {
  const seeds = [-2.5, -1.2, 0, 1.2, 2.5];
  const starts = dimensions === 1 ? seeds.map((x) => [x]) : [[0, 0], ...seeds.flatMap((x) => seeds.map((y) => [x, y]))];
  // Descend only from the most promising starts.
  return starts
    .map((start) => ({ start, cost: sumOfSquares(residuals(start)) + sumOfSquares(start) }))
    .sort((a, b) => a.cost - b.cost)
    .slice(0, 4)
    .map(({ start }) => descend(residuals, start))
    .reduce((best, fit) => (fit.logEvidence > best.logEvidence ? fit : best));
};
