/** A cure told by the way, in whatever words: where they are not plain enough to end the walk, it is asked outright, and one press ends it. */
import { wordCountOf } from '../../ground/fold-text.js';
import { isProblem } from '../../ground/problem.js';
import {
  allWell,
  cureGrade,
  curedByDeed,
  hasWordOfCure,
  heldFor,
  outcomeSaid,
  readText,
  tellsAstray,
  yesOrNo,
  type Reading,
  type SaidOutcome,
} from '../../reading/index.js';
import { answerStep, assess, couldNotDo, standing, type Step, type TriageModel } from '../../triage/index.js';
import { answerInWords } from './answer-in-words.js';
import { askedWhich, creditedIn, takeCredited } from './credited.js';
import { isAffirmed, isShortCure } from './short-cure.js';
import { saidBefore } from './said-before.js';
import { answersOf } from './step-data.js';
import {
  COMPLAINT,
  doesOther,
  doesWhatFailed,
  isDenied,
  isFoundSet,
  tellsComplaint,
  wrongNowLinked,
} from './told-at-card.js';
import { keptWords } from './kept-words.js';
import { deedBeforeLast, deedSaidBefore } from './last-said.js';
import { answerLine, doLine, hasBegun } from './walk-words.js';
import { changed, isAsked, type Began, type Turn } from './turn.js';

/** The remedy in hand, or the one done last: what a cure is put down to. */
export const remedyOf = ({ walk, before: { step } }: Began): string | undefined => {
  if (step.kind === 'try') return step.id;
  const tried = walk.state.events.findLast((event) => event.kind === 'try');
  return tried?.kind === 'try' ? tried.fault : undefined;
};

/** Beside a trouble, or a question after a remedy, words that are only like a cure are one from here on. */
const LIKE_A_CURE = 0.7;
/** Shorter ones are answers to the question rather: "yes", "rock solid". */
const LEAST_WORDS = 6;

const tellsCure = ({ what }: SaidOutcome): boolean => what === 'cured' || what === 'done';

const isLongCure = (text: string, said: SaidOutcome): boolean =>
  tellsCure(said) && said.cure >= LIKE_A_CURE && wordCountOf(text) >= LEAST_WORDS && !tellsAstray(text);

/** What is told beside likeness to a cure is a guess from here on. */
const GUESSED = 0.6;

/** Whether it is told how another way fares, which says where the trouble lies. */
export const tellsContrast = (model: TriageModel, { facts }: Pick<Reading, 'facts'>): boolean =>
  facts.some(({ what }) => model.check(what)?.contrast !== undefined);

/** Likeness alone: a part found in order, or where the stars go instead, is no cure. */
const isNoCure = ({ context: { model } }: Began, text: string, { facts, perhaps }: Reading): boolean => {
  if (tellsAstray(text)) return true;
  // "Works with my mate's laptop" tells where the trouble lies.
  if (tellsContrast(model, { facts })) return true;
  if (hasWordOfCure(text)) return false;
  const isOfTrouble = facts.some(({ what, answer }) => COMPLAINT.has(what) && model.check(what)?.good !== answer);
  const told = [...facts, ...perhaps.filter(({ sureness }) => sureness >= GUESSED)];
  return isOfTrouble || told.some(({ what }) => !COMPLAINT.has(what) && model.check(what) !== undefined);
};

/** Something has changed for the good: what stands so is looked at, and what was done tells nothing of what came of it. */
export const HAS_CHANGED =
  /\b(?<!\bi see )now\b|\b(?:again|at last|finally|suddenly|since|sorted|fixed|solved|cured|mended|hoo?ray|hurra\w*|woo ?hoo|yay|brilliant|perfect|success|thanks?|thx|cheers|did it|the trick|no more|works? (?:fine|well|great|a treat|like)|working|goes|spot on|bang on|alive|lives|came|come|bingo|eureka|victory|never ?mind|got (?:it|the thing|her|everything) \w+ing|gone|over|happy days|job done)\b/iu;

const GLAD_WORDS =
  'sorted|fixed|solved|cured|mended|hoo?ray|hurra\\w*|woo ?hoo|yay|brilliant|perfect|success|thanks?|thx|cheers|did it|the trick|spot on|bang on';
const GLAD = new RegExp(`\\b(?:${GLAD_WORDS})\\b`, 'iu');

/** The same as {@link HAS_CHANGED} of the whole: that a part is "working" tells nothing of it. */
export const IS_OTHERWISE = new RegExp(
  `\\b(?<!\\bi see )now\\b|\\b(?:again|at last|finally|suddenly|no more|works a treat|bingo|eureka|victory|never ?mind|happy days|job done|${GLAD_WORDS})\\b`,
  'iu',
);

/** Where nothing was tried, a short word must say that something is otherwise. */
const IS_EXCITED = /!|\b(?<!\bi see )now\b/iu;

