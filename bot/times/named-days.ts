/** Days with names of their own, as members write them: "christmas eve", "new year's eve 2027", "easter". */
import { tableOf } from '../ground/table-of.js';
import type { LocalDate } from './time-resolution.js';

/** Month and day, and whether the night is meant that begins on it, so that its midnight and what follows are of the next date. */
type Named = readonly [month: number, day: number, isNight?: boolean];

const FIXED = tableOf<Named>({
  'christmas eve': [12, 24],
  christmas: [12, 25],
  'christmas day': [12, 25],
  'christmas night': [12, 25, true],
  'boxing day': [12, 26],
  'new years eve': [12, 31, true],
  // Its midnight is what is asked about.
  'new year': [12, 31, true],
  'new years': [12, 31, true],
  'new years night': [12, 31, true],
  'new years day': [1, 1],
  halloween: [10, 31],
  'bonfire night': [11, 5],
  'guy fawkes night': [11, 5],
  'valentines day': [2, 14],
});

const spelt = (words: string): string =>
  words
    .replace(/’/gu, "'")
    .replace(/^(?:the|this|next|coming) /u, '')
    .replace(/\bx-?mas\b/u, 'christmas')
    .replace(/^nye\b/u, 'new years eve')
    .replace(/^new year(?:'?s)? (?=eve|day|night)/u, 'new years ')
    .replace(/'(?=s\b)/gu, '');

/** Easter Sunday. J. Meeus, Astronomical Algorithms (2nd ed.), chapter 8, Gregorian. */
const easterOf = (year: number): Pick<LocalDate, 'month' | 'day'> => {
  const a = year % 19;
  const century = Math.floor(year / 100);
  const ofCentury = year % 100;
  const g = Math.floor((century - Math.floor((century + 8) / 25) + 1) / 3);
  const h = (19 * a + century - Math.floor(century / 4) - g + 15) % 30;
  const l = (32 + 2 * (century % 4) + 2 * Math.floor(ofCentury / 4) - h - (ofCentury % 4)) % 7;
  const m = Math.floor((a + 11 * h + 22 * l) / 451);
  const fromMarch = h + l - 7 * m + 114;
  return { month: Math.floor(fromMarch / 31), day: (fromMarch % 31) + 1 };
};

const EASTER = tableOf<number>({
  'good friday': -2,
  'easter saturday': -1,
  easter: 0,
  'easter sunday': 0,
  'easter monday': 1,
});

const dayIn = (year: number, words: string): (LocalDate & { readonly night: boolean }) | null => {
  const fixed = FIXED.get(words);
  if (fixed !== undefined) return { year, month: fixed[0], day: fixed[1], night: fixed[2] === true };
  const days = EASTER.get(words);
  if (days === undefined) return null;
  const { month, day } = easterOf(year);
  const date = new Date(Date.UTC(year, month - 1, day + days));
  return { year, month: date.getUTCMonth() + 1, day: date.getUTCDate(), night: false };
};

const order = ({ year, month, day }: LocalDate): number => (year * 12 + month) * 31 + day;

/** The next to come, today included, or that of the year that is said; null: no such name. Easter falls no earlier than March. */
export const namedDay = (
  text: string,
  today: LocalDate,
): { readonly date: LocalDate; readonly night: boolean } | null => {
  const [, words = '', year] = /^(.+?)(?: (?:of )?(\d{4}))?$/u.exec(text) ?? [];
  const name = spelt(words);
  const years = year === undefined ? [today.year, today.year + 1] : [Number(year)];
  for (const one of years) {
    const found = dayIn(one, name);
    if (found === null) return null;
    const { night, ...date } = found;
    if (year !== undefined || order(date) >= order(today)) return { date, night };
  }
  return null;
};
