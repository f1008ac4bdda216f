/**
 * Picks the next step of a walk: the check or the remedy that leaves the least expected minutes until the mount works or a
 * person comes. One step ahead as in the cited article (see repair-cost.ts), then the best few are compared two steps ahead.
 */
import { secondLookLikelihood, type Belief } from './belief.js';
import type { Evidence } from './evidence.js';
import {
  askValue,
  leastValue,
  likeliestRemedies,
  oneStepAsks,
  tryValue,
  type OpenCheck,
  type Outlook,
} from './look-ahead.js';
import { mistakenFor } from './mistakes.js';
import { repairPlan } from './repair-cost.js';
import type { CheckNumbers, Situation } from './situation.js';

export type Choice =
  | { readonly kind: 'ask'; readonly check: number; readonly again: boolean; readonly minutes: number }
  /** `otherwise`: the remedy's other way, after the first could not be done or did nothing. */
  | { readonly kind: 'try'; readonly fault: number; readonly otherwise: boolean; readonly minutes: number }
  | { readonly kind: 'handOn'; readonly minutes: number };

export interface Foresight {
  /** 1: repair cost right after the step. 2: one more check before that, for the best few. More for the reviewers' deep search. */
  readonly depth: number;
  /** How many checks, and how many remedies, are looked at beyond the first step. */
  readonly breadth: number;
}
export const USUAL_FORESIGHT: Foresight = { depth: 2, breadth: 4 };

/** A second look is thought of once an answer is this likely to be mistaken. */
const DOUBTFUL = 0.25;
/** More second looks than this weary the member, and the rest is better told to a person. */
const MOST_SECOND_LOOKS = 2;
/** The other way to a cure is worth offering while its fault is at least this likely. */
const OTHERWISE_ABOVE = 0.2;
const TIE = 1e-9;
/** Hypotheses below this are left out of the look ahead; they come back if later answers raise them. */
const FAINT = 1e-3;
/** A check that answers one way this surely tells nothing now. */
const FOREGONE = 0.985;
/** A check cannot bear on the matter where the causes that it tells from the rest are together less likely than this. */
const BEARS = 0.02;
const TELLS = 0.3;
/** A cause this likely whose remedies are spent is handed on by name: no more questions, a person must do it. */
export const KNOWN_CAUSE = 0.6;
const PLAINLY_KNOWN = 0.8;

interface Focus extends Outlook {
  readonly hypotheses: readonly number[];
}

const likelihoodOver = (numbers: CheckNumbers, hypotheses: readonly number[]): Float64Array[] =>
  numbers.odds.map((odds, answer) => {
    const mistaken = numbers.slip * mistakenFor(numbers, answer);
    return Float64Array.from(hypotheses, (h) => (1 - numbers.slip) * (odds[h] ?? 0) + mistaken);
  });

const attempts = (evidence: Evidence, fault: number): number => evidence.attempts.get(fault) ?? 0;

/** Never the same words twice: once the remedy; once more its other way, or where a look says that it has not taken. */
const mayTry = (situation: Situation, evidence: Evidence, fault: number, probability: number): boolean => {
  if (evidence.mended.has(fault)) return false;
  const before = attempts(evidence, fault);
  if (before === 0) return true;
  if (before > 1) return false;
  return (
    evidence.notTaken.has(fault) ||
    (situation.faults[fault]?.remedy.otherwise !== undefined && probability >= OTHERWISE_ABOVE)
  );
};

