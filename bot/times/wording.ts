/** The sentences for times and dates that cannot be read, and for what was taken for granted in those that can. */
import { EPHEMERIS_FIRST_YEAR, EPHEMERIS_LAST_YEAR } from '../sky/ephemeris-range.js';
import { quotable } from '../ground/fold-text.js';
import { formatDate } from './format-local.js';
import type { LocalDate, TimeProblem } from './time-resolution.js';

/** Why a time or a date cannot be read. */
export type TimeFault =
  | {
      readonly fault: 'empty' | 'too-long' | 'unreadable-time' | 'unreadable-date' | 'twelve-hour-clock' | 'other-zone';
      readonly text: string;
    }
  | { readonly fault: 'bare-hour'; readonly text: string; readonly hour: number }
  | { readonly fault: 'clock-range'; readonly text: string }
  | {
      readonly fault: 'no-such-day';
      readonly year: number;
      readonly month: number;
      readonly day: number;
      readonly lastDay: number;
    }
  | { readonly fault: 'no-such-month'; readonly month: number }
  | { readonly fault: 'day-or-month-first'; readonly text: string; readonly readings: readonly [LocalDate, LocalDate] }
  | { readonly fault: 'another-weekday'; readonly date: LocalDate }
  | { readonly fault: 'out-of-range'; readonly year: number };

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

const sentence = (problem: TimeFault): string => {
  switch (problem.fault) {
    case 'empty':
      return `Give a time, such as ${TIME_EXAMPLES}.`;
    case 'too-long':
      return `That is too long for a time. Give one such as ${TIME_EXAMPLES}.`;
    case 'unreadable-time':
      return `Could not read “${quotable(problem.text)}” as a time. Write it as ${TIME_EXAMPLES}.`;
    case 'unreadable-date':
      return `Could not read “${quotable(problem.text)}” as a date. Write it as ${DATE_EXAMPLES}.`;
    case 'twelve-hour-clock':
      return `“${quotable(problem.text)}” mixes the two clocks: with am or pm the hours go from 1 to 12. Write 10pm or 22:00.`;
    case 'other-zone':
      return `Times are on the site's own clocks, or in UTC: leave the zone out of “${quotable(problem.text)}”, or write it as in 2026-12-01T21:00Z.`;
    case 'bare-hour': {
      const { hour } = problem;
      const written = `${String(hour).padStart(2, '0')}:00`;
      return hour > 12
        ? `Write “${quotable(problem.text)}” with its minutes: ${written}.`
        : `“${quotable(problem.text)}” could be morning or evening. Write ${written}, ${hour || 12}am or ${hour || 12}pm.`;
    }
    case 'clock-range':
      return `“${quotable(problem.text)}” is not on the clock: hours go from 0 to 23, minutes and seconds from 0 to 59, for example 22:30.`;
    case 'no-such-day':
      return `${MONTHS[problem.month - 1] ?? 'That month'} ${problem.year} has ${problem.lastDay} days, so there is no day ${problem.day} in it.`;
    case 'no-such-month':
      return `There is no month ${problem.month}: months go from 1 to 12. Write the date as 2026-12-01 or 1 Dec 2026.`;
    case 'day-or-month-first': {
      const [a, b] = problem.readings;
      return `“${quotable(problem.text)}” could be ${formatDate(a)} or ${formatDate(b)}. Write ${isoDate(a)} or ${isoDate(b)}, or name the month.`;
    }
    case 'another-weekday':
      return `That date is ${formatDate(problem.date)}, another day of the week than the one given. Give the date alone, such as ${isoDate(problem.date)}.`;
    case 'out-of-range':
      return `${problem.year} is outside what the positions are good for. Give a date from ${EPHEMERIS_FIRST_YEAR} to ${EPHEMERIS_LAST_YEAR}.`;
  }
};

/** A problem ready to hand on: its sentence is at most 400 characters. */
export const timeProblem = (problem: TimeFault): TimeProblem => {
  return {
    ok: false,
    problem: problem.fault === 'out-of-range' ? 'date-out-of-range' : 'bad-time',
    message: sentence(problem).slice(0, 400),
  };
};
