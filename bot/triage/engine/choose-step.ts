/**
 * Picks the next step of a walk: the check or the remedy that leaves the least expected minutes until the mount works or a
 * person comes. One step ahead as in the cited article (see repair-cost.ts), then the best few are compared two steps ahead.
 */
import { MISTAKE, secondLookLikelihood, type Belief, type Evidence } from './belief.js';
import {
  askValue,
  leastValue,
  likeliestRemedies,
  oneStepAsks,
  tryValue,
  type OpenCheck,
  type Outlook,
} from './look-ahead.js';
import { repairPlan } from './repair-cost.js';
import type { CheckNumbers, Situation } from './situation.js';

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
export const USUAL_FORESIGHT: Foresight = { depth: 2, breadth: 4 };

/** A second look is thought of once an answer is this likely to be mistaken. */
const DOUBTFUL = 0.2;
/** A remedy that did not cure is tried again only if all else has become less likely. */
const RETRY_ABOVE = 0.4;
const TIE = 1e-9;
/** Hypotheses below this are left out of the look ahead; they come back if later answers raise them. */
const FAINT = 3e-4;
/** A check that answers one way this surely tells nothing now. */
const FOREGONE = 0.999;

interface Focus extends Outlook {
  readonly hypotheses: readonly number[];
}

const likelihoodOver = (numbers: CheckNumbers, hypotheses: readonly number[], slip: number): Float64Array[] =>
  numbers.odds.map((odds) =>
    Float64Array.from(hypotheses, (h) => (1 - slip) * (odds[h] ?? 0) + slip / numbers.answers.length),
  );

const mayTry = (evidence: Evidence, fault: number, probability: number): boolean => {
  const times = evidence.tried.get(fault) ?? 0;
  return !evidence.closed.has(fault) && times <= 1 && (times === 0 || probability >= RETRY_ABOVE);
};

/** Narrows the situation to what matters now. */
const focusOn = (situation: Situation, evidence: Evidence, { probabilities }: Belief): Focus => {
  const hypotheses = [...probabilities.keys()].filter(
    (h) => h === situation.unexplained || (probabilities[h] ?? 0) > FAINT,
  );
  const belief = Float64Array.from(hypotheses, (h) => probabilities[h] ?? 0);
  const total = belief.reduce((sum, p) => sum + p, 0);
  for (let h = 0; h < belief.length; h++) belief[h] = (belief[h] ?? 0) / total;
  const done = new Set([...evidence.observations.map(({ check }) => check), ...evidence.unsure]);
  const checks = situation.checks.flatMap((numbers, check): OpenCheck[] => {
    if (done.has(check)) return [];
    if (numbers.entry.safety !== true) {
      const foregone = numbers.odds.some((odds) => {
        let sum = 0;
        for (const [i, h] of hypotheses.entries())
          if (h !== situation.unexplained) sum += (belief[i] ?? 0) * (odds[h] ?? 0);
        return sum > FOREGONE * (1 - (belief.at(-1) ?? 0));
      });
      if (foregone) return [];
    }
    return [
      {
        check,
        minutes: numbers.minutes,
        unsure: numbers.unsure,
        likelihood: likelihoodOver(numbers, hypotheses, MISTAKE.look),
      },
    ];
  });
  return {
    hypotheses,
    belief,
    checks,
    handOnMinutes: situation.handOnMinutes,
    tryMinutes: Float64Array.from(hypotheses.slice(0, -1), (h) =>
      mayTry(evidence, h, probabilities[h] ?? 0) ? (situation.tryMinutes[h] ?? Infinity) : Infinity,
    ),
  };
};

/** Second looks at answers that are likely mistaken. */
const secondLooks = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  focus: Focus,
  repair: number,
  { depth, breadth }: Foresight,
): Choice[] =>
  evidence.observations.flatMap((first, i): Choice[] => {
    const { check } = first;
    const numbers = situation.checks[check];
    if (
      numbers === undefined ||
      (belief.mistaken[i] ?? 0) < DOUBTFUL ||
      evidence.observations.filter((o) => o.check === check).length > 1
    )
      return [];
    const likelihood = numbers.answers.map((_, second) =>
      Float64Array.from(focus.hypotheses, (h) => secondLookLikelihood(numbers, first, second, h, 'relook')),
    );
    const minutes = askValue(
      focus.belief,
      { minutes: numbers.minutes, unsure: numbers.unsure, likelihood },
      repair,
      (after) => leastValue(focus, Float64Array.from(after), depth - 1, breadth),
    );
    return [{ kind: 'ask', check, again: true, minutes }];
  });

