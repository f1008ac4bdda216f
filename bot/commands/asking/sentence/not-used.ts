/** What of a sentence the line that answers it does not use: words that no part was made of and that neither fill nor ask what is answered. */
import type { Asked, Reading, Unread } from './asked.js';
import { isFill } from './fill-words.js';

/** Commands whose answers are of the sky: others take words as they are (reminders), or are asked with few. */
const CHECKED = /^(?:up|altitude|tonight|meridian|bright|moons|epoch)\b/u;
/** Before what is not used, these belong to it: "above 60°", "without the Moon". */
const LEADS =
  /^(?:above|over|under|below|less|more|at|within|until|till|after|before|from|between|with|without|no|for|than|not|through|behind|past|only|except|brighter|fainter|wider|larger|smaller)$/u;
/** Words of the compass say something after these; "north pole star" is a name. */
const DIRECTION = /^(?:north|south|east|west)$/u;
const TO_DIRECTION = /^(?:the|in|to|towards?|facing|looking|low|high|due|north|south)$/u;
const MOST_SAID = 3;

const folded = (text: string): string => text.toLowerCase().replaceAll('-', '');

const isUsed = ({ plain }: Unread, before: string, line: string): boolean =>
  isFill(plain, line) ||
  (plain.length > 2 && folded(line).includes(folded(plain).replace(/s$/u, ''))) ||
  (DIRECTION.test(plain) && !TO_DIRECTION.test(before));

/** Runs of words that stand beside each other. */
const runsIn = (unread: readonly Unread[]): readonly (readonly Unread[])[] => {
  const runs: Unread[][] = [];
  for (const word of unread) {
    const last = runs.at(-1);
    if (last !== undefined && last.at(-1)?.at === word.at - 1) last.push(word);
    else runs.push([word]);
  }
  return runs;
};

/** From the first word that is not used to the last, with what leads to it. */
const saidOf = (run: readonly Unread[], line: string): string | null => {
  const unused = run.map((word, i) => !isUsed(word, run[i - 1]?.plain ?? '', line));
  const first = unused.indexOf(true);
  // "before" and nothing after it says no more than the answer does.
  if (first < 0 || run.every(({ plain }, i) => unused[i] !== true || LEADS.test(plain))) return null;
  const last = unused.lastIndexOf(true);
  const isLed = first > 0 && LEADS.test(run[first - 1]?.plain ?? '');
  return run
    .slice(isLed ? first - 1 : first, last + 1)
    .map(({ typed }) => typed)
    .join(' ');
};

/** A limit that was read, and that the line has no use for. */
const limitsLeft = ({ above, below }: Asked, line: string): readonly string[] => [
  ...(below === null || /\bbelow:/u.test(line) ? [] : [`under ${below}°`]),
  ...(above === null || /\babove:/u.test(line) ? [] : [`above ${above}°`]),
];

/** "Above 60°", "slew limit 70"; none where all was used. */
const notUsed = (asked: Asked, line: string): readonly string[] => {
  if (!CHECKED.test(line)) return [];
  const words = runsIn(asked.unread)
    .map((run) => saidOf(run, line))
    .filter((unused) => unused !== null);
  return [...words, ...limitsLeft(asked, line)].slice(0, MOST_SAID);
};

/** What was said and plays no part in the answer is told. */
export const withUnusedSaid = (read: Reading, asked: Asked): Reading => {
  if (read.usesAll === true) return read;
  const unused = notUsed(asked, `${read.line} ${read.note ?? ''} ${read.unsure ?? ''}`).join('; ');
  if (unused === '') return read;
  const note = [`Not used: ${unused}.`, ...(read.note === undefined ? [] : [read.note])].join(' ');
  return { ...read, note, unread: unused.split(/\s+/u).length };
};

/** Commands whose answer hangs on where one stands. */
const OF_A_PLACE =
  /^(?:up|altitude|compare|tonight|dark|moon|moons|ahead|sun|meridian|alignment|pole|entries|sidereal|remind)\b/u;

/** A word that may have been a place is told of: the answer is for elsewhere. */
export const withPlaceDoubted = (read: Reading, { perhapsPlace }: Asked): Reading =>
  perhapsPlace === null || !OF_A_PLACE.test(read.line)
    ? read
    : { ...read, unsure: `If “${perhapsPlace}” is a place, I do not know it: this is for your usual site.` };

/** Commands that answer for tonight, or for now, where no day is named. */
const OF_A_NIGHT =
  /^(?:up|altitude|compare|tonight|dark|moon|moons|meridian|bright)\b(?!.* (?:on|at|over|next|from):)/u;
const DAY_WORDS =
  /\b(?:\d{1,2}\/\d{2}(?:\/\d{2,4})?|\d{1,2}(?:st|nd|rd|th)|\d{4}-\d{1,2}|christmas|xmas|easter|new ?year\S*|thanksgiving|diwali|eid|ramadan|hanukkah|birthday|(?:day|night|week) (?:after|before)|next (?:month|year)|(?:january|february|march|april|june|july|august|september|october|november|december))\b/u;

/** A day that was said and not read stands before the answer, which is for tonight. */
export const withDayDoubted = (read: Reading, { plain, unread }: Asked): Reading => {
  if (!OF_A_NIGHT.test(read.line) || read.unsure !== undefined) return read;
  const said = DAY_WORDS.exec(plain)?.[0];
  const isUnread = said?.split(' ').some((word) => unread.some((left) => left.plain.includes(word))) === true;
  return said === undefined || !isUnread
    ? read
    : { ...read, unsure: `I could not read “${said}” as a day: this is for tonight. Say it as 26 Dec.` };
};
