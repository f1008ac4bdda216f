/**
 * What a member did and, behind it, that it works now: "put 7 in and it connects", "the other program was still open, closed it, now
 * she answers". The words are parted into those on what was done and those on what came of it.
 */
import { toldIn } from './question-beside.js';
import { isOfOtherTime } from './of-other-time.js';
import { withoutOutAndIn } from './out-and-in.js';
import { rememberLines } from '../lately.js';
import { wasSoAllAlong } from './of-another-way.js';
import { doingsNow } from './does-what-failed.js';
import { tellsNoCure } from './no-cure.js';
import { STAR, TROUBLES } from './word-kinds.js';

export interface DeedTold {
  /** The words on what was done or what it was, those on the cure and of joy left out; empty where there are none. */
  readonly deed: string;
  /** Those words say that something was done, or what was the cause: no mere look at something. */
  readonly isDone: boolean;
  /** No more is said of what came of it than that the mount answers. */
  readonly isOfTheLink: boolean;
  /** What came of it is good, and nothing behind it, or beside it, takes that back. */
  readonly isCured: boolean;
}

const either = (words: string): string => `(?:${words})`;

/** Ends of a breath. */
const BREATHS =
  /[.,](?!\d)|[;!?\n\u2026]+|\s[-\u2013\u2014]+\s|[()]|\b(?:and|so(?! (?:much|far|that))|then|n|because|cos|since then|till?|until|with that)\b|(?=\bnow (?:it|its|it['\u2019]s|she|the|my|mine|everything|all|both|we|i can)\b)/iu;

const ASIDE =
  /\b(?:ok(?:ay)?|oh|ah|aha|ha(?:ha)*|hey(?: presto)?|hm+|well|yes|yep|yeah|lol|right(?=,)|omg|doh|wow|bingo|eureka|phew|finally|at last|hooray|hurray|woo ?hoo|yay|thanks?(?: you)?(?: so much| very much| a lot)?(?: my)?(?: dear| friends?)?|my dear|thx|ta|ty|cheers|danke|merci|gracias|grazie|brilliant|great|lovely|weird|strange|funny|silly me|stupid me|i am (?:so )?stupid|would you believe(?: it)?|never ?mind|hold on|wait|hang on|sorry|mate|guys|all|everyone|u the man|you are a star|good ?night|clear skies|like you said|as you said|as (?:the card|it) says)\b/giu;

const IT = either(
  `(?:high|low|lower|higher|bright|faint) (?:ones?|stuff|things?)|it|she|he|that|this|they|everything|all(?: of it| targets| stars)?|both|mine|we|things|(?:the|my|our|every|each|both|all) (?:\\w+ )?(?:mount|scope|telescope|tube|goto|gotos|program|programme|app|software|laptop|computer|pc|mac|tablet|phone|ipad|board|bridge|motors?|axes|axis|stars?|targets?|objects?|guiding|tracking|pointing|link|connection)|mount|scope|goto|program|programme|app|software|guiding|tracking|pointing|(?:the )?${STAR}`,
);
const DOES = either(
  'works?|wor?k?ing|connects?|conn?ects?|connect(?:ed|ing)|conn?ected|talks?|talking|answers?|answering|replies|responds?|responding|moves?|moving|slews?|slewing|tracks?|tracking|guides?|guiding|runs?|running|finds?|found|sees?|hits?|lands?|points?|follows?|homes|holds?|stays?|stayed|sits|behaves?|flies|goes?|went|goto|opens? (?:fine|now|ok|(?:the|its|that) port)|obeys|listens|stops? where|keeps? (?:up|still|going|connected)|(?:do|does) (?:now )?(?:connect|work|move|talk|slew|track|answer|find)|says? (?:connected|online)|lives|aligns|comes? up|came up|came alive|is (?:back|alive|there|in|up|online)|are (?:in|there)',
);
const GOOD = either(
  'good|fine|ok|okay|great|sorted|fixed|solved|cured|mended|perfect|there|alive|(?:up|in)(?= (?:now|again|at last|finally|and running)|$)|online|back|brilliant|stable|steady|solid|well|happy|(?:spot|bang|dead|right) on|exact|accurate|like new',
);
const MIDDLE = either(
  '(?:in|at|on) (?:the )?(?:\\w+ )?(?:middle|centre|center|eyepiece|field|view|cross ?hairs?|spot)|(?:spot|bang|dead|right) on|where (?:it|they|i) \\w+|(?:at |on )?full speed|(?:stays?|put) (?:put|still|there|where it)|in the \\w+ of the eyepiece',
);
const CAME_GOOD = [
  // Of the mount and all else but the member: "she answers", "the app find the mount".
  `\\b${IT}(?:['\u2019]?s| is| are| has| have)? (?:now |all |just |even |finally |at once |straight away |been |also |always )*${DOES}\\b`,
  `^(?:now |up |off |there |away )*(?:it |she |he |we )?(?:now |just |all |even )*${DOES}(?: |$)`,
  `\\b${IT}(?:['\u2019]?s| is| are| seems| looks| has been| been)? (?:now |all |just |so |really |absolutely )*${GOOD}(?: |$)`,
  `^(?:now |all |its |it['\u2019]?s |we(?:['\u2019]?re| are) |i(?:['\u2019]?m| am) )*(?:${GOOD}|connected|working|done and dusted|job done|success|problem gone)(?: (?:now|again|here|mate|ever since))*$`,
  '^(?:both |all )?(?:the )?(?:motors?|axes) (?:at|on) full speed',
  `\\b${IT} (?:(?:now|slap|bang|dead|smack|right|spot|just|straight) )*${MIDDLE}\\b`,
  `\\b(?:is|are|lands?|sits?|stays?|stands?|comes?|everything|all|was) (?:now |right |bang |dead |smack |always )*${MIDDLE}\\b`,
  // "Four slews in the eyepiece", but not "two of four".
  `(?<!\\b(?:of|from) )\\b(?:\\d+|two|three|four|five|six|several|both) (?:\\w+ )?(?:gotos?|targets?|stars?|slews?|objects?) (?:now |all |each )*${MIDDLE}\\b`,
  `\\b(?:no|not (?:a|one)(?: single)?|without (?:a|any|one)|zero) (?:more |single |other )?${TROUBLES}\\b|\\b(?:does|did|has|do)(?:n['\u2019]?t| not) (?:${TROUBLES}|drop(?:ped)?|stop(?:ped)?|fail(?:ed)?|lose|lost|reset) (?:any ?more|again|once|since)`,
  "\\b(?:up|off|there|away) (?:it|she|he|we) (?:goes|went|go|came|comes)\\b|\\bwe(?:[\u2019']?re| are) (?:in|on|off|away|connected|back)\\b|\\bi(?:[\u2019']?m| am) in$",
  '\\b(?:did|does|has done|done) (?:it|the (?:trick|job))\\b|\\b(?:that|this|which|it) (?:was|is) it$|\\b(?:fixed|solved|cured|sorted|cracked|helped) (?:it|that|everything|the \\w+)\\b|\\bwas it$|\\b(?:problem|trouble|fault|mystery) (?:is )?(?:solved|gone|over|sorted)\\b|^(?:got|have|made) (?:it|her|everything) (?:to )?(?:work|go|connect|run)\\w*',
  '^(?:now )?(?:straight|bang|smack|right|dead) (?:on ?to|into|to) (?!the (?:ground|wall|fence|roof|floor|horizon))\\w+',
  `\\b${IT} (?:now |just )*(?:takes|accepts|took|accepted) (?:all|every|each|both|any|of them)\\b`,
  '\\b(?:i|we) can (?:now )?(?:move|connect|slew|see|steer|control|drive|goto|reach|talk)\\b',
].map((pattern) => new RegExp(pattern, 'u'));

/** Who did it says so in the past, or as a cause: such a breath is no word on what came of it. */
const OF_DOING =
  /^(?:(?:i|we|he|she|dad|mum|grandad|grandpa|(?:my|the|a) \w+) )?(?:have |had |just |also |then |only )*(?:\w+ed|put|set|took|got|made|gave|chose|cut|shut|let|bought|bent|kept|sent|left|threw|drove|held|hung|shook|slid|tied|was|were|had been|turned out|moved)\b(?! (?:it|that|everything)$)/iu;
const I_DID =
  /\b(?:i|we|(?:my|the) (?:wife|husband|son|daughter|boy|lad|mate|friend|dad|mum)) (?:have |had |just |also |then |only |now )*(?:\w+ed|put|set|took|got|made|gave|chose|cut|shut|let|bought|bent|kept|sent|left|threw|drove|held|hung|shook|slid|tied|used|had|found|moved|went|did|(?:turn|switch|close|change|plug|unplug|remove|disable|take|swap|restart|delete)(?= (?:it|that|the|my|off|on|out|in)\b))\b/iu;
/** What it was: "tracking was off". */
const OF_CAUSE =
  /^(?!there\b)(?!.*\b(?:was|were) it$)\b.*\b(?:was|were|had been|turned out)\b(?! (?:right |bang |dead )*(?:in|at|on) the (?:middle|centre|center|eyepiece))/iu;
/** "A thicker cable did it": what stands ahead of these was done. */
const DID_IT =
  / (?:did (?:it|the (?:trick|job))|was it|(?:has |have )?(?:fixed|solved|cured|sorted|cracked|mended) (?:it|that|everything))$/iu;
/** … and these are what came of it all the same. */
const CAME_ED =
  /^(?:now |up )*(?:(?:it |she |everything |all )(?:moved|started|stayed)|(?:it |she |everything |all )?(?:connected|worked|solved|sorted|cured))\b/iu;

/** Doubt, a condition, a question, a time to come; a part alone, a trouble. */
// Of small letters alone, as are those above: with "i" such a list takes five times the room once compiled.
const SPOILS = new RegExp(
  [
    "\\?|\\b(?:but|except|although|though|however|if|when|whenever|unless|only|still|sometimes|half|partly|almost|nearly|hop(?:e|ing|ed)|would|could|should|might|may ?be|perhaps|will|gonna|going to|let(?:['\u2019]s| me| us) see|try(?:ing)?|waiting|tomorrow|later|for (?:a|one|two|\\d+) (?:second|sec|minute|min|moment|bit|while)s?|at first|yesterday|used to|i (?:think|guess|hope|suppose))\\b",
    `\\b(?:same|worse|wrong|drift(?:s|ing)?|slips?|fail(?:s|ed|ing)?|dead|dies|denied|refuses?|drop(?:s|ped|ping)?|lost|loses|freezes|stop(?:s|ped)?(?! where)|nothing|unfortunately|sadly|backwards?|back to (?:the |its )?(?:start|menu|beginning|welcome|boot)|below|under|ground|lawn|floor|fence|trees?|wall|roof|horizon|beside|degrees? (?:off|out|away)|(?:goes|went|going|gone|turns|turned|falls) (?:tight|taut|stiff|slack|mad|crazy|weird|odd|funny|to sleep|asleep|dark|black|blank|off|dead|dim|silent|quiet|away|down))\\b`,
    "\\b(?:light|led|lamp|screen|display|wi-?fi|internet|power|supply|battery|camera|handset|hand controller|keypad|keys?|arrows?|buttons?|port|adapter|driver|ping|router|fan)(?:['\u2019]?s| is| are| also)? (?:all |just |now )*(?:works?|working|on|fine|ok|good|lit|connected|running|up|in|back|there|answers|responds|moves)\\b",
    '\\b(?:with|on|from|by|using|via) (?:the |my |his |her |a |an |another |other |old |our |friends? )*(?:phone|tablet|ipad|laptop|pc|computer|mac|handset|hand controller|friends?|mates?)\\b',
    "(?:have ?n['\u2019]?t|has ?n['\u2019]?t|can ?not|can['\u2019]?t|does ?n['\u2019]?t|do ?n['\u2019]?t|wo ?n['\u2019]?t|did ?n['\u2019]?t|is ?n['\u2019]?t|not|never|no) (?!(?:more|once|one|a single|single|any more|longer|drops?|errors?|problems?|problem|trouble|since)\\b)\\w+",
  ].join('|'),
  'u',
);
/** What has ceased takes nothing back. */
const CEASED = new RegExp(
  `\\b(?:no|not (?:a|one)|without (?:a|any|one)|zero)(?: single| more| other)? ${TROUBLES}\\b|\\b(?:does|did|has|do)(?:n['\u2019]?t| not) (?:\\w+ )(?:any ?more|again|once|since)\\b|\\bno problem\\b|\\bnever ?mind\\b|\\b(?:can ?not|can['\u2019]?t) believe\\b`,
  'gu',
);

/** It went so once: that is no word on what came of it. */
const OF_THE_PAST =
  /\b(?:worked|connected|went|ran|(?:was|were|has been|had been) (?:fine|ok|good|working|connected))\b[^.;!?]{0,40}?\b(?:(?<!\b(?:as|like|than) )before|until|till|up to|last \w+|yesterday|earlier|once|for (?:\w+ )?(?:years|months|weeks)|always|all (?:year|summer|winter|spring|autumn))\b/u;

const OF_THE_LINK =
  /\b(?:conn?ect(?:s|ed|ing)?|talks?|talking|answers?|online)\b|\b(?:sees?|finds?|found) (?:it|the \w+)\b|\b(?:we|i)\W{0,2}(?:re|are|m|am) in$/iu;

const ASKS =
  /^\W*(?:(?:and|so|but|ok(?:ay)?|um|sorry|hm+),? )*(?:how|what|where|which|why|who|should|shall|can|could|may|do|does|is|are|did (?:you|it|that))\b/iu;

/** Nothing was done by these: "tried it three times", "no need to type". */
const NO_DEED =
  /^(?:|it|that|this|which|i|no\b.*|(?:i )?(?:have )?(?:tried|tested|sent|asked|slewed|pointed|went|did) (?:it |them |her |the (?:mount|scope) )?(?:(?:to|at|for|on|over) )?(?:\w+ ){0,3}(?:stars?|targets?|objects?|slews?|gotos?|times|planets?|galaxies)|(?:slewed|accepted|reconnected|tried|tested)|(?:i )?(?:have )?(?:tried|tested|checked|did|repeated) (?:it |that |this )?(?:\d+ ?x?|once|twice|three|four|five|several|many|a few|again)(?: times)?(?: now| over)?)$/u;

/** "The old one did it fine until it broke", "that makes no sense: it answers a ping". */
const OF_BEFORE_OR_AGAINST =
  /\b(?:old|other|last|first|previous|former|earlier) (?:one|tablet|phone|laptop|computer|pc|lead|cable|adapter)s?\b.{0,24}\b(?:did|worked|was|had|used to)\b|\b(?:did|worked|was|ran)\b.{0,24}\b(?:until|till|before it)\b|\b(?:makes? no sense|(?:can|could) ?n[o'\u2019]?t be|nonsense)\b/u;
const OF_NOW = /\b(?:now|again|at last|finally)\b/u;

/** That, or of another time: none of it says that the trouble is over now. */
const isNoCure = (said: string): boolean => {
  const small = said.toLowerCase();
  return (
    tellsNoCure(said) ||
    OF_THE_PAST.test(small) ||
    (OF_BEFORE_OR_AGAINST.test(small) && !OF_NOW.test(small)) ||
    wasSoAllAlong(said) ||
    isOfOtherTime(said)
  );
};

/** What comes and goes is not over. */
const COMES_AND_GOES =
  /\b(?:most(?: of the)? times?|mostly|now and (?:then|again)|(?:on|off) and (?:on|off)|every (?:few|couple|now)|(?:comes|goes|came|went) (?:and|then) (?:goes|comes|went|came))\b/iu;

const LONGEST_WORDS = 45;

/** In small letters and without marks. */
export const plainBreath = (breath: string): string =>
  breath
    .toLowerCase()
    .replace(/[^\p{L}\d'\u2019+:-]+/gu, ' ')
    .trim();

/** "Found it", said of a setting that was looked for: no mount has found anything. */
const FOUND_BY_ONE = /^(?:i )?(?:have |just |finally |at last )*found (?:it|that|them|the \w+)(?: \w+)?$/u;

/** Whether a plain breath says that it goes as it should. */
export const tellsSuccess = (breath: string): boolean => {
  if (FOUND_BY_ONE.test(breath)) return false;
  if (CAME_ED.test(breath)) return true;
  if (DID_IT.test(breath)) return true;
  if (OF_DOING.test(breath) || I_DID.test(breath) || OF_CAUSE.test(breath)) return false;
  return CAME_GOOD.some((pattern) => pattern.test(breath));
};

const deedIn = (text: string): DeedTold => {
  const said = text.trim();
  if (said.split(/\s+/u).length > LONGEST_WORDS || ASKS.test(said))
    return { deed: '', isDone: false, isOfTheLink: false, isCured: false };
  const breaths = said
    .replace(ASIDE, ' ')
    .split(BREATHS)
    .map((own) => ({ own, bare: plainBreath(own) }))
    .filter(({ bare }) => bare !== '');
  const told = breaths.map(({ bare }) => tellsSuccess(bare));
  const first = told.indexOf(true);
  const deeds = breaths.flatMap(({ bare }, at) => {
    const ahead = DID_IT.test(bare) ? bare.replace(DID_IT, '') : '';
    // What the mount does now was done by nobody.
    const deed = told[at] === true || doingsNow(bare).size > 0 ? ahead : bare;
    return NO_DEED.test(deed) ? [] : [deed];
  });
  const spoils = (breath: string): boolean => SPOILS.test(breath.toLowerCase().replace(CEASED, 'so'));
  const isCured =
    first >= 0 &&
    !/^(?:only|but|except)$/u.test(breaths[first - 1]?.bare ?? '') &&
    !/\?/u.test(said) &&
    !isNoCure(said) &&
    !COMES_AND_GOES.test(said) &&
    !breaths.some(({ own }, at) => (told[at] === true || at > first) && spoils(own));
  const isDone = deeds.some((deed) => OF_DOING.test(deed) || I_DID.test(deed) || OF_CAUSE.test(deed));
  const isOfTheLink = breaths.every(({ bare }, at) => told[at] === false || OF_THE_LINK.test(bare));
  return {
    deed: deeds.join('. '),
    isOfTheLink,
    isDone: isDone || breaths.some(({ bare }) => DID_IT.test(bare)),
    isCured,
  };
};

export const curedByDeed = rememberLines((text: string) => deedIn(withoutOutAndIn(toldIn(text))));
