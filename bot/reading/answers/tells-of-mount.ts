/** Whether any word of a text is one that members put their troubles in: how often it stands in the phrases of all answers. Pure. */
import type { Vocabulary } from '../vocabulary.js';
import { carries, saidText } from './said-words.js';

/** Often in them, and as often said of an evening. */
const OF_ANY_DAY = new Set('night even morn day time first last good great fine home back left look like'.split(' '));

/**
 * False for "who has the key to the clubhouse"; true for "who keeps the port busy".
 * @param often in so many phrases a word is of the trade; in fewer it stands there by the way
 */
export const tellsOfMount = (vocabulary: Vocabulary, text: string, often: number): boolean => {
  const { all } = vocabulary.phraseCounts();
  return saidText(vocabulary.sayings.lexicon, text).words.some(
    ({ word, stem }) =>
      carries(word) && !OF_ANY_DAY.has(stem) && (/\d/u.test(word) || (all.of.get(stem) ?? 0) >= often),
  );
};
