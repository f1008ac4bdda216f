/**
 * Whether words tell what the mount now does rightly ("now it goes to the star exactly", "stays connected all night"), though they
 * never say that it works. A piece of the line must be nothing but that: whatever else stands in it makes it another tale.
 */
import { JOY } from './plain-cure.js';
import { STAR } from './word-kinds.js';

const either = (words: string): string => `(?:${words})`;

const WHOLE = either(
  'it|she|he|we|they|everything|(?:the |my |whole |this )*(?:mount|scope|telescope|goto|link|connection|tracking|pointing|alignment)',
);
const ITS_STAR = `(?:(?:the|my|a|each|every|any|all|chosen|bright|right|correct) )*${STAR}`;
const MIDDLE = either(
  '(?:the |my )?(?:very |right |correct )?(?:middle|centre|center|eyepiece|field|view|cross ?hairs?|place|spot|position)',
);
/** One axis or one motor: its right doing may leave the rest as it was. */
const PART = either('(?:the |my |both )?(?:dec|ra|declination|right ascension|axis|axes|motors?|azimuth|altitude)');
const NOW = either('now|again|at last|finally|this time|after (?:that|this)|since');
const EXACT = either(
  'exactly|exact|correct|correctly|precisely|perfect|perfectly|accurately|nicely|dead|bang|spot on|spot|dead on|right|straight|directly|each time|every time|first (?:time|go|try)',
);
const WELL = either(
  'ok|okay|fine|good|well|great|smooth|smoothly|perfect|perfectly|properly|correct|correctly|right|nicely|straight|normally|normal|normaly|reliably|' +
    'all the way|the whole way|(?:at )?full speed|every time|each time|straight (?:off|away)|at once|first (?:time|go|try)|very|quite|all|both|really|so',
);
const LASTING = either(
  '(?:for )?(?:all|the whole|whole|the entire) (?:night|evening|session|time)|(?:for )?(?:two|three|four|five|six|several|many|\\d+) hours?|all the time',
);
const GOES = either(
  'go|goes|going|lands?|points?|stops?|drives?|comes?|arrives?|falls?|moves?|slews?|turns?|sits?|stands?|is|are|gets?|hits?',
);
const FINDS = either('centres?|centers?|finds?|hits?|reaches|catches|gets?');
const RUNS = either(
  'works?|moves?|turns?|slews?|tracks?|tracking|follows?|guides?|answers?|replies|reply|responds?|reacts?|connects?|runs?|talks?|obeys?|go|goes',
);
const KEEPS = either(
  '(?:stays?|staying|remains?|keeps?|is staying) (?:connected|on|up|online|alive|linked|on (?:the )?(?:star|target)|in (?:the )?(?:middle|centre|center))|holds?(?: on)?|connected',
);
const TO_ME = '(?: (?:to )?(?:me|us|the (?:laptop|program|computer|app)))?';

const doings = (who: string): string => {
  const to = `(?:${EXACT} )*(?:in ?to|on ?to|to|on|in|at)`;
  const doing = either(
    [
      `${GOES} ${to} (?:${ITS_STAR}|${MIDDLE})`,
      `${GOES} (?:${EXACT} )+${MIDDLE}`,
      `${FINDS} ${ITS_STAR}`,
      `${RUNS}${TO_ME}`,
      `${RUNS} ${to} ${ITS_STAR}`,
      KEEPS,
    ].join('|'),
  );
  return `(?:(?:${LASTING}|${NOW}) )*${who}(?:${NOW} |all |just |really )*${doing}`;
};
const HOWS = `(?: (?:${NOW}|${EXACT}|${WELL}|${LASTING}))*`;
const LEADS = `(?:(?:yes|and|so|ah|aha|oh|ok|well|${NOW}|${LASTING}|${JOY}) )*`;
const THANKED = `(?: (?:${JOY}|so much|very much|a lot|all))*`;
const anchored = (doing: string): RegExp => new RegExp(`^${LEADS}${doing}${HOWS}${THANKED}$`, 'u');
/** A star is no one's but the mount's doing. */
const OF_WHOLE = anchored(doings(`(?:${WHOLE} |${ITS_STAR} (?=(?:now )?(?:${GOES}|${KEEPS})\\b))?`));
const OF_PART = anchored(doings(`${PART} `));

const HAS_NOW = new RegExp(`\\b(?:${NOW}|${LASTING}|each|every time|first (?:time|go|try))\\b`, 'u');
const HAS_JOY = new RegExp(`(?:^| )${JOY}(?: |$)`, 'u');
/** Beside the verb of it: where it lands, how it runs, how long it holds. */
const HAS_HOW = new RegExp(
  `\\b(?:${EXACT}|${LASTING}|ok|okay|fine|good|well|great|smooth|smoothly|properly|normally|reliably|at once|middle|centre|center|stays?|holds?|centres|centers|each)\\b`,
  'u',
);

const ONLY_POLITE = new RegExp(
  `^(?:${JOY}|so much|very much|a lot|all|for (?:that|the help|your help|help|all the help)|mate|everyone|pierhand|ok|well|now|you|(?:no|not (?:one|a|a single)|zero|without(?: a| any)?) (?:more )?(?:drops?|errors?|dropouts?|problems?|trouble|time ?outs?))(?: |$)`,
  'u',
);
const isPolite = (piece: string): boolean => {
  let rest = piece;
  while (rest !== '' && ONLY_POLITE.test(rest)) rest = rest.replace(ONLY_POLITE, '');
  return rest === '';
};

/** "Go to the star now" may be an order. */
const ORDER = /^(?:now |then )?go\b/u;

/** Said ahead of it, these make it hang on something, hoped, or of another time. */
const HANGS =
  /\b(?:if|unless|until|when|whenever|while|only|hopes?|hoped|hoping|would|should|could|might|may|maybe|perhaps|will|wish|want|need|try|trying|thought|think|yesterday|last|sometimes|says|said|my (?:friend|mate)|his|hers|except|but|how|why|what)\b/u;
/** A trouble ahead of it may be the old one, or one that stands. */
const TROUBLED =
  /\b(?:not|never|nothing|still|wrong|drops?|dropped|fails?|failed|errors?|lost|loses|stops?|stopped|same|almost|nearly|without)\b/u;

const doerOf = (piece: string): 'whole' | 'part' | null => {
  if (OF_WHOLE.test(piece)) return 'whole';
  return OF_PART.test(piece) ? 'part' : null;
};

/**
 * `plain`: the trouble is over; `likely`: it may be, and is to be asked.
 * @param line mended words, clauses parted by " | "
 */
export const doesRightly = (line: string): 'plain' | 'likely' | null => {
  const pieces = line.split(/ \| | (?:and|n|so(?! much)) /u).map((piece) => piece.trim());
  const told = pieces.map(doerOf);
  const at = told.findIndex((what) => what !== null);
  if (at < 0) return null;
  const before = pieces.slice(0, at).filter((piece) => !isPolite(piece));
  if (before.some((piece) => HANGS.test(piece))) return null;
  if (pieces.some((piece, index) => index > at && told[index] === null && !isPolite(piece))) return null;
  const doing = pieces.filter((_, index) => told[index] !== null).join(' | ');
  const isNow = HAS_NOW.test(doing);
  const isWell = HAS_HOW.test(doing);
  if (!isWell && (!isNow || ORDER.test(doing))) return null;
  const signs = [isNow, isWell, HAS_JOY.test(line)].filter(Boolean).length;
  const isPlain = told.includes('whole') && signs > 1;
  return isPlain && !before.some((piece) => TROUBLED.test(piece)) ? 'plain' : 'likely';
};
