/** What a cure is put down to: to what the member says was done, where that is another remedy than the one in hand or the likeliest. */
import { isProblem } from '../../ground/problem.js';
import { curedByDeed, outcomeSaid, saysSomethingElse } from '../../reading/index.js';
import {
  answerStep,
  type Assessment,
  type FaultEntry,
  remediesTold,
  thingsNamed,
  type RemedyTold,
  type WalkState,
} from '../../triage/index.js';
import { deedAlike, stepsDone, type StepsDone } from './does-its-steps.js';
import { lastSaidToRemedy } from './last-said.js';
import { doesWhatFailed, keepsAway } from './told-at-card.js';
import { changed, type Began, type Turn } from './turn.js';

/** "As you said", "the card's way": the remedy in hand, whatever else is told. */
const AS_SHOWN =
  /\b(?:as|like|what) (?:you|u|the card|it) (?:said|says|told|wrote|suggested)\b|(?<!\b(?:in|all|by|on|of) )\b(?:your|that|the) (?:advice|tip|trick|instructions?|steps?|remedy|way)\b|\bfollowed (?:the|your|that|those)\b/iu;

export const saysAsShown = (text: string): boolean => AS_SHOWN.test(text);

/** "Swapped it", "did that": at a remedy, what it says to do. */
const DONE_AS_SHOWN =
  /^\W*(?:(?:ok(?:ay)?|yes|yep|right|so|well|ha(?:ha)?|ah+|oh|aha|lol|um|er|great|i|we|have|just|then|and)[,!]? )*(?:did|done|swapped|changed|exchanged|replaced|tightened|moved|closed|turned|switched|set|pushed|plugged|updated|installed|removed|took|unticked|ticked|deleted|unplugged) (?:it|that|them|those|this|these|both)\b/iu;
/** "Plugged it into the blue socket", "turned it off and on again": a deed of its own. */
const DONE_OTHERWISE =
  /\b(?:plugged|unplugged|moved|put) \w+ (?:back )?(?:in|into|to|onto)\b|\b(?:turned|switched) \w+ (?:off|out) and\b/iu;
const isDoneAsShown = (text: string): boolean => DONE_AS_SHOWN.test(text) && !DONE_OTHERWISE.test(text);

/** Told so plainly, and so much of what was done explained by it: that cause is taken; half as plainly it is offered. */
const [PLAIN, EXPLAINED] = [3, 0.5];
/** All of it explained counts as plain from here on. */
const [SHORT, ALL] = [2, 0.9];
const [NEAR, PARTLY_EXPLAINED] = [2, 0.3];
/** Told so, and explained so far, it is offered and not passed over for something else. */
const [WELL_TOLD, NEARLY_EXPLAINED] = [5, 0.4];
/** The remedy in hand is meant where it is told nearly as plainly as the best, by this share or this much. */
const [AS_GOOD, WITHIN] = [0.75, 1];
/** Of two causes the likelier told is taken where the other is told by no more than this share. */
const RIVAL = 0.7;
const MOST_OFFERED = 3;

/** `fault`: that cause; `among`: one of these, which is asked; `else`: nothing that is listed; null: the one expected, or nothing is told. */
export type Credited = { readonly fault: string } | { readonly among: readonly string[] } | 'else' | null;

const ALL_OF_OWN = 0.8;
/** Of the same part of the chain, told by so much of it, the one in hand is meant: which of two ports it was nobody says. */
const OF_SAME_PART = 0.35;
const isTwin = (own: RemedyTold, best: RemedyTold): boolean =>
  own.fault.stage === best.fault.stage &&
  own.fault.link === best.fault.link &&
  own.told >= best.told * OF_SAME_PART &&
  own.share >= EXPLAINED;

/** "Set it from extended to classic, goto moves now": done at its own card, with what failed mended, so much of its words is enough. */
const AT_ITS_CARD = 0.2;

/** Told by no more than this it is not told: what was done is another thing. */
const HARDLY_TOLD = 0.5;

