/**
 * Expected cost of repair: what it takes, in minutes on average, to try remedies one after another until one cures or a
 * person has to come (Heckerman, Breese and Rommelse, "Decision-theoretic troubleshooting", Communications of the ACM
 * 38(3), 1995, pp. 49–57: with one fault at work, trying in falling order of probability over cost is the cheapest order).
 */

export interface RepairPlan {
  /** Expected minutes times the sum of the probabilities given. */
  readonly weightedMinutes: number;
  /** The remedy tried first; null: handing on at once is cheaper than any. */
  readonly first: number | null;
}

// In the loops here and in look-ahead.ts every index is within its array: to ask for a missing number there doubles the time.

// Scratch space, used within one call; it grows with the model.
let order = new Int32Array(512);
let ratios = new Float64Array(512);

/** Makes room for so many faults. */
const makeRoom = (faults: number): void => {
  if (faults <= order.length) return;
  order = new Int32Array(faults);
  ratios = new Float64Array(faults);
};

/**
 * Puts the faults whose ratio of probability to cost is above the least into `order`, the best first and of equals the one
 * with the lower index; gives how many.
 */
const sortWorthTrying = (
  probabilities: Float64Array,
  tryMinutes: Float64Array,
  leastRatio: number,
  visit: Int32Array | null,
): number => {
  const [sorted, worths] = [order, ratios];
  const faults = tryMinutes.length;
  let count = 0;
  for (let i = 0; i < faults; i++) {
    const f = visit === null ? i : (visit[i] as number);
    const ratio = (probabilities[f] as number) / (tryMinutes[f] as number);
    if (ratio <= leastRatio) continue;
    let at = count++;
    while (at > 0) {
      const before = worths[at - 1] as number;
      if (before > ratio || (before === ratio && (sorted[at - 1] as number) < f)) break;
      worths[at] = before;
      sorted[at] = sorted[at - 1] as number;
      at--;
    }
    worths[at] = ratio;
    sorted[at] = f;
  }
  return count;
};

/** All faults, those with the highest ratio of probability to cost first. */
export const byWorth = (probabilities: Float64Array, tryMinutes: Float64Array): Int32Array => {
  makeRoom(tryMinutes.length);
  const count = sortWorthTrying(probabilities, tryMinutes, -1, null);
  return order.slice(0, count);
};

/**
 * @param probabilities of the faults, then of the unknowns; any positive sum
 * @param tryMinutes cost of each fault's remedy with its verification; Infinity where it may not be tried
 * @param handOnMinutes cost of handing on, at the start or after any number of remedies, wherever it is least in all
 * @param visit the faults as `byWorth` gives them for a belief like this one: nearly sorted is sorted sooner, to the same plan
 */
export const repairPlan = (
  probabilities: Float64Array,
  tryMinutes: Float64Array,
  handOnMinutes: number,
  visit: Int32Array | null = null,
): RepairPlan => {
  const faults = tryMinutes.length;
  makeRoom(faults);
  let left = 0;
  for (let h = faults; h < probabilities.length; h++) left += probabilities[h] as number;
  let untriable = left;
  for (let f = 0; f < faults; f++) {
    const p = probabilities[f] as number;
    left += p;
    if (tryMinutes[f] === Infinity) untriable += p;
  }
  // What would not pay even after all the others is left out before sorting.
  const count = sortWorthTrying(probabilities, tryMinutes, untriable / handOnMinutes, visit);
  // Where to stop and hand on: a remedy may pay only together with the one after it, so every stop is priced.
  let spent = 0;
  let least = left * handOnMinutes;
  let stop = 0;
  for (let i = 0; i < count; i++) {
    const f = order[i] as number;
    spent += left * (tryMinutes[f] as number);
    left = Math.max(0, left - (probabilities[f] as number));
    const minutes = spent + left * handOnMinutes;
    if (minutes < least) {
      least = minutes;
      stop = i + 1;
    }
  }
  return { weightedMinutes: least, first: stop === 0 ? null : (order[0] ?? null) };
};
