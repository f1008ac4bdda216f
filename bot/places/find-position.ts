/** Finds a position written with letters or words anywhere in a sentence ("at 35.0 N, 25.0 E", "lat 52.7 lon -0.1"), and writes it plainly. */
import { isProblem } from '../ground/problem.js';
import { distanceKm, type Spot } from './distance.js';
import { parsePosition } from './parse-position.js';

const NUMBER = String.raw`[-+−]?\d{1,3}(?:\.\d{1,8})?`;
const SIXTIETHS = String.raw`\d{1,2}(?:\.\d{1,8})?`;
const DEG = String.raw`(?:°|º|deg(?:rees?)?\b|d\b)`;
const MIN = String.raw`(?:['′’]|min(?:ute)?s?\b|m\b)`;
const SEC = String.raw`(?:["″”]|['′’]{2}|sec(?:ond)?s?\b)`;
/** With a unit between its parts, or a single number. */
const WITH_UNITS = String.raw`${NUMBER}\s*(?:${DEG}\s*(?:${SIXTIETHS}\s*${MIN}?\s*(?:${SIXTIETHS}\s*${SEC}?\s*)?)?)?`;
/** Two or three whole numbers, as a receiver shows them: "51 30 12". */
const bare = (parts: 2 | 3): string => String.raw`\d{1,3}(?:\s+${SIXTIETHS}){${parts - 1}}\s*`;
const LATITUDE = String.raw`(?:(?:north|south|[ns])(?!\p{L}))`;
const LONGITUDE = String.raw`(?:(?:east|west|[ew])(?!\p{L}))`;
const LATITUDE_WORD = String.raw`\blat(?:itude)?\.?\s*(?:is|of|[:=])?\s*`;
const LONGITUDE_WORD = String.raw`\b(?:lon(?:g(?:itude)?)?|lng)\.?\s*(?:is|of|[:=])?\s*`;
const GAP = String.raw`\s*(?:[,;/&]|and\b|by\b)?\s*`;
/** No digit of a longer number, and no number of a catalogue ("m 42 52.7 n 1.1 w"). */
const BEGINS = String.raw`(?<![\p{L}\d.]|\b(?:m|messier|ngc|ic|c|caldwell|barnard|b|hd|hr|hip|abell)\s)`;

/** The angle forms that stand together, one of each axis. */
const ANGLES = [bare(3), bare(2), WITH_UNITS];

const PATTERNS = [
  `${LATITUDE_WORD}${WITH_UNITS}${LATITUDE}?${GAP}${LONGITUDE_WORD}${WITH_UNITS}${LONGITUDE}?`,
  `${LONGITUDE_WORD}${WITH_UNITS}${LONGITUDE}?${GAP}${LATITUDE_WORD}${WITH_UNITS}(?:${LATITUDE})?`,
  ...ANGLES.flatMap((angle) => [
    `${BEGINS}${angle}${LATITUDE}${GAP}${angle}${LONGITUDE}`,
    `${BEGINS}${angle}${LONGITUDE}${GAP}${angle}${LATITUDE}`,
    String.raw`\b${LATITUDE}\s*${angle}${GAP}\b${LONGITUDE}\s*${angle}`,
    String.raw`\b${LONGITUDE}\s*${angle}${GAP}\b${LATITUDE}\s*${angle}`,
  ]),
].map((pattern) => new RegExp(pattern, 'iu'));

/** Where a tube went or a star drifts, degrees north and west are no place, unless a word before them says so. */
const OF_MISS = /\b(?:land\w*|miss\w*|drift\w*|off|sent|went|goes)\b/iu;
const SAYS_PLACE = /\b(?:from|at|in|near|site|as|i'?m|i am|we're)\s*$/iu;

