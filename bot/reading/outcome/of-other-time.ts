/** "Yesterday in the mountains it worked perfectly, today I am at home": what is well belongs to another time or place, and nothing is cured by it. */

const BEFORE =
  '(?:yesterday|last (?:night|week|weekend|month|year|time|session|season|summer|winter|spring|autumn|(?:mon|tues|wednes|thurs|fri|satur|sun)day)|(?:the )?(?:other|previous|day before) (?:night|day|week|time|evening)|a (?:week|month|year|day|night) ago|(?:two|three|few|\\d+) (?:days|nights|weeks|months|years) ago|earlier (?:today|tonight|this)|in (?:the )?(?:mountains?|field|desert|countryside|hills?|holidays?)|on holiday|at (?:the |my |our )?(?:dark site|star party|club|camp ?site|cottage|observatory|meeting|other (?:place|site|house)))';
const WELL =
  '(?:work(?:s|ed|ing)?|fine|perfect(?:ly)?|ok(?:ay)?|connect(?:s|ed)?|no (?:problems?|trouble|issues?)|good|great|flawless(?:ly)?|well|moved)';
const THEN = new RegExp(
  `\\b${BEFORE}\\b[^;!?\\n]{0,80}?\\b${WELL}\\b|\\b${WELL}\\b[^.;!?\\n]{0,30}?\\b${BEFORE}\\b`,
  'iu',
);
/** How it is by now, told outright. */
const NOW_WELL =
  /\b(?:now|again|finally|at last|fixed|sorted|solved|cured|tonight it works|today it works|no more|thanks?|thank you|cheers|thx)\b|!/iu;
export const isOfOtherTime = (text: string): boolean => {
  const then = THEN.exec(text);
  if (then === null) return false;
  return !NOW_WELL.test(text.replace(then[0], ' '));
};
