/**
 * Picks the next step of a walk: the check or the remedy that leaves the least expected minutes until the mount works or a
 * person comes. One step ahead as in the cited article (see repair-cost.ts), then the best few are compared two steps ahead.
 */
import { applyAnswer, applyNoCure, normalise, type Belief, type Evidence, type Look } from './belief.js';
import { repairPlan } from './repair-cost.js';
import type { Situation } from './situation.js';

export type Choice =
  | { readonly kind: 'ask'; readonly check: number; readonly again: boolean; readonly minutes: number }
  | { readonly kind: 'try'; readonly fault: number; readonly minutes: number }
  | { readonly kind: 'handOn'; readonly minutes: number };

export interface Foresight {
  /** 1: repair cost right after the step. 2: one more check before that, for the best few. More for the reviewers' deep search. */
  readonly depth: number;
  /** How many checks, and how many remedies, are looked at beyond the first step. */
  readonly breadth: number;
}
export const USUAL_FORESIGHT: Foresight = { depth: 2, breadth: 5 };

/** A second look is thought of once an answer is this likely to be mistaken. */
const DOUBTFUL = 0.2;
/** A remedy that did not cure is tried again only if all else has become less likely. */
const RETRY_ABOVE = 0.5;
const TIE = 1e-9;

interface Open { readonly checks: readonly number[]; readonly allowed: Uint8Array }

const openFrom = (situation: Situation, evidence: Evidence, belief: Belief): Open => {
  const answered = new Set(evidence.observations.map(({ check }) => check));
  const allowed = new Uint8Array(situation.faults.length);
  for (let f = 0; f < allowed.length; f++) {
    const times = evidence.tried.get(f) ?? 0;
    allowed[f] = evidence.closed.has(f) || times > 1 || (times === 1 && (belief.probabilities[f] ?? 0) < RETRY_ABOVE) ? 0 : 1;
  }
  return { checks: situation.checks.flatMap((_, i) => (answered.has(i) || evidence.unsure.has(i) ? [] : [i])), allowed };
};

const without = (open: Open, check: number): Open => ({ ...open, checks: open.checks.filter((other) => other !== check) });
const withoutRemedy = (open: Open, fault: number): Open => {
  const allowed = Uint8Array.from(open.allowed);
  allowed[fault] = 0;
  return { ...open, allowed };
};

const planFor = (situation: Situation, belief: Float64Array, open: Open) =>
  repairPlan(belief, situation.tryMinutes, open.allowed, situation.handOnMinutes);

/** Expected minutes when a check is made next and `rest` values what follows. */
const askMinutes = (
  situation: Situation, belief: Float64Array, check: number, look: Look, ifUnsure: number, rest: (after: Float64Array) => number, earlier?: number,
): number => {
  const numbers = situation.checks[check];
  if (numbers === undefined) return Infinity;
  let known = 0;
  for (let answer = 0; answer < numbers.answers.length; answer++) {
    const after = Float64Array.from(belief);
    applyAnswer(after, situation, { check, answer, look }, earlier);
    const probability = normalise(after);
    if (probability > 1e-6) known += probability * rest(after);
  }
  return numbers.minutes + numbers.unsure * ifUnsure + (1 - numbers.unsure) * known;
};

/** Least expected minutes from a belief on, looking `depth` checks ahead before falling back on remedies alone. */
const leastMinutes = (situation: Situation, belief: Float64Array, open: Open, depth: number, breadth: number): number => {
  const repair = planFor(situation, belief, open).minutes;
  if (depth <= 0) return repair;
  const first = open.checks
    .map((check) => ({ check, minutes: askMinutes(situation, belief, check, 'look', repair, (after) => planFor(situation, after, open).minutes) }));
  let least = repair;
  if (depth === 1) {
    for (const { minutes } of first) least = Math.min(least, minutes);
    return least;
  }
  for (const { check } of first.sort((a, b) => a.minutes - b.minutes || a.check - b.check).slice(0, breadth)) {
    const rest = without(open, check);
    least = Math.min(least, askMinutes(situation, belief, check, 'look', repair, (after) => leastMinutes(situation, after, rest, depth - 1, breadth)));
  }
  for (const fault of likeliest(situation, belief, open, 2)) {
    least = Math.min(least, tryMinutes(situation, belief, open, fault, depth - 1, breadth));
  }
  return least;
};

