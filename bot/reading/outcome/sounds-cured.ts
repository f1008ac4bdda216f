/**
 * Whether words sound as if the trouble were over, in any wording, though they do not say it plainly enough to be taken for it: then
 * it is asked outright. Said of a part alone, of another time or another's mount, with a doubt or a trouble beside it, they do not.
 */
import { TROUBLES } from './word-kinds.js';

/** None of it since; and it goes. */
const NONE_SINCE = `(?:no|not (?:a|one)|never (?:a|one)|without (?:a|one|any))(?: single| more| other)? ${TROUBLES}`;
const HELD_SINCE = [
  `\\b${NONE_SINCE} (?:since|after|afterwards|so far|now|in (?:over )?(?:an?|two|half an) hours?|all (?:night|evening))\\b`,
  `\\b(?:an?|one|two|three|\\d+|half an|several) (?:hours?|minutes?|mins?|nights?|slews?|gotos?) (?:now |on |later )*${NONE_SINCE}`,
  "\\b(?:it|that|its|it['\u2019]?s|connection|link|been|is|held|holds|holding|stayed|staying|and)(?: has)?(?: been)? (?:rock )?(?:solid|steady|stable)(?: as a rock)? (?:since|for|now|all (?:night|evening))\\b",
];

const IDIOMS = [
  ...HELD_SINCE,
  "(?<!(?:it['\u2019]?s|is|was|fully|half|be|a|the) )\\b(?:fixed|sorted|solved|mended|cured|cracked|nailed)\\b(?! (?:number|address|port|ip|focus|star|bracket|speed|into|to the|on to|in place))",
  "\\b(?:it|that|this|all|everything|problem|trouble|fault|mount|scope)(?:['\u2019]?s| is| has been| got| are)? (?:all |now )*(?:fixed|sorted|solved|mended|cured|resolved)\\b",
  '\\b(?:bingo|eureka|hooray|hurra[yh]|yippee|ya+y|woo+[ -]?hoo+|huzzah|happy days|success|victory|job done|bobs? your uncle|hunky[ -]dory|tickety[ -]boo|halleluja?h|hallelujah)\\b',
  '\\b(?:has |have |its |it )?(?:come|came|coming) (?:good|right|alive|to life|back to life)\\b',
  '\\b(?:does|doing|do) (?:now )?(?:what|as) (?:it|they) (?:should|ought)|\\bas it should(?: be)?$',
  "\\b(?:up and running|back in business|good as new|right as rain|like new|good to go|it lives|it['\u2019]?s alive|its alive|back to normal)\\b",
  '\\b(?:problem|trouble|fault|issue) (?:is )?(?:gone|over|no more)\\b|\\bno more (?:trouble|problems?|issues?)\\b',
  '\\b(?:never ?mind|forget it|no need)\\b.{0,30}\\b(?:got|works?|working|connect|going|found)\\b',
  "\\bi(?:['\u2019]?ve| have)? (?:found|got) (?:it|the (?:problem|fault|trouble|culprit|cause))\\b|^found the (?:problem|fault|culprit)\\b",
  '\\b(?:got|have|get) (?:it|everything|the (?:mount|scope)) (?:all |back )?(?:working|going|to (?:work|go|connect|move)|connected|up)\\b',
];
const WHOLE =
  "(?:it|that|this|she|he|everything|all|the lot|(?:the |my )?(?:mount|scope|telescope|goto|program|app))(?:['\u2019]?s| is| are| has| seems)?";
const RUNS =
  '(?:works?|working|going|goes|connect(?:s|ed|ing)|talk(?:s|ing)|mov(?:es|ing)|slew(?:s|ing)|track(?:s|ing)|respond(?:s|ing)|online|alive|behav(?:es|ing)|running|runs|fine|ok|okay|good|well|great|perfect|in)';
const NOW =
  '(?:now|again|at last|finally|a treat|like a (?:dream|charm)|beautifully|lovely|perfectly|nicely|great|since|at once|first time|all by itself|by itself)';
