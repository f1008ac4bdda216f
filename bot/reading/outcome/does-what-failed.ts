/**
 * What words at a remedy say that the mount, the link or the search now does: "Orion goes there now", "the search finds the bridge too",
 * "Regulus lands dead centre twice in a row". Whether that is what failed before is for whoever knows what did.
 */
import { rememberLines } from '../lately.js';
import { tellsNoCure } from './no-cure.js';
import { IT, MIDDLE, MOUNT, NOW, PROGRAM, STAR } from './word-kinds.js';

/**
 * `link`: the computer reaches the mount; `found`: a search finds it; `lasts`: the link stays; `moves`: it takes a target and goes;
 * `lands`: it comes down on it; `stays`: the target stays in view.
 */
export type Doing = 'link' | 'found' | 'lasts' | 'moves' | 'lands' | 'stays';

const NONE: ReadonlySet<Doing> = new Set();

const HOW = `(?:(?:${NOW}|then|also|too|actually|just|really|always|all|even|right|dead|bang|smack|slap|straight|exactly|precisely|perfectly|nicely|spot|directly|properly|well|happily|by itself|both|so|very|quite|immediately|instantly) )*`;
const SOME =
  '(?:(?:the|my|a|an|each|every|any|all|both|other|another|chosen|bright|right|correct|first|second|third|fourth|fifth|next|low|lower|high|two|three|four|five|several|single|new) )*';
const TARGET = `${SOME}${STAR}(?: ${STAR})?(?: (?:i|we|you) \\w+(?: for| to)?)?`;
const WHATEVER =
  '(?:everything|anything|whatever|what|where|wherever|all|any|each|every \\w+)(?: (?:i|we) \\w+(?: for| to)?)?';
const MOVER = `(?:${MOUNT}|${IT}|(?:the |my |both |every |each |all )*(?:gotos?|slews?|motors|axes))`;
const GOES =
  '(?:takes? (?:it|me|us|the \\w+)|brings? (?:it|me|us)|go|goes|going|went|slews?|slewed|slewing|drives?|drove|swings?|swung|moves?|moved|points?|pointed|pointing|looks?|turns?|turned|lands?|landed|flies|flew|heads?)';
const LANDS =
  '(?:lands?|landed|sits?|sat|stands?|is|are|was|were|comes? up|came up|comes?|came|arrives?|appears?|shows?(?: up)?|ends? up|stays?|stops?)';
const LINKS =
  '(?:connects?|connected|connecting|talks?|talking|speaks?|speaking|answers?|answering|replies|replied|responds?|responding|communicat\\w+|online|on line|linked|opens?(?: up)?|opened|goes through|went through|gets? through|live|alive)';
const BE = '(?:is|are|has|have|am|been|got|gets?|seems?|s)';