export const isOwn = (own: RemedyTold | undefined, best: RemedyTold): boolean => {
  if (own === undefined || (own.told < HARDLY_TOLD && own.share < EXPLAINED)) return false;
  // All that is told fits what was shown, whatever else it fits.
  if (own.share >= ALL_OF_OWN && own.share >= best.share) return true;
  if (isTwin(own, best)) return true;
  if (own.told >= Math.min(best.told * AS_GOOD, best.told - WITHIN)) return true;
  // What was shown a moment ago is meant by words that fit it as well.
  if (own.told >= best.told / 2 && own.share >= best.share) return true;
  return best.told < PLAIN && own.share >= best.share;
};

export const isToldPlainly = ({ told, share }: RemedyTold): boolean =>
  (told >= PLAIN && share >= EXPLAINED) || (told >= SHORT && share >= ALL);

const isFaint = ({ told, share }: RemedyTold): boolean =>
  share < EXPLAINED && (told < WELL_TOLD || share < NEARLY_EXPLAINED);

/** The remedy on show first, as its steps may have been told in words that nobody knows, then those told best. */
const among = (told: readonly RemedyTold[], shown: string | undefined): readonly string[] =>
  [...new Set([...(shown === undefined ? [] : [shown]), ...told.map(({ fault }) => fault.id)])].slice(0, MOST_OFFERED);

/** Neither the steps on show nor another's plainly: what it was is asked, once, where anything may be meant. */
const besides = (told: readonly RemedyTold[], { shown, mayBe }: Pick<Deed, 'shown' | 'mayBe'>): Credited => {
  const offered = among(
    told.filter((one) => (shown !== undefined && one.told >= NEAR) || mayBe(one.fault)),
    shown,
  );
  return offered.length === 0 ? 'else' : { among: offered };
};

interface Deed {
  readonly isDone: boolean;
  /** So much of its words in the one expected is enough. */
  readonly ofOwn: number;
  readonly steps: StepsDone;
  /** The remedy that stands before the member. */
  readonly shown: string | undefined;
  /** A remedy has such a deed among its steps, and may be the cure here. */
  readonly mayBe: (fault: FaultEntry) => boolean;
  /** As the walk stands it cannot be, and is told by a word or two. */
  readonly isHopeless: (one: RemedyTold) => boolean;
}

const isHardlyOwn = (own: RemedyTold | undefined, ofOwn: number): boolean =>
  own === undefined || own.share < ofOwn || own.told < HARDLY_TOLD;

/** Its kind of deed on its kind of thing, and yet another remedy is told so many times as plainly. */
const FAR = 3;
const isFarFrom = (own: RemedyTold | undefined, best: RemedyTold | undefined): boolean =>
  best !== undefined && isToldPlainly(best) && best.told >= FAR * Math.max(own?.told ?? 0, HARDLY_TOLD);

/** Told plainly; what cannot be is not put in the place of what was shown. */
const plainly = (best: RemedyTold, { shown, isHopeless: isNone }: Deed): Credited =>
  shown !== undefined && isNone(best) ? { among: [shown] } : { fault: best.fault.id };

/** @param told nearest first */
const creditedOf = (told: readonly RemedyTold[], expected: string | undefined, deed: Deed): Credited => {
  const { isDone, ofOwn, steps, shown } = deed;
  const [best, second] = told;
  const own = steps.isOther ? undefined : told.find(({ fault }) => fault.id === expected);
  if (steps.isDone && expected !== undefined && !isFarFrom(own, best)) return null;
  if (best === undefined) return isDone ? besides(told, deed) : null;
  if (isOwn(own, best)) return null;
  const isPlain = isToldPlainly(best);
  if (isPlain && (second?.told ?? 0) <= best.told * RIVAL) return plainly(best, deed);
  const near = told.filter(
    (one) => one.told >= Math.max(NEAR, best.told * RIVAL) && one.share >= PARTLY_EXPLAINED && !isFaint(one),
  );
  // What was done is told in this remedy's own words, whatever else it may be.
  if (near.length === 0) return isDone && isHardlyOwn(own, ofOwn) ? besides(told, deed) : null;
  return { among: among(near, shown) };
};

