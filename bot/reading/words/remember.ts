/** Words come again and again: what is worked out of one is kept for the next time. */

/** Kept at most; then all is forgotten, so that no stranger's text can fill the memory or keep it from use. */
const MOST = 5000;
/** A longer word is worked out each time. */
const LONGEST = 40;

/** @param make of the same word always the same */
export const rememberWords = <T>(make: (word: string) => T): ((word: string) => T) => {
  const kept = new Map<string, T>();
  return (word) => {
    const before = kept.get(word);
    if (before !== undefined) return before;
    const made = make(word);
    if (word.length > LONGEST) return made;
    if (kept.size >= MOST) kept.clear();
    kept.set(word, made);
    return made;
  };
};
