/**
 * Whether a member's words say that the trouble is over: a breath of them that is nothing but a cure ("it talks now", "bang on",
 * "a shorter lead did the trick"), and none around it that takes it back, hopes, or makes it hang on something.
 */

const either = (words: string): string => `(?:${words})`;

/** Present and whole: a port that appears, a light that comes on and a lead that fits are only on the way. */
const WORKS = either(
  'works|talks|connects|slews|moves|tracks|answers|responds|replies|aligns|behaves|communicates|finds|lands|points|goes',
);
/** … which say so even without "well"; "now it goes …" tells of something else. */
const WORKS_AT_ALL = either(
  'works|talks|connects|slews|moves|tracks|answers|responds|replies|aligns|behaves|communicates',
);
const WORKING = either('working|talking|connected|connecting|slewing|moving|tracking|going|responding|online|alive');
/** Said of the whole in praise; no one says it of a thing that was sound before. */
const PRAISED = either(
  'bang on|spot on|dead on|right on|on target|sorted|sorted out|fixed|cured|solved|mended|perfect|in business|good to go|up running|back to normal',
);
/** "It was fine" says that a look found nothing; "it is fine now" says that it is cured. */
const APPROVED = either(
  'fine|good|ok|okay|great|brilliant|right|well|running|lovely|happy|accurate|centred|(?:right |dead )?in the (?:middle|centre|eyepiece|field)',
);
const NOW = either(
  'now|again|at last|finally|at long last|once more|after all|this time|like new|first time|every time|straight away|at once',
);
const WELL = either(
  'fine|well|great|ok|okay|perfectly|properly|nicely|beautifully|smoothly|reliably|happily|lovely|a treat|like a dream|like a charm|bang on|spot on|dead on|right on|on target|as it should|where it should|(?:right |dead )?in the (?:middle|centre|eyepiece|field)',
);
const PARTNER = either(
  '(?:to|with) (?:it|each other|(?:the |my )?(?:mount|scope|telescope|laptop|computer|pc|program|app|software))',
);
const SUBJECT = either(
  'it|that|this|they|everything|all|all of it|both|the lot|whole thing|(?:the |my |both |all )?(?:mount|scope|telescope|goto|program|app|software|laptop|computer|pc|axes|stars|pointing|tracking|alignment|connection)',
);
const BE = either('is|are|s|has been|have been|seems|looks');
const MUCH = either('all|just|even|actually|finally|now|really|absolutely|completely|totally|properly|back');
const OVER = either('sorted|fixed|cured|solved|mended|nailed|cracked');
/** The partner found, by the program or by nobody named. */
const FOUND = either('found|finds|sees|has found|has got|got|reaches|reached|recognises|recognised|picked up');
const PROGRAM = either('it|(?:the |my )?(?:program|app|software|laptop|computer|pc|phone|tablet)');
const MOUNT = either('it|(?:the |my )?(?:mount|scope|telescope|bridge)');
/** Where a target should stand. */
const CENTRED = either(
  '(?:right |dead |bang |smack |nicely |exactly |just )*(?:in |on |at )(?:the )?(?:middle|centre|center|cross ?hairs?|eyepiece|field|view)(?: of (?:the |my )?(?:eyepiece|field|view|frame|picture|finder))?',
);
const STANDS = either('is|are|stands?|sits?|lands?|appears?|comes?|came|shows(?: up)?|was');
const FAULT = either('problem|trouble|fault|issue|mystery|case|job');

