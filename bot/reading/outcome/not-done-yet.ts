/** "We didn't do it yet", "hold on, still looking for the cable": nothing was done so far, and nothing came of it. */

const NOT = "(?: not|n['\u2019]?t)";
const DO =
  '(?:do(?:ne)?|tr(?:y|ied)|start(?:ed)?|get(?: to| round to| around to)?|got(?:ten)?(?: to| round to| around to)?|look(?:ed)?|check(?:ed)?|test(?:ed)?|been there|gone|swap(?:ped)?|plug(?:ged)?|change(?:d)?|open(?:ed)?|install(?:ed)?)';
const A_MOMENT = '(?:a|one|1|another|5|five|ten|10|two|2|a few) ?(?:mo|moments?|min(?:ute)?s?|secs?|seconds?)';
const NOT_YET = new RegExp(
  [
    `\\b(?:did|have|has|had|was|were|are|am|is|do)${NOT} (?:even |actually |really )?${DO}\\b[^.;!?]{0,30}\\byet\\b`,
    `\\b(?:did|have|has)${NOT} (?:even )?(?:get|got(?:ten)?) (?:to|round to|around to) (?:it|that|this|them|do\\w*|try\\w*)\\b`,
    `\\bnot (?:done|tried|there|ready|finished|tested|checked|started|got (?:to )?(?:it|that))(?: \\w+){0,3}? yet\\b`,
    `^\\W*(?:(?:wait|hold on|hang on|sorry|no|erm?|um|oh|but|hey|ok(?:ay)?)\\W+)+(?:(?:i|we|it)['\u2019]?(?:m|re|s)? (?:am|are|is)? ?)?not (?:done|ready|there|finished|yet)\\b`,
    `^\\W*(?:(?:ok(?:ay)?|wait|hold on|hang on|sorry|yes|yep)\\W+)*(?:(?:just )?(?:give|gimme|gi)(?: me| us)? ${A_MOMENT}|${A_MOMENT}|be right back|brb|bear with me|hold on|hang on|just a (?:mo|moment|minute|sec|second))(?: pls| please| then)?\\W*$`,
    `\\bstill (?:looking for|searching|hunting|trying to find|downloading|installing|reading (?:it|that)|walking|working on (?:it|that)|doing (?:it|that))\\b`,
  ].join('|'),
  'iu',
);
/** Something has come of it after all. */
const CAME =
  /\b(?:works?|working|worked|connects?|connected|fixed|cured|gone|better|worse|no change|nothing changed|helped|same (?:error|as|thing)|now it|it now)\b/iu;

export const isNotDoneYet = (text: string): boolean => NOT_YET.test(text) && !CAME.test(text);

/** "Granddad says what's that service": asked of the remedy, whatever stands around it. */
const ASKS_WHAT = new RegExp(
  `(?:^|[.,;!?]\\s*|\\b(?:says?|said|asks?|asked|wants? to know|wonders?|and|but|so|um|erm?|hmm*|ok(?:ay)?|sorry|wait) )(?:what(?:['\u2019]?s| is| are| does| do| the heck is| on earth is)|wh(?:o|ere)(?:['\u2019]?s| is)|which (?:one|is)|how (?:do|does|can|would|should|to)) (?!up\\b|new\\b|wrong\\b|happening\\b|going on\\b|next\\b|the time\\b|left\\b)\\w+`,
  'iu',
);
export const asksWhatItIs = (text: string): boolean => ASKS_WHAT.test(text) && !CAME.test(text);
