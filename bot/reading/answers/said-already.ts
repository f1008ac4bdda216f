/** "As I said", "I told you that": what a member has told before is not asked once more in the same words. */

const TELLS = '(?:said|told|wrote|written|mentioned|explained|typed|answered|say|tell|mention)';
const WHEN = '(?:above|before|already|earlier|twice|once|in my (?:first|last) (?:line|message))';
/** "It" is what was said only where nothing is told of it: "as mentioned it does not connect". */
const WHAT = String.raw`(?: (?:you|${WHEN}|(?:it|that|this|so)(?= ${WHEN}|\s*(?:$|[,.;:!?]))))`;
const ALREADY = new RegExp(
  [
    String.raw`\b(?:as|like) (?:i|we)(?:['\u2019]ve)?(?: (?:just|already|have|had))* ${TELLS}${WHAT}*`,
    String.raw`\b(?:as|like)(?: (?:just|already))? ${TELLS}${WHAT}*`,
    String.raw`\b(?:i|we)(?:['\u2019]ve)?(?: (?:just|already|have|had|did))* ${TELLS}${WHAT}+`,
    String.raw`\balready ${TELLS}${WHAT}*`,
    String.raw`\b(?:said|told|answered)${WHAT}+`,
    String.raw`\b(?:see|read) (?:above|my (?:first|last) (?:line|message))`,
    String.raw`\byou(?:['\u2019]ve)?(?: (?:have|just|already))* asked(?: me)?${WHAT}*`,
  ].join('|'),
  'giu',
);

/** What is left of the words without it, perhaps nothing; null where they say no such thing. */
export const withoutSaidAlready = (text: string): string | null => {
  const left = text.replace(ALREADY, ' ');
  if (left === text) return null;
  return left.replace(/\s+/gu, ' ').replace(/^[\s,.;:!?-]+|[\s,;:-]+$/gu, '');
};
