/** A day as members write it: "tonight", "tomorrow night", "friday", "1 Dec", "2026-12-01", "in 3 days". */
import { isProblem } from '../ground/problem.js';
import { nextMoonPhase } from '../sky/moon-phase.js';
import { MS_PER_DAY } from '../ground/durations.js';
import { namedDay } from './named-days.js';
import { clocksAsUtcMs } from './local-to-utc.js';
import type { LocalDate } from './time-resolution.js';
import type { TimeFault } from './wording.js';
import { tableOf } from '../ground/table-of.js';

/** A day; `night` where the words mean the night that begins on it, so that 01:30 falls on the next date. */
export type DayText = { readonly date: LocalDate; readonly night: boolean } | TimeFault;

/** Before this hour on the site's clocks "tonight" is the night in progress; from it on, the coming one. */
export const NIGHT_ENDS_AT_HOUR = 6;

const WEEKDAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];
export const MONTHS = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];
/** As part of a pattern: the names, then what they are shortened to. */
export const MONTH_WORDS = [...MONTHS, 'jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec'].join('|');

const named = (list: readonly string[], word: string): number => {
  const key = word.replace(/\.$/, '');
  return key.length < 3
    ? -1
    : list.findIndex(
        (name) =>
          name.startsWith(key) ||
          (key === 'sept' && name === 'september') ||
          (/^(tues|thur|thurs|wednes)$/.test(key) && name.startsWith(key)),
      );
};

export const addDays = (date: LocalDate, days: number): LocalDate => {
  const moved = new Date(Date.UTC(date.year, date.month - 1, date.day) + days * MS_PER_DAY);
  return { year: moved.getUTCFullYear(), month: moved.getUTCMonth() + 1, day: moved.getUTCDate() };
};

/** Today's date on the site's clocks, and the date on whose evening tonight begins. */
export const todayAndTonight = (
  zone: string,
  nowUtcMs: number,
): { readonly today: LocalDate; readonly tonight: LocalDate } => {
  const local = new Date(clocksAsUtcMs(zone, nowUtcMs));
  const today = { year: local.getUTCFullYear(), month: local.getUTCMonth() + 1, day: local.getUTCDate() };
  return { today, tonight: local.getUTCHours() < NIGHT_ENDS_AT_HOUR ? addDays(today, -1) : today };
};

const checked = (year: number, month: number, day: number): DayText => {
  if (month < 1 || month > 12) return { problem: 'no-such-month', month };
  const lastDay = new Date(Date.UTC(year, month, 0)).getUTCDate();
  if (day < 1 || day > lastDay) return { problem: 'no-such-day', year, month, day, lastDay };
  return { date: { year, month, day }, night: false };
};

const numericDate = (text: string): DayText | null => {
  const iso = /^(\d{4})-?(\d{2})-?(\d{2})$/.exec(text) ?? /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(text);
  if (iso) return checked(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const local = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})$/.exec(text);
  if (!local) return null;
  const [a, b, year] = [Number(local[1]), Number(local[2]), Number(local[3])];
  const dayFirst = checked(year, b, a);
  const monthFirst = checked(year, a, b);
  if (isProblem(dayFirst)) return monthFirst;
  if (isProblem(monthFirst) || a === b) return dayFirst;
  return { problem: 'day-or-month-first', text, readings: [dayFirst.date, monthFirst.date] };
};

/** A day of the year without the year: the next time it comes round, today included (29 February waits for a leap year). */
const nextComing = (month: number, day: number, today: LocalDate): DayText | null => {
  const isLeapDay = month === 2 && day === 29;
  const isPast = month < today.month || (month === today.month && day < today.day);
  for (let ahead = 0; ahead <= 8; ahead += 1) {
    const reading = checked(today.year + ahead, month, day);
    if (isProblem(reading) ? !isLeapDay : ahead > 0 || !isPast) return reading;
  }
  return null;
};

/** "1 Dec" and "December 1st" as numbers; null when the words are none. */
const monthAndDay = (first: string, second: string): { readonly month: number; readonly day: number } | null => {
  const [dayWord, monthWord] = /^\d/.test(first) ? [first, second] : [second, first];
  const month = named(MONTHS, monthWord) + 1;
  const day = /^(\d{1,2})(?:st|nd|rd|th)?\.?$/.exec(dayWord)?.[1];
  return month === 0 || day === undefined ? null : { month, day: Number(day) };
};

const namedMonth = (text: string, today: LocalDate): DayText | null => {
  const [first = '', second = '', third, ...others] = text.replace(/,/g, ' ').split(/\s+/);
  const isYear = third !== undefined && /^\d{4}$/.test(third);
  if (others.length > 0 || (third !== undefined && !isYear)) return null;
  const said = monthAndDay(first, second);
  if (said === null) return null;
  return isYear ? checked(Number(third), said.month, said.day) : nextComing(said.month, said.day, today);
};

