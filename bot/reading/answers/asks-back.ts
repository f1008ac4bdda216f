/** Whether what a member says of the step in hand asks something back: "what speed? where do I see that?" */
import type { Clauses } from '../words/sentences.js';

/** `plainly`: whatever answer its words seem to hold; `perhaps`: where they hold none, since "when …" begins answers too. */
export type AsksBack = 'plainly' | 'perhaps' | 'no';

const FILLERS = new Set('sorry ok okay but and hm hmm er err um uh'.split(' '));
/** Phones leave the question mark out. "Did it, no change" is no question. */
const PLAINLY =
  /^(?:(?:what|how|where|why|which|who)\b|(?:do|does|can|could|should|is|are) (?:i|it|that|they|you|we|this)\b|did (?:i|they|you|we)\b)/u;
const PERHAPS = /^(?:when|meaning)\b/u;

/** @param words mended, in order */
export const asksBackOf = (words: readonly string[], sentences: readonly Clauses[]): AsksBack => {
  if (sentences.some(({ asks }) => asks) || PLAINLY.test(words.slice(0, 2).join(' '))) return 'plainly';
  const begins = words.findIndex((word) => !FILLERS.has(word));
  const opening = words.slice(Math.max(begins, 0), begins + 2).join(' ');
  return PLAINLY.test(opening) || PERHAPS.test(opening) ? 'perhaps' : 'no';
};
