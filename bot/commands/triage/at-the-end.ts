/** Words at the end of a mended walk. It stays mended unless they plainly say that the trouble is back, or that another stands behind it. */
import {
  closingMeant,
  outcomeSaid,
  saysBrokenAgain,
  saysOtherWrong,
  sharesWords,
  tellsOfThePast,
  type AnswerMeant,
  type Reading,
} from '../../reading/index.js';
import type { TriageModel } from '../../triage/index.js';
import { COMPLAINT } from './told-at-card.js';

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