const MOON_PHASES = tableOf({
  'new moon': 0,
  'first quarter': 90,
  'full moon': 180,
  'last quarter': 270,
  'third quarter': 270,
});

/** The Moon's elongation in degrees that words such as "the next new moon" name; null for other words. */
export const moonPhaseNamed = (words: string): number | null => {
  const key = words
    .replace(/^(?:at |on |the |next |coming )+/, '')
    .replace(/ moon$/, (moon) => (/quarter/.test(words) ? '' : moon));
  return MOON_PHASES.get(key) ?? null;
};

/** The night in which the Moon next reaches a phase: an instant before noon belongs to the evening before. */
const nightOfPhase = (elongationDeg: number, zone: string, nowUtcMs: number): DayText => {
  const local = new Date(clocksAsUtcMs(zone, nextMoonPhase(elongationDeg, nowUtcMs - MS_PER_DAY / 2)) - MS_PER_DAY / 2);
  return {
    date: { year: local.getUTCFullYear(), month: local.getUTCMonth() + 1, day: local.getUTCDate() },
    night: true,
  };
};

/** Nights counted from tonight, and days counted from today. */
const NIGHTS = tableOf<number>({
  tonight: 0,
  'this night': 0,
  'tomorrow night': 1,
  'tomorrow evening': 1,
  'last night': -1,
  'last evening': -1,
  'yesterday night': -1,
  'yesterday evening': -1,
});
const DAYS = tableOf<number>({ today: 0, tomorrow: 1, yesterday: -1 });
const COUNTS = tableOf<number>({ a: 1, one: 1, two: 2, three: 3 });

const fixedDay = (words: string, today: LocalDate, tonight: LocalDate): DayText | null => {
  // In the small hours the evening is still to come, though the night is not over.
  if (words === 'this evening') return { date: today, night: true };
  const nights = NIGHTS.get(words);
  if (nights !== undefined) return { date: addDays(tonight, nights), night: true };
  const days = DAYS.get(words);
  return days === undefined ? null : { date: addDays(today, days), night: false };
};

/** "in 3 nights", "in a week". */
const daysAhead = (words: string, today: LocalDate): DayText | null => {
  const match = /^in (\d{1,3}|a|one|two|three) (day|night|week)s?$/.exec(words);
  if (match === null) return null;
  const [, count = '', unit] = match;
  const days = (COUNTS.get(count) ?? Number(count)) * (unit === 'week' ? 7 : 1);
  return { date: addDays(today, days), night: unit === 'night' };
};

/** 0 Sunday … 6 Saturday. */
export const weekdayOf = ({ year, month, day }: LocalDate): number =>
  new Date(Date.UTC(year, month - 1, day)).getUTCDay();

/** What is so near is called tomorrow and not "next": that is a week on; common practice, no source. */
const SO_NEAR_DAYS = 2;

/** "friday", "next tuesday", "saturday night": the next to come, today included unless "next" says otherwise. */
const comingWeekday = (words: string, today: LocalDate): DayText | null => {
  const match = /^(next |this |coming |last )?([a-z]{3,9}\.?)( night| evening)?$/.exec(words);
  const index = named(WEEKDAYS, match?.[2] ?? '');
  if (match === null || index < 0) return null;
  const [, lead, , night] = match;
  const days = (index - weekdayOf(today) + 7) % 7;
  const onward = lead === 'next ' && days <= SO_NEAR_DAYS ? days + 7 : days;
  return { date: addDays(today, lead === 'last ' ? days - 7 : onward), night: night !== undefined };
};

/** "1 Dec", "2026-12-01", with its weekday before it or "night" after it. */
const dateWritten = (words: string, today: LocalDate): DayText | null => {
  const beforeNight = /^(.*) (?:night|evening)$/.exec(words)?.[1];
  const dated = beforeNight ?? words;
  const led = /^([a-z]{3,9}\.?),? (.+)$/.exec(dated);
  const weekday = named(WEEKDAYS, led?.[1] ?? '');
  const dateText = weekday < 0 ? dated : (led?.[2] ?? '');
  const reading = numericDate(dateText) ?? namedMonth(dateText, today);
  if (reading === null || isProblem(reading)) return reading;
  if (weekday >= 0 && weekday !== weekdayOf(reading.date)) return { problem: 'another-weekday', date: reading.date };
  return { date: reading.date, night: beforeNight !== undefined };
};

/** Reads a day; null when the text is none. The text is lower case, single-spaced. */
export const readDay = (text: string, zone: string, nowUtcMs: number): DayText | null => {
  const words = text.replace(/^(?:on|the night of) /, '');
  const phase = moonPhaseNamed(words);
  if (phase !== null) return nightOfPhase(phase, zone, nowUtcMs);
  const { today, tonight } = todayAndTonight(zone, nowUtcMs);
  return (
    fixedDay(words, today, tonight) ??
    namedDay(words, today) ??
    daysAhead(words, today) ??
    comingWeekday(words, today) ??
    dateWritten(words, today)
  );
};
