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
  plannedMinutes,
  tryValue,
  type OpenCheck,
  type Outlook,
} from './look-ahead.js';
import { handOnMinutes } from './hand-on-cost.js';
import { isBarred, isSaidCoarsely, itsTurn } from './its-turn.js';
import { mistakenFor } from './mistakes.js';
import { comesOtherwise, first, freeLookFirst, lookAgainFirst, mayTry, plainlyKnown } from './rules-of-order.js';
import { isPressing, safetyRemedy } from './safety.js';
import type { Choice } from './choice.js';
import { isTheirs, type CheckNumbers, type Situation } from './situation.js';
import { isReached, whereItStops, whereToLookFirst } from './where-it-stops.js';

export interface Foresight {
  /** 1: repair cost right after the step. 2: one more check before that, for the best few. More for the reviewers' deep search. */
  readonly depth: number;
  /** How many checks, and how many remedies, are looked at beyond the first step. */
  readonly breadth: number;
  /** Offers remedies without any sign for their cause, and looks that hardly bear on the matter, too: for comparing with an optimum that knows no such manners. */
  readonly freely?: boolean;
}
export const USUAL_FORESIGHT: Foresight = { depth: 2, breadth: 4 };

/** A second look is thought of once an answer is this likely to be mistaken. */
const DOUBTFUL = 0.25;
/** More second looks than this weary the member, and the rest is better told to a person. */
const MOST_SECOND_LOOKS = 2;
const TIE = 1e-9;
/** Hypotheses below this are left out of the look ahead; they come back if later answers raise them. */
const FAINT = 3e-3;
/** A check that answers one way this surely tells nothing now. */
const FOREGONE = 0.985;
/** A check cannot bear on the matter where the causes that it tells from the rest are together less likely than this. */
const BEARS = 0.02;
const TELLS = 0.3;

/** A remedy is offered once its cause is this likely or so many looks were taken: without a sign it is not worth the hands. */
const SIGN_OF_IT = 0.16;
const ENOUGH_LOOKS = 5;

/** Checks followed two steps ahead. */
const FOLLOWED = 16;

interface Focus extends Outlook {
  readonly hypotheses: readonly number[];
}

const likelihoodOver = (numbers: CheckNumbers, hypotheses: readonly number[]): Float64Array[] =>
  numbers.odds.map((odds, answer) => {
    const mistaken = numbers.slip * mistakenFor(numbers, answer);
    return Float64Array.from(hypotheses, (h) => (1 - numbers.slip) * (odds[h] ?? 0) + mistaken);
  });

/** How likely each answer is by the named causes, and how likely they are together. */
const meanOver = (
  numbers: CheckNumbers,
  hypotheses: readonly number[],
  belief: Float64Array,
  unknownsFrom: number,
): { readonly mean: readonly number[]; readonly known: number } => {
  let known = 0;
  const mean = numbers.odds.map(() => 0);
  for (let i = 0; i < hypotheses.length; i++) {
    const h = hypotheses[i] ?? 0;
    if (h >= unknownsFrom) continue;
    known += belief[i] ?? 0;
    for (let a = 0; a < mean.length; a++) mean[a] = (mean[a] ?? 0) + (belief[i] ?? 0) * (numbers.odds[a]?.[h] ?? 0);
  }
  return { mean, known };
};

/** How far a cause's answers lie from the usual ones: total variation distance, 0..1. */
const distanceFrom = (mean: readonly number[], known: number, { odds }: CheckNumbers, hypothesis: number): number => {
  let distance = 0;
  for (let a = 0; a < mean.length; a++) distance += Math.abs((odds[a]?.[hypothesis] ?? 0) - (mean[a] ?? 0) / known) / 2;
  return distance;
};

const tells = (
  numbers: CheckNumbers,
  hypotheses: readonly number[],
  belief: Float64Array,
  unknownsFrom: number,
): boolean => {
  const { mean, known } = meanOver(numbers, hypotheses, belief, unknownsFrom);
  if (mean.some((sum) => sum > FOREGONE * known)) return false;
  let bearing = 0;
  for (let i = 0; i < hypotheses.length; i++) {
    const h = hypotheses[i] ?? 0;
    if (h < unknownsFrom && distanceFrom(mean, known, numbers, h) >= TELLS) bearing += belief[i] ?? 0;
  }
  return bearing >= BEARS * known;
};

/** Handing on now, the search for an unknown's link included. */
const handedOn = ({ belief, tryMinutes, handOnMinutes: minutes }: Outlook): number =>
  plannedMinutes(
    belief,
    tryMinutes.map(() => Infinity),
    minutes,
  );

