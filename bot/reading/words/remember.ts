/** Words come again and again: what is worked out of one is kept for the next time. */
import { createKept } from '../../ground/kept.js';

/** About as many are kept, so that no stranger's text can fill the memory or keep it from use. */
const MOST = 5000;
/** A longer word is worked out each time. */
const LONGEST = 40;

/** @param make of the same word always the same */
export const rememberWords = <T>(make: (word: string) => T): ((word: string) => T) => {
  const kept = createKept<string, T>(MOST);
  return (word) => (word.length > LONGEST ? make(word) : kept(word, () => make(word)));
};
