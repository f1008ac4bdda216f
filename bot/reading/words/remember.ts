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

/** Words kept by a number made of their letters, one a number; a power of two. */
const SLOTS = 4096;
/** A longer word, cut out of a text, would keep the whole text in memory. */
const LONGEST_IN_TEXT = 12;

/**
 * The same for words that stand in a text from `start` to before `end`: one met lately is known without cutting it out.
 * @param make of the same word always the same
 */
export const rememberInTexts = <T>(make: (word: string) => T): ((text: string, start: number, end: number) => T) => {
  const slots = new Array<{ readonly word: string; readonly made: T } | null>(SLOTS).fill(null);
  return (text, start, end) => {
    const length = end - start;
    if (length > LONGEST_IN_TEXT) return make(text.slice(start, end));
    let number = length;
    for (let at = start; at < end; at++) number = Math.imul(number, 31) + text.charCodeAt(at);
    const slot = (number ^ (number >>> 12)) & (SLOTS - 1);
    const kept = slots[slot] ?? null;
    if (kept !== null && kept.word.length === length && text.startsWith(kept.word, start)) return kept.made;
    const word = text.slice(start, end);
    const made = make(word);
    slots[slot] = { word, made };
    return made;
  };
};