const SAYS: readonly (readonly [Doing, string])[] = [
  [
    'lands',
    `^${HOW}(?:\\w+ )?${TARGET} (?:${BE} )?${HOW}(?:${LANDS} )?${HOW}(?:(?:in|on|at|within|inside) )?(?:\\w+ ){0,5}${MIDDLE}\\b`,
  ],
  [
    'lands',
    `^${HOW}(?:and )?(?:there )?all (?:\\w+ )?${HOW}(?:${LANDS} )?${HOW}(?:in|on|at|within) (?:\\w+ ){0,2}${MIDDLE}\\b`,
  ],
  [
    'lands',
    `\\b(?:${MOVER} ${HOW}${GOES}|${GOES}) ${HOW}(?:(?:to|on|at|into|onto|for) )?${HOW}(?:${TARGET}|${WHATEVER}|(?:in|on|at|within) (?:the )?(?:\\w+ )?${MIDDLE})\\b`,
  ],
  ['lands', `\\b(?:gotos?|pointing|it|${TARGET}) (?:is |are )${HOW}(?:bang|spot|dead) on\\b`],
  ['lands', `\\b${MOVER} ${HOW}(?:hits?|finds?|found|gets?|reaches|cent(?:re|er)s) ${HOW}(?:${TARGET}|${WHATEVER})\\b`],
  ['lands', `\\b${TARGET} (?:is |are )?${HOW}(?:goes there|where (?:the|my) (?:scope|mount|telescope|tube) \\w+)`],
  [
    'lands',
    '\\b(?:lands?|landed|hits?|cent(?:red|ered)|are|is) ${HOW}(?:to )?within (?:one|an?|the|\\d+)\\b'.replace(
      '${HOW}',
      HOW,
    ),
  ],
  [
    'lands',
    '\\b(?:the )?(?:offset|miss|error|difference) (?:is |was )?(?:now )?(?:gone|zero|nil|history)\\b|\\bwent from \\d+\\S* (?:\\w+ )?to (?:nothing|zero|nil|0)\\b|\\bno more \\d+ ?(?:arc ?min\\w*|degrees?|minutes?)|\\b\\d+ ?(?:arc ?sec\\w*) off\\b',
  ],
  [
    'moves',
    `\\b(?:${MOVER}|controller|handset|${PROGRAM}) ${HOW}(?:accepts?|accepted|takes?|took|obeys|does|did) ${HOW}(?:${TARGET}|gotos?|slews?|the lot|them all|(?:the )?(?:low|lower) (?:ones?|stuff)|commands?|orders?)\\b`,
  ],
  [
    'moves',
    `\\b${TARGET}(?: at [\\w ]{1,14})? (?:${BE} )?${HOW}(?:accepted|taken|possible|slewed|reachable|allowed)\\b|\\b(?:low|lower) (?:ones?|stuff|objects?|targets?) (?:${BE} )?${HOW}(?:works?|go|goes|possible|fine|ok|accepted|taken)\\b`,
  ],
  ['moves', `^${HOW}(?:and )?(?:it )?goes ${HOW}(?:down )?to the (?:low|lower) \\w+`],
  [
    'moves',
    `^(?:and )?nothing (?:is |was )?refused$|\\bno (?:more )?(?:beeps?|refusals?)\\b|\\bceased\\b.*\\b(?:goes|works|moves|slews|takes)\\b`,
  ],
  [
    'moves',
    `\\b${MOVER} ${HOW}(?:obeys|slews|drives|swung|does gotos|goes|went|moves) ?${HOW}(?:fine|to|round|there|off|${NOW}|every ?where)\\b|(?:^(?:and )?|when i \\w+ \\w+ )${HOW}${MOVER} ${HOW}(?:obeys|slews|goes|moves|drives)$|\\boff (?:it|she|he) (?:went|goes)\\b|\\bdoes gotos?\\b|^(?:and )?slews (?:fine|well|now|again)`,
  ],
  [
    'link',
    `^(?:(?:on|with|at) \\w+ )?${HOW}(?:and |yes )*(?:${MOVER}|${PROGRAM}|${PROGRAM} and ${MOUNT}|${MOUNT} and ${PROGRAM})(?: ${BE})* ${HOW}${LINKS}\\b|\\b(?:(?:we|i) (?:are|am|re|m)|im) ${HOW}(?:connected|on ?line|linked|in|through)\\b`,
  ],
  ['link', `\\b${PROGRAM} ${HOW}(?:sees?|finds?|found|has|got|reaches|reached|gets?) ${HOW}(?:it|${MOUNT})\\b`],
  [
    'link',
    '\\b(?:position|coordinates|ra(?: and dec)?|cross ?hairs?|numbers) (?:\\w+ )?(?:counting|moving|live|follows?|there|appear\\w*|come up|came up|coming|showing|on screen|updat\\w+)\\b|\\bcame up with (?:the )?(?:coordinates|position|ra)\\b|\\bshows (?:me )?where (?:the |my )?(?:scope|mount|telescope|it)\\b',
  ],
  [
    'link',
    `\\bconnect (?:button )?works\\b|\\b(?:lets|let) me (?:connect|in)\\b|\\bconnected to (?:the |my )?(?:mount|scope|telescope)\\b|\\bi can (?:now )?(?:nudge|move|steer|drive|control|slew) (?:it|${MOUNT})\\b|\\b(?:arrows|buttons) in the program (?:now )?(?:move|moves|work)\\b|\\b${MOVER} ${HOW}takes (?:gotos?|commands?|orders?)\\b`,
  ],
  [
    'link',
    '^(?:that |the |this )?(?:error|message|box|popup)(?: message| box)? unseen$|^(?:and )?no more (?:error|message|complaint|popup)s?$',
  ],
  [
    'found',
    `\\b(?:search|finder|discovery|scan|${PROGRAM}|it|they) ${HOW}(?:${BE} )?(?:finds?|found|finding|sees?|lists?|listed|shows?|turns? up|picks? up|discovers?|discovered) (?:up )?${HOW}(?:it|${MOUNT}|ours)\\b`,
  ],
  [
    'found',
    `\\b(?:it|bridge|mount|scope|telescope) ${HOW}(?:is |gets? |was )?${HOW}(?:shows? up|pops? up|turns? up|appears?|comes? up|found|discovered|listed)(?= in | at | every| by | with | first | ${NOW}|$)|\\bsearch turns it up\\b|\\bone entry in the list and it is ours\\b`,
  ],
  [
    'lasts',
    `\\b(?:connection|link|mount|scope|it|she|all|everything|both|port) ${HOW}(?:(?:stays?|stayed|keeps?|remains?) ${HOW}(?:connected|up|on(?! the)|on ?line|alive|there|linked|going|running|steady|even|with|through|$)|(?:holds?|held|survives?|survived|lasts?|lasted)\\b)|\\b(?:connection|link|mount|scope|it|she|all|everything|both|port) (?:is |are )?still (?:connected|there|up|alive|on|online|linked|in)\\b|^still (?:connected|up|alive|online|linked)`,
  ],
  [
    'lasts',
    `\\b(?:mount|scope|it|link|connection) (?:has |have |does |do |did )?ceased\\b|\\bnothing happens to (?:the )?mount\\b|\\b(?:no|not one|zero) (?:more )?(?:drops?|drop ?outs?|disconnects?) (?:${NOW}|so far|in)\\b`,
  ],
  [
    'stays',
    `\\b${TARGET} (?:${BE} |was )?${HOW}(?:(?:stays?|stayed|sits?|stands?|keeps?|remains?) (?:\\w+ )?(?:in|on|at|put|where|there|still|cent(?:red|ered))\\b|still (?:in|on|at|there|cent(?:red|ered))\\b|ceased\\b)|\\b(?:saturn|jupiter|vega|star|it) was still (?:there|in)\\b`,
  ],
  [
    'stays',
    `\\b${MOVER} ${HOW}(?:follows?|keeps?|tracks?|holds?|stays? (?:on|with)) ${HOW}${TARGET}|\\bround stars\\b|\\bno (?:more )?drift\\w*\\b(?! (?:on|when))|\\bdrift (?:is )?(?:gone|over)\\b`,
  ],
];
/** What was never refused: "high objects are accepted". */
const NEVER_IN_DOUBT = /^(?:the |all |any )*high(?:er)? (?:ones?|stuff|objects?|targets?|stars?)\b/u;
const SAYINGS = SAYS.map(([doing, pattern]) => [doing, new RegExp(pattern, 'u')] as const);

