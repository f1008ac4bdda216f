/** The words of a text that carry something, in any of the wordings that are known to mean the same. */
import type { Lexicon } from '../words/lexicon.js';
import { saidText } from './said-words.js';
import { marksOf } from './speaks-of.js';

/** @returns each word's stem, and in angle brackets the entries of words.yaml that it belongs to */
export const tellingMarks = (lexicon: Lexicon, text: string): ReadonlySet<string> =>
  marksOf(saidText(lexicon, text).words);