const NOW_OR_WELL = `(?: (?:${NOW}|${WELL}|${PARTNER}))`;
const CURES = [
  `(?:${SUBJECT} )?(?:${MUCH} )*${WORKS}${NOW_OR_WELL}+`,
  `(?:${SUBJECT} )(?:${BE} )?(?:${MUCH} )*${WORKING}${NOW_OR_WELL}*`,
  `(?:${SUBJECT} )?(?:${MUCH} )*${WORKING}${NOW_OR_WELL}+`,
  `(?:${SUBJECT} )?(?:${BE} )?(?:${MUCH} )*${PRAISED}${NOW_OR_WELL}*`,
  `(?:${SUBJECT} )?(?:${BE} )?(?:${MUCH} )*${APPROVED}(?: ${NOW})+`,
  `(?:i am|im|i m|we are|were) (?:${MUCH} )*(?:${PRAISED}|${WORKING}|in|back in|on|away)${NOW_OR_WELL}*`,
  `(?:i |we )?(?:have )?(?:finally )?(?:got|have got|have) (?:it|everything|the mount) (?:to (?:work|connect|talk|go|move)|${WORKING})${NOW_OR_WELL}*`,
  `(?:[^ ]+ ){0,6}(?:${OVER} (?:it|that|the job)|the trick)${NOW_OR_WELL}*`,
  // "I did it", "did that" tell that the remedy was done.
  `(?!(?:[^ ]+ ){0,3}(?:i|we|have|just) (?:just |have )?did )(?:[^ ]+ ){1,6}did (?:it|the trick|the job)${NOW_OR_WELL}*`,
  `now ${PROGRAM} ${FOUND} ${MOUNT}${NOW_OR_WELL}*`,
  `${PROGRAM} (?:now |just )?(?:has )?${FOUND} ${MOUNT} (?:${NOW}|straight away|at once)${NOW_OR_WELL}*`,
  `(?:the |my )?(?:program|app|software) (?:now |just |has )*(?:found|sees|finds|recognises) ${MOUNT}${NOW_OR_WELL}*`,
  `now (?:[^ ]+ ){1,3}${STANDS} ${CENTRED}${NOW_OR_WELL}*`,
  `(?:[^ ]+ ){1,3}${STANDS} ${CENTRED}(?: ${NOW})+`,
  `now ${SUBJECT} ${WORKS_AT_ALL} (?:to|with) (?:me|us|it|(?:the |my )?(?:laptop|program|computer|app|mount))${NOW_OR_WELL}*`,
  `(?:and |so )?(?:there|off|away) (?:it|she|he) goes(?: now| at last| finally)*`,
  `(?:it|she|he) (?:lives|is alive|came (?:right|straight) up|is in)${NOW_OR_WELL}*`,
  `(?:we|i) (?:have|have got|got) (?:a )?(?:connection|contact|link|mount|lift off)${NOW_OR_WELL}*`,
  `now (?:${SUBJECT} )?(?:${MUCH} )*(?:${WORKS_AT_ALL}|${BE} ${WORKING})${NOW_OR_WELL}*`,
  `${SUBJECT} now (?:${MUCH} )*${WORKS_AT_ALL}${NOW_OR_WELL}*`,
  `(?:that|this|which) does (?:it|the trick)`,
  `(?:that|it) (?:is|was) (?:it|the one|the culprit)${NOW_OR_WELL}*`,
  `(?:the )?${FAULT} (?:is )?(?:${MUCH} )*(?:solved|sorted|fixed|cured|over|gone|done)${NOW_OR_WELL}*`,
  'success|we have lift off|lift off',
].map((cure) => new RegExp(`^${cure}$`, 'u'));

