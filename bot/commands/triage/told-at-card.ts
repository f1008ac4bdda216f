/**
 * What a member's words at a remedy say of its outcome where they do not name it: they tell what is so now. The trouble as it was
 * means no change; another trouble means that something changed; what the remedy would have set right, found right, means no change.
 */
import { wordCountOf } from '../../ground/fold-text.js';
import {
  asksBack,
  asksWhatItIs,
  connectsAndFails,
  cureGrade,
  curedByDeed,
  deniesPremise,
  hasNone,
  hasOnlyOne,
  isNotDoneYet,
  isSetAlready,
  doingsNow,
  outcomeSaid,
  refusesAsFine,
  statesFailure,
  withoutOfItself,
  type Doing,
  type Reading,
  type SaidOutcome,
  type WrongNow,
} from '../../reading/index.js';
import { assess, type Assessment, type TryOutcome } from '../../triage/index.js';
import { lacksWhatItNeeds } from './lacks-what-it-needs.js';
import { callsOtherRight, isOfOtherEntry } from './other-entry.js';
import { MENDED_BY } from './mended-by.js';
import { speaksForIt } from './speaks-for-it.js';
import { saidBefore } from './said-before.js';
import type { Began } from './turn.js';

/** The complaint itself: how far it gets, what the program says, what the mount does. */
export const COMPLAINT: ReadonlySet<string> = new Set(['how-far', 'message', 'mount-does']);

