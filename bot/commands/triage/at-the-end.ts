/** Words at the end of a mended walk. It stays mended unless they plainly say that the trouble is back, or that another stands behind it. */
import {
  closingMeant,
  leavesWalk,
  outcomeSaid,
  readText,
  saysBrokenAgain,
  saysNeverFixed,
  saysOtherWrong,
  sharesWords,
  statesFailure,
  tellsOfMount,
  tellsOfThePast,
  type AnswerMeant,
  type Reading,
} from '../../reading/index.js';
import { mendedBy, type Speaker, type TriageModel, type WalkState } from '../../triage/index.js';
import { doingTyped } from './doing-typed.js';
import { keptWords } from './kept-words.js';
import { COMPLAINT } from './told-at-card.js';
import type { Walk } from './walk-keeper.js';

/** What changed, and whether it ever worked, is told of the trouble that is over. */
const OF_BEFORE: ReadonlySet<string> = new Set(['changed-last', 'worked-before', 'tried-cable', 'tried']);
const isOfNow = (what: string): boolean => !OF_BEFORE.has(what);

const isAmiss = (model: TriageModel, what: string, answer: string): boolean => {
  const check = model.check(what);
  return check !== undefined && check.good !== answer && (COMPLAINT.has(what) || check.good !== undefined);
};

/** The trouble is back, or another stands behind it; null where it stays mended. */
export const afterCure = (model: TriageModel, text: string, { facts }: Reading): AnswerMeant | null => {
  const { what, how } = outcomeSaid(model.reading, text);
  if (what === 'cured' && how === 'outright') return null;
  if (saysBrokenAgain(text) && !saysOtherWrong(text))
    return { id: 'for-now', label: 'It stopped working again', score: 1, isSure: true };
  const isTrouble = facts.some(({ what, answer }) => isOfNow(what) && isAmiss(model, what, answer));
  return (isTrouble || saysOtherWrong(text)) && !tellsOfThePast(text)
    ? { id: 'changed', label: 'Something is still not right', score: 1, isSure: true }
    : null;
};

/** In fewer phrases of the trade a word stands there by the way. */
const OF_THE_TRADE = 8;

/**
 * What is to come of words that leave it mended. `idle`: they tell nothing of it.
 * A cause named in words that share none with the one mended is another.
 */
export const endingMeant = (
  model: TriageModel,
  text: string,
  mended: string,
): 'yes' | 'no' | 'other' | 'cause' | 'idle' => {
  const meant = closingMeant(text);
  if (meant === null || meant === 'farewell') return 'idle';
  if (meant !== 'cause') return meant;
  if (sharesWords(model.reading.sayings.lexicon, text, mended)) return 'cause';
  return tellsOfMount(model.reading, text, OF_THE_TRADE) ? 'other' : 'idle';
};

export const NOT_CURED = 'Sorry: I took that for a cure. It is taken back, and your words are kept.';

/** "No, nothing is fixed": what was taken for a cure was none, and is not what came of the remedy. */
export const withoutCure = (by: Speaker, state: WalkState, text: string): WalkState | null => {
  const at = state.events.findLastIndex((event) => event.kind === 'try' && event.outcome === 'works');
  if (at < 0 || !(saysNeverFixed(text) || statesFailure(text))) return null;
  return keptWords(by, { ...state, events: state.events.filter((_, i) => i !== at) }, text);
};

/** Asked of the walk or its cause, and not of the sky. */
const ASKS_OF_IT =
  /\b(?:cause|counts?|counting|count(?:ed)? for|fix(?:ed)?|wrong|walk|happen(?:s|ed)?|why|stays? (?:that|this) way|what was it|which (?:one )?was it|you mean)\b/iu;
const ASKS =
  /^(?:(?:ok|so|and|but|hm+|well|sorry),? )*(?:what|which|when|where|how|who|why|is|are|do|does|did|can|could|should|would|will|may|am)\b|\?\s*$/iu;

/** That it is broken again, another cause, a paste, or a word about the walk. */
const isOfWalk = (model: TriageModel, state: WalkState, text: string): boolean => {
  const read = readText(model.reading, text);
  if (read.by !== 'words' || doingTyped(text) !== undefined || leavesWalk(model.reading, text) === 'person')
    return true;
  return withoutCure('member', state, text) !== null || afterCure(model, text, read) !== null;
};

/** For whom words at a mended end are: this walk, others, or nobody, as they tell and ask nothing. */
export const forWhomAtEnd = (
  model: TriageModel,
  { state }: Pick<Walk, 'state'>,
  text: string,
): 'walk' | 'others' | 'nobody' => {
  if (isOfWalk(model, state, text)) return 'walk';
  const ending = endingMeant(model, text, model.fault(mendedBy(state) ?? '')?.title ?? '');
  if (ending === 'other' || ending === 'cause') return 'walk';
  if (state.rests === true) return ending !== 'idle' && COUNTS.test(text) ? 'walk' : 'others';
  if (ending !== 'idle') return 'walk';
  if (!ASKS.test(text.trim())) return 'nobody';
  return ASKS_OF_IT.test(text) ? 'walk' : 'others';
};
const COUNTS = /\bcount/iu;