/** The computer did not reach the mount, as was told: that it is connected is another thing now. */
const isTurnedRound = ({ walk }: Began, text: string): boolean =>
  NOT_LINKED.includes(saidBefore(walk.state.events).get('how-far') ?? '') && /\b(?:connect|link|online)/iu.test(text);
const NOT_LINKED: readonly string[] = ['no-light', 'not-seen', 'no-connect'];

/** … at a question: told outright, or by how it is now. */
const tellsAtQuestion = (began: Began, text: string, { how, isCureAnywhere }: SaidOutcome): boolean => {
  // Asked where it lands, it lands in the middle.
  if (began.before.step.kind === 'numbers' && isCureAnywhere) return true;
  const isTried = remedyOf(began) !== undefined;
  if (isShortCure(began, text) && (isTried || IS_EXCITED.test(text) || isTurnedRound(began, text))) return true;
  if (heldFor(text)) return true;
  // Where nothing was tried, a "now" may stand beside any look.
  if (how === 'like' && !isTried) return GLAD.test(text);
  return HAS_CHANGED.test(text) && (how !== 'like' || hasWordOfCure(text));
};

/** Whether a cure is told at all: at a question, more than that a part is as it should be; at a remedy, more than that it was done. */
const tellsOfCure = (began: Began, text: string, said: SaidOutcome): boolean => {
  const told = curedByDeed(text);
  if (told.isCured && told.isDone) return true;
  if (said.how === 'like' && began.walk.state.asked?.kind === 'fixed') return false;
  if (began.before.step.kind === 'try') return said.what === 'cured' && !(said.how === 'like' && told.isDone);
  return tellsAtQuestion(began, text, said);
};

/** "Got my printer's lead, com4 is there": by another deed what the remedy is for has come right. */
const isSetByDeed = (began: Began, text: string): boolean =>
  curedByDeed(text).isDone &&
  !isDenied(began, text) &&
  isFoundSet(began, text, readText(began.context.model.reading, text));

const soundsSo = (began: Began, text: string): boolean => {
  const { reading } = began.context.model;
  const said = outcomeSaid(reading, text);
  if (began.before.step.kind === 'try' && isAffirmed(text)) return !isDenied(began, text);
  if (isSetByDeed(began, text)) return true;
  if (!tellsCure(said) || wrongNowLinked(began, text) !== null || isDenied(began, text)) return false;
  if (doesOther(began, text)) return false;
  if (!tellsOfCure(began, text, said)) return false;
  if (said.how !== 'like') return true;
  const read = readText(reading, text);
  if (isNoCure(began, text, read)) return false;
  if (began.before.step.kind === 'try') return said.cure >= LIKE_A_CURE || !tellsComplaint(began, read);
  if (remedyOf(began) !== undefined) return said.cure >= LIKE_A_CURE;
  return read.facts.length === 0 && isLongCure(text, said);
};

/** "Yes, it works there": the question's own answer, and no cure. */
export const isAnswer = (began: Began, text: string): boolean => {
  const { how } = outcomeSaid(began.context.model.reading, text);
  const meant = answerInWords(began, text, readText(began.context.model.reading, text));
  if (meant?.isSure !== true) return false;
  if (how === 'like') return true;
  const good = began.context.model.check(began.before.step.id)?.good;
  // "All good" of the lines that were to be looked at.
  if (allWell(text, answersOf(began.before), good) !== null) return true;
  return /\b(?:works?|connects?|answers)\b/iu.test(meant.label);
};

/** What a pressed yes runs: which of several remedies it was is asked behind it. */
const yesLine = (began: Began, text: string, remedy: string | undefined): string => {
  const { walk } = began;
  const credited = creditedIn(began, text, remedy) ?? creditedIn(began, deedSaidBefore(began) ?? '', remedy);
  if (credited === 'else') return doLine(walk, 'end');
  if (credited !== null)
    return 'among' in credited ? `triage walk:${walk.id} yes` : answerLine(walk, credited.fault, 'works');
  if (remedy === undefined) return doLine(walk, 'end');
  // What could not be done is no cure unasked.
  return couldNotDo(walk.state, remedy) ? `triage walk:${walk.id} yes` : answerLine(walk, remedy, 'works');
};

/**
 * The turn that asks whether it works now, of each remedy once.
 * @param turn whose record holds the words
 * @returns null where it was asked before
 */
export const askedOnce = (began: Began, text: string, turn: Turn, remedy: string | undefined): Turn | null => {
  const { state } = turn.walk;
  // Beside how often each question was put.
  const key = `fixed.${remedy ?? ''}`;
  if (remedy !== undefined && state.put?.[key] !== undefined) return null;
  return {
    ...turn,
    walk: { ...turn.walk, state: { ...state, put: { ...state.put, [key]: 1 } } },
    ifFixed: yesLine(began, text, remedy),
    asks: { kind: 'fixed', remedy: remedy ?? null },
  };
};

/** So many of those that stand are named at the end. */
const MOST_NAMED = 3;

