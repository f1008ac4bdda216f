/** Sums of weights kept as logarithms. */

/** log Σ exp x; −∞ for an empty sum. */
export const logSum = (logs: readonly number[]): number => {
  let top = -Infinity;
  for (const log of logs) top = Math.max(top, log);
  if (top === -Infinity) return top;
  let sum = 0;
  for (const log of logs) sum += Math.exp(log - top);
  return top + Math.log(sum);
};
