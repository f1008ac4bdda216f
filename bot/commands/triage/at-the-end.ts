/** Words at the end of a mended walk. It stays mended unless they plainly say that the trouble is back, or that another stands behind it. */
import {
  closingMeant,
  outcomeSaid,
  saysBrokenAgain,
  saysNeverFixed,
  saysOtherWrong,
  sharesWords,
  statesFailure,
  tellsOfThePast,
  type AnswerMeant,
  type Reading,
} from '../../reading/index.js';
import type { TriageModel, WalkState } from '../../triage/index.js';
import { keptWords } from './kept-words.js';
import { COMPLAINT } from './told-at-card.js';
import type { Began } from './turn.js';

/** The trouble is back, or another stands behind it; null where it stays mended. */
export const afterCure = (model: TriageModel, text: string, { facts }: Reading): AnswerMeant | null => {
  const { what, how } = outcomeSaid(model.reading, text);
  if (what === 'cured' && how === 'outright') return null;
  if (saysBrokenAgain(text) && !saysOtherWrong(text))
    return { id: 'for-now', label: 'It stopped working again', score: 1, isSure: true };
  const isOther = facts.some(({ what, answer }) => COMPLAINT.has(what) && model.check(what)?.good !== answer);
  return (isOther || saysOtherWrong(text)) && !tellsOfThePast(text)
    ? { id: 'changed', label: 'Something is still not right', score: 1, isSure: true }
    : null;
};

/**
 * What is to come of words that leave it mended. `stays`: neither asked nor agreed to count; the page is shown once more.
 * A cause named in words that share none with the one mended is another.
 */
export const endingMeant = (model: TriageModel, text: string, mended: string): 'yes' | 'no' | 'other' | 'stays' => {
  const meant = closingMeant(text);
  if (meant === 'farewell') return 'no';
  if (meant === 'cause') return sharesWords(model.reading.sayings.lexicon, text, mended) ? 'stays' : 'other';
  return meant ?? 'stays';
};

export const NOT_CURED = 'Sorry: I took that for a cure. It is taken back, and your words are kept.';

/** "No, nothing is fixed": what was taken for a cure was none, and is not what came of the remedy. */
export const withoutCure = ({ context, walk }: Began, text: string): WalkState | null => {
  const at = walk.state.events.findLastIndex((event) => event.kind === 'try' && event.outcome === 'works');
  if (at < 0 || !(saysNeverFixed(text) || statesFailure(text))) return null;
  return keptWords(context.by, { ...walk.state, events: walk.state.events.filter((_, i) => i !== at) }, text);
};
