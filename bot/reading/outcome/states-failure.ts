/** "No change. …", "… same error though": a failure that is said outright stands against every good word beside it, which tells of a part. */

const NOT = "(?: not|n['\\u2019]?o?t)";
const BEGINS = '(?<=(?:^|[.,;:!] ?|\\b(?:no|nope|it|that|and|but|still|ok|okay|sorry) ))';
const ENDS = '(?=\\s*(?:[.,;:!]|$))';
const FAILURES = [
  '(?:no|not any|not much|zero|0) (?:change|changes|difference|luck|joy|effect|improvement)',
  '(?:nothing|not a thing|not one thing)(?: has| have)? (?:changed|different|helped)',
  `(?:did|does|do|has|have)${NOT} (?:really |actually )?(?:help(?:ed)?|change(?:d)? (?:a thing|anything|nothing|it)|fix(?:ed)? (?:it|that|anything)|cure(?:d)? it|make (?:a |any )?(?:difference|odds)|do (?:anything|a thing|the trick))`,
  `(?:is|it['\\u2019]?s|its|was|got)(?: not|n['\\u2019]?t) (?:any |no )?better`,
  '(?:still|again) (?:the |that |this )*(?:same|(?:\\w+ )?(?:denied|refused|error|errors|message|timeout|time-out)|says? (?:the|that|no|access)|(?:an?|\\d+|about|half|one|two|some)\\b[^.,;!]{0,20}\\b(?:off|away|out|wrong|short)|beeps|misses|drifts|hums|complains|no (?:\\w+ )?(?:reply|answer|response|connection|light|port|luck|joy|good)|drops?|disconnects?|fails?|refuses|not (?:seen|found|connect\\w*|work\\w*|mov\\w*|there))',
  '(?<=(?:^|[.,;!] ?))(?:zilch|nada|nowt|nix|zip|no dice|no go|nothing)(?=[ .!]*$)',
  '(?:denied|refused|rejected|failed|fails|dropped|drops|lost|disconnected|timed out|times out|stuck) again',
  // A breath of its own: "same, no response", "as before. 20 off".
  `${BEGINS}(?:(?:exactly|just|all|still|its|it['\\u2019]?s|it is|quite|much) )*(?:the )?same(?: (?:again|here|old|still|sorry|now|for me|with \\w+))*${ENDS}`,
  `${BEGINS}(?:ditto|unchanged|(?:just |exactly |all )?(?:as|like) (?:it was|before|ever|always|usual)|not (?:helped|better|different)|no different)${ENDS}`,
  "(?:not|n['\u2019]t) (?:any )?different",
  'made no odds',
  '(?:just|every bit|still) as (?:bad|badly|fast|quick(?:ly)?|slow|far|often|much|dead|stuck|wrong)',
  '(?:the )?same (?:error|message|trouble|problem|thing|result|story|as (?:before|ever|always))',
];
const FAILURE = new RegExp(`(?<![\\w'\\u2019])(?:${FAILURES.join('|')})(?![\\w])`, 'giu');

/** Good that is told ahead of it: then a half of the trouble is gone. */
const GOOD_AHEAD =
  /\b(?:works?|working|connects?|conects?|connected|linked|talks?|moves?|slews?|gone|better|less|fewer|fixed|sorted|cured|solved|answers|finds?|takes|different|only|in (?:now|but)|(?:ok|fine|right|good|correct)(?: \w+)? now)\b/iu;
/** A turn behind it: "no change at first, then it came", "same, until I swapped the lead". */
const TURNS_BEHIND =
  /\b(?:at first|now|then|until|till|wait|hang on|finally|at last|but|after|before|with(?:out)? the|when|if|once|edit|update|oh)\b/iu;
/** Behind "same," that opens a line, less is one: what follows tells how it fails. */
const TURNS_ALL =
  /\b(?:at first|until|till|wait|hang on|finally|at last|edit|update|oh|(?:then|but|and) (?:i|we|my|when i|after)|(?:but|and|then|now),? (?:now|then|it|she|all)? ?(?:works|it works|connects now|goes now|came|moves now))\b|\bnow (?:it|she) (?:works|moves|connects|goes)\b/iu;
const OPENS =
  /^\W*(?:(?:ok(?:ay)?|sorry|no|nope|hm+|well|did (?:that|it|all that|as told)|done|tried (?:it|that)|and|but|it|is|its|it['\u2019]s)\W+)*$/iu;
/** "It did not help before": of another time. */
const OF_THE_PAST = /\b(?:used to|yesterday|last (?:night|week|time)|had|earlier|before)\b/iu;

/** @returns whether the words state, of what was tried, that it changed nothing */
export const statesFailure = (text: string): boolean =>
  [...text.matchAll(FAILURE)].some(({ index, 0: { length } }) => {
    const [ahead, behind] = [text.slice(0, index), text.slice(index + length)];
    const turns = OPENS.test(ahead) && /^\s*[.,;:!]/u.test(behind) ? TURNS_ALL : TURNS_BEHIND;
    return !GOOD_AHEAD.test(ahead) && !OF_THE_PAST.test(ahead) && !turns.test(behind);
  });