const MUCH = '(?:all|just|now|started|actually|finally|suddenly|back|lit up|up|on|and|working|even|properly)';
const SAYS_RUNS = [
  `\\b${WHOLE} (?:${MUCH} )*${RUNS}(?: and \\w+ing)? ${NOW}\\b`,
  `\\bnow (?:${WHOLE} )?(?:${MUCH} )*${RUNS}(?=$|[ ,.;!])`,
  `\\b${WHOLE} (?:just |suddenly |now |all )*(?:started|began) (?:working|talking|going|moving|connecting)\\b`,
  `(?:^|[,.;!\u2026-] ?|\\band )(?:${WHOLE} )?(?:${MUCH} )*(?:working|connected|up|going|in)(?: ${NOW})?(?=$|[,.;!]| thanks| ty| cheers| mate)`,
  `(?:^|[,.;!] ?)(?:it )?(?:works|talks|connects|slews|tracks)(?: ${NOW}\\b|(?=!))`,
  `\\b(?:it|mount|scope)(?:['\u2019]?s| is)? (?:lit up|on) and (?:slewing|moving|tracking|working|talking|connected)\\b`,
];
// Of small letters alone, as those below: with "i" such a list takes five times the room once compiled.
const SOUNDS = new RegExp([...IDIOMS, ...SAYS_RUNS].join('|'), 'u');

/** A doubt, a trouble, a condition, a part, another time, another's. */
const SPOILS = new RegExp(
  [
    "\\b(?:not|cannot|never|no longer|nothing|none|hardly|barely|almost|nearly|still|but|except|although|though|however|if|when|whenever|unless|until|while|only|sometimes|half|partly|briefly|then|before|used to|yesterday|hop(?:e|ed|ing)|should work|would|could|might|may ?be|perhaps|wish|supposed|want|need|trying|try|how|what|where|why|who|should i|can i|do i|will)\\b|n['\u2019]?t\\b|\\?",
    '\\b(?:drop(?:s|ped)|los(?:es|t|t it)|fail(?:s|ed|ing)?|errors?|wrong place|(?:to|on|at|in|finds?) (?:the |a )?(?:wrong|opposite) \\w+|refuses?|refused|dead|dies|died|stops?|stopped|tim(?:es|ed) out|time ?out|no (?:reply|answer|response|change|luck|joy|difference)|same)\\b',
    '\\b(?:goes|going|moves|moving|slew(?:s|ing)|track(?:s|ing)|lands|points)\\b[^,.;!]{0,30}\\b(?:past|beyond|below|under|beside|instead|near|degrees?|horizon|ground|floor|fence|trees?|wall|opposite|(?:other|wrong) (?:way|side|direction))\\b',
    "\\b(?:last (?:week|month|year|night|time|spring|summer|autumn|winter)|(?:on|with|from|by|using|in) (?:the |my |his |her |a |an |its )?(?:\\w+['\u2019]?s? )?(?:handset|keypad|hand controller|buttons?|arrows?|keys?|joystick|phone|tablet|ipad|other|another|second|friend|mates?|son|wife|husband))\\b",
    "\\b(?:light|led|lamp|screen|display|wi-?fi|internet|bluetooth|power|supply|battery|camera|guider|handset|hand controller|keys?|arrows?|buttons?|port|adapter|driver|ping|router|address|fan|dew)(?:['\u2019]?s| is| are| also)? (?:all |just |now |still )*(?:works?|working|on|fine|ok|good|lit|connected|running|up|in)\\b",
  ].join('|'),
  'u',
);
/** These take nothing back. */
const HARMLESS = new RegExp(
  [
    NONE_SINCE,
    'half an hour',
    "so (?:that )?(?:it|they|nothing) (?:does ?n['\u2019]?t|do ?n['\u2019]?t|can ?n['\u2019]?t|cannot|can|no longer) \\w+",
    /never ?mind|(?:well )?i never|blow me|no more (?:trouble|problems?|issues?|errors?)|as it should|what it should|(?:was|were) (?:on |in )?the wrong \w+(?: \w+)?|wrong (?:com )?(?:port|socket|plug|lead|network|cable)(?: all along)?|needed an?|at last|what a relief|would you believe it|who knew|no need|(?:turned|switched|took|moved|put|set|swapped|changed|plugged) [^,.;!]{1,40}?(?=,| and | so |$)/u
      .source,
  ]
    .map((part) => `\\b(?:${part})`)
    .join('|'),
  'gu',
);
const LONGEST_WORDS = 22;

const plain = (text: string): string => text.trim().replace(/\s+/gu, ' ').toLowerCase();

/** Something in them takes a cure back, or hangs it on something. */
export const isSpoiled = (text: string): boolean => SPOILS.test(plain(text).replace(HARMLESS, 'so'));

export const soundsCured = (text: string): boolean => {
  const said = plain(text);
  return said.split(' ').length <= LONGEST_WORDS && SOUNDS.test(said) && !isSpoiled(said);
};