const tells = (
  numbers: CheckNumbers,
  hypotheses: readonly number[],
  belief: Float64Array,
  unknownsFrom: number,
): boolean => {
  let known = 0;
  const mean = numbers.odds.map(() => 0);
  for (let i = 0; i < hypotheses.length; i++) {
    const h = hypotheses[i] ?? 0;
    if (h >= unknownsFrom) continue;
    known += belief[i] ?? 0;
    for (let a = 0; a < mean.length; a++) mean[a] = (mean[a] ?? 0) + (belief[i] ?? 0) * (numbers.odds[a]?.[h] ?? 0);
  }
  if (mean.some((sum) => sum > FOREGONE * known)) return false;
  let bearing = 0;
  for (let i = 0; i < hypotheses.length; i++) {
    const h = hypotheses[i] ?? 0;
    if (h >= unknownsFrom) continue;
    let distance = 0;
    for (let a = 0; a < mean.length; a++)
      distance += Math.abs((numbers.odds[a]?.[h] ?? 0) - (mean[a] ?? 0) / known) / 2;
    if (distance >= TELLS) bearing += belief[i] ?? 0;
  }
  return bearing >= BEARS * known;
};

/** Whether what must be answered before this check has been, in a way that makes it worth asking. */
const itsTurn = (situation: Situation, evidence: Evidence, { entry: { after } }: CheckNumbers): boolean => {
  if (after === undefined) return true;
  const before = situation.checks[situation.checkIndex.get(after.check) ?? -1];
  return (
    before === undefined ||
    evidence.observations.some(
      ({ check, answer }) => situation.checks[check] === before && after.answers.includes(before.answers[answer] ?? ''),
    )
  );
};

