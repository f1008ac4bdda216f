/** A linear model of a few measures, each scaled first. */

/** Means and deviations of the measures, and their weights. */
export interface Linear {
  readonly mean: readonly number[];
  readonly deviation: readonly number[];
  readonly weights: readonly number[];
  readonly bias: number;
}

export const linear = ({ mean, deviation, weights, bias }: Linear, values: readonly number[]): number =>
  values.reduce((sum, value, i) => sum + ((value - (mean[i] ?? 0)) / (deviation[i] ?? 1)) * (weights[i] ?? 0), bias);