/** "Rebooted everything": it cures more causes than one, and names none. */
const RESTARTED =
  /^(?:(?:i|we|just|have|had|then|ok|so|the|my|a|to|after|again|everything|it|all|whole|windows|linux|mac|macos|pi|pc|laptop|computer|machine|notebook|full|clean|quick|with|of|did|made|twice|once)\W+)*(?:re-?boot\w*|re-?start\w*)(?:\W+(?:the|my|everything|it|all|both|lot|whole|thing|windows|linux|mac|macos|pi|pc|laptop|computer|machine|notebook|again|and|of|twice|once|now))*\W*$/iu;
const RESTART = 'restart';
const LIKELY_ENOUGH = 0.05;

/** Those that a restart cures and that were likely before it, likeliest first. */
const curedByRestart = ({ situation, belief }: Assessment, expected: string | undefined): Credited => {
  const likely = (at: number): number => belief.probabilities[at] ?? 0;
  const among = situation.faults
    .map(({ id, remedy }, at) => ({ id, at, isCured: remedy.already?.answers.includes(RESTART) === true }))
    .filter(({ id, at, isCured }) => isCured && (id === expected || likely(at) >= LIKELY_ENOUGH))
    .sort((a, b) => likely(b.at) - likely(a.at))
    .slice(0, MOST_OFFERED - 1)
    .map(({ id }) => id);
  if (expected !== undefined && among.includes(expected)) return null;
  return among.length === 0 ? 'else' : { among };
};

/** What this member's way to the mount can have, where one of it is told plainly; and of that what the cure allows. */
const fitting = (
  { situation }: Assessment,
  told: readonly RemedyTold[],
  allows: (fault: string) => boolean,
): readonly RemedyTold[] => {
  const here = told.filter(({ fault }) => situation.faultIndex.has(fault.id));
  const own = here[0] !== undefined && isToldPlainly(here[0]) ? here : told;
  const allowed = own.filter(({ fault }) => allows(fault.id));
  return allowed[0] !== undefined && isToldPlainly(allowed[0]) ? allowed : own;
};

/** "Changed 30 to 5, Sirius is taken": where the link stood all along, no cause of the link was the cure. */
const mendsBeyondLink = (began: Began, text: string): boolean =>
  doesWhatFailed(began, text) && !keepsAway(began.before, began.before.step.id);

/** No other system's, and of the link only where the link was not there. */
const mayBeCure = (before: Assessment, { id, only }: FaultEntry, isMendedBeyondLink: boolean): boolean => {
  const { system } = before.context;
  return (
    (system === null || only?.systems?.includes(system) !== false) && !(isMendedBeyondLink && keepsAway(before, id))
  );
};

const HOPELESS = 1e-4;
const isHopeless = ({ situation, belief }: Assessment, { fault, told }: RemedyTold): boolean =>
  told < WELL_TOLD && (belief.probabilities[situation.faultIndex.get(fault.id) ?? -1] ?? 1) < HOPELESS;

const remedyShown = ({ step }: Assessment): string | undefined => (step.kind === 'try' ? step.id : undefined);
const NOTHING_SHOWN = { steps: { isDone: false, isOther: false }, shown: undefined };

/** Tried without any change, and not on show once more. */
export const failedBefore = ({ walk: { state }, before }: Began): ReadonlySet<string> => {
  const last = new Map(state.events.flatMap((event) => (event.kind === 'try' ? [[event.fault, event.outcome]] : [])));
  last.delete(remedyShown(before) ?? '');
  return new Set([...last].filter(([, outcome]) => outcome === 'same').map(([fault]) => fault));
};

/** What was shown is told, and no more than that. */
const isAsShown = (began: Began, text: string, { isOther }: StepsDone, isBesides: boolean): boolean => {
  if (isOther) return false;
  if (thingsNamed(began.context.model, text).length === 0) return true;
  return !isBesides && remedyShown(began.before) !== undefined && isDoneAsShown(text);
};

/** "Rerouted it": of what, was said before. */
const DONE_TO_IT = /^\W*(?:(?:i|we|just|then|so|ok|have|had)\W+)*\p{L}+ed (?:it|them|that|this)\b/iu;

/** "A cable, I think" and then "rerouted it": the deed is of what was named before. */
const withThingNamed = (began: Began, text: string): string => {
  if (!DONE_TO_IT.test(text) || DONE_AS_SHOWN.test(text)) return text;
  const before = lastSaidToRemedy(began);
  return before === null || thingsNamed(began.context.model, before).length === 0 ? text : `${before}. ${text}`;
};