/** Narrows the situation to what matters now. */
const focusOn = (situation: Situation, evidence: Evidence, { probabilities }: Belief): Focus => {
  const hypotheses = [...probabilities.keys()].filter(
    (h) => h >= situation.unexplained || (probabilities[h] ?? 0) > FAINT,
  );
  const belief = Float64Array.from(hypotheses, (h) => probabilities[h] ?? 0);
  const total = belief.reduce((sum, p) => sum + p, 0);
  for (let h = 0; h < belief.length; h++) belief[h] = (belief[h] ?? 0) / total;
  const done = new Set([...evidence.observations.map(({ check }) => check), ...evidence.unsure]);
  const answeredIds = new Set([...done].map((check) => situation.checks[check]?.entry.refines?.check));
  const checks = situation.checks.flatMap((numbers, check): OpenCheck[] => {
    if (done.has(check) || answeredIds.has(numbers.entry.id) || !itsTurn(situation, evidence, numbers)) return [];
    if (numbers.entry.safety !== true && !tells(numbers, hypotheses, belief, situation.unexplained)) return [];
    return [
      { check, minutes: numbers.minutes, unsure: numbers.unsure, likelihood: likelihoodOver(numbers, hypotheses) },
    ];
  });
  return {
    hypotheses,
    belief,
    checks,
    handOnMinutes: situation.handOnMinutes,
    tryMinutes: Float64Array.from(
      hypotheses.filter((h) => h < situation.unexplained),
      (h) => (mayTry(situation, evidence, h, probabilities[h] ?? 0) ? (situation.tryMinutes[h] ?? Infinity) : Infinity),
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
): Choice[] => {
  if (evidence.observations.filter(({ look }) => look === 'relook').length >= MOST_SECOND_LOOKS) return [];
  return evidence.observations.flatMap((first, i): Choice[] => {
    const { check } = first;
    const numbers = situation.checks[check];
    if (
      numbers === undefined ||
      numbers.entry.lasting === true ||
      (belief.mistaken[i] ?? 0) < DOUBTFUL ||
      evidence.unsure.has(check) ||
      evidence.observations.filter((o) => o.check === check).length > 1
    )
      return [];
    const likelihood = numbers.answers.map((_, answer) =>
      Float64Array.from(focus.hypotheses, (h) =>
        secondLookLikelihood(numbers, first, { check, answer, look: 'relook' }, h),
      ),
    );
    const minutes = askValue(
      focus.belief,
      { minutes: numbers.minutes, unsure: numbers.unsure, likelihood },
      repair,
      (after) => leastValue(focus, Float64Array.from(after), depth - 1, breadth),
    );
    return [{ kind: 'ask', check, again: true, minutes }];
  });
};

/** Below this a fault is not what a safety answer warns of. */
const WARNED_OF = 0.1;

/** What a bad answer to a safety check calls for at once: the remedy of the likeliest fault it warns of, unless one was tried. */
const safetyRemedy = (situation: Situation, evidence: Evidence, belief: Belief): number | undefined => {
  const bad = evidence.observations.findLast(({ check, answer }) => {
    const numbers = situation.checks[check];
    return numbers?.entry.safety === true && numbers.answers[answer] !== numbers.entry.good;
  });
  const numbers = bad === undefined ? undefined : situation.checks[bad.check];
  if (bad === undefined || numbers === undefined) return undefined;
  const warnedOf = situation.faults.flatMap(({ answers }, f) =>
    answers?.[numbers.entry.id] !== undefined && (numbers.odds[bad.answer]?.[f] ?? 0) >= WARNED_OF ? [f] : [],
  );
  if (warnedOf.some((f) => attempts(evidence, f) > 0 || evidence.mended.has(f))) return undefined;
  return warnedOf.sort((f, g) => (belief.probabilities[g] ?? 0) - (belief.probabilities[f] ?? 0) || f - g)[0];
};

/** The likeliest named cause and how likely it is. */
export const likeliest = (situation: Situation, { probabilities }: Belief): { fault: number; probability: number } => {
  let fault = 0;
  for (let f = 1; f < situation.unexplained; f++) if ((probabilities[f] ?? 0) > (probabilities[fault] ?? 0)) fault = f;
  return { fault, probability: probabilities[fault] ?? 0 };
};

/** A cause that is plainly known and whose remedies are spent: what is left is to say so. */
const plainlyKnown = (situation: Situation, evidence: Evidence, belief: Belief): boolean => {
  const { fault, probability } = likeliest(situation, belief);
  return (
    probability >= PLAINLY_KNOWN && attempts(evidence, fault) > 0 && !mayTry(situation, evidence, fault, probability)
  );
};

const sorted = (choices: readonly Choice[]): readonly Choice[] =>
  choices
    .map((choice, i) => ({ choice, i }))
    .sort((a, b) =>
      Math.abs(a.choice.minutes - b.choice.minutes) > TIE ? a.choice.minutes - b.choice.minutes : a.i - b.i,
    )
    .map(({ choice }) => choice);

const first = (choices: readonly Choice[], wanted: (choice: Choice) => boolean): readonly Choice[] => [
  ...choices.filter(wanted),
  ...choices.filter((choice) => !wanted(choice)),
];

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
  const repair = repairPlan(focus.belief, focus.tryMinutes, focus.handOnMinutes).weightedMinutes;
  const attempt = (fault: number, minutes: number): Choice => ({
    kind: 'try',
    fault,
    otherwise: attempts(evidence, fault) > 0 && situation.faults[fault]?.remedy.otherwise !== undefined,
    minutes,
  });

  const choices: Choice[] = [{ kind: 'handOn', minutes: situation.handOnMinutes }];
  for (const fault of likeliestRemedies(focus.belief, focus.tryMinutes, breadth))
    choices.push(attempt(focus.hypotheses[fault] ?? 0, tryValue(focus, focus.belief, fault, depth - 1, breadth)));
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
  const ranked = sorted(choices);
  const remedy = safetyRemedy(situation, evidence, belief);
  if (remedy !== undefined) {
    const isRemedy = (choice: Choice): boolean => choice.kind === 'try' && choice.fault === remedy;
    return first(ranked.some(isRemedy) ? ranked : [attempt(remedy, repair), ...ranked], isRemedy);
  }
  const safety = focus.checks.find(({ check }) => situation.checks[check]?.entry.safety === true);
  if (safety !== undefined) return first(ranked, (choice) => choice.kind === 'ask' && choice.check === safety.check);
  return plainlyKnown(situation, evidence, belief) ? first(ranked, ({ kind }) => kind === 'handOn') : ranked;
};

/** The next step alone. */
export const chooseStep = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  foresight: Foresight = USUAL_FORESIGHT,
): Choice =>
  rankSteps(situation, evidence, belief, foresight)[0] ?? { kind: 'handOn', minutes: situation.handOnMinutes };