const tryMinutes = (situation: Situation, belief: Float64Array, open: Open, fault: number, depth: number, breadth: number): number => {
  const after = Float64Array.from(belief);
  applyNoCure(after, fault);
  const noCure = normalise(after);
  return (situation.tryMinutes[fault] ?? Infinity) + noCure * leastMinutes(situation, after, withoutRemedy(open, fault), depth, breadth);
};

const likeliest = (situation: Situation, belief: Float64Array, open: Open, count: number): number[] =>
  situation.faults.map((_, f) => f).filter((f) => open.allowed[f] === 1)
    .map((f) => ({ f, ratio: (belief[f] ?? 0) / (situation.tryMinutes[f] ?? 1) }))
    .sort((a, b) => b.ratio - a.ratio || a.f - b.f).slice(0, count).map(({ f }) => f);

/**
 * Every step worth comparing, cheapest first; ties keep the order of the model's files. Safety checks not yet answered
 * come first whatever they are worth.
 */
export const rankSteps = (situation: Situation, evidence: Evidence, belief: Belief, { depth, breadth }: Foresight = USUAL_FORESIGHT): readonly Choice[] => {
  const open = openFrom(situation, evidence, belief);
  const p = belief.probabilities;
  const repair = planFor(situation, p, open).minutes;

  const choices: Choice[] = [{ kind: 'handOn', minutes: situation.handOnMinutes }];
  for (const fault of likeliest(situation, p, open, breadth)) {
    choices.push({ kind: 'try', fault, minutes: tryMinutes(situation, p, open, fault, depth - 1, breadth) });
  }
  const asks = open.checks
    .map((check) => ({ check, minutes: askMinutes(situation, p, check, 'look', repair, (after) => planFor(situation, after, open).minutes) }))
    .sort((a, b) => a.minutes - b.minutes || a.check - b.check);
  for (const [rank, { check, minutes }] of asks.entries()) {
    const deeper = depth > 1 && rank < breadth
      ? askMinutes(situation, p, check, 'look', leastMinutes(situation, p, without(open, check), depth - 1, breadth),
        (after) => leastMinutes(situation, after, without(open, check), depth - 1, breadth))
      : minutes;
    choices.push({ kind: 'ask', check, again: false, minutes: deeper });
  }
  for (const [i, observation] of evidence.observations.entries()) {
    const { check, answer } = observation;
    if ((belief.mistaken[i] ?? 0) < DOUBTFUL || evidence.observations.filter((o) => o.check === check).length > 1) continue;
    choices.push({
      kind: 'ask', check, again: true,
      minutes: askMinutes(situation, p, check, 'relook', repair, (after) => leastMinutes(situation, after, open, depth - 1, breadth), answer),
    });
  }
  const ranked = choices.map((choice, i) => ({ choice, i })).sort((a, b) =>
    (Math.abs(a.choice.minutes - b.choice.minutes) > TIE ? a.choice.minutes - b.choice.minutes : a.i - b.i)).map(({ choice }) => choice);
  const isSafety = (choice: Choice): boolean => choice.kind === 'ask' && !choice.again && situation.checks[choice.check]?.entry.safety === true;
  const safety = ranked.filter(isSafety).sort((a, b) => (a.kind === 'ask' && b.kind === 'ask' ? a.check - b.check : 0));
  return [...safety, ...ranked.filter((choice) => !isSafety(choice))];
};

/** The next step alone. */
export const chooseStep = (situation: Situation, evidence: Evidence, belief: Belief, foresight: Foresight = USUAL_FORESIGHT): Choice =>
  rankSteps(situation, evidence, belief, foresight)[0] ?? { kind: 'handOn', minutes: situation.handOnMinutes };
