/** A cure in a few words and nothing else: "yep connected", "works!", "it does now". */
import { wordCountOf } from '../../ground/fold-text.js';
import { outcomeSaid } from '../../reading/index.js';
import type { Began } from './turn.js';

const MOST_WORDS = 6;

export const isShortCure = ({ context: { model } }: Pick<Began, 'context'>, text: string): boolean => {
  if (wordCountOf(text) > MOST_WORDS) return false;
  const { what, how, isCureAtRemedy } = outcomeSaid(model.reading, text);
  return what === 'cured' && (how !== 'like' || isCureAtRemedy === true);
};

/** "It does", "ha, it did": of what the remedy's last line says one should see. */
const AFFIRMED =
  /^\W*(?:(?:oh|ah|ooh|ha|haha|hey|yes|yep|yeah|yup|and|ok|okay|well|so|now)\W+)*(?:(?:it|she|he|that) (?:does|did|has)(?: (?:now|indeed|too|so))*|does now)\W*$/iu;

export const isAffirmed = (text: string): boolean => AFFIRMED.test(text);

/** "Yes, now it connects", "Yes, then the trouble is gone": the answer to a look that may have been the cure. */
export const saysWorksSo = (label: string): boolean =>
  /\bnow it (?:works|connects)\b|\btrouble is gone\b/iu.test(label);
