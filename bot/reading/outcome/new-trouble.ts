/** "It opens. Now it says no reply": what was wrong may be gone, and another thing is told to be wrong in its place. */

const WRONG =
  "(?:time-?d? ?outs?|errors?|denied|refused|no (?:reply|response|answer|such|mount|device|connection|signal)|not|cannot|ca ?n['\u2019]?t|busy|fail\\w*|wrong|unknown|missing|invalid|unsupported|another (?:error|message)|(?:a )?different (?:error|message|one)|a new (?:error|message|one)|nothing)";
const SAYS = '(?:say(?:s|ing)?|shows?|gives?|(?:i|we) (?:now )?get|complains?|moans?|tells me|reports?|wants)';
const NEW_TROUBLE = new RegExp(
  [
    `\\b(?:now|then|but|next|instead|yet)\\b[^.!?;]{0,40}\\b${SAYS}\\b[^.!?;]{0,30}\\b${WRONG}\\b`,
    "\\b(?:but|then|now|and)(?: now| then| it| the \\w+){0,3} (?:times out|timed out|fails|refuses|crashes|hangs|freezes|does nothing|will not|won['\u2019]?t|does ?n['\u2019]?t|can['\u2019]?t|cannot)\\b",
    '\\b(?:(?:a )?new|different|another|next) (?:error|message|problem|trouble|code|complaint)\\b(?! (?:is |has )?(?:gone|either))',
  ].join('|'),
  'iu',
);
/** Told as over, or of what used to be said. */
const OVER = /\b(?:no longer|any ?more|used to|stopped|ceased|without|never|at first|before|instead of)\b/iu;

export const tellsNewTrouble = (text: string): boolean =>
  text.split(/[.!?\n]+/u).some((sentence) => NEW_TROUBLE.test(sentence) && !OVER.test(sentence));
