/** How an answer in words begins: with a yes, with a no, or with neither. */
import { carries, type SaidText, type SaidWord } from './said-words.js';

const YES = new Set('yes yep yeah yup yea aye correct right'.split(' '));
const NO = new Set('no nope nah none neither nothing nobody never'.split(' '));
/** May stand before the word that answers. */
export const LEADING = new Set(
  'well um uh erm hm hmm ok okay oh i think it they its that is are just so but and the er'.split(' '),
);

/** These deny what comes after them in the same breath: "nothing else is connected" says of no answer that it is nothing. */
const DENIES_WHAT_FOLLOWS = new Set('none neither nothing nobody never'.split(' '));

export interface Lead {
  readonly says: 'yes' | 'no';
  /** It stands by itself; what follows is another breath, or carries nothing. */
  readonly isBare: boolean;
}

export const leadOf = (words: readonly SaidWord[], patience: number): Lead | null => {
  for (const [at, { word, clause }] of words.slice(0, patience + 1).entries()) {
    const next = words[at + 1];
    if (YES.has(word)) return { says: 'yes', isBare: true };
    // "No firewall here" denies one thing; "no, it is free" answers.
    if (word === 'no' && next?.clause === clause && carries(next.word)) return null;
    const follows = words.slice(at + 1).some((later) => later.clause === clause && carries(later.word));
    if (NO.has(word)) return { says: 'no', isBare: !(follows && DENIES_WHAT_FOLLOWS.has(word)) };
    if (!LEADING.has(word)) return null;
  }
  return null;
};

/** "It does not", "not really": a no without the word. */
export const isBareNo = ({ words }: SaidText): boolean =>
  words.length <= 4 &&
  words.some(({ word }) => word === 'not') &&
  words.every(({ word }) => !carries(word) || word === 'really');
