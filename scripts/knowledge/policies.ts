/** The policies that the simulation compares: the walk's own, a deep search for fewest steps, and a checklist in fixed order. */
import { chooseStep, type Choice, type Foresight } from '../../bot/triage/choose-step.js';
import type { Evidence } from '../../bot/triage/belief.js';
import type { Situation } from '../../bot/triage/situation.js';
import type { Policy } from './evaluate-policy.js';

export const engine: Policy = (situation, evidence, belief) => chooseStep(situation, evidence, belief);

/** Three steps ahead over the best few at each; what lies beyond is valued by remedies alone. */
export const DEEP: Foresight = { depth: 3, breadth: 4 };
const HAND_ON_STEPS = 20;

const countingSteps = new WeakMap<Situation, Situation>();
/** The same situation where every question and every remedy costs one step. */
const inSteps = (situation: Situation): Situation => {
  const known = countingSteps.get(situation);
  if (known !== undefined) return known;
  const made: Situation = {
    ...situation, handOnMinutes: HAND_ON_STEPS, tryMinutes: situation.tryMinutes.map(() => 1),
    checks: situation.checks.map((check) => ({ ...check, minutes: 1 })),
  };
  countingSteps.set(situation, made);
  return made;
};

export const deepSearch: Policy = (situation, evidence, belief) => chooseStep(inSteps(situation), evidence, belief, DEEP);

/** An answer speaks for a fault that gives it at least this often, and against one that gives it less than this. */
const POINTS_AT = 0.25;
const RULES_OUT = 0.02;

const fits = (situation: Situation, evidence: Evidence, fault: number): boolean =>
  !evidence.tried.has(fault) && evidence.observations.every(({ check, answer }) => (situation.checks[check]?.odds[answer]?.[fault] ?? 0) >= RULES_OUT);

/**
 * A good printed checklist: the checks in the order of the stages; when an answer is not good, the remedies it points at,
 * commonest first; what earlier answers have settled is skipped, and remedies they rule out are not tried.
 */
export const fixedOrder: Policy = (situation, evidence): Choice => {
  const standing = situation.faults.flatMap((_, f) => (fits(situation, evidence, f) ? [f] : []));
  const byPrior = [...standing].sort((a, b) => (situation.priors[b] ?? 0) - (situation.priors[a] ?? 0) || a - b);
  const bad = evidence.observations.filter(({ check, answer }) => situation.checks[check]?.answers[answer] !== situation.checks[check]?.entry.good);
  const pointed = byPrior.find((f) => bad.some(({ check, answer }) => (situation.checks[check]?.odds[answer]?.[f] ?? 0) >= POINTS_AT
    // An overview points at half the model; a checklist goes by what names the fault.
    && situation.faults[f]?.answers?.[situation.checks[check]?.entry.id ?? ''] !== undefined));
  if (pointed !== undefined) return { kind: 'try', fault: pointed, minutes: 0 };
  const asked = new Set(evidence.observations.map(({ check }) => check));
  const next = situation.checks.map((numbers, check) => ({ numbers, check }))
    .filter(({ numbers, check }) => !asked.has(check) && standing.some((f) => (numbers.odds[numbers.answers.indexOf(numbers.entry.good)]?.[f] ?? 1) < 0.9))
    .sort((a, b) => situation.stagePosition(a.numbers.entry.stage) - situation.stagePosition(b.numbers.entry.stage) || a.check - b.check)[0];
  if (next !== undefined) return { kind: 'ask', check: next.check, again: false, minutes: 0 };
  const left = byPrior[0] ?? situation.faults.findIndex((_, f) => !evidence.tried.has(f));
  return left < 0 ? { kind: 'handOn', minutes: 0 } : { kind: 'try', fault: left, minutes: 0 };
};