/** Praise and thanks round it: with one of them even a bare "it connects" is a cure. */
export const JOY = either(
  'yes|yay|yeah|yep|wow|hooray|hurray|hurrah|woohoo|wahey|brilliant|great|wonderful|fantastic|amazing|excellent|lovely|magic|superb|marvellous|perfect|result|thanks|thank you|thankyou|thx|ta|cheers|many thanks|much obliged|bless you|you are a star|danke|merci|grazie|gracias',
);
const BARE = new RegExp(
  `^(?:${SUBJECT} )?(?:(?:${MUCH}) )*(?:${WORKS}|${BE} ${WORKING}|${WORKING}|${FOUND} ${MOUNT})$|^(?:[^ ]+ ){1,3}${STANDS} ${CENTRED}$`,
  'u',
);
const ASIDE = either(
  'but|n|and|aha|ah|oh|ooh|ok|okay|right|well|um|and|so|now|hey|hm|ha|then|there|phew|finally|at last|good',
);
const LEAD = new RegExp(`^(?:(?:${ASIDE}|${JOY}) )+(?=[^ ])`, 'u');
const JOINS = /^(?:(?:but|n|and|so|oh|ooh|ah|aha|ok) )+(?=[^ ])/u;
const TAIL = new RegExp(
  ` (?:${JOY}|so much|very much|a lot|a million|for (?:that|the help|your help|all the help)|mate|all|everyone|pierhand)$`,
  'u',
);
const HAS_JOY = new RegExp(`(?:^| )${JOY}(?: |$)`, 'u');

/** Denied, hoped, heard of, or bound to something. */
const NOT_SURE =
  /\b(?:not|never|nothing|none|neither|nobody|hardly|barely|almost|nearly|if|unless|until|whenever|when|while|only|would|could|should|might|may|will|can|maybe|perhaps|probably|hope|hopes|hoped|hoping|wish|thought|guess|supposed|pretend|said|says|sometimes|half|partly|briefly|last|yesterday|before|used|now and|on and off|for now|there (?:it|she|he) goes again)\b/u;
const TAKES_BACK =
  /\b(?:but|only|except|though|although|however|yet|until|unless|if|when|whenever|not|no|never|nothing|still|then|drops?|dropped|dropping|loses|lost|dies|died|dead|stops?|stopped|fails?|failed|errors?|wrong|off|out|misses|freezes|froze|slow|sometimes|a (?:second|minute|moment|bit)|(?:few|couple of|\d+) (?:seconds?|minutes?))\b/u;
const BOUND_TO = /\b(?:if|unless|whenever|when|while|until|only|as long as|hope|hoped|would|should|wish|thought)\b/u;
/** What is gone takes nothing back. */
const NO_MORE = /\bno (?:more )?(?:errors?|drops?|problems?|trouble|worries|issues?|drama|dropouts?|time ?outs?)\b/gu;
const STILL_WELL = new RegExp(`\\bstill (?:${WORKING}|on|up|running|there)\\b`, 'gu');

const isCurePiece = (piece: string, isJoyful: boolean): boolean => {
  // "At last" is no time gone by.
  if (NOT_SURE.test(piece.replace(/\bat (?:long )?last\b/gu, ''))) return false;
  let bare = piece;
  for (let before = ''; before !== bare;) {
    before = bare;
    bare = bare.replace(TAIL, '');
  }
  return [bare, bare.replace(JOINS, ''), bare.replace(LEAD, '')].some(
    (one) => CURES.some((cure) => cure.test(one)) || (isJoyful && BARE.test(one)),
  );
};

/** What has stopped: "no more drops", "has not failed since", "does not fail any more", "without complaint". */
const CEASED =
  /\bno (?:more )?(?:refusals?|restarts?|time ?outs?|dropouts?|drop outs?|drops?|errors?|complaints?)\b|\b(?:has|have|had|did|does|do) not (?:once )?(?:fail|drop|lose|stop|freeze|complain|refuse|miss|dip|dim)[a-z]*(?: (?:any ?more|again|once|since|all night|in (?:[a-z\d]+ ){1,3}(?:hours?|minutes?)|for (?:[a-z\d]+ ){1,3}(?:hours?|minutes?)))+|\bwithout (?:a |any |one )?(?:complain[a-z]*|trouble|hitch|errors?|drops?|dropouts?|problems?|refusing)\b/gu;
