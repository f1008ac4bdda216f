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

// Scratch space, used within one call; it grows with the model.
let order = new Int32Array(512);
let ratios = new Float64Array(512);

/** Makes room for so many faults. */
const makeRoom = (faults: number): void => {
  if (faults <= order.length) return;
  order = new Int32Array(faults);
  ratios = new Float64Array(faults);
};

/** Puts the faults whose ratio of probability to cost is above the least into `order`, the best first; gives how many. */
const sortWorthTrying = (probabilities: Float64Array, tryMinutes: Float64Array, leastRatio: number): number => {
  let count = 0;
  for (let f = 0; f < tryMinutes.length; f++) {
    const ratio = (probabilities[f] ?? 0) / (tryMinutes[f] ?? Infinity);
    if (ratio <= leastRatio) continue;
    let at = count++;
    while (at > 0 && (ratios[at - 1] ?? 0) < ratio) {
      ratios[at] = ratios[at - 1] ?? 0;
      order[at] = order[at - 1] ?? 0;
      at--;
    }
    ratios[at] = ratio;
    order[at] = f;
  }
  return count;
};

/**
 * @param probabilities of the faults, then of the unknowns; any positive sum
 * @param tryMinutes cost of each fault's remedy with its verification; Infinity where it may not be tried
 * @param handOnMinutes cost of handing on, at the start or after any number of remedies, wherever it is least in all
 */
export const repairPlan = (
  probabilities: Float64Array,
  tryMinutes: Float64Array,
  handOnMinutes: number,
): RepairPlan => {
  const faults = tryMinutes.length;
  makeRoom(faults);
  let left = 0;
  for (let h = faults; h < probabilities.length; h++) left += probabilities[h] ?? 0;
  let untriable = left;
  for (let f = 0; f < faults; f++) {
    const p = probabilities[f] ?? 0;
    left += p;
    if (tryMinutes[f] === Infinity) untriable += p;
  }
  // What would not pay even after all the others is left out before sorting.
  const count = sortWorthTrying(probabilities, tryMinutes, untriable / handOnMinutes);
  // Where to stop and hand on: a remedy may pay only together with the one after it, so every stop is priced.
  let spent = 0;
  let least = left * handOnMinutes;
  let stop = 0;
  for (let i = 0; i < count; i++) {
    const f = order[i] ?? 0;
    spent += left * (tryMinutes[f] ?? 0);
    left = Math.max(0, left - (probabilities[f] ?? 0));
    const minutes = spent + left * handOnMinutes;
    if (minutes < least) {
      least = minutes;
      stop = i + 1;
    }
  }
  return { weightedMinutes: least, first: stop === 0 ? null : (order[0] ?? null) };
};
