/** Takes a member's words or a paste: as the answer to the step in hand where they are one, and for all else that they tell. */
import { isProblem } from '../../ground/problem.js';
import {
  beginsUnsure,
  curedByDeed,
  isHedged,
  namesNoMount,
  oddOne,
  outcomeSaid,
  readsOut,
  withoutOtherThings,
  type AnswerMeant,
  type Reading,
} from '../../reading/index.js';
import {
  answerInstead,
  answerStep,
  assess,
  NUMBERS,
  passStep,
  tellText,
  UNSURE,
  type WalkState,
} from '../../triage/index.js';
import { answerInWords, isSafetyLook, nearestBefore, oddIn, questionOf } from './answer-in-words.js';
import { answeredBeside } from './asked-with-outcome.js';
import { ASKED_BACK, asksOfStep } from './asks-back.js';
import { takeBothSaid } from './both-said.js';
import { correctionsIn, type Correction } from './corrections.js';
import { takeCredited } from './credited.js';
import { toldAnew, withoutStood } from './corrected-opening.js';
import { takeElsewhere } from './elsewhere.js';
import { SHOWN_BY_IT, withoutFactsOf, withoutOthers, withoutSound } from './kept-words.js';
import { deedSaidBefore, lastSaidToIt } from './last-said.js';
import { namedAtOnce } from './named-at-once.js';
import { heardIn, NOTHING_SURE, notPlaced, readWords } from './read-notes.js';
import { leftAsSaid, SAID_ALREADY } from './left-as-said.js';
import { leftToMend, saidAfter } from './said-after.js';
import { COMPLAINT, isDenied, isFoundSet, isNotThere } from './told-at-card.js';
import { withNamed } from './supposed.js';
import { takeAside } from './take-aside.js';
import { withTouchedOn } from './touched-on.js';
import { changed, isAsked, wasShown, type Began, type Turn } from './turn.js';
import { hasBegun } from './walk-words.js';

export const NO_GUESS =
  'A guess is not enough here: a wrong one can do harm. Look once more; “Not sure” is an answer too.';

/** A guess at a look that keeps gear from harm. */
export const isGuessAtSafety = ({ before: { step } }: Began, text: string): boolean =>
  isSafetyLook(step) && isHedged(text);

export const GO_ON = 'Your words are kept. I leave this question and go on.';

const DONE = 'Good. Then do once more what failed before, and tell me how it goes.';

/** A turn behind the deed tells what came of it. */
const TURNS = /\b(?:but|though|although|except|only|then it|still)\b/iu;

/** It was done, and no word of what came of it. */
const isMerelyDone = ({ context, before: { step } }: Began, text: string, { facts }: Reading): boolean => {
  const isAtOutcome = step.kind === 'try' || step.kind === NUMBERS;
  if (!isAtOutcome || facts.some(({ what }) => context.model.check(what) !== undefined)) return false;
  const { isDone, isCured } = curedByDeed(text);
  return !isCured && !TURNS.test(text) && (isDone || outcomeSaid(context.model.reading, text).what === 'done');
};

const OF_ANOTHER = 'That is another thing’s, and kept. Of the mount’s own:';

/** Said to a line of the club's talk. */
const OF_NO_MOUNT =
  'I hear nothing of a mount in that, and keep your words. If one is in trouble, tell me what it should do and what it does, or begin here:';

/** Said at a remedy of words that tell neither what came of it nor anything that is known here. */
const NOT_READ =
  'Kept, in your words, for whoever helps; I could not place it. After those lines: is the trouble gone, another now, or as it was?';

/** They speak for a cause or against one, and answer no question. */
const WEIGHED_IN = 'That tells something, and is weighed in.';

/** What is said to words that tell nothing of what the step asks: it was done, or they are of another thing. */
const besideTheStep = (began: Began, text: string, read: Reading): string | null => {
  if (isMerelyDone(began, text, read)) return DONE;
  if (read.suggested.length > 0 && read.understood.length + read.perhaps.length === 0) return WEIGHED_IN;
  return SHOWN_BY_IT.has(began.before.step.id) && withoutOtherThings(text) === '' ? OF_ANOTHER : null;
};

/** Whoever is in the middle of a walk speaks of the mount, whatever the words. */
const nothingSure = (began: Began, text: string, { suggested }: Reading): readonly string[] => {
  if (suggested.length > 0) return [WEIGHED_IN];
  if (!isAsked(began)) return [namesNoMount(began.context.model.reading, text) ? OF_NO_MOUNT : NOTHING_SURE];
  return [began.before.step.kind === 'try' ? NOT_READ : NOTHING_SURE];
};

