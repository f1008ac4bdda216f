/** The sentences for times and dates that cannot be read, and for what was taken for granted in those that can. */
import { EPHEMERIS_FIRST_YEAR, EPHEMERIS_LAST_YEAR } from '../sky/ephemeris-range.js';
import { quotable } from '../ground/fold-text.js';
import { formatDate } from './format-local.js';
import type { LocalDate, TimeProblem } from './time-resolution.js';

interface TextFault {
  readonly problem:
    'empty' | 'too-long' | 'unreadable-time' | 'unreadable-date' | 'twelve-hour-clock' | 'other-zone' | 'clock-range';
  readonly text: string;
}

/** Why a time or a date cannot be read. */
export type TimeFault =
  | TextFault
  | { readonly problem: 'bare-hour'; readonly text: string; readonly hour: number }
  | {
      readonly problem: 'no-such-day';
      readonly year: number;
      readonly month: number;
      readonly day: number;
      readonly lastDay: number;
    }
  | { readonly problem: 'no-such-month'; readonly month: number }
  | {
      readonly problem: 'day-or-month-first';
      readonly text: string;
      readonly readings: readonly [LocalDate, LocalDate];
    }
  | { readonly problem: 'another-weekday'; readonly date: LocalDate }
  | { readonly problem: 'out-of-range'; readonly year: number };

const TIME_EXAMPLES = '“22:30”, “tonight 22:30”, “tomorrow 4am”, “in 2 hours” or “2026-12-01 21:00”';
const DATE_EXAMPLES = '“tonight”, “tomorrow”, “friday”, “1 Dec” or “2026-12-01”';
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

const isoDate = (date: LocalDate): string => {
  return `${date.year}-${String(date.month).padStart(2, '0')}-${String(date.day).padStart(2, '0')}`;
};

/** What is wrong with a text, by its code; `text` is fit to be quoted. */
const OF_A_TEXT: { readonly [code in TextFault['problem']]: (text: string) => string } = {
  empty: () => `Give a time, such as ${TIME_EXAMPLES}.`,
  'too-long': () => `That is too long for a time. Give one such as ${TIME_EXAMPLES}.`,
  'unreadable-time': (text) => `Could not read “${text}” as a time. Write it as ${TIME_EXAMPLES}.`,
  'unreadable-date': (text) => `Could not read “${text}” as a date. Write it as ${DATE_EXAMPLES}.`,
  'twelve-hour-clock': (text) =>
    `“${text}” mixes the two clocks: with am or pm the hours go from 1 to 12. Write 10pm or 22:00.`,
  'other-zone': (text) =>
    `Times are on the site's own clocks, or in UTC: leave the zone out of “${text}”, or write it as in 2026-12-01T21:00Z.`,
  'clock-range': (text) =>
    `“${text}” is not on the clock: hours go from 0 to 23, minutes and seconds from 0 to 59, for example 22:30.`,
};

const bareHour = (text: string, hour: number): string => {
  const written = `${String(hour).padStart(2, '0')}:00`;
  return hour > 12
    ? `Write “${text}” with its minutes: ${written}.`
    : `“${text}” could be morning or evening. Write ${written}, ${hour || 12}am or ${hour || 12}pm.`;
};

const dayOrMonthFirst = (text: string, [a, b]: readonly [LocalDate, LocalDate]): string =>
  `“${text}” could be ${formatDate(a)} or ${formatDate(b)}. Write ${isoDate(a)} or ${isoDate(b)}, or name the month.`;

const sentence = (fault: TimeFault): string => {
  switch (fault.problem) {
    case 'bare-hour':
      return bareHour(quotable(fault.text), fault.hour);
    case 'no-such-day':
      return `${MONTHS[fault.month - 1] ?? 'That month'} ${fault.year} has ${fault.lastDay} days, so there is no day ${fault.day} in it.`;
    case 'no-such-month':
      return `There is no month ${fault.month}: months go from 1 to 12. Write the date as 2026-12-01 or 1 Dec 2026.`;
    case 'day-or-month-first':
      return dayOrMonthFirst(quotable(fault.text), fault.readings);
    case 'another-weekday':
      return `That date is ${formatDate(fault.date)}, another day of the week than the one given. Give the date alone, such as ${isoDate(fault.date)}.`;
    case 'out-of-range':
      return `${fault.year} is outside what the positions are good for. Give a date from ${EPHEMERIS_FIRST_YEAR} to ${EPHEMERIS_LAST_YEAR}.`;
    default:
      return OF_A_TEXT[fault.problem](quotable(fault.text));
  }
};

/** A problem ready to hand on: its sentence is at most 400 characters. */
export const timeProblem = (fault: TimeFault): TimeProblem => ({
  problem: fault.problem === 'out-of-range' ? 'date-out-of-range' : 'bad-time',
  message: sentence(fault).slice(0, 400),
});
