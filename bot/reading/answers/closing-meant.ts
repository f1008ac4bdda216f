/**
 * What words at the end of a mended walk say: whether its cause may be counted, that it was another, or that the trouble is back.
 * Whatever else is said there is talk, and leaves it mended.
 */

const POLITE =
  "(?:[ ,.!]+(?:please|thanks?|thank you|cheers|ta|sure|fine|of course|do|go on|go ahead|count(?: it| that| this)?|good ?night|bye|you (?:may|can)|that(?:['\u2019]?s| is) (?:fine|ok)|just end|rather not|not this one))*";
const LEAD = '(?:(?:thanks?|thank you|thx|cheers|ta|ok|right|so)[ ,.!]+)*';
const YES = new RegExp(
  `^${LEAD}(?:yes|yeah|yep|yup|sure|of course|ok|okay|please do|go ahead|count it|you may)${POLITE}[ .!]*$`,
  'iu',
);
const NO = new RegExp(
  `^${LEAD}(?:no|nope|nah|better not|please don['\u2019]?t|rather not|don['\u2019]?t count it|do not count it)${POLITE}[ .!]*$`,
  'iu',
);
const OTHER =
  /\b(?:something|somewhat|sth|anything) else\b|\b(?:was|were|had) (?:really |actually |in fact )?(?:not (?:that|this|it)|another|two|both|the other|an? (?:different|other))\b|\b(?:two|other|different|another) (?:things|causes?|faults?|reasons?)\b|\bfirst (?:it was )?(?:the|my|a) .{1,40}\bthen (?:the|my|a|i)\b|\bboth of (?:them|it|those)\b/iu;
/** A cause is named, without a word on whether it is the one counted. */
const NAMES_A_CAUSE =
  /\b(?:it was|turn(?:s|ed) out|was down to|had been|were|was|had gone|because|(?<=\w )(?:did|does) it(?= *(?:[.,;!]|$))|fixed it|cured it|sorted it|did the trick)\b/iu;
const FAREWELL =
  /\b(?:good ?night|g['\u2019]?night|bye|see you|cheerio|take care|that(?:['\u2019]?s| is) all|off to (?:bed|observe|look)|clear skies)\b/iu;

/** Where one breath of it ends and another begins. */
const BREATHS = /[,.;!?…]+|\b(?:but|and (?:then|now|after)|then|though|until)\b/iu;
const PAST =
  /\b(?:was|were|had|been|used to|before|because|cos|earlier|at first|turn(?:s|ed) out|could(?: not|n['\u2019]?t)|did(?: not|n['\u2019]?t)(?! (?:last|hold|stay|keep)))\b/iu;
const WORK =
  '(?:work\\w*|connect\\w*|mov\\w+|slew\\w*|track\\w*|talk\\w*|respond\\w*|answer\\w*|open\\w*|find\\w*|hold\\w*|stay\\w*|last\\w*|see\\w*|show\\w*|go(?:es|ing)?|run\\w*|li(?:gh)?t\\w*|come\\w*|start\\w*|fixed|cured|mended|right|good|better|ok|there)';
const BAD =
  '(?:stop(?:s|ped)|gone|lost|drop(?:s|ped|ping)|fail(?:s|ed|ing)|died|dies|dead|wrong|broken|broke|trouble|problem|fault|error|frozen|froze|freezes|refuses|refused|loses|disconnect(?:s|ed)|tim(?:es|ed|ing)[ -]?out|crash(?:es|ed)|stuck|out)';
