/** Words about the talk itself while a walk waits: not understood, asked before, the wrong log, not now. None of them is told of the mount. */
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import {
  answersItself,
  leavesWalk,
  ofTheTalk,
  readText,
  supposition,
  suspectedCause,
  tellsFinding,
  thingsLacked,
  withoutSaidAlready,
  type OfTheTalk,
} from '../../reading/index.js';
import { answerStep, passStep, UNSURE } from '../../triage/index.js';
import { answerInWords, isSafetyLook } from './answer-in-words.js';
import { answerOfDoing, ASKED_BACK, asksOfDoing } from './asks-back.js';
import { takeHow } from './asks-how.js';
import { keptWords } from './kept-words.js';
import { takeBackChoices } from './read-notes.js';
import { answersOf } from './step-data.js';
import { GO_ON } from './take-words.js';
import { isDenied } from './told-at-card.js';
import { changed, isAsked, type Began, type Doing, type Turn } from './turn.js';

/** Said where a walk goes on waiting. */
export const STAYS = 'The walk waits where it was: answer its last question whenever you like.';

const LOST = 'Sorry. Here is how, once more. “Not sure” is an answer too, and “a person please” hands it to a helper.';
const HOW_LONG = 'Most walks take four to eight steps. “Not sure” passes one on.';
const NOT_SAID = 'Sorry. Tell me in other words what is wrong; yours are kept.';

const WAITS = new Map<OfTheTalk, string>([
  ['later', 'No hurry.'],
  ['idle', 'I am here.'],
]);

const DOES = new Map<OfTheTalk, Doing>([
  ['takes-back', 'back'],
  ['so-far', 'doubt'],
  ['misread', 'doubt'],
  ['why', 'why'],
]);

/** A remedy has its own words for what is still to be done, and for questions about it. */
const AT_A_REMEDY: readonly OfTheTalk[] = ['takes-back', 'misread', 'how-long'];

/** Nothing of how the mount does; "I said so already, an iPad" names the set-up beside the talk, "iPad" alone is no talk. */
const tellsNothing = ({ context: { model }, before }: Began, text: string, kind: OfTheTalk | null = null): boolean => {
  const { facts, perhaps } = readText(model.reading, text);
  // "Dropped it getting out of the car" may answer what is asked.
  if (perhaps.some(({ what }) => what === before.step.id)) return false;
  const mayNameSetUp = kind === null || kind === 'asked-before';
  return mayNameSetUp ? facts.every(({ what }) => model.check(what) === undefined) : facts.length === 0;
};

const ASKS_WHICH = /\b(?:is|could|can|may|might|would) (?:it|this|that) (?:be )?(?:\w+ ){0,3}or (?:the|my|a)\b/iu;

