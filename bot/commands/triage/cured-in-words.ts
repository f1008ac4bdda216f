/** A cure told with what was done for it: credited at once to that, whichever remedy or question stands. Nothing is asked back. */
import { isProblem } from '../../ground/problem.js';
import { curedByDeed, outcomeSaid, readText, type DeedTold } from '../../reading/index.js';
import { answerStep, standing, tellText, type WalkState } from '../../triage/index.js';
import { HAS_CHANGED, IS_OTHERWISE, isAnswer, remedyOf, tellsContrast } from './asks-fixed.js';
import { askedWhich, creditedIn, creditedTo, failedBefore, type Credited } from './credited.js';
import { saidBefore } from './said-before.js';
import { wrongNowLinked } from './told-at-card.js';
import { changed, isAsked, wordsAlone, type Began, type SaidInTurn, type Turn } from './turn.js';

const HOW_FAR = 'how-far';
/** The mount had answered before: that it does so now is no cure. */
const LINKED_BEFORE: readonly string[] = ['drops', 'elsewhere', 'refuses', 'connects'];

const isLinkOnly = ({ walk }: Began, { isOfTheLink }: DeedTold): boolean =>
  isOfTheLink && LINKED_BEFORE.includes(saidBefore(walk.state.events).get(HOW_FAR) ?? '');

/** "With my friend's laptop it works" tells where the trouble lies. */
const isContrast = ({ context: { model } }: Began, text: string): boolean =>
  tellsContrast(model, readText(model.reading, text));

/** "Pushed the plug in and it works now" is no answer to what a device's status says. */
const isCureAnywhere = ({ context }: Began, text: string): boolean =>
  curedByDeed(text).isDone && outcomeSaid(context.model.reading, text).isCureAnywhere;

/** Beside a cause that is not told plainly: another trouble, a comparison, or the question's own answer. */
const isElsewhere = (began: Began, text: string): boolean =>
  wrongNowLinked(began, text) !== null ||
  isContrast(began, text) ||
  (began.before.step.kind === 'ask' && isAnswer(began, text) && !isCureAnywhere(began, text));

/** A question, a remedy or numbers stand before the member, or the sheet for a helper. */
const isWaiting = (began: Began): boolean => isAsked(began) || began.before.step.kind === 'handOn';

/** A cure without a word on what was done: something is said to be otherwise; where no remedy was shown, by more than a part at work. */
const mayBeCure = (text: string, isPlain: boolean, expected: string | undefined): boolean =>
  expected === undefined ? isPlain && IS_OTHERWISE.test(text) : HAS_CHANGED.test(text) || !HAS_IT_NOT.test(text);
/** "I don't have a VPN, the ping answers": that remedy was for another. */
const HAS_IT_NOT =
  /^\W*(?:(?:but|hey|sorry|well),? )*(?:no\b(?! more)|nope|none|(?:i|we) (?:do ?n['\u2019]?t|do not|have ?n['\u2019]?t) (?:have|use|got)|(?:i|we) have no|there (?:is|are|was) (?:no\b|not|none)|(?:as )?i said)/iu;

const isFault = (credited: Credited): boolean => credited !== null && credited !== 'else' && !('among' in credited);

/** The remedy in hand, in other words than its own. */
const curedAsShown = (began: Began, state: WalkState, expected: string | undefined): Turn | null => {
  const { model, by } = began.context;
  const cured = expected === undefined ? null : answerStep(model, state, expected, 'works', by);
  return cured === null || isProblem(cured) ? null : changed(began, cured);
};

/** Which of those that stand likeliest now it was. */
const MOST_NAMED = 3;
const askedLikeliest = (began: Began, state: WalkState, failed: ReadonlySet<string>): Turn => {
  const likely = standing(began.before).filter(
    ({ faultId }) => began.context.model.fault(faultId) !== undefined && !failed.has(faultId),
  );
  return askedWhich(
    began,
    state,
    likely.slice(0, MOST_NAMED).map(({ faultId }) => faultId),
  );
};

/** "Lowered it, it still beeps": told outright, that stands against what sounds good beside it. */
const isUnchanged = ({ context }: Began, text: string): boolean => {
  const { what, how, isCuredBesides } = outcomeSaid(context.model.reading, text);
  return what === 'unchanged' && how === 'outright' && isCuredBesides !== true;
};

/** Where nothing was tried: words of what was done lately and of what is well, and little like a cure. */
const HARDLY = 0.5;
const isHardlyCure = ({ context }: Began, text: string): boolean => {
  const { what, cure } = outcomeSaid(context.model.reading, text);
  return what === 'nothing' && cure < HARDLY;
};

const isNoCureHere = (began: Began, told: DeedTold, text: string): boolean =>
  isLinkOnly(began, told) || isUnchanged(began, text) || (remedyOf(began) === undefined && isHardlyCure(began, text));

/** @returns null where no deed is told with a cure, or what was done is not told well enough */
export const takeCuredInWords = (began: Began, said: SaidInTurn): Turn | null => {
  const text = wordsAlone(said);
  if (text === null || !isWaiting(began)) return null;
  const told = curedByDeed(text);
  if (!told.isCured || told.deed === '' || isNoCureHere(began, told, text)) return null;
  const expected = remedyOf(began);
  const credited = creditedIn(began, text, expected);
  const isPlain = isFault(credited);
  if (!isPlain && isElsewhere(began, text)) return null;
  if (!told.isDone && !mayBeCure(text, isPlain, expected)) return null;
  const { state } = tellText(began.context.model, began.walk.state, text, began.context.by);
  if (credited !== null) return creditedTo(began, credited, state, expected);
  // What did nothing when it was tried is not what was done now.
  const failed = failedBefore(began);
  if (told.isDone && expected !== undefined && failed.has(expected)) return askedLikeliest(began, state, failed);
  return curedAsShown(began, state, expected);
};
