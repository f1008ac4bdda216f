/** Whether what is alive after a full collection goes on growing, or has found its level. */
export interface HeapTrend {
  readonly samplesMb: readonly number[];
  /** Least-squares slope over the later half, in MB per 10,000 questions. */
  readonly slopeMbPer10k: number;
  /** Of the last quarter over the second quarter, in MB. */
  readonly growthMb: number;
  /** Every later sample above the one before, and much above: caches level off, a leak does not. */
  readonly isUnbounded: boolean;
}

const GROWTH_LIMIT_MB = 30;

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** @param samplesMb evenly spaced in questions; @param questionsBetween questions asked from one sample to the next */
export const heapTrend = (samplesMb: readonly number[], questionsBetween: number): HeapTrend => {
  const later = samplesMb.slice(Math.floor(samplesMb.length / 2));
  const middle = (later.length - 1) / 2;
  const average = mean(later);
  const slope =
    later.reduce((sum, value, i) => sum + (i - middle) * (value - average), 0) /
    later.reduce((sum, _, i) => sum + (i - middle) ** 2, 0);
  const quarter = Math.max(1, Math.floor(samplesMb.length / 4));
  const growthMb = mean(samplesMb.slice(-quarter)) - mean(samplesMb.slice(quarter, 2 * quarter));
  const rises = later.slice(1).filter((value, i) => value > (later[i] ?? 0)).length;
  return {
    samplesMb,
    slopeMbPer10k: (slope / questionsBetween) * 10_000,
    growthMb,
    isUnbounded: growthMb > GROWTH_LIMIT_MB && rises >= later.length - 2,
  };
};