/** "What's the time" asks for no length of anything. */
export const asksTheTime = (text: string): boolean =>
  /\bwhat(?:['\u2019]?s| is)? the (?:right |exact |correct )?time\b(?! (?:left|needed|it takes))|\bwhat time is it\b/iu.test(
    text,
  );

/** "Is it maybe the driver?" asks for a look, not for a reason; "is it the site or the time" not for how long it takes. */
const asksForALook = (kind: OfTheTalk, text: string): boolean =>
  asksTheTime(text) ||
  suspectedCause(text) !== null ||
  ((kind === 'why' || kind === 'how-long') && (supposition(text) !== null || ASKS_WHICH.test(text)));

/** "Sidereal I said!" answers what is asked once more. */
const isAnswered = (began: Began, text: string): boolean =>
  withoutSaidAlready(text) !== null ||
  answerInWords(began, text, readText(began.context.model.reading, text))?.isSure === true;

/** What the words are of the talk, where a question or a remedy waits for words. */
const kindOf = (began: Began, text: string): OfTheTalk | null => {
  const { model } = began.context;
  const { step } = began.before;
  const isWaiting = isAsked(began) && !answersItself(text) && leavesWalk(model.reading, text) === null;
  const kind =
    isWaiting && !isDenied(began, text) && thingsLacked(text).size === 0 ? ofTheTalk(model.reading, text) : null;
  if (kind === null || (step.kind === 'try' && !AT_A_REMEDY.includes(kind))) return null;
  // "As I said" is heard with what was said, where the words of it are known.
  if ((kind === 'asked-before' && isAnswered(began, text)) || (kind === 'later' && tellsFinding(text))) return null;
  return !asksForALook(kind, text) && tellsNothing(began, text, kind) ? kind : null;
};

/** "Is that safe", "do I need the internet for that". */
const takeOfDoing = (began: Began, text: string): Turn | null =>
  isAsked(began) && asksOfDoing(text) && tellsNothing(began, text)
    ? changed(began, began.walk.state, { ...answerOfDoing(text), at: began.before.step, asksBack: text })
    : null;

/** What is not known by name is seldom there: "don't know what that is, so no". */
const KNOWS_NOT_WHAT =
  /\b(?:do ?n['\u2019]?t|do not|dont|no idea|not sure|never heard|what['\u2019]?s|what) (?:really )?(?:know |of |understand )?(?:what )?(?:that|it|this|an?|the|those|one)?\b[^.;!?]{0,24}\b(?:is|means?|are|of)\b/iu;
const SO_NO =
  /\b(?:so|then|but|therefore|probably|guess|think|assume|presume|say) (?:i (?:guess|think|say|assume) |probably |it['\u2019]?s )*(?:no|not|none|nope)\W*$/iu;

/** A look at what the member does not know by name is passed on, or answered with the no that they say. */
const takeUnknown = (began: Began, text: string, kind: OfTheTalk): Turn | null => {
  const { context, walk, before } = began;
  const { step } = before;
  if (kind !== 'lost' || step.kind !== 'ask' || step.opening || !KNOWS_NOT_WHAT.test(text) || !SO_NO.test(text))
    return null;
  const none = isSafetyLook(step) ? undefined : answersOf(before).find(({ label }) => /^no\b/iu.test(label));
  const state = answerStep(
    context.model,
    keptWords(context.by, walk.state, text),
    step.id,
    none?.id ?? UNSURE,
    context.by,
  );
  return isProblem(state)
    ? null
    : changed(began, state, { notes: none === undefined ? [] : [`I take it: ${none.label}.`] });
};

/** @param take what the word about the walk that these words are does */
export const takeOfTheTalk = (
  began: Began,
  text: string,
  take: (doing: Doing) => Turn | Problem | null,
): Turn | Problem | null => {
  const { context, walk, before, notes } = began;
  const asked = takeHow(began, text) ?? takeOfDoing(began, text);
  if (asked !== null) return asked;
  const kind = kindOf(began, text);
  if (kind === null) return null;
  const told = (note: string): Turn => ({ walk, notes: [...notes, note], at: before.step, show: 'step' });
  const doing = DOES.get(kind);
  if (doing === 'doubt' && takeBackChoices(context.model, walk).length === 0) return told(NOT_SAID);
  if (doing !== undefined) return take(doing);
  const unknown = takeUnknown(began, text, kind);
  if (unknown !== null) return unknown;
  const waits = WAITS.get(kind);
  if (waits !== undefined) return problem('beside-the-walk', `${waits} ${STAYS}`);
  if (kind === 'how-long') return told(HOW_LONG);
  const passed =
    kind === 'asked-before' && before.step.kind === 'ask'
      ? passStep(context.model, walk.state, before.step.id, context.by)
      : null;
  if (passed !== null && !isProblem(passed)) return changed(began, passed, { notes: [GO_ON] });
  return changed(began, walk.state, {
    ...ASKED_BACK,
    ...(kind === 'lost' ? { notes: [LOST] } : {}),
    at: before.step,
    asksBack: text,
  });
};
