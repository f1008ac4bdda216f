/** Whether words are few enough, and begin so, that they may follow what was asked before. */
import { wordCountOf } from '../../../ground/fold-text.js';
import { eclipseKindSaid, saysContacts } from '../sentence/eclipse-kind.js';
import { asksAround } from './after-answer.js';
import { mayTellKit } from './kit-told.js';
import { saidShort } from './said-short.js';

const LONGEST = 100;
const MOST_WORDS = 12;

/** How a question begins that is whole in itself, or a line told at length. */
const BEGINS_WHOLE =
  /^(?:(?:hi|hello|hey|please)[, ]+)*(?:what(?!(?:'?s)? (?:about|if)\b)|whats|when|where|which|who|why|how(?! about\b)|is|are|can|could|will|would|should|does|do|did|show|give|find|tell|remind|compare|suggest|any|i|we|my|the|there|it|he|she|they|you)\b/iu;
const NOT_SEEN = /^(?:no,? )?(?:i |we )?can(?:['’]?t|not| not) (?:see|find|use)\b/iu;
const MEANS_IT = /\b(?:it|its|it's|they|them|their|that one|this one)\b/iu;
const ASKS_RATE = /^(?:(?:and|so|but) )*how many\b.{0,20}\b(?:see|expect|get|spot|count|an hour)\b/iu;
const MOST_IN_SHORT = 4;

/** Whether it is worth looking closer; costs next to nothing, as every question comes this way. */
export const mayFollow = (text: string): boolean => {
  const count = wordCountOf(text);
  if (text.length > LONGEST || count > MOST_WORDS) return false;
  return (
    eclipseKindSaid(text) !== null ||
    saysContacts(text) ||
    NOT_SEEN.test(text) ||
    mayTellKit(text) ||
    ASKS_RATE.test(text.trim()) ||
    /\bmoon\w*\b/iu.test(text) ||
    asksAround(
      text
        .trim()
        .toLowerCase()
        .replace(/[?!.\s]+$/u, ''),
    ) ||
    !BEGINS_WHOLE.test(text.trim()) ||
    MEANS_IT.test(text) ||
    saidShort(text.trim().replace(/[?!.]+$/u, '')) !== null ||
    count <= MOST_IN_SHORT
  );
};
