/** A plain question back on the step in hand, which deserves the how-to and not the menu again. */
import { asksBack, outcomeSaid, type Reading, type Vocabulary } from '../../reading/index.js';

/** Longer than this is a story, whatever it asks. */
const LONGEST = 120;

/** Where to look is asked by the names of what is there: "how do I get to the device manager" tells of a system. */
const SURROUNDINGS: readonly string[] = ['system', 'path', 'client'];

/** Of words that told nothing of how the mount does. */
export const asksOfStep = (vocabulary: Vocabulary, text: string, { by, facts }: Reading): boolean =>
  by === 'words' &&
  facts.every(({ what }) => SURROUNDINGS.includes(what)) &&
  text.length <= LONGEST &&
  (asksBack(vocabulary.sayings.lexicon, text) || outcomeSaid(vocabulary, text).what === 'asks-back');

/** Said in place of "I could not read a sure sign". */
export const ASKED_BACK = {
  notes: ['Here is how, once more. “Not sure” or “Could not do it” is an answer too.'],
  choices: [],
};