const saidOf = (
  began: Began,
  text: string,
  read: Reading,
  meant: AnswerMeant | null,
  isLeft: boolean,
): readonly string[] => {
  const beside = isLeft && meant === null ? besideTheStep(began, text, read) : null;
  if (beside !== null) return [beside];
  const isUnread = read.understood.length + read.perhaps.length === 0;
  const said =
    isLeft && wasShown(began) && read.by === 'words' && isUnread
      ? [notPlaced(text, meant)]
      : readWords(began.context.model, read, meant, isLeft ? began.before.step.id : undefined);
  if (said[0] === NOTHING_SURE) return nothingSure(began, text, read);
  if (!isLeft || meant !== null || !isGuessAtSafety(began, text)) return said;
  return [...(read.understood.length > 0 ? said : []), NO_GUESS];
};

/** After so many lines beside it a question is not asked again. */
const MOST_LINES = 2;

/** How many lines of words came since something was last answered or tried, the opening left out. */
const linesSinceAnswer = ({ walk: { state } }: Began): number => {
  const said = state.events.filter(({ by }) => by !== null);
  const last = said.findLastIndex(({ kind }) => kind !== 'text' && kind !== 'supposed');
  return said.slice(Math.max(1, last + 1)).filter(({ kind }) => kind === 'text').length;
};

/** Values read out, or words to the same question twice, of which no answer was made, or none but the one asked back already. */
const isUnheardAgain = (began: Began, text: string, meant: AnswerMeant | null): boolean => {
  if (meant === null && readsOut(text, questionOf(began))) return true;
  if (lastSaidToIt(began) === null) return false;
  return meant === null || meant.id === nearestBefore(began)?.id || linesSinceAnswer(began) >= MOST_LINES;
};

/** Told already, or told twice in words that were not understood: the question in hand is gone on without. */
const takeGoneOn = (
  began: Began,
  text: string,
  state: WalkState,
  read: Reading,
  { said, meant }: { readonly said: readonly string[]; readonly meant: AnswerMeant | null },
): Turn | null => {
  const heard = read.understood.length > 0 ? said : [];
  const asSaid = wasShown(began) && !isSafetyLook(began.before.step) ? leftAsSaid(began, state, text, read) : null;
  if (asSaid !== null) return changed(began, asSaid, { notes: [...heard, SAID_ALREADY] });
  const { context, before } = began;
  const unsure =
    wasShown(began) && meant === null && beginsUnsure(text)
      ? answerStep(context.model, state, before.step.id, UNSURE, context.by)
      : null;
  if (unsure !== null && !isProblem(unsure)) return changed(began, unsure, { notes: heard });
  const passed = isUnheardAgain(began, text, meant) ? passStep(context.model, state, before.step.id, context.by) : null;
  return passed === null || isProblem(passed) ? null : changed(began, passed, { notes: [...heard, GO_ON] });
};

/** What the words leave to be said and shown, where they are no sure answer to the step in hand. */
const takeTold = (began: Began, text: string, told: WalkState, read: Reading, meant: AnswerMeant | null): Turn => {
  const { context, before } = began;
  const isAsked = hasBegun(began.walk) && (before.step.kind === 'ask' || before.step.kind === 'try');
  const asks = meant === null && read.named.length === 0 && asksOfStep(context.model.reading, text, read);
  if (asks && isAsked) return changed(began, told, { ...ASKED_BACK, at: before.step, asksBack: text });
  const state = meant === null ? withTouchedOn(began, told, read) : told;
  const isLeft = assess(context.model, state, context.outcomes).step.id === before.step.id;
  // A nearest answer is of no use over another question.
  const said = saidOf(began, text, read, isLeft ? meant : null, isLeft);
  const goneOn = isLeft ? takeGoneOn(began, text, state, read, { said, meant }) : null;
  return (
    goneOn ??
    changed(began, state, {
      notes: [...said, ...namedAtOnce(began, state, read)],
      at: before.step,
      first: isLeft && meant !== null ? [meant.id] : [],
      few: isLeft && wasShown(began),
    })
  );
};

/** "It talks now!" to a question after a remedy: that remedy's cure came late; what it was can be said at the end. */
const curedLate = ({ context, walk, before }: Began, text: string, read: Reading): string | null => {
  if (before.step.kind !== 'ask' || before.step.opening || read.by !== 'words') return null;
  const tried = walk.state.events.findLast((event) => event.kind === 'try');
  return tried !== undefined && outcomeSaid(context.model.reading, text).isCureAnywhere ? tried.fault : null;
};

/** A cure that the words put down to something else than the remedy in hand or the one before, or that came late. */
const takeCured = (
  began: Began,
  text: string,
  told: WalkState,
  sureId: string | undefined,
  late: string | null,
): Turn | null => {
  const { context, walk, before } = began;
  const remedy = late ?? (before.step.kind === 'try' && sureId === 'works' ? before.step.id : null);
  if (remedy === null) return null;
  const deed = deedSaidBefore(began);
  const credited =
    takeCredited(began, text, told, remedy) ?? (deed === null ? null : takeCredited(began, deed, told, remedy));
  if (credited !== null || late === null) return credited;
  const after = answerStep(context.model, walk.state, late, 'works', context.by);
  return isProblem(after) ? null : changed(began, after);
};