/** Narrows the situation to what matters now. */
const focusOn = (situation: Situation, evidence: Evidence, believed: Belief, freely: boolean): Focus => {
  const { probabilities } = believed;
  const hypotheses = [...probabilities.keys()].filter(
    (h) => h >= situation.unexplained || (probabilities[h] ?? 0) > FAINT,
  );
  const belief = Float64Array.from(hypotheses, (h) => probabilities[h] ?? 0);
  const total = belief.reduce((sum, p) => sum + p, 0);
  for (let h = 0; h < belief.length; h++) belief[h] = (belief[h] ?? 0) / total;
  const done = new Set([...evidence.observations.map(({ check }) => check), ...evidence.unsure]);
  const answeredIds = new Set([...done].map((check) => situation.checks[check]?.entry.refines?.check));
  const stop = freely ? Infinity : whereItStops(situation, evidence, believed);
  const linkPlace = freely ? Infinity : whereToLookFirst(situation, believed, (check) => !done.has(check));
  const checks = situation.checks.flatMap((numbers, check): OpenCheck[] => {
    if (done.has(check) || answeredIds.has(numbers.entry.id) || !isTheirs(situation, numbers)) return [];
    const open = { check, minutes: numbers.minutes, unsure: numbers.unsure };
    const asked = (): OpenCheck[] => [{ ...open, likelihood: likelihoodOver(numbers, hypotheses) }];
    if (isPressing(situation, evidence, numbers)) return asked();
    if (numbers.entry.onlySecond === true || !itsTurn(situation, evidence, believed, numbers)) return [];
    if (!isReached(situation, numbers, stop)) return [];
    // How far it gets is the complaint itself, and no look beyond.
    if (numbers.entry.byStage === undefined && !isReached(situation, numbers, linkPlace)) return [];
    if (isSaidCoarsely(situation, evidence, numbers) || isBarred(situation, evidence, numbers)) return [];
    return freely || tells(numbers, hypotheses, belief, situation.unexplained) ? asked() : [];
  });
  return {
    hypotheses,
    belief,
    checks,
    handOnMinutes: handOnMinutes(situation, evidence),
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
  { focus, repair }: { readonly focus: Focus; readonly repair: number },
  { depth, breadth }: Foresight,
): Choice[] => {
  if (evidence.observations.filter(({ look }) => look === 'relook').length >= MOST_SECOND_LOOKS) return [];
  return evidence.observations.flatMap((first, i): Choice[] => {
    const { check } = first;
    const numbers = situation.checks[check];
    if (
      numbers === undefined ||
      numbers.entry.lasting === true ||
      first.before === true ||
      // Asked twice in one breath, a member says the same again.
      i === evidence.observations.length - 1 ||
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

const sorted = (choices: readonly Choice[]): readonly Choice[] =>
  choices
    .map((choice, i) => ({ choice, i }))
    .sort((a, b) =>
      Math.abs(a.choice.minutes - b.choice.minutes) > TIE ? a.choice.minutes - b.choice.minutes : a.i - b.i,
    )
    .map(({ choice }) => choice);

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
  const freely = foresight.freely === true;
  const focus = focusOn(situation, evidence, belief, freely);
  const repair = plannedMinutes(focus.belief, focus.tryMinutes, focus.handOnMinutes);
  const attempt = (fault: number, minutes: number): Choice => ({
    kind: 'try',
    fault,
    otherwise: comesOtherwise(situation, evidence, fault),
    minutes,
  });

  const choices: Choice[] = [{ kind: 'handOn', minutes: handedOn(focus) }];
  const looked = freely || evidence.observations.length >= ENOUGH_LOOKS || focus.checks.length === 0;
  const offered = likeliestRemedies(focus.belief, focus.tryMinutes, breadth).filter(
    (fault) => looked || (focus.belief[fault] ?? 0) >= SIGN_OF_IT,
  );
  const asks = oneStepAsks(focus, focus.belief, repair, Infinity);
  // What is worth little now is seldom worth much after one answer: two steps ahead only the better half is followed.
  const followed = freely ? focus.checks : asks.slice(0, FOLLOWED).map(({ check }) => check);
  for (const fault of offered) {
    const minutes = tryValue({ ...focus, checks: followed }, focus.belief, fault, depth - 1, breadth);
    choices.push(attempt(focus.hypotheses[fault] ?? 0, minutes));
  }
  for (const [rank, { check, value }] of asks.entries()) {
    const rest: Outlook = { ...focus, checks: followed.filter((other) => other !== check) };
    const minutes =
      depth > 1 && rank < breadth
        ? askValue(focus.belief, check, leastValue(rest, focus.belief, depth - 1, breadth), (after) =>
            leastValue(rest, Float64Array.from(after), depth - 1, breadth),
          )
        : value;
    choices.push({ kind: 'ask', check: check.check, again: false, minutes });
  }
  choices.push(...secondLooks(situation, evidence, belief, { focus, repair }, foresight));
  const ranked = sorted(choices);
  const remedy = safetyRemedy(situation, evidence, belief);
  if (remedy !== undefined) {
    const isRemedy = (choice: Choice): boolean => choice.kind === 'try' && choice.fault === remedy;
    return first(ranked.some(isRemedy) ? ranked : [attempt(remedy, repair), ...ranked], isRemedy);
  }
  const safety = focus.checks.find(({ check }) => {
    const numbers = situation.checks[check];
    return numbers !== undefined && isPressing(situation, evidence, numbers);
  });
  if (safety !== undefined) return first(ranked, (choice) => choice.kind === 'ask' && choice.check === safety.check);
  return plainlyKnown(situation, evidence, belief)
    ? first(ranked, ({ kind }) => kind === 'handOn')
    : lookAgainFirst(situation, evidence, belief, freeLookFirst(situation, belief, ranked));
};

/** The next step alone. */
export const chooseStep = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  foresight: Foresight = USUAL_FORESIGHT,
): Choice =>
  rankSteps(situation, evidence, belief, foresight)[0] ?? { kind: 'handOn', minutes: situation.handOnMinutes };
