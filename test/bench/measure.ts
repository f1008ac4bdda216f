/** Times a piece of work many times over and keeps the percentiles. */
export interface BenchRow {
  readonly name: string;
  readonly unit: string;
  readonly median: number;
  readonly p99: number;
  /** The design's target for `p99` (or for the one figure there is); null where it set none. */
  readonly target: number | null;
  readonly met: boolean | null;
}

export const percentile = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(sorted.length * share) - 1))] ?? Number.NaN;

const meets = (value: number, target: number, better: 'less' | 'more'): boolean =>
  better === 'less' ? value <= target : value >= target;

/** One figure that is what it is (an error, a share, a size): median and 99th percentile are the same. */
export const single = (
  name: string,
  unit: string,
  value: number,
  target: number | null,
  better: 'less' | 'more' = 'less',
): BenchRow => ({
  name,
  unit,
  median: value,
  p99: value,
  target,
  met: target === null ? null : meets(value, target, better),
});

export const spread = (name: string, unit: string, values: readonly number[], target: number | null): BenchRow => {
  const sorted = [...values].sort((a, b) => a - b);
  const p99 = percentile(sorted, 0.99);
  return { name, unit, median: percentile(sorted, 0.5), p99, target, met: target === null ? null : p99 <= target };
};

let readMs = (): number => performance.now();

/** From now on counts the processor time of this process instead of elapsed time: comparable on a machine that others use too. */
export const countProcessorTime = (): void => {
  readMs = () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1000;
  };
};

export const nowMs = (): number => readMs();

/** Milliseconds each of `count` runs takes, after `warm` runs that are not counted. `work` gets the run's number. */
export const timed = async (
  count: number,
  work: (run: number) => unknown,
  warm = Math.ceil(count / 5),
): Promise<number[]> => {
  for (let run = 0; run < warm; run++) await work(run);
  const times: number[] = [];
  for (let run = 0; run < count; run++) {
    const began = readMs();
    await work(run);
    times.push(readMs() - began);
  }
  return times;
};