const IN_ORDER = 'Then that is in order; on to what else it can be.';
const NOT_THERE = 'Then it is not that; on to what else it can be.';

/** What was heard beside a sure answer. */
const soundOf = (began: Began, text: string, read: Reading, meant: AnswerMeant | null): readonly string[] => {
  const { model } = began.context;
  if (meant?.id === 'same' && (isDenied(began, text) || isFoundSet(began, text, read)))
    return isNotThere(began, text) ? [NOT_THERE] : [IN_ORDER, ...heardIn(model, read)];
  // The cure itself is said by the reply.
  if (meant?.id === 'works') return heardIn(model, read);
  return [
    ...leftToMend(began, text),
    ...readWords(model, read, meant?.id === UNSURE ? null : meant, began.before.step.id),
  ];
};

/** Answers in place of earlier ones, and what else was told with them. */
const takeCorrected = (
  { context, ...began }: Began,
  told: WalkState,
  read: Reading,
  corrected: readonly Correction[],
): Turn => {
  const taken = new Set(corrected.map(({ check }) => check));
  const state = corrected.reduce((at, one) => answerInstead(context.model, at, one, context.by), told);
  const besides = { ...read, understood: read.understood.filter(({ fact }) => !taken.has(fact.what)) };
  return changed({ context, ...began }, state, {
    notes: [`Noted instead: ${corrected.map(({ label }) => label).join('; ')}.`, ...heardIn(context.model, besides)],
    at: began.before.step,
  });
};

const ENTRIES = 'entries-screen';

/** "All match but the date", where the numbers of a miss are asked for: the entries were read instead. */
const takeOddEntry = (began: Began, text: string, state: WalkState, read: Reading): Turn | null => {
  const { context, before } = began;
  const check = before.step.kind === NUMBERS ? context.model.check(ENTRIES) : undefined;
  if (check === undefined || read.by !== 'words') return null;
  const odd = oddOne(context.model.reading.sayings.lexicon, text, check.answers, check.good);
  const answer = check.answers.find(({ id }) => id === odd?.id);
  const next = answer === undefined ? null : answerStep(context.model, state, ENTRIES, answer.id, context.by);
  if (answer === undefined || next === null || isProblem(next)) return null;
  return changed(began, next, {
    notes: readWords(context.model, read, { ...answer, score: 1, isSure: true }, ENTRIES),
  });
};

/** The record with the words and what is read of them, but for what they say of another thing, or set aside. */
const toldIn = (began: Began, text: string, how: 'log' | 'picture' | undefined) => {
  const { context, walk } = began;
  const cameAs = { by: how, known: began.known };
  const first = tellText(context.model, walk.state, text, context.by, cameAs);
  const anew = toldAnew(began, text, first.read);
  const whole =
    anew.length === 0
      ? first
      : tellText(context.model, withoutStood(began, walk.state, anew), text, context.by, cameAs);
  const own = withoutOthers(context.model, whole, text);
  return withoutSound(context.model, own, () => oddIn(began, text) !== null);
};

export const takeWords = (began: Began, text: string, how?: 'log' | 'picture'): Turn => {
  const { context, before } = began;
  const answered = (state: WalkState, id: string | undefined): WalkState | null => {
    const own = id === undefined ? state : withoutFactsOf(state, before.step.id, id);
    const after = id === undefined ? null : answerStep(context.model, own, before.step.id, id, context.by);
    return after === null || isProblem(after) ? null : after;
  };
  const { state: told, read } = toldIn(began, text, how);
  const state = withNamed(began, told, read);
  const corrected = correctionsIn(began, text, read);
  if (corrected.length > 0) return takeCorrected(began, state, read, corrected);
  const listed = takeBothSaid(began, text, state, read) ?? takeOddEntry(began, text, state, read);
  if (listed !== null) return listed;
  const meant = answerInWords(began, text, read);
  const sureId = meant?.isSure === true ? meant.id : undefined;
  // “It talks now” tells how far it gets as well.
  const late = sureId === undefined || COMPLAINT.has(before.step.id) ? curedLate(began, text, read) : null;
  const cured = takeCured(began, text, state, sureId, late);
  if (cured !== null) return cured;
  const sure = saidAfter(began, text, sureId) ?? answered(state, sureId);
  const aside = takeAside(began, text, state, read, meant);
  if (aside !== null) return aside;
  return sure === null
    ? (takeElsewhere(began, text, state, read, meant !== null) ?? takeTold(began, text, state, read, meant))
    : changed(began, sure, { notes: [...soundOf(began, text, read, meant), ...answeredBeside(began, sure, text)] });
};