/** "Its fixed" at the sheet for a helper: what it was is asked, the likeliest named. */
const takeCuredAtSheet = (began: Began, text: string): Turn | null => {
  const { context, walk, before } = began;
  if (before.step.kind !== 'handOn' || !hasBegun(walk) || !isShortCure(began, text)) return null;
  const faults = standing(before, MOST_NAMED).map(({ faultId }) => faultId);
  const known = faults.filter((id) => context.model.fault(id) !== undefined);
  return askedWhich(began, keptWords(context.by, walk.state, text), known);
};

/** @returns null where the words do not sound so, or are plain enough by themselves */
export const takeSoundsCured = (began: Began, text: string): Turn | null => {
  const atSheet = takeCuredAtSheet(began, text);
  if (atSheet !== null) return atSheet;
  const { context, before } = began;
  const { step } = before;
  const said = outcomeSaid(context.model.reading, text);
  if (!isAsked(began) || !soundsSo(began, text)) return null;
  const isPlain = said.how === 'outright' || said.isCureAtRemedy === true || doesWhatFailed(began, text);
  if (step.kind === 'try' && isPlain) return null;
  if (step.kind === 'ask' && isAnswer(began, text) && !(COMPLAINT.has(step.id) && said.how !== 'like')) return null;
  const remedy = remedyOf(began);
  // Plainly cured after a remedy: that one's cure came late.
  if (step.kind === 'ask' && remedy !== undefined && said.isCureAnywhere) return null;
  return askedOnce(began, text, changed(began, keptWords(context.by, began.walk.state, text), { at: step }), remedy);
};

/** "It was com7, I put 7 in and off she goes": the remedy told of before it was shown. */
const isRemedyTold = (step: Step, text: string, said: SaidOutcome): boolean =>
  said.isCuredBesides === true || (step.kind === 'try' && isLongCure(text, said));

/** Words at a question that tell a cure besides: asked outright where what they tell leads to a remedy. */
export const askedIfFixed = (began: Began, text: string, turn: Turn): Turn => {
  const { context, before } = began;
  const said = outcomeSaid(context.model.reading, text);
  if (!isAsked(began) || (before.step.kind !== 'ask' && said.isCuredBesides !== true)) return turn;
  const { step } = assess(context.model, turn.walk.state, context.outcomes);
  if (!isRemedyTold(step, text, said) || !(said.isCuredBesides === true || tellsOfCure(began, text, said))) return turn;
  return askedOnce(began, text, turn, step.kind === 'try' ? step.id : undefined) ?? turn;
};

export const STILL_GOOD = 'Good to hear; the walk ends here. Clear skies.';

/** What a yes takes for the cure; `end`: none of this walk's remedies. */
const takeFixed = (began: Began, rest: string): Turn | 'end' | null => {
  const { context, walk } = began;
  const last = walk.state.events.findLast(({ kind }) => kind === 'text');
  const words = last?.kind === 'text' ? last.words : '';
  const isBesides = outcomeSaid(context.model.reading, words).isCuredBesides === true;
  // What was tried last did nothing.
  const { asked } = walk.state;
  const askedOf = asked?.kind === 'fixed' ? (asked.remedy ?? undefined) : undefined;
  const remedy = isBesides && began.before.step.kind !== 'try' ? undefined : (askedOf ?? remedyOf(began));
  // "Yes, it was the cable" says it better than what was said before.
  const credited = [rest, words, deedBeforeLast(began) ?? '']
    .map((said) => takeCredited(began, said, walk.state, remedy))
    .find((turn) => turn !== null);
  if (credited !== undefined) return credited;
  if (remedy === undefined) return 'end';
  const state = answerStep(context.model, walk.state, remedy, 'works', context.by);
  return isProblem(state) ? null : changed(began, state);
};

const FOR_NOW =
  /^\W*(?:yes |no |well )?(?:it (?:works|does|is) )?(?:but )?(?:only )?(?:just )?for (?:now|the moment)\W*$/iu;

/** "Only for now": it helped, and nobody knows for how long. */
const takeForNow = (began: Began, text: string): Turn | null => {
  const { context, walk } = began;
  const { asked } = walk.state;
  const remedy = asked?.kind === 'fixed' && FOR_NOW.test(text) ? asked.remedy : null;
  const state = remedy ? answerStep(context.model, walk.state, remedy, 'for-now', context.by) : null;
  return state === null || isProblem(state) ? null : changed(began, state);
};

/** A yes or a no to "Is it fixed?"; `end`: it is, without a remedy of this walk. */
export const takeFixedReply = (began: Began, text: string): Turn | 'end' | null => {
  const { context, walk } = began;
  if (walk.state.asked?.kind !== 'fixed') return null;
  const forNow = takeForNow(began, text);
  if (forNow !== null) return forNow;
  const reply = yesOrNo(text);
  if (reply === null || (reply.rest !== '' && (reply.says === 'no' || cureGrade(reply.rest).grade === 'none')))
    return null;
  return reply.says === 'no'
    ? changed(began, keptWords(context.by, walk.state, text), { notes: ['Then on with it.'] })
    : takeFixed(began, reply.rest);
};