/** @param isElse it was something else than what was shown */
const deedCredited = (began: Began, said: string, expected: string | undefined, isElse: boolean): Credited => {
  const {
    context: { model },
    before,
  } = began;
  const text = withThingNamed(began, said);
  const { deed, isDone, isOfTheLink } = curedByDeed(text);
  // What changed nothing was no cure.
  const isBesides = isElse || outcomeSaid(model.reading, text).isCuredBesides === true;
  const done = stepsDone(began, text);
  if (!isElse && isAsShown(began, text, done, isBesides)) return null;
  if (!isBesides && RESTARTED.test(deed)) return curedByRestart(before, expected);
  const { steps, shown } = isBesides ? NOTHING_SHOWN : { steps: done, shown: remedyShown(before) };
  const isMended = mendsBeyondLink(began, text);
  const alike = deedAlike(began, text);
  const failed = failedBefore(began);
  const told = remediesTold(model, before, text).filter(
    (one) =>
      (!isBesides || one.fault.id !== expected) &&
      (!failed.has(one.fault.id) || alike.isOfKind(one.fault)) &&
      mayBeCure(before, one.fault, isMended),
  );
  // "Now it connects" tells of a cause that kept it from doing so.
  const allows = (fault: string): boolean => !isOfTheLink || keepsAway(before, fault);
  return creditedOf(fitting(before, told, allows), isBesides ? undefined : expected, {
    isDone: isDone || isElse || done.isOther || (failed.size > 0 && alike.isDeed),
    steps,
    shown,
    mayBe: alike.mayBe,
    isHopeless: (one) => isHopeless(before, one),
    ofOwn: !isBesides && doesWhatFailed(began, text) ? AT_ITS_CARD : EXPLAINED,
  });
};

/** @param expected the remedy that the cure would be put down to otherwise */
export const creditedIn = (began: Began, text: string, expected: string | undefined): Credited => {
  const isElse = saysSomethingElse(text);
  const tellsNone = !isElse && (curedByDeed(text).deed === '' || saysAsShown(text));
  return tellsNone ? null : deedCredited(began, text, expected, isElse);
};

const OF_SOMETHING_ELSE =
  'Good to hear. I keep what it was with the walk, and count it for no cause here. Clear skies.';

/** What it was stands in no list: it is kept in the member's words, and the walk ends well. */
const endedByElse = (began: Began, state: WalkState): Turn => {
  const turn = changed(began, state, { notes: [OF_SOMETHING_ELSE], show: 'summary' });
  return { ...turn, walk: { ...turn.walk, endedUtcMs: began.context.nowUtcMs }, isCuredElse: true };
};

export const askedWhich = (began: Began, state: WalkState, faults: readonly string[]): Turn =>
  changed(began, state, { whichCured: faults, asks: { kind: 'which-cured', faults: [...faults] } });

export const curedBy = (began: Began, state: WalkState, fault: string): Turn | null => {
  const cured = answerStep(began.context.model, state, fault, 'works', began.context.by);
  return isProblem(cured) ? null : changed(began, cured);
};

/** Only the one whose mount it is ends a walk; a helper is asked which it was. */
export const creditedElse = (began: Began, state: WalkState, expected: string | undefined): Turn | null => {
  if (began.context.by === 'member') return endedByElse(began, state);
  return expected === undefined ? null : askedWhich(began, state, [expected]);
};

/** The turn that puts a cure down to that. */
export const creditedTo = (
  began: Began,
  credited: NonNullable<Credited>,
  state: WalkState,
  expected: string | undefined,
): Turn | null => {
  if (credited === 'else') return creditedElse(began, state, expected);
  return 'among' in credited ? askedWhich(began, state, credited.among) : curedBy(began, state, credited.fault);
};

/**
 * The turn that takes a cure for what the words say was done.
 * @param state the record with those words
 * @returns null where they tell of no deed but the one expected
 */
export const takeCredited = (
  began: Began,
  text: string,
  state: WalkState,
  expected: string | undefined,
): Turn | null => {
  const credited = creditedIn(began, text, expected);
  return credited === null ? null : creditedTo(began, credited, state, expected);
};
