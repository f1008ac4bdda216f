/** An hour as a clock with hands shows it, of the morning or the evening alike: "at 11", "half ten", "quarter past 3", "around 10.30". */
import { numberOf } from './words.js';

export interface Hands {
  /** 1 to 12, and minutes. */
  readonly hour: number;
  readonly minute: number;
  /** The text without it. */
  readonly rest: string;
}

const NUMBER = String.raw`\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve`;
/** Not "at 11 pm", "at 10 degrees", "at 5 in the morning", "at 21:00". */
const ENDS_HOUR =
  /(?=$|[\s?!,;]+(?!am\b|pm\b|a\.m|p\.m|deg|°|inch|mm\b|arc|min|sec|h\b|hrs?\b|hours?\b|in the\b|of the\b|this (?:morning|evening)\b|tonight\b|at night\b|utc\b|gmt\b))/u
    .source;
const CLOCK = new RegExp(
  `(?<=^|\\s)(?:(?:at|around|about|by|@) ?(${NUMBER})(?:[.](\\d{2}))?(?: ?o'?clock)?|(${NUMBER}) ?o'?clock|(?<=\\p{L}[,]? )(\\d{1,2})[.](\\d{2})$)${ENDS_HOUR}`,
  'iu',
);
const PAST = new RegExp(
  `(?<=^|\\s)(?:(?:at|around|about|by) )?(half|quarter|twenty|ten|five)(?: (past|to|after))? (${NUMBER})${ENDS_HOUR}`,
  'iu',
);
const SHARES = new Map([
  ['half', 30],
  ['quarter', 15],
]);
const FULL_HOUR = 12;

const standing = (hour: number, minute: number, rest: string): Hands | null =>
  hour < 1 || hour > FULL_HOUR || minute > 59 ? null : { hour, minute, rest };

const pastIn = (text: string): Hands | null => {
  const match = PAST.exec(text);
  if (match === null) return null;
  const [whole, share = '', before, hours = ''] = match;
  if (before === undefined && share.toLowerCase() !== 'half') return null;
  const minutes = SHARES.get(share.toLowerCase()) ?? numberOf(share.toLowerCase()) ?? 0;
  const hour = numberOf(hours.toLowerCase()) ?? 0;
  const rest = text.replace(whole, ' ');
  if (before?.toLowerCase() !== 'to') return standing(hour, minutes, rest);
  return standing(hour === 1 ? FULL_HOUR : hour - 1, 60 - minutes, rest);
};

/** The first such hour in a text; null where there is none. */
export const handsIn = (text: string): Hands | null => {
  const past = pastIn(text);
  if (past !== null) return past;
  const match = CLOCK.exec(text);
  if (match === null) return null;
  const [whole, at, minutes, oclock, figures, minutesOfThem] = match;
  const hour = numberOf((at ?? oclock ?? figures ?? '').toLowerCase()) ?? 0;
  return standing(hour, Number(minutes ?? minutesOfThem ?? 0), text.replace(whole, ' '));
};

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** By day: seven to eleven are of the morning, twelve to six of the afternoon. */
export const byDayHour = ({ hour, minute }: Hands): string =>
  `${hour}:${twoDigits(minute)}${hour >= 7 && hour < FULL_HOUR ? 'am' : 'pm'}`;

/** As the time rooms read the first time that the hands stand so. */
export const nextHour = ({ hour, minute }: Hands): string => `next ${hour}:${twoDigits(minute)}`;
