/** Whether a member takes back something said before: "i looked wrong before, it does blink", "sorry, i meant 115200". */

const PATTERNS = [
  // Looked, read or pressed wrong.
  "\\b(?:i|we|ive|i['\u2019]ve) (?:(?:must have|may have|have|had|just|only|probably|think i) )*(?:looked|read|saw|said|told(?: you)?|answered|typed|wrote|pressed|picked|clicked|tapped|chose|put|got|counted|checked|misread|misheard|misspoke|mistook|remembered) (?:(?:it|that|this|them|you|at) )*(?:all |quite |completely )?(?:wrong(?:ly)?|the wrong|badly|too (?:quick|fast|early)(?:ly)?|upside down|backwards)",
  '\\b(?:i|we) (?:misread|misheard|misspoke|misremembered|mistook|mixed (?:up|them)|got (?:mixed|muddled|confused))',
  "\\b(?:i was|i am|i['\u2019]?m) (?:wrong|mistaken|muddled)\\b|\\bmy (?:mistake|bad|error|slip|fault)\\b",
  '\\b(?:that|what i (?:said|told you|answered)|the last one|my (?:last|first|earlier) (?:answer|one))(?: before| earlier)? (?:was|is) (?:wrong|not right|a mistake|a slip|nonsense)\\b',
  // The word for it.
  '(?:^|[.,;!?] ?)(?:oh |ah |sorry,? |no,? )*(?:correction|scrap that|strike that|take that back|hang on|hold on|no wait|wait no|wait(?=, (?:no|it|that|i)\\b)|i meant)\\b',
  '\\b(?:i )?(?:take|taking|took) (?:that|it) back\\b|\\bforget what i said\\b|\\bnot (?:what|as) i said\\b',
  '\\b(?:looking|looked|checked|checking|on looking|having looked) (?:again|closer|once more|properly|better)\\b',
  '(?:^|[.;!?] ?)(?:oh |ah |sorry,? |no,? |but )*(?:actually|in fact)\\b',
  '\\bpressed the wrong (?:one|button|number|key)\\b|\\bwrong (?:button|number) (?:sorry|there|pressed)\\b',
];
const TAKES_BACK = new RegExp(PATTERNS.join('|'), 'u');

export const takesBack = (text: string): boolean => TAKES_BACK.test(text.toLowerCase());
