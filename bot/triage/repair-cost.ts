/**
 * Expected cost of repair: what it takes, in minutes on average, to try remedies one after another until one cures or a
 * person has to come (Heckerman, Breese and Rommelse, "Decision-theoretic troubleshooting", Communications of the ACM
 * 38(3), 1995, pp. 49–57: with one fault at work, trying in falling order of probability over cost is the cheapest order).
 */

export interface RepairPlan {
  readonly minutes: number;
  /** The remedy tried first; null: handing on at once is cheaper than any. */
  readonly first: number | null;
}

/** Below this a fault's remedy is left to the person who comes: it moves no decision and would only cost time to sort. */
const NEGLIGIBLE = 1e-4;

/**
 * @param probabilities of the faults, then of "unexplained"; must sum to `total`
 * @param tryMinutes cost of each fault's remedy with its verification
 * @param allowed 1 where the remedy may be tried
 * @param handOnMinutes cost of handing on; a remedy is worth trying while probability × handOnMinutes exceeds its cost
 */
export const repairPlan = (probabilities: Float64Array, tryMinutes: Float64Array, allowed: Uint8Array, handOnMinutes: number, total = 1): RepairPlan => {
  const faults = tryMinutes.length;
  const order: number[] = [];
  const ratio: number[] = [];
  for (let f = 0; f < faults; f++) {
    const p = probabilities[f] ?? 0;
    if (p <= NEGLIGIBLE * total || allowed[f] === 0) continue;
    const r = p / (tryMinutes[f] ?? 1);
    let at = order.length;
    while (at > 0 && (ratio[at - 1] ?? 0) < r) at--;
    order.splice(at, 0, f);
    ratio.splice(at, 0, r);
  }
  let left = total;
  let minutes = 0;
  for (let i = 0; i < order.length; i++) {
    // p/left × handOn ≤ cost: from here on handing on is cheaper.
    if ((ratio[i] ?? 0) * handOnMinutes <= left) {
      return { minutes: (minutes + left * handOnMinutes) / total, first: i === 0 ? null : order[0] ?? null };
    }
    const f = order[i] ?? 0;
    minutes += left * (tryMinutes[f] ?? 0);
    left -= probabilities[f] ?? 0;
  }
  return { minutes: (minutes + Math.max(0, left) * handOnMinutes) / total, first: order[0] ?? null };
};