const BROKEN: readonly RegExp[] = [
  new RegExp(
    `\\b(?:not|no longer|never|won['\u2019]?t|cannot|can['\u2019]?t|(?:does|is|did|has|do)n['\u2019]?t|nothing)\\b.{0,20}\\b${WORK}\\b`,
    'iu',
  ),
  new RegExp(`\\b${BAD}\\b.{0,25}\\b(?:again|now|back|after|any ?more|once more)\\b`, 'iu'),
  new RegExp(`\\b(?:again|now|just|still|back to|same|another|new)\\b.{0,12}\\b${BAD}\\b`, 'iu'),
  /\b(?:it|that|mount|scope|link|connection|port|program|app|laptop)(?:['\u2019]?s| is| has| just| keeps?| now)* (?:drops?|dropp(?:s|ed|ing)|stop(?:s|ped)|fail(?:s|ed|ing)|died|dies|dead|gone|broken|lost (?:it|the)|loses|times out|disconnect(?:s|ed)|freezes|froze|frozen|crash(?:es|ed))\b/iu,
  /\b(?:same|the) (?:trouble|thing|problem|fault|error)\b.{0,12}\b(?:again|back|is there|as before)\b|^\W*same (?:thing|trouble|problem|again)\b/iu,
  /\b(?:(?:came|comes|coming|is|it['\u2019]?s|its|are) back(?: again)?)\b(?! (?:to normal|in business|on|up|home))|\bspoke too soon\b|\b(?:does|doing|did|happen(?:s|ed|ing)|started?|starts|at|here) (?:it|that|this|we go)? ?again\b|\bsquare one\b|\btoo (?:soon|early)\b/iu,
  /\b(?:ones?|it|they|targets?|stars?|gotos?|slews?|second|third|next|last|others?|rest|all)\b(?: \w+){0,2} (?:off|out|short|beside|wide|misses|missed|drift\w*|wander\w*|trail\w*)\b(?: \w+){0,2} (?:again|too|still)\b/iu,
  /\b(?:still|again)(?: \w+){0,2} (?:off|short|beside|wide|drift\w*|trail\w*|miss(?:es|ed|ing)?)\b/iu,
];
/** A trouble that is over. */
const OVER =
  /\b(?:no (?:more )?(?:error|problem|trouble|fault|drop)|(?:error|problem|trouble|fault|message)s? (?:is|are|has|have)? ?(?:now |all |just )*(?:gone|over|away)|back (?:up|on|to normal|in business))/iu;

/** Plainly that the trouble is back: said of now, and not of what it was before. */
export const saysBrokenAgain = (text: string): boolean => {
  if (OVER.test(text)) return false;
  const breaths = text.split(BREATHS).map((breath) => breath.trim());
  return breaths.some((breath) => !PAST.test(breath) && BROKEN.some((pattern) => pattern.test(breath)));
};

const MENDED = '(?:fixed|cured|mended|solved|sorted)';
const NEVER_FIXED = new RegExp(
  [
    `\\bnothing(?: is| was| has been| got)?(?: \\w+)? ${MENDED}\\b`,
    `\\b(?:not|never|isn['\u2019]?t|wasn['\u2019]?t)(?: \\w+)? ${MENDED}\\b`,
    "\\b(?:i|we) (?:did ?n['\u2019]?t|did not|have ?n['\u2019]?t|have not) (?:say (?:it|that)|fix|done?|tr(?:y|ied)|change)\\w*\\b",
    '^\\W*(?:(?:no|hm+|well|sorry|but|ok(?:ay)?|er|um)\\W+)*still (?:nothing|not?|dead|dark|silent|(?:the )?same)\\b(?! (?:bad|too bad|to worry))',
  ].join('|'),
  'iu',
);

/** That a cure was never told: "no, nothing is fixed". */
export const saysNeverFixed = (text: string): boolean => NEVER_FIXED.test(text) && !OVER.test(text);

/** Plainly that something else is wrong now. */
export const saysOtherWrong = (text: string): boolean =>
  /\bnow\b.{0,30}\b(?:wrong|beside|not right|slow|stuck|backwards?|mirrored|upside down)\b/iu.test(text);

/** Said of what is over: a trouble told so is not one that stands. */
export const tellsOfThePast = (text: string): boolean => PAST.test(text);

/**
 * `cause`: it names one, which may be the one to be counted or another; `farewell`: nothing but that.
 * @returns null where the trouble is back, or nothing of this is said
 */
export const closingMeant = (text: string): 'yes' | 'no' | 'other' | 'cause' | 'farewell' | null => {
  const said = text.trim();
  if (YES.test(said)) return 'yes';
  if (NO.test(said)) return 'no';
  if (saysBrokenAgain(said) || /\?\s*$/u.test(said)) return null;
  if (OTHER.test(said)) return 'other';
  if (NAMES_A_CAUSE.test(said) && !/^\W*(?:it was )?(?:fine|lovely|great|fun|nice)\b/iu.test(said)) return 'cause';
  return FAREWELL.test(said) ? 'farewell' : null;
};