/** A trouble that is told to have stopped takes nothing back. */
const TAKEN =
  /\b(?:is|are|was|were|get|gets)? ?(?:not|never|no longer) refused(?: (?:any ?(?:more|longer)|again|now))*/gu;
const CEASED =
  /\b(?:(?:is|are|was|does|do|did|has|have|it|that|this) )?(?:not|never|no longer) (?:once )?(?:refuse[ds]?|drop(?:ped|s)?|notice[ds]?|blink(?:ed|s)?|flinch(?:ed)?|stutter(?:ed|s)?|leave|care[ds]?|beeps?|fail(?:ed|s)?|drift(?:ed|s)?|complain\w*|lost|lose|disconnect\w*)(?: (?:it|the \w+))?(?: (?:any ?(?:more|longer)|again|once|since))*|\b(?:has|have) not (?:gone|left|moved|budged)(?: (?:the \w+|it|away|since|a (?:bit|hair)))*/gu;
const UNSEEN =
  /\b(?:(?:is|are|was|does|do|did|has|have|it|that|this) )?(?:not|never|no longer) (?:once )?(?:(?:says?|said|shows?) [^|]{0,40}|(?:come|comes|came|appears?|show(?:n|s)?)(?: (?:up|back|any ?(?:more|longer)|again|once|since))*)/gu;
const HARMLESS =
  /\bno (?:more|longer) (?:lost|dropped|broken) (?:connections?|links?)\b|\bno (?:more |single )?(?:errors?|error box|drops?|dropouts?|problems?|trouble|beeps?|complaints?|message|need|refusals?|drift|offset|miss)(?: (?:any ?more|this time|since|of typing address))?\b|\bnothing refused\b|\b(?:was|were|had been|it was) (?:set )?(?:on|off|to|parked|wrong|at|still)\b|\bstill clear\b|\bat last\b|\bnothing happens to the mount\b|\bset to (?:\w+ ){0,2}\w+$|\b(?:as well|one need)\b/gu;