const plainUnits = (text: string): string =>
  text
    .replace(new RegExp(`(\\d)\\s*${DEG}`, 'giu'), '$1°')
    .replace(/(\d)\s*(?:min(?:ute)?s?)\b/giu, "$1'")
    .replace(/(\d)\s*(?:sec(?:ond)?s?)\b/giu, '$1"')
    .replace(/\b(?:is|of|and|by)\b|&/giu, ' ')
    .replace(/\s+/gu, ' ')
    .trim();

const DIGITS = 6;
const figure = (deg: number): string => String(Number(deg.toFixed(DIGITS)));
const written = (latitudeDeg: number, longitudeDeg: number): string => `${figure(latitudeDeg)},${figure(longitudeDeg)}`;

const readAs = (found: string): string | null => {
  const position = parsePosition(plainUnits(found).replace(/(?<=[\dnsew])\s*\/\s*/iu, ', '));
  if (position === null || isProblem(position)) return null;
  const { latitudeDeg, longitudeDeg } = position.position;
  return written(latitudeDeg, longitudeDeg);
};

/** "0.4 n 0.6 w" is how far a tube went astray: there is only sea so near to where both are none. */
const isNearZero = (plain: string): boolean => plain.split(',').every((figures) => Math.abs(Number(figures)) < 3);

/** The text with a position in it written as `LAT,LON` in degrees, whatever it was written as; unchanged where there is none. */
export const withPlainPosition = (text: string): string => {
  if (!/\d/u.test(text)) return text;
  for (const pattern of PATTERNS) {
    const found = pattern.exec(text);
    if (found === null) continue;
    const before = text.slice(0, found.index);
    const after = text.slice(found.index + found[0].length);
    const plain = readAs(found[0]);
    const isMiss =
      /^\s*of\b/iu.test(after) ||
      ((OF_MISS.test(text) || (plain !== null && isNearZero(plain))) && !SAYS_PLACE.test(before));
    if (plain !== null && !isMiss) return `${before}${plain}${/^[\p{L}\d]/u.test(after) ? ' ' : ''}${after}`;
  }
  return text;
};

const ALONE = String.raw`(${NUMBER})\s*${DEG}?\s*`;
const LONE_LATITUDE = new RegExp(
  String.raw`\b(?:from|at|in|lat(?:itude)?(?: of)?)\s+${ALONE}(north|south|[ns])(?!\p{L})(?! (?:of|by)\b)`,
  'iu',
);
const LONE_LONGITUDE = new RegExp(
  String.raw`\b(?:from|at|in|for|lon(?:g(?:itude)?)?(?: of)?)\s+${ALONE}(east|west|[ew])(?!\p{L})(?! (?:of|by)\b)`,
  'iu',
);
/** What hangs on the longitude and on no latitude. */
const OF_LONGITUDE = /\b(?:sidereal|lst|lmst|hour angles?)\b/iu;
const SAME_KM = 6;

const signed = ([, size = '', way = '']: RegExpExecArray): number => Number(size) * (/^[sw]/iu.test(way) ? -1 : 1);

const latitudeCompleted = (text: string, found: RegExpExecArray, usual: Spot): string => {
  const isUsual = distanceKm({ ...usual, latitudeDeg: signed(found) }, usual) < SAME_KM;
  return isUsual ? text.replace(found[0], `from ${written(usual.latitudeDeg, usual.longitudeDeg)}`) : text;
};

/** A latitude that is the usual site's, and a longitude where no more is wanted, made whole by what is known of the usual site. */
export const withHalfCompleted = (text: string, usual: Spot | null): string => {
  const latitude = LONE_LATITUDE.exec(text);
  const longitude = LONE_LONGITUDE.exec(text);
  if (latitude !== null) return usual === null || longitude !== null ? text : latitudeCompleted(text, latitude, usual);
  if (longitude === null || !OF_LONGITUDE.test(text)) return text;
  const longitudeDeg = signed(longitude);
  return Math.abs(longitudeDeg) > 180
    ? text
    : text.replace(longitude[0], `at ${written(usual?.latitudeDeg ?? 0, longitudeDeg)}`);
};
