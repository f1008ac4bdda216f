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
  /** The faults by worth (`byWorth`) on today's belief; null: not worked out. */
  readonly visit: Int32Array | null;
}

const sumOf = (belief: Float64Array): number => {
  let sum = 0;
  for (let h = 0; h < belief.length; h++) sum += belief[h] as number;
  return sum;
};

/**
 * Weighted minutes under each hypothesis for one who knows it: nobody can do better than to try the right remedy at once, or
 * hand on at once what has none.
 */
const knowingIt = (belief: Float64Array, { tryMinutes, handOnMinutes }: Outlook): Float64Array => {
  const least = borrow(belief.length);
  const faults = tryMinutes.length;
  for (let h = 0; h < faults; h++) least[h] = (belief[h] as number) * Math.min(handOnMinutes, tryMinutes[h] as number);
  for (let h = faults; h < belief.length; h++) least[h] = (belief[h] as number) * handOnMinutes;
  return least;
};

// Arrays over the hypotheses, taken and given back as a search goes down and comes up again: it makes thousands a step.
const spare: Float64Array[] = [];
const borrow = (length: number): Float64Array => {
  const known = spare.pop();
  return known?.length === length ? known : new Float64Array(length);
};
const giveBack = (array: Float64Array): void => {
  spare.push(array);
};

/** What a helper loses on a trouble that no list holds when the link it lies in is not known, as a share of the whole. */
const SEARCH_SHARE = 0.2;

/** Minutes, weighted, when remedies alone follow: repair, and for what no list holds the search for its link. */
export const plannedMinutes = (
  belief: Float64Array,
  { tryMinutes, handOnMinutes, visit }: Pick<Outlook, 'tryMinutes' | 'handOnMinutes' | 'visit'>,
): number => {
  let unknown = 0;
  let most = 0;
  for (let h = tryMinutes.length; h < belief.length; h++) {
    const p = belief[h] as number;
    unknown += p;
    if (p > most) most = p;
  }
  return (
    repairPlan(belief, tryMinutes, handOnMinutes, visit).weightedMinutes +
    SEARCH_SHARE * handOnMinutes * (unknown - most)
  );
};

const NEVER = 1e-6;

/** Where a search stops short: at `atMost` minutes no more is wanted of a value. `least`: the belief times `knowingIt`. */
interface Bound {
  readonly atMost: number;
  readonly least: Float64Array;
}

type Asking = Pick<OpenCheck, 'minutes' | 'unsure' | 'likelihood'>;

/**
 * @param rest values what follows each answer, given the belief after it (not normalised; it may not be kept)
 * @param ifUnsure value when the answer is "not sure"
 */
export const askValue = (
  belief: Float64Array,
  { minutes, unsure, likelihood }: Asking,
  ifUnsure: number,
  rest: (after: Float64Array) => number,
): number => {
  const hypotheses = belief.length;
  const after = borrow(hypotheses);
  let known = 0;
  let total = 0;
  for (const odds of likelihood) {
    let sum = 0;
    for (let h = 0; h < hypotheses; h++) {
      const w = (belief[h] as number) * (odds[h] as number);
      after[h] = w;
      sum += w;
    }
    total += sum;
    if (sum > NEVER) known += rest(after);
  }
  giveBack(after);
  return minutes * total + unsure * ifUnsure + (1 - unsure) * known;
};

/** The same where it is below the bound; Infinity as soon as it cannot be. */
const askValueBelow = (
  { atMost, least }: Bound,
  belief: Float64Array,
  { minutes, unsure, likelihood }: Asking,
  ifUnsure: number,
  rest: (after: Float64Array) => number,
): number => {
  const hypotheses = belief.length;
  const followed: { readonly odds: Float64Array; readonly atLeast: number }[] = [];
  let total = 0;
  // What the answers not yet followed cost at least.
  let ahead = 0;
  for (const odds of likelihood) {
    let sum = 0;
    let atLeast = 0;
    for (let h = 0; h < hypotheses; h++) {
      const p = odds[h] as number;
      sum += (belief[h] as number) * p;
      atLeast += (least[h] as number) * p;
    }
    total += sum;
    if (sum <= NEVER) continue;
    followed.push({ odds, atLeast });
    ahead += atLeast;
  }
  const after = borrow(hypotheses);
  let known = 0;
  let isBelow = true;
  for (const { odds, atLeast } of followed) {
    isBelow = minutes * total + unsure * ifUnsure + (1 - unsure) * (known + ahead) < atMost;
    if (!isBelow) break;
    for (let h = 0; h < hypotheses; h++) after[h] = (belief[h] as number) * (odds[h] as number);
    ahead -= atLeast;
    known += rest(after);
  }
  giveBack(after);
  return isBelow ? minutes * total + unsure * ifUnsure + (1 - unsure) * known : Infinity;
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

/** The value of each check when remedies alone follow, cheapest first. */
export const oneStepAsks = (
  outlook: Outlook,
  belief: Float64Array,
  repair: number,
): { readonly check: OpenCheck; readonly value: number }[] => {
  const { tryMinutes, handOnMinutes, visit } = outlook;
  const planned = (after: Float64Array): number => repairPlan(after, tryMinutes, handOnMinutes, visit).weightedMinutes;
  return outlook.checks
    .map((check) => ({ check, value: askValue(belief, check, repair, planned) }))
    .sort((a, b) => a.value - b.value || a.check.check - b.check.check);
};

/** From two steps ahead on, only the checks that look best at one are followed. */
const NARROWED = 24;

/** Least weighted minutes, looking `depth` checks ahead before falling back on remedies alone. */
export const leastValue = (outlook: Outlook, belief: Float64Array, depth: number, breadth: number): number => {
  const repair = plannedMinutes(belief, outlook);
  if (depth <= 0) return repair;
  const least = knowingIt(belief, outlook);
  const value =
    depth === 1
      ? oneAhead(outlook, belief, repair, least)
      : further(outlook, belief, depth, breadth, { repair, least });
  giveBack(least);
  return value;
};

const oneAhead = (outlook: Outlook, belief: Float64Array, repair: number, least: Float64Array): number => {
  const total = sumOf(belief);
  const knowing = sumOf(least);
  const planned = (after: Float64Array): number => plannedMinutes(after, outlook);
  let best = repair;
  for (const check of outlook.checks) {
    if (check.minutes * total + check.unsure * repair + (1 - check.unsure) * knowing >= best) continue;
    best = Math.min(best, askValueBelow({ atMost: best, least }, belief, check, repair, planned));
  }
  return best;
};

const further = (
  outlook: Outlook,
  belief: Float64Array,
  depth: number,
  breadth: number,
  { repair, least }: { readonly repair: number; readonly least: Float64Array },
): number => {
  const total = sumOf(belief);
  const knowing = sumOf(least);
  const asks = oneStepAsks(outlook, belief, repair);
  const checks = asks.slice(0, NARROWED).map(({ check }) => check);
  let best = repair;
  for (const { check } of asks.slice(0, breadth)) {
    if (check.minutes * total + (1 - check.unsure) * knowing + check.unsure * best >= best) continue;
    const rest: Outlook = { ...outlook, checks: checks.filter((other) => other !== check) };
    const following = (after: Float64Array): number => leastValue(rest, after, depth - 1, breadth);
    best = Math.min(best, askValueBelow({ atMost: best, least }, belief, check, repair, following));
  }
  for (const fault of likeliestRemedies(belief, outlook.tryMinutes, Math.ceil(breadth / 2)))
    best = Math.min(best, tryValue({ ...outlook, checks }, belief, fault, depth - 1, breadth));
  return best;
};
