/**
 * Least expected minutes from a belief on, some checks ahead, over only the hypotheses and checks that still matter. All
 * beliefs here are unnormalised: values are minutes times the belief's sum, so that branches simply add up.
 */
import { repairPlan } from './repair-cost.js';

export interface OpenCheck {
  /** Its index in the situation. */
  readonly check: number;
  readonly minutes: number;
  readonly unsure: number;
  /** [answer][hypothesis], mistakes included. */
  readonly likelihood: readonly Float64Array[];
}

export interface Outlook {
  /** Over the hypotheses that matter, the unknowns last. */
  readonly belief: Float64Array;
  /** Infinity where a remedy may not be tried (again). */
  readonly tryMinutes: Float64Array;
  readonly handOnMinutes: number;
  readonly checks: readonly OpenCheck[];
}

const sumOf = (belief: Float64Array): number => {
  let sum = 0;
  for (let h = 0; h < belief.length; h++) sum += belief[h] ?? 0;
  return sum;
};

/** Nobody can do better than to try the right remedy at once, or hand on at once what has none. */
const knowingAll = (belief: Float64Array, tryMinutes: Float64Array, handOnMinutes: number): number => {
  const u = tryMinutes.length;
  let minutes = 0;
  for (let h = u; h < belief.length; h++) minutes += (belief[h] ?? 0) * handOnMinutes;
  for (let h = 0; h < u; h++) minutes += (belief[h] ?? 0) * Math.min(handOnMinutes, tryMinutes[h] ?? Infinity);
  return minutes;
};

/** What a helper loses on a trouble that no list holds when the link it lies in is not known, as a share of the whole. */
const SEARCH_SHARE = 0.2;

/** Minutes, weighted, when remedies alone follow: repair, and for what no list holds the search for its link. */
export const plannedMinutes = (belief: Float64Array, tryMinutes: Float64Array, handOnMinutes: number): number => {
  let unknown = 0;
  let most = 0;
  for (let h = tryMinutes.length; h < belief.length; h++) {
    const p = belief[h] ?? 0;
    unknown += p;
    if (p > most) most = p;
  }
  return (
    repairPlan(belief, tryMinutes, handOnMinutes).weightedMinutes + SEARCH_SHARE * handOnMinutes * (unknown - most)
  );
};

const NEVER = 1e-6;

/**
 * @param rest values what follows each answer, given the belief after it (not normalised)
 * @param ifUnsure value when the answer is "not sure"
 */
export const askValue = (
  belief: Float64Array,
  { minutes, unsure, likelihood }: Pick<OpenCheck, 'minutes' | 'unsure' | 'likelihood'>,
  ifUnsure: number,
  rest: (after: Float64Array) => number,
): number => {
  let known = 0;
  let total = 0;
  const after = new Float64Array(belief.length);
  for (const odds of likelihood) {
    let sum = 0;
    for (let h = 0; h < belief.length; h++) {
      const w = (belief[h] ?? 0) * (odds[h] ?? 0);
      after[h] = w;
      sum += w;
    }
    total += sum;
    if (sum > NEVER) known += rest(after);
  }
  return minutes * total + unsure * ifUnsure + (1 - unsure) * known;
};

export const tryValue = (
  outlook: Outlook,
  belief: Float64Array,
  fault: number,
  depth: number,
  breadth: number,
): number => {
  const after = Float64Array.from(belief);
  // Planning takes remedies as sure, as the article's repair cost does; were this one doubted and that one not, asking on
  // for ever would look cheaper than trying.
  after[fault] = 0;
  const tryMinutes = Float64Array.from(outlook.tryMinutes);
  const spent = (tryMinutes[fault] ?? Infinity) * sumOf(belief);
  tryMinutes[fault] = Infinity;
  return spent + leastValue({ ...outlook, tryMinutes }, after, depth, breadth);
};

/** Remedies in falling order of probability over cost; `count` of them at most. */
export const likeliestRemedies = (belief: Float64Array, tryMinutes: Float64Array, count: number): number[] => {
  const found: number[] = [];
  for (let f = 0; f < tryMinutes.length; f++) if ((belief[f] ?? 0) > 0 && tryMinutes[f] !== Infinity) found.push(f);
  const ratio = (f: number): number => (belief[f] ?? 0) / (tryMinutes[f] ?? Infinity);
  return found.sort((a, b) => ratio(b) - ratio(a) || a - b).slice(0, count);
};

/** The value of each check when remedies alone follow, cheapest first; those that cannot beat `limit` are left out. */
export const oneStepAsks = (
  { tryMinutes, handOnMinutes, checks }: Outlook,
  belief: Float64Array,
  repair: number,
  limit: number,
): { readonly check: OpenCheck; readonly value: number }[] => {
  const total = sumOf(belief);
  const least = knowingAll(belief, tryMinutes, handOnMinutes);
  const planned = (after: Float64Array): number => repairPlan(after, tryMinutes, handOnMinutes).weightedMinutes;
  const values: { check: OpenCheck; value: number }[] = [];
  for (const check of checks) {
    if (check.minutes * total + check.unsure * repair + (1 - check.unsure) * least >= limit) continue;
    values.push({ check, value: askValue(belief, check, repair, planned) });
  }
  return values.sort((a, b) => a.value - b.value || a.check.check - b.check.check);
};

/** From two steps ahead on, only the checks that look best at one are followed. */
const NARROWED = 24;

/** Least weighted minutes, looking `depth` checks ahead before falling back on remedies alone. */
export const leastValue = (outlook: Outlook, belief: Float64Array, depth: number, breadth: number): number => {
  const repair = plannedMinutes(belief, outlook.tryMinutes, outlook.handOnMinutes);
  if (depth <= 0) return repair;
  if (depth === 1) {
    const total = sumOf(belief);
    const least = knowingAll(belief, outlook.tryMinutes, outlook.handOnMinutes);
    let best = repair;
    const planned = (after: Float64Array): number => plannedMinutes(after, outlook.tryMinutes, outlook.handOnMinutes);
    for (const check of outlook.checks) {
      if (check.minutes * total + check.unsure * repair + (1 - check.unsure) * least >= best) continue;
      best = Math.min(best, askValue(belief, check, repair, planned));
    }
    return best;
  }
  let best = repair;
  const total = sumOf(belief);
  const least = knowingAll(belief, outlook.tryMinutes, outlook.handOnMinutes);
  const asks = oneStepAsks(outlook, belief, repair, Infinity);
  const checks = asks.slice(0, NARROWED).map(({ check }) => check);
  for (const { check } of asks.slice(0, breadth)) {
    if (check.minutes * total + (1 - check.unsure) * least + check.unsure * best >= best) continue;
    const rest: Outlook = { ...outlook, checks: checks.filter((other) => other !== check) };
    best = Math.min(
      best,
      askValue(belief, check, repair, (after) => leastValue(rest, Float64Array.from(after), depth - 1, breadth)),
    );
  }
  for (const fault of likeliestRemedies(belief, outlook.tryMinutes, Math.ceil(breadth / 2))) {
    best = Math.min(best, tryValue({ ...outlook, checks }, belief, fault, depth - 1, breadth));
  }
  return best;
};
