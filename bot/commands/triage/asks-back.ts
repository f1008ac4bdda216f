/** A plain question back on the step in hand, which deserves the how-to and not the menu again. */
import { asksBack, outcomeSaid, type Reading, type Vocabulary } from '../../reading/index.js';

/** Longer than this is a story, whatever it asks. */
const LONGEST = 120;

/** Of words that told nothing. */
export const asksOfStep = (vocabulary: Vocabulary, text: string, { by, facts }: Reading): boolean =>
  by === 'words' &&
  facts.length === 0 &&
  text.length <= LONGEST &&
  (asksBack(vocabulary.sayings.lexicon, text) || outcomeSaid(vocabulary, text).what === 'asks-back');

/** Said in place of "I could not read a sure sign". */
export const ASKED_BACK = {
  notes: ['Here is how, once more. “Not sure” or “Could not do it” is an answer too.'],
  choices: [],
};
