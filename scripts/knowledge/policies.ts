/** The policies that the simulation compares: the walk's own, a deep search for fewest steps, and a checklist in fixed order. */
import type { Choice } from '../../bot/triage/engine/choice.js';
import { chooseStep, type Foresight } from '../../bot/triage/engine/choose-step.js';
import {
  askValue,
  leastValue,
  likeliestRemedies,
  oneStepAsks,
  tryValue,
  type OpenCheck,
  type Outlook,
} from '../../bot/triage/engine/look-ahead.js';
import { byWorth } from '../../bot/triage/engine/repair-cost.js';
import type { Evidence } from '../../bot/triage/engine/evidence.js';
import type { Situation } from '../../bot/triage/engine/situation.js';
import type { Policy } from './evaluate-policy.js';

export const engine: Policy = (situation, evidence, belief) => chooseStep(situation, evidence, belief);

/** Three steps ahead over the best few at each; what lies beyond is valued by remedies alone. */
export const DEEP: Foresight = { depth: 3, breadth: 8 };
const HAND_ON_STEPS = 20;

/**
 * Looks for the fewest steps, and knows what the walk may not: that in these walks no answer is mistaken, nobody is unsure
 * and every cause is in the model.
 */
export const deepSearch: Policy = (situation, evidence): Choice => {
  const standing = situation.faults.flatMap((_, f) => {
    const weight = evidence.tried.has(f)
      ? 0
      : evidence.observations.reduce(
          (product, { check, answer }) => product * (situation.checks[check]?.odds[answer]?.[f] ?? 0),
          situation.priors[f] ?? 0,
        );
    return weight > 0 ? [{ f, weight }] : [];
  });
  const total = standing.reduce((sum, { weight }) => sum + weight, 0);
  const asked = new Set(evidence.observations.map(({ check }) => check));
  const belief = Float64Array.from([...standing.map(({ weight }) => weight / total), 0]);
  const checks = situation.checks.flatMap(({ odds }, check): OpenCheck[] => {
    const likelihood = odds.map((row) => Float64Array.from([...standing.map(({ f }) => row[f] ?? 0), 0]));
    const tells = !asked.has(check) && likelihood.every((row) => row.some((p, h) => h < standing.length && p < 1));
    return tells ? [{ check, minutes: 1, unsure: 0, likelihood }] : [];
  });
  const tryMinutes = new Float64Array(standing.length).fill(1);
  const outlook: Outlook = {
    belief,
    checks,
    tryMinutes,
    handOnMinutes: HAND_ON_STEPS,
    visit: byWorth(belief, tryMinutes),
  };
  const { depth, breadth } = DEEP;
  const repair = leastValue(outlook, belief, 0, breadth);
  const choices: Choice[] = [
    ...likeliestRemedies(belief, outlook.tryMinutes, breadth).map((h): Choice => ({
      kind: 'try',
      fault: standing[h]?.f ?? 0,
      otherwise: false,
      minutes: tryValue(outlook, belief, h, depth - 1, breadth),
    })),
    ...oneStepAsks(outlook, belief, repair)
      .slice(0, breadth)
      .map(({ check }): Choice => {
        const rest: Outlook = { ...outlook, checks: checks.filter((other) => other !== check) };
        return {
          kind: 'ask',
          check: check.check,
          again: false,
          minutes: askValue(belief, check, repair, (after) => leastValue(rest, after, depth - 1, breadth)),
        };
      }),
  ];
  return choices.reduce((best, choice) => (choice.minutes < best.minutes - 1e-9 ? choice : best), {
    kind: 'handOn',
    minutes: HAND_ON_STEPS,
  });
};

/** An answer speaks for a fault that gives it at least this often, and against one that gives it less than this. */
const POINTS_AT = 0.25;
const RULES_OUT = 0.02;

const fits = (situation: Situation, evidence: Evidence, fault: number): boolean =>
  !evidence.tried.has(fault) &&
  evidence.observations.every(
    ({ check, answer }) => (situation.checks[check]?.odds[answer]?.[fault] ?? 0) >= RULES_OUT,
  );

/**
 * A good printed checklist: the checks in the order of the stages; when an answer is not good, the remedies it points at,
 * commonest first; what earlier answers have settled is skipped, and remedies they rule out are not tried.
 */
export const fixedOrder: Policy = (situation, evidence): Choice => {
  const standing = situation.faults.flatMap((_, f) => (fits(situation, evidence, f) ? [f] : []));
  const byPrior = [...standing].sort((a, b) => (situation.priors[b] ?? 0) - (situation.priors[a] ?? 0) || a - b);
  const bad = evidence.observations.filter(
    ({ check, answer }) => situation.checks[check]?.answers[answer] !== situation.checks[check]?.entry.good,
  );
  const pointed = byPrior.find((f) =>
    bad.some(
      ({ check, answer }) =>
        (situation.checks[check]?.odds[answer]?.[f] ?? 0) >= POINTS_AT &&
        // An overview points at half the model; a checklist goes by what names the fault.
        situation.faults[f]?.answers?.[situation.checks[check]?.entry.id ?? ''] !== undefined,
    ),
  );
  if (pointed !== undefined) return { kind: 'try', fault: pointed, otherwise: false, minutes: 0 };
  const asked = new Set(evidence.observations.map(({ check }) => check));
  const next = situation.checks
    .map((numbers, check) => ({ numbers, check }))
    .filter(
      ({ numbers, check }) =>
        !asked.has(check) &&
        standing.some((f) => (numbers.odds[numbers.answers.indexOf(numbers.entry.good)]?.[f] ?? 1) < 0.9),
    )
    .sort(
      (a, b) =>
        situation.stagePosition(a.numbers.entry.stage) - situation.stagePosition(b.numbers.entry.stage) ||
        a.check - b.check,
    )[0];
  if (next !== undefined) return { kind: 'ask', check: next.check, again: false, minutes: 0 };
  const left = byPrior[0] ?? situation.faults.findIndex((_, f) => !evidence.tried.has(f));
  return left < 0 ? { kind: 'handOn', minutes: 0 } : { kind: 'try', fault: left, otherwise: false, minutes: 0 };
};