/** Below this a fault is not what a safety answer warns of. */
const WARNED_OF = 0.1;

/** What a bad answer to a safety check calls for at once: the remedy of the likeliest fault it warns of, unless one was tried. */
const safetyRemedy = (situation: Situation, evidence: Evidence, belief: Belief): number | undefined => {
  const latest = evidence.observations.findLast(({ check }) => situation.checks[check]?.entry.safety === true);
  const numbers = latest === undefined ? undefined : situation.checks[latest.check];
  if (latest === undefined || numbers === undefined || numbers.answers[latest.answer] === numbers.entry.good)
    return undefined;
  const warnedOf = situation.faults
    .map((_, f) => f)
    .filter((f) => (numbers.odds[latest.answer]?.[f] ?? 0) >= WARNED_OF);
  if (warnedOf.some((f) => evidence.tried.has(f) || evidence.closed.has(f))) return undefined;
  return warnedOf.sort((f, g) => (belief.probabilities[g] ?? 0) - (belief.probabilities[f] ?? 0) || f - g)[0];
};

/**
 * Every step worth comparing, cheapest first; ties keep the order of the model's files. Safety checks not yet answered
 * come first whatever they are worth, and so does the remedy a bad answer to one of them calls for.
 */
export const rankSteps = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  foresight: Foresight = USUAL_FORESIGHT,
): readonly Choice[] => {
  const { depth, breadth } = foresight;
  const focus = focusOn(situation, evidence, belief);
  const safety = focus.checks.find(({ check }) => situation.checks[check]?.entry.safety === true);
  const repair = repairPlan(focus.belief, focus.tryMinutes, focus.handOnMinutes).weightedMinutes;

  const choices: Choice[] = [{ kind: 'handOn', minutes: situation.handOnMinutes }];
  for (const fault of likeliestRemedies(focus.belief, focus.tryMinutes, breadth)) {
    choices.push({
      kind: 'try',
      fault: focus.hypotheses[fault] ?? 0,
      minutes: tryValue(focus, focus.belief, fault, depth - 1, breadth),
    });
  }
  for (const [rank, { check, value }] of oneStepAsks(focus, focus.belief, repair, Infinity).entries()) {
    const rest: Outlook = { ...focus, checks: focus.checks.filter((other) => other !== check) };
    const minutes =
      depth > 1 && rank < breadth
        ? askValue(focus.belief, check, leastValue(rest, focus.belief, depth - 1, breadth), (after) =>
            leastValue(rest, Float64Array.from(after), depth - 1, breadth),
          )
        : value;
    choices.push({ kind: 'ask', check: check.check, again: false, minutes });
  }
  choices.push(...secondLooks(situation, evidence, belief, focus, repair, foresight));
  const ranked = choices
    .map((choice, i) => ({ choice, i }))
    .sort((a, b) =>
      Math.abs(a.choice.minutes - b.choice.minutes) > TIE ? a.choice.minutes - b.choice.minutes : a.i - b.i,
    )
    .map(({ choice }) => choice);
  const remedy = safetyRemedy(situation, evidence, belief);
  if (remedy !== undefined) {
    const isRemedy = (choice: Choice): boolean => choice.kind === 'try' && choice.fault === remedy;
    return [
      ranked.find(isRemedy) ?? { kind: 'try', fault: remedy, minutes: repair },
      ...ranked.filter((choice) => !isRemedy(choice)),
    ];
  }
  if (safety === undefined) return ranked;
  const isSafety = (choice: Choice): boolean => choice.kind === 'ask' && choice.check === safety.check;
  return [...ranked.filter(isSafety), ...ranked.filter((choice) => !isSafety(choice))];
};

/** The next step alone. */
export const chooseStep = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  foresight: Foresight = USUAL_FORESIGHT,
): Choice =>
  rankSteps(situation, evidence, belief, foresight)[0] ?? { kind: 'handOn', minutes: situation.handOnMinutes };
