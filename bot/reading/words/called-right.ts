/** "The clock is correct", "it is NOT wrong": words that call a thing right, whatever they are like otherwise, and tell of no fault of it. */
import { rememberLines } from '../lately.js';

const DENIED = "(?:not|never|isn['\u2019]?t|wasn['\u2019]?t|aren['\u2019]?t|ain['\u2019]?t|nothing(?: is|['\u2019]s)?)";
const VERY = '(?: (?:at all|really|even|all|both|quite|exactly|surely|definitely|still|already|too))?';
const WRONG = '(?:wrong|off|out|incorrect|false|bad|the (?:problem|trouble|fault|issue|cause|reason))';
const DENIED_WRONG = new RegExp(`\\b${DENIED}${VERY} ${WRONG}\\b`, 'giu');
const IS_RIGHT = new RegExp(
  `(?:\\b(?:is|are|was|were|it['\u2019]?s|that['\u2019]?s|thats|its|both|all|reads|looks|seems)|^)${VERY}(?: \\w+ly)? (?:correct|right|exact|accurate|spot on|perfect)\\b(?! (?:of|side|hand|to|at|after|when|now|away)\\b)`,
  'iu',
);
/** A word that takes some of it back, or a fault beside it. */
const TAKEN_BACK =
  /\b(?:but|though|although|however|except|only|until|till|when|then|if|should|supposed|wrong|off|out|slow|fast|behind|ahead|resets?|lost|loses?|not|no|never|nothing|cannot|without|\w+n['\u2019]t|isnt|wasnt|doesnt|dont|wont|cant|didnt|arent)\b/iu;
const ALL = /^\W*(?:(?:but|no|and|well|ok|sorry)\b[ ,]*)*/iu;

/** Whether the words call what they speak of right, and say nothing against it. */
export const callsRight = (text: string): boolean => {
  const said = text.replace(ALL, '');
  const rest = said.replace(DENIED_WRONG, ' ');
  return (rest !== said || IS_RIGHT.test(said)) && !TAKEN_BACK.test(rest);
};

/** What the mount is told of place and time, by the words for each; the longer names first, as "summer time" is no time. */
const ENTRIES: readonly (readonly [string, RegExp])[] = [
  ['summer', /\b(?:summer|winter|daylight)[ -]?(?:time|savings?)(?: time)?\b|\bdst\b|\bbst\b/giu],
  ['zone', /\btime ?zones?\b|\bzone\b|\b(?:utc|gmt) ?offset\b|\boffset\b|\butc\b|\bgmt\b/giu],
  ['place', /\blat(?:itude)?\b|\blong?(?:itude)?\b|\bsite\b|\bplace\b|\blocation\b|\bcoordinates\b|\bposition\b/giu],
  ['date', /\bdates?\b|\bday\b|\bmonth\b|\byear\b/giu],
  ['clock', /\bclock\b|\btime\b|\bhours?\b|\bminutes?\b|\bwatch\b/giu],
];

/** The entries that words name; empty where none is. */
export const entriesNamed = (text: string): ReadonlySet<string> => {
  let rest = text;
  const named = new Set<string>();
  for (const [entry, words] of ENTRIES) {
    const without = rest.replace(words, ' ');
    if (without !== rest) named.add(entry);
    rest = without;
  }
  return named;
};

const AMISS =
  /\b(?:wrong|incorrect|off|out|slow|fast|behind|ahead|early|late|resets?|lost|loses?|jumps?|drifts?|another|different)\b/iu;
const NONE: ReadonlySet<string> = new Set();

/** The entries that words call right and nowhere find fault with: "the time is right, the date is 20 years off" calls the clock so. */
export const entriesRight = rememberLines((text): ReadonlySet<string> => {
  const pieces = text.split(/[.!?;,\n]+/u).map((piece) => ({ piece, isRight: callsRight(piece) }));
  const right = pieces.flatMap(({ piece, isRight }) => (isRight ? [...entriesNamed(piece)] : []));
  if (right.length === 0) return NONE;
  const amiss = pieces
    .filter(({ isRight, piece }) => !isRight && AMISS.test(piece.replace(DENIED_WRONG, ' ')))
    .map(({ piece }) => entriesNamed(piece));
  const isFree = (entry: string): boolean => amiss.every((named) => named.size > 0 && !named.has(entry));
  return new Set(right.filter(isFree));
});

/** Which entry is amiss by an answer that says one is. */
const AMISS_BY: ReadonlyMap<string, string> = new Map([
  ['date-entries.swapped', 'date'],
  ['date-entries.day-off', 'date'],
  ['date-entries.half-day', 'clock'],
  ['date-entries.clock-off', 'clock'],
  ['entries-screen.date', 'date'],
  ['entries-screen.time', 'clock'],
  ['entries-screen.summer-time', 'summer'],
  ['entries-screen.offset', 'zone'],
  ['entries-screen.longitude', 'place'],
  ['entries-screen.latitude', 'place'],
  ['entries-screen.place', 'place'],
  ['zone-entries.summer-time', 'summer'],
  ['zone-entries.sign', 'zone'],
  ['zone-entries.offset', 'zone'],
  ['site-entries.east-west', 'place'],
  ['site-entries.north-south', 'place'],
  ['site-entries.decimals', 'place'],
  ['site-entries.swapped', 'place'],
  ['site-entries.another-place', 'place'],
  ['program-clock.wrong-clock', 'clock'],
  ['program-clock.wrong-site', 'place'],
]);

const ENDS_RIGHT = /\b(?:correct|right|ok|okay|fine|good)\W*$/iu;
const THEY_MATCH = /\b(?:they|all|both|everything|entries) (?:all |both |do )?(?:match|matches|agree|agrees)\b/iu;
/** "Latitude N 62", "zone is +2". */
const VALUE_ALONE = /^\W*(?:and )?(?:the )?[a-z]+(?: [a-z]{4,6})?(?: is|:)? ?[nsew+-]{0,2} ?\d[\d.:°' ]*[nsew]?\W*$/iu;
/** A setting that is off is not amiss. */
const SET_OFF = /\b(?:summer|daylight|dst|bst)\b[^,.;]{0,20}? off\b(?! by\b)/giu;

/** "Time is correct, longitude E 25 correct, latitude N 62": a list of right ones, in which a value alone is none amiss. */
const isListOfRight = rememberLines((text): boolean => {
  const said = text.replace(ALL, '').replace(SET_OFF, ' ').replace(DENIED_WRONG, ' ');
  if (TAKEN_BACK.test(said) || AMISS.test(said) || said.includes('?')) return false;
  const isRight = (piece: string): boolean => ENDS_RIGHT.test(piece) || callsRight(piece);
  const named = said.split(/[!;,\n]+|\.(?!\d)/u).filter((piece) => entriesNamed(piece).size > 0);
  const right = named.filter(isRight);
  if (!named.every((piece) => isRight(piece) || THEY_MATCH.test(piece) || VALUE_ALONE.test(piece))) return false;
  return right.length > 1 || THEY_MATCH.test(said);
});

/** Whether an answer says that an entry is amiss which the words call right. */
export const isCalledRight = (text: string, answer: string): boolean => {
  const entry = AMISS_BY.get(answer);
  return entry !== undefined && (entriesRight(text).has(entry) || isListOfRight(text));
};
