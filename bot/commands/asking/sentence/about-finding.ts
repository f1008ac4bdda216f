/** Sentences that ask how one comes to a target from the stars. */
import { nightLine, says, type Rule } from './asked.js';

/** How one comes to it from the stars. */
const FINDING =
  /\bhow (?:do|does|can|could|should|would|to|did)\b(?: (?:i|we|you|one|a beginner))?(?: (?:best|easily|quickly))? (?:find|get to|locate|hop to|star ?hop|reach|come to|navigate)\b|\bstar[- ]?hop\w*\b|\bhop(?:ping)? (?:to|from|over)\b|\bdirections? (?:to|for|from)\b|\bhelp (?:me |us )?(?:to )?find\b|\bhow to find\b|\b(?:which|what|nearest|closest) (?:bright )?stars? (?:is |are )?(?:near|next to|close to|beside|to|by)\b|\bwhere do i look for\b.*\bstar\b|\bfind(?:er|ing) (?:chart|directions?|path)\b/u;
const NOT_FINDING = /\b(?:focal|serial|cable|port|remind\w*|goto|slew\w*|sun|align\w*|moon)\b/u;

/** By hand. */
const WITHOUT_GOTO = /\b(?:without|w\/o|with no|no|not having|lacking) (?:a |any |the )?go ?to\b/gu;

export const finding: Rule = (asked) => {
  const [target, ...others] = asked.targets;
  if (target === undefined || others.length > 0 || !says(asked, FINDING)) return null;
  if (NOT_FINDING.test(asked.plain.replace(WITHOUT_GOTO, ' '))) return null;
  return nightLine('up', target, asked, { first: 'find' });
};