/** Doubt, a condition, another time, another way, a part alone, a trouble, or no more than a sign on the way. */
const SPOILS = new RegExp(
  [
    '\\b(?:not|never|no|none|nothing|cannot|nobody|neither|hardly|barely|almost|nearly|but|except|although|though|however|if|whenever|unless|until|only|sometimes|half|partly|briefly|would|could|should|might|may ?be|perhaps|will|going to|gonna|hope[ds]?|hoping|wish|supposed|want|try|trying|tried to|think|thinks|believes?|what|how|why)\\b',
    '\\b(?:wrong|fails?|failed|errors?|refuses?|refused|beeps?|dead|dies|died|drops?|dropped|lost|loses|stops?|stopped|freezes|timeouts?|time out|times out|same|worse|opposite|backwards?|hums?|drifts?|closer|nearer|better|slower|degrees? (?:off|out|away)|(?:an )?hour (?:off|away|out)|off|floor|ground|lawn|fence|wall|roof|trees?|beside|below|short|past|instead|strange|weird|hangs?|hung|misses|missed|silent|asleep|sleep|other (?:side|way|end|direction|part))\\b',
    '\\b(?:yesterday|earlier|before|used to|always|last (?:night|week|month|year|time)|until|for (?:a|one|two|three|[1-9]) (?:second|sec|minute|min|moment|bit)s?|for \\d+ sec(?:ond)?s?|asks|asking|once|tomorrow|later|tonight|soon|then (?:it|stops)|in (?:theory|spring|summer|winter|autumn)|at (?:home|the dark site)|his|hers?|theirs)\\b',
    '\\b(?:by hand|hand|arrows?|keys?|keypad|joystick|phone|tablet|ipad|friends?|mates?|brothers?|wifes?|sons?|desktop|handset drives|(?:other|old|second|work|another) (?:laptop|computer|pc|mac|machine|one|mount|telescope|program|app)|terminal|browser|ping|pings|web|page|router|printer|lights?|leds?|lamp|sound|device manager|listed as|unplugged|demo|simulat\\w*|without (?:the |my )?(?:camera|cooler|guider|focuser|heaters?)|with (?:the )?camera off)\\b',
  ].join('|'),
  'u',
);
/** Of these a cure is told all the same. */
const OF_OWN =
  /\bdead (?:cent(?:re|er)|on|in|middle)\b|\bdrop ?down\b|\bat once\b|\bfirst (?:try|go|time)\b|\bno more \d+ (?:arc ?)?\w+|\b(?:error |offset |miss )?went from \d+ (?:\w+ )?to (?:nothing|zero|nil|0)\b|\b(?:arrows|buttons) in the program\b|\bfrom the (?:laptop|computer|program|app)\b|\bno longer\b|\bas (?:it|they) should\b|\b(?:worked|works|work|connecting works) as before\b|\btwice\b|\bwhen i (?:hit|press|send|click) \w+\b|\bevery time i \w+(?: it)?\b|\bwhere (?:it|they) should\b|\bnever had that\b|\b(?:that|this|those|which|it|they) (?:is |was |are |were )?(?:what |the ones? (?:that )?)?(?:failed|refused|beeped|dropped|missed|did not \w+|would not \w+) (?:before|earlier|yesterday)\b|\bwhat i \w+\b|\boff (?:it|she|he) (?:went|goes)\b|\bstraight (?:off|away)\b|\b(?:turned|switched|is|now) (?:it )?off\b|\boff now\b|\bsummer time off\b|\b\d+ arcsec off\b|\bit was on\b/gu;

const LONGEST_WORDS = 40;
const BREATHS =
  /[.,](?!\d)|[;!\n\u2026|]+|\s[-\u2013\u2014]+\s|[()]|\band (?=(?:it|she|the|my|now|goto|all|everything|both|there|every|i)\b)/u;

const plain = (text: string): string =>
  text
    .toLowerCase()
    .replace(/['\u2019]/gu, '')
    .replace(/\b(?:does|do|did|is|are|was|has|have|wo|ca|would|could)nt\b/gu, (word) => `${word.slice(0, -2)} not`)
    .replace(/[^\p{L}\d.,;!?|()\n\u2026\u2013\u2014-]+/gu, ' ')
    .trim();

const bare = (breath: string): string => breath.replace(/[^\p{L}\d]+/gu, ' ').trim();

const doingsIn = (text: string): ReadonlySet<Doing> => {
  const said = plain(text);
  if (said.includes('?') || said.split(' ').length > LONGEST_WORDS) return NONE;
  if (tellsNoCure(text)) return NONE;
  const breaths = said
    .split(BREATHS)
    .map((breath) =>
      bare(breath)
        .replace(TAKEN, ' accepted ')
        .replace(CEASED, ' ceased ')
        .replace(UNSEEN, ' unseen ')
        .replace(/ +/gu, ' ')
        .trim(),
    );
  const spoils = breaths.some((breath) => SPOILS.test(breath.replace(HARMLESS, 'so').replace(OF_OWN, 'so')));
  if (spoils) return NONE;
  return new Set(
    SAYINGS.flatMap(([doing, saying]) =>
      breaths.some((breath) => !NEVER_IN_DOUBT.test(breath) && saying.test(breath)) ? [doing] : [],
    ),
  );
};

export const doingsNow = rememberLines(doingsIn);