const MENDED = new RegExp(
  `\\b(?:${FAULT}|it|that|this|all|everything) (?:is |has been |was )?(?:all |now )*(?:repaired|${OVER})\\b(?! (?:to|on|at|in|by)\\b)`,
  'u',
);
const THING = either('it|she|he|everything|all|both|(?:the |my )?(?:mount|scope|telescope|goto|link|connection)');
const RUNS = either(
  'works?|worked|holds?|connects?|connected|moves?|tracks?|talks?|behaves|goes(?= \\||$)|is (?:all |now |back )*(?:going|moving|working|connected|tracking|talking|slewing)',
);
const SAYS_RUNS = new RegExp(`\\b${THING} (?:all |just |really |now |even )*${RUNS}\\b`, 'u');
const AT_LAST = /\b(?:now|first (?:go|time|try)|at once|straight away|twice|every time|since)\b/u;
const ALL_GOOD =
  /(?:^|\| )(?:[a-z]+ )?(?:it is |its )?all good(?: now)?(?: (?:ty|thanks|cheers|mate|bro|here|again)){0,2}$/u;
const GOT_IT = new RegExp(
  `\\b(?:that|this|it) (?:is |has )?got it$|\\bi (?:am )?in(?= \\||$)|\\b(?:connected|found it|in) ${AT_LAST.source}$`,
  'u',
);
const RUNS_ALONE = new RegExp(`${SAYS_RUNS.source}(?= \\||$)`, 'u');
/** So short it can be of nothing else. */
const MOST_OF_BARE = 8;
/** Of one way to steer alone, or for a time. */
const IN_PART =
  /\b(?:with|on|from|by) (?:the |my |its |his |her )?(?:buttons|keys|handset|keypad|hand|arrows|joystick|phone|tablet|ipad)\b|\bfor (?:a|an|one|two|the) \w+\b|\b(?:his|hers|(?:my|a) (?:mate|friend)|how|what|where|which)\b/u;

/** It moves, and comes down beside its mark. */
const BESIDE =
  /\b(?:goes|moves|slews|turns|tracks|points|lands)(?: [^ |]+){0,4} (?:almost|nearly|below|beside|short of|next to|near|degrees?|horizon|backwards?|opposite)\b/u;

/**
 * A cure told at length or by the way: a trouble has stopped or is mended, or the whole runs, with "now" or joy beside it, and not a
 * word of doubt, of trouble or of a condition anywhere.
 */
const isCureInAll = (line: string): boolean => {
  const rest = line
    .replace(CEASED, 'well')
    .replace(
      /\b(?:would you believe it|at (?:long )?last|used (?:the|a|an|my)|(?:was|were|is) off|last (?:night|time))\b/gu,
      'so',
    );
  if (NOT_SURE.test(rest) || TAKES_BACK.test(rest) || IN_PART.test(rest) || BESIDE.test(rest)) return false;
  const isShort = rest.split(' ').length <= MOST_OF_BARE;
  return (
    rest.includes('well') !== line.includes('well') ||
    MENDED.test(rest) ||
    ALL_GOOD.test(rest) ||
    GOT_IT.test(rest) ||
    (isShort && RUNS_ALONE.test(rest)) ||
    (SAYS_RUNS.test(rest) && (AT_LAST.test(rest) || HAS_JOY.test(rest)))
  );
};

/** @param line mended words, clauses parted by " | ", "it's" written out */
export const isPlainCure = (line: string): boolean => {
  const pieces = line
    .replace(/\bup and running\b/gu, 'up running')
    .replace(NO_MORE, 'well')
    .replace(STILL_WELL, 'well')
    .replace(/\ba (?:\| )?(?:good |long |little )?(?:\| )?while\b/gu, 'long')
    .split(/ \| | (?=then\b|but\b)| (?:and|so|because|n) (?!then\b|again\b|off\b)/u)
    .map((piece) => piece.trim());
  const isJoyful = HAS_JOY.test(line);
  const at = pieces.findIndex((piece) => isCurePiece(piece, isJoyful));
  if (at < 0) return isCureInAll(line);
  const [before, after] = [pieces.slice(0, at), pieces.slice(at + 1)];
  return !before.some((piece) => BOUND_TO.test(piece)) && !after.some((piece) => TAKES_BACK.test(piece));
};
