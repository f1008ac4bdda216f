/** "After a bit it goes, then comes back", "for a few minutes it is perfect", "once, then never again": what comes and goes is not over. */

const TIME = '(?:secs?|seconds?|mins?|minutes?|moments?|bit|whiles?|tr(?:y|ies)|goes)';
const OFF =
  "(?:gone|goes|went|drops?|dropped|off|out|not|never|no|\\w+n['\u2019]t|denied|dead|lost|loses|slid\\w*|slips?|drifts?|wanders?|freezes|froze|fails?|dies|died|stops?|stopped|time-?out|times out|errors?|says|nothing|back to|disconnect\\w*|comes?|came|away)";
const UNSTEADY = new RegExp(
  [
    '\\bcom(?:es|e|ing) ?(?:and|n|&) ?go(?:es|ing)?\\b|\\bgo(?:es)? ?(?:and|n|&|then) ?(?:it )?comes?\\b',
    '\\b(?:then|and|n|it) (?:it )?(?:always |just |straight |right )*comes? (?:straight |right )?ba(?:ck|k)\\b(?! (?:on|up|to life))',
    `\\b(?:\\w*connect(?:s|ed)?|works?|worked|working|goes|going|went|moves?|moved|fine|good|ok|okay|perfect|there|stays?|stayed|held|holds?|on|up|in|runs?|ran|fix(?:es|ed)|helps?|helped|talks?|back)\\b(?: \\w+){0,2} for (?:(?:a|an|the|about|one|two|three|just|only|few|some|couple of|first|good|\\d+) )+${TIME}\\b(?! (?:now|already))|^\\W*for (?:(?:a|an|the|one|two|three|just|only|few|some|first|good|\\d+) )+${TIME}\\b`,
    '\\b(?:sometimes|most(?:ly| times| of the time)|at times|now and (?:then|again)|on and off|off and on|every now|once in a while|from time to time|at random|randomly|intermittent\\w*)\\b',
    `\\b(?:works?|worked|connect(?:s|ed)?|perfect|fine|good|found it|there|stays?|held|holds?|came up|goes|went|moves?|back|ok|first \\w+)\\b[^.!?]{0,30}\\bthen\\b[^.!?]{0,24}\\b${OFF}\\b`,
    `\\bafter (?:a |an |some |about |\\d+ |ten |five |few )+(?:${TIME}|hours?)\\b[^.!?]{0,20}\\b${OFF}\\b`,
    `\\b\\d+ (?:secs?|seconds?|mins?|minutes?) (?:later|on)\\b[^.!?]{0,16}\\b${OFF}\\b`,
    '\\bonce,? (?:then|and|but) (?:never|not|no)\\b|\\bfirst (?:try|time|go)\\b[^.!?]{0,20}\\bsecond\\b|\\boh (?:wait|no)\\b|\\bwait,? no\\b',
    '\\b(?:when|if|while|whenever|as long as) (?:i|you|we|it) (?:\\w+ ){0,2}?(?:hold|holds|press|push|bend|wiggle|touch|move|twist|squeeze|lean)\\b|\\bwigg?ling\\b[^.!?]{0,20}\\b(?:fixes|helps|works)\\b',
  ].join('|'),
  'iu',
);
/** It was so, and is over. */
const NO_MORE = /\b(?:no longer|not any ?more|used to|was|were|had|before|instead of|kept)\b/iu;

export const isUnsteady = (text: string): boolean =>
  text.split(/[.!?\n]+/u).some((sentence) => {
    const found = UNSTEADY.exec(sentence);
    return found !== null && !NO_MORE.test(sentence.slice(0, found.index));
  });
