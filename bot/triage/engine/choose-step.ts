/**
 * Picks the next step of a walk: the check or the remedy that leaves the least expected minutes until the mount works or a
 * person comes. One step ahead as in the cited article (see repair-cost.ts), then the best few are compared two steps ahead.
 */
import { normalise, secondLookLikelihood, type Belief } from './belief.js';
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
import { mistakenFor, type Observation } from './mistakes.js';
import { byWorth } from './repair-cost.js';
import {
  comesOtherwise,
  first,
  freeLookFirst,
  lookAgainFirst,
  mayTry,
  plainlyKnown,
  quickRemedyFirst,
} from './rules-of-order.js';
import { isPressing, safetyRemedy } from './safety.js';
import type { Choice } from './choice.js';
import { isTheirs, type CheckNumbers, type Situation } from './situation.js';
import { settledChecks } from './settled.js';
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
  readonly hypotheses: Int32Array;
}

/** One list of hypotheses out of a row over all of them. */
const rowsOver = (numbers: CheckNumbers, hypotheses: Int32Array): Float64Array[] =>
  numbers.odds.map((odds) => {
    const row = new Float64Array(hypotheses.length);
    for (let i = 0; i < row.length; i++) row[i] = odds[hypotheses[i] as number] as number;
    return row;
  });

/** Mistakes taken into rows of odds, in place. */
const withMistakes = (numbers: CheckNumbers, rows: readonly Float64Array[]): readonly Float64Array[] => {
  const { slip } = numbers;
  for (const [answer, row] of rows.entries()) {
    const mistaken = slip * mistakenFor(numbers, answer);
    for (let i = 0; i < row.length; i++) row[i] = (1 - slip) * (row[i] as number) + mistaken;
  }
  return rows;
};

/** @param count how many of the hypotheses are named causes; they come first */
const tells = (rows: readonly Float64Array[], belief: Float64Array, count: number): boolean => {
  let known = 0;
  for (let i = 0; i < count; i++) known += belief[i] as number;
  // How far each cause's answers lie from the usual ones: total variation distance, 0..1.
  const distances = new Float64Array(count);
  for (const row of rows) {
    let sum = 0;
    for (let i = 0; i < count; i++) sum += (belief[i] as number) * (row[i] as number);
    if (sum > FOREGONE * known) return false;
    const mean = sum / known;
    for (let i = 0; i < count; i++) distances[i] = (distances[i] as number) + Math.abs((row[i] as number) - mean) / 2;
  }
  let bearing = 0;
  for (let i = 0; i < count; i++) if ((distances[i] as number) >= TELLS) bearing += belief[i] as number;
  return bearing >= BEARS * known;
};

/** Handing on now, the search for an unknown's link included. */
const handedOn = ({ belief, tryMinutes, handOnMinutes: minutes }: Outlook): number =>
  plannedMinutes(belief, { tryMinutes: tryMinutes.map(() => Infinity), handOnMinutes: minutes, visit: null });

/** Narrows the situation to what matters now. */
const focusOn = (situation: Situation, evidence: Evidence, believed: Belief, freely: boolean): Focus => {
  const { probabilities } = believed;
  const hypotheses = Int32Array.from(
    [...probabilities.keys()].filter((h) => h >= situation.unexplained || (probabilities[h] ?? 0) > FAINT),
  );
  const named = hypotheses.filter((h) => h < situation.unexplained);
  const belief = Float64Array.from(hypotheses, (h) => probabilities[h] ?? 0);
  normalise(belief);
  const looked = evidence.observations.filter(({ guessed }) => guessed !== true);
  const answered = new Set([...looked.map(({ check }) => check), ...evidence.unsure]);
  const answeredIds = new Set([...answered].map((check) => situation.checks[check]?.entry.refines?.check));
  const done = new Set([...answered, ...(freely ? [] : settledChecks(situation, evidence, believed))]);
  const stop = freely ? Infinity : whereItStops(situation, evidence, believed);
  const linkPlace = freely ? Infinity : whereToLookFirst(situation, believed, (check) => !done.has(check));
  const checks = situation.checks.flatMap((numbers, check): OpenCheck[] => {
    if (done.has(check) || answeredIds.has(numbers.entry.id) || !isTheirs(situation, numbers)) return [];
    const open = { check, minutes: numbers.minutes, unsure: numbers.unsure };
    const rows = (): Float64Array[] => rowsOver(numbers, hypotheses);
    if (isPressing(situation, evidence, numbers)) return [{ ...open, likelihood: withMistakes(numbers, rows()) }];
    if (numbers.entry.onlySecond === true || !isReached(situation, numbers, stop)) return [];
    // How far it gets is the complaint itself, and no look beyond.
    if (numbers.entry.byStage === undefined && !isReached(situation, numbers, linkPlace)) return [];
    if (isSaidCoarsely(situation, evidence, numbers) || isBarred(situation, evidence, numbers)) return [];
    if (!itsTurn(situation, evidence, believed, numbers)) return [];
    const odds = rows();
    return freely || tells(odds, belief, named.length) ? [{ ...open, likelihood: withMistakes(numbers, odds) }] : [];
  });
  const tryMinutes = Float64Array.from(named, (h) =>
    mayTry(situation, evidence, h, probabilities[h] ?? 0) ? (situation.tryMinutes[h] ?? Infinity) : Infinity,
  );
  return {
    hypotheses,
    belief,
    checks,
    handOnMinutes: handOnMinutes(situation, evidence),
    tryMinutes,
    visit: byWorth(belief, tryMinutes),
  };
};

/** What stood in a message was no slip of a look. */
const READ_PLAINLY = 0.06;
const isToldOutright = ({ slip, guessed }: Observation): boolean =>
  slip !== undefined && guessed !== true && slip <= READ_PLAINLY;

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
      isToldOutright(first) ||
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
      (after) => leastValue(focus, after, depth - 1, breadth),
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
  const repair = plannedMinutes(focus.belief, focus);
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
  const asks = oneStepAsks(focus, focus.belief, repair);
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
            leastValue(rest, after, depth - 1, breadth),
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
    : lookAgainFirst(
        situation,
        evidence,
        belief,
        freeLookFirst(situation, belief, quickRemedyFirst(situation, belief, ranked)),
      );
};

/** The next step alone. */
export const chooseStep = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  foresight: Foresight = USUAL_FORESIGHT,
): Choice =>
  rankSteps(situation, evidence, belief, foresight)[0] ?? { kind: 'handOn', minutes: situation.handOnMinutes };