/** Told of what was done, or of what came after it. */
const AFTERWARDS =
  /\b(?:now|still|again|after|afterwards|then|tried|did|done|have|ive|i['’]ve|put|set|chang(?:e|ed|ing)|chose|chosen|swapped|picked|plugged|installed|updated|switched|turned|pressed|moved|unplugged|replaced|checked|cleaned|restarted|rebooted|removed|already|allready|alredy|but|yet|same|both|anyway|instead|though)\b/iu;
export const tellsAfterwards = (text: string): boolean => AFTERWARDS.test(text);
/** Not done yet, or glad of it. */
const NOT_YET =
  /\b(?:moment|hang on|hold on|wait|sec(?:ond)?s?|trying|going to|gonna|will|shall|later|tomorrow|looking for|looking now|not yet|downloading|installing|in progress|let me|before i|should i|do i|can i|how|where|which|what)\b|\?/iu;
const GLAD =
  /\b(?:yay|great|brilliant|thanks?|thx|cheers|lovely|perfect|works?|working|found it|connects|connected|fine|good|super|hooray|hurrah|finally|at last|yes|wonderful)\b|!/iu;
const LEAST_WORDS = 3;

/** Whether the member was asked what came of this remedy and answered with words that did not say. */
const wasAskedAfter = ({ context, walk, before }: Began): boolean => {
  const { events } = walk.state;
  const last = events.at(-1);
  // Who found something meanwhile was heard, and has not said twice what nobody could place.
  if (last?.kind !== 'text' || last.facts.length > 0) return false;
  const { reading } = context.model;
  // Who asked how was shown how, and who has yet to do it is waited for: neither was asked what came of it.
  if (asksBack(reading.sayings.lexicon, last.words) || outcomeSaid(reading, last.words).what === 'not-yet')
    return false;
  const then = assess(context.model, { ...walk.state, events: events.slice(0, -1) }, context.outcomes).step;
  return then.kind === 'try' && then.id === before.step.id;
};

/** Less likely than this under the cause in hand, a trouble is not the one its remedy was to mend. */
const NOT_OF_IT = 0.15;

/** How likely the cause in hand shows itself so. */
const underCause = ({ situation, step }: Assessment, check: string, answer: string, fault = step.id): number => {
  const numbers = situation.checks[situation.checkIndex.get(check) ?? -1];
  const row = numbers?.odds[numbers.answers.indexOf(answer)];
  return row?.[situation.faultIndex.get(fault) ?? -1] ?? 1;
};

/** The trouble told anew: as it was, another than it was (or than this cause makes), or not told. */
const complaintNow = (
  { context: { model }, walk, before }: Began,
  { facts, suggested }: Reading,
): Told['complaint'] => {
  if (speaksForIt(before, suggested)) return null;
  const told = facts.filter(({ what, answer }) => COMPLAINT.has(what) && model.check(what)?.good !== answer);
  if (told.length === 0) return null;
  const said = saidBefore(walk.state.events);
  const isOther = told.some(({ what, answer }) => {
    const earlier = said.get(what);
    return earlier === undefined ? underCause(before, what, answer) < NOT_OF_IT : earlier !== answer;
  });
  return isOther ? 'other' : 'same';
};

interface Told {
  readonly complaint: 'other' | 'same' | null;
  /** What the remedy would have set right is right. */
  readonly isSet: boolean;
  /** It is looked at, and still as wrong as it was. */
  readonly isStillWrong: boolean;
}

const toldOf = (began: Began, read: Reading): Told => {
  const { step } = began.before;
  const { check, answer } = step.kind === 'try' ? step.fault.verify : {};
  const seen = COMPLAINT.has(check ?? '') ? undefined : read.facts.find(({ what }) => what === check);
  const isSet = seen !== undefined && seen.answer === answer;
  const isLikelyUnderIt =
    seen !== undefined && check !== undefined && underCause(began.before, check, seen.answer) >= NOT_OF_IT;
  return { complaint: complaintNow(began, read), isSet, isStillWrong: !isSet && isLikelyUnderIt };
};

/** What the remedy would have set right is told to be right, and no word that it was done: the remedy was not. */
export const isFoundSet = (began: Began, text: string, read: Reading): boolean =>
  toldOf(began, read).isSet && outcomeNamed(outcomeSaid(began.context.model.reading, text)) === null;

/** The trouble is told as it stands now. */
export const tellsComplaint = (began: Began, read: Reading): boolean => complaintNow(began, read) !== null;

/** "The plug gets warm": found meanwhile, of some part; whether the remedy was done it leaves open. */
const tellsOfPart = ({ context: { model } }: Began, { facts }: Reading): boolean =>
  facts.some(({ what }) => !COMPLAINT.has(what) && model.check(what) !== undefined);

/** Asked a second time what came of it, and told of other things: it is not cured. */
const tellsElse = (began: Began, text: string, read: Reading): boolean =>
  !NOT_YET.test(text) &&
  !tellsOfPart(began, read) &&
  // "Added it, and logged out": done, and what came of it is still to be said.
  !curedByDeed(text).isDone &&
  wordCountOf(text) >= LEAST_WORDS &&
  !isOfOtherEntry(began, text) &&
  !speaksForIt(began.before, read.suggested);

/** @returns null where it cannot be told from the words either */
const outcomeTold = (began: Began, text: string, read: Reading): TryOutcome | null => {
  if (began.before.step.kind !== 'try' || read.by !== 'words') return null;
  const isAskedAfter = wasAskedAfter(began);
  const isAfter = AFTERWARDS.test(text);
  if (!isAfter && (NOT_YET.test(text) || !(isAskedAfter || toldOf(began, read).isSet))) return null;
  const { complaint, isSet, isStillWrong } = toldOf(began, read);
  if (complaint !== null) return complaint === 'other' ? 'changed' : 'same';
  if (GLAD.test(text)) return null;
  if (isAfter && isStillWrong) return 'same';
  return isSet || (isAskedAfter && tellsElse(began, text, read)) ? 'same' : null;
};

/** Of what was done at this remedy. */
const DID =
  /\b(?:now|(?:i|we)(?: have|['\u2019]ve)? \w+ed|did|done|swapped|changed|set|put|moved|got|took|borrowed|fetched|grabbed|new|another|other|different)\b/iu;
/** Likelier than this under the cause in hand, a part found so does not speak against it. */
const REFUTES = 0.2;

/** "It carries data, my scanner uses it": a part is told to be as this cause would hardly have it. */
const isRefuted = ({ context: { model }, before }: Began, { by, facts }: Reading): boolean =>
  by === 'words' &&
  before.step.kind === 'try' &&
  facts.some(({ what, answer, or }) => {
    const check = model.check(what);
    const isOfPart = check !== undefined && !COMPLAINT.has(what) && check.contrast === undefined && or === undefined;
    return isOfPart && check.good === answer && underCause(before, what, answer) <= REFUTES;
  });

const I_COULD_NOT = /\b(?:i|we|me|us)\b[^.;,!?]{0,25}\b(?:can(?:not| not|['’]?t)|could(?: not|n['’]?t)|unable)\b/iu;

/** Partly helped and made worse are one to the walk: something changed. */
const TRY_OUTCOMES: Readonly<Partial<Record<SaidOutcome['what'], TryOutcome>>> = {
  cured: 'works',
  partly: 'changed',
  worse: 'changed',
  unchanged: 'same',
  'could-not': 'could-not',
};

/** What words say of a remedy outright. */
export const outcomeNamed = ({ what, how, isCureAtRemedy }: SaidOutcome): TryOutcome | null =>
  how === 'outright' || isCureAtRemedy === true ? (TRY_OUTCOMES[what] ?? null) : null;

/** Whether they say what came of it, outright or likely. */
export const tellsOutcome = ({ what }: SaidOutcome): boolean => what === 'done' || TRY_OUTCOMES[what] !== undefined;

/** From here on a failure is taken as told; a cure never is. */
const AS_GOOD_AS_TOLD = 0.8;

/** What they are like, which is asked back. */
export const outcomeLike = ({ what, how, sureness }: SaidOutcome): { id: TryOutcome; isSure: boolean } | null => {
  const id = how === 'outright' || what === 'cured' ? undefined : TRY_OUTCOMES[what];
  return id === undefined ? null : { id, isSure: sureness >= AS_GOOD_AS_TOLD };
};

const HOW_FAR = 'how-far';
const NOT_CONNECTED = ['no-light', 'not-seen', 'no-connect', 'drops'] as const;
/** Likelier than this, the cause in hand keeps the computer from the mount. */
const KEEPS_AWAY = 0.5;

/** Whether a cause is one of the link itself. */
export const keepsAway = (assessment: Assessment, fault: string): boolean =>
  NOT_CONNECTED.reduce((sum, answer) => sum + underCause(assessment, HOW_FAR, answer, fault), 0) > KEEPS_AWAY;

const NO_DOINGS: ReadonlySet<Doing> = new Set();
const likeliest = (before: Assessment, check: string): string | undefined => {
  const answers = before.situation.checks[before.situation.checkIndex.get(check) ?? -1]?.answers ?? [];
  return answers.reduce<string | undefined>(
    (best, one) =>
      best === undefined || underCause(before, check, one) > underCause(before, check, best) ? one : best,
    undefined,
  );
};

/** What the mount must do now for that to be mended which failed; undefined where nobody knows. */
const mendingDoings = ({ walk, before }: Began): readonly Doing[] | undefined => {
  const { step } = before;
  const said = saidBefore(walk.state.events);
  const told = ['mount-does', HOW_FAR].map((one) => `${one}.${said.get(one) ?? ''}`);
  const { check = '', answer = '' } = step.kind === 'try' ? step.fault.verify : {};
  const expected = step.kind === 'try' ? likeliest(before, HOW_FAR) : undefined;
  const failed = [`${check}.${answer}`, ...told, `${HOW_FAR}.${expected ?? ''}`];
  return failed.map((one) => MENDED_BY.get(one)).find((one) => one !== undefined);
};

/** What the words at a remedy say is done now, held against what failed; null where they say nothing of the kind. */
const doneNow = (began: Began, text: string): 'what-failed' | 'another' | null => {
  const now = began.before.step.kind === 'try' ? doingsNow(text) : NO_DOINGS;
  const mends = now.size === 0 ? undefined : mendingDoings(began);
  if (mends === undefined) return null;
  return mends.some((doing) => now.has(doing)) ? 'what-failed' : 'another';
};

/** Whether the words say by themselves that what failed works now. */
export const isSureCure = (began: Began, text: string): boolean => {
  const { grade, doings } = cureGrade(text);
  if (grade === 'none') return false;
  if (doneNow(began, text) === 'what-failed') return true;
  if (grade !== 'sure' || doings.size === 0) return grade === 'sure';
  return mendingDoings(began)?.some((doing) => doings.has(doing)) ?? true;
};

export const doesWhatFailed = (began: Began, text: string): boolean => doneNow(began, text) === 'what-failed';

/** That the link stands is no cure of a miss. */
export const doesOther = (began: Began, text: string): boolean => doneNow(began, text) === 'another';

/** What is wrong now that the link stands; null where the cause in hand was never one of the link. */
export const wrongNowLinked = ({ before }: Began, text: string): WrongNow | null => {
  if (before.step.kind !== 'try') return null;
  return keepsAway(before, before.step.id) ? connectsAndFails(withoutOfItself(text)) : null;
};

/** What the remedy in hand is for is not there at all. */
export const isNotThere = ({ before: { step } }: Began, text: string): boolean =>
  step.kind === 'try' && (hasNone(text, step.fault.title) || hasOnlyOne(text, step.fault.title));

const isPremiseDenied = ({ context, before: { step } }: Began, text: string): boolean =>
  step.kind === 'try' &&
  deniesPremise(text, step.fault.title) &&
  !['partly', 'worse'].includes(outcomeSaid(context.model.reading, text).what) &&
  !I_COULD_NOT.test(text);

/** What the remedy in hand is for is denied: it was looked at already, is as it should be, or is not there. */
export const isDenied = (began: Began, text: string): boolean =>
  !asksWhatItIs(text) &&
  (isNotThere(began, text) ||
    (isPremiseDenied(began, text) && !isOfOtherEntry(began, text)) ||
    (began.before.step.kind === 'try' && (isSetAlready(text) || refusesAsFine(text))));

/** "The app has no permission for the location": what is wrong elsewhere, and no word on this remedy. */
const tellsOtherCause = ({ context: { model }, before: { step } }: Began, { facts }: Reading): boolean =>
  facts.some(({ what, answer }) => {
    const check = model.check(what);
    const isOfRemedy = step.kind === 'try' && step.fault.verify.check === what;
    return (
      check !== undefined && !COMPLAINT.has(what) && !isOfRemedy && check.good !== undefined && check.good !== answer
    );
  });

/** What goes before every word of a cure. */
const failureIn = (began: Began, text: string, read: Reading): TryOutcome | null => {
  if (statesFailure(text)) return 'same';
  if (lacksWhatItNeeds(began, text)) return 'could-not';
  if (wrongNowLinked(began, text) !== null) return 'changed';
  const isNoCause = isDenied(began, text) || (!DID.test(text) && isRefuted(began, read) && !isSureCure(began, text));
  return isNoCause ? 'same' : null;
};

/** What came of the remedy in hand: by name, or by what is told; "it could not open the port" is the trouble and no "could not do it". */
export const outcomeIn = (began: Began, text: string, read: Reading): TryOutcome | null => {
  if (isNotDoneYet(text) || callsOtherRight(began, text)) return null;
  const failure = failureIn(began, text, read);
  if (failure !== null) return failure;
  const now = doneNow(began, text);
  if (now === 'what-failed') return 'works';
  const said = outcomeNamed(outcomeSaid(began.context.model.reading, text));
  const named = said === 'works' && now === 'another' ? null : said;
  if (named !== 'could-not' || I_COULD_NOT.test(text)) return named ?? outcomeTold(began, text, read);
  if (tellsOtherCause(began, read)) return null;
  return (toldOf(began, read).complaint === null ? null : outcomeTold(began, text, read)) ?? named;
};
