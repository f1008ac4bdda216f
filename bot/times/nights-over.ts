/** Several nights in words: "this week", "next month", "december", "this weekend", "20 nights", "2026-12-13 or 2026-12-14". */
import { cleanText, LONGEST_TEXT } from '../ground/fold-text.js';
import { isProblem } from '../ground/problem.js';
import { addDays, MONTHS, todayAndTonight, weekdayOf } from './calendar-words.js';
import { parseDate } from './parse-date.js';
import type { LocalDate, TimeProblem } from './time-resolution.js';
import { timeProblem } from './wording.js';

/** More than two months are not looked through at once. */
const MOST_NIGHTS = 70;
const DAYS_A_WEEK = 7;
const MONDAY = 1;
const FRIDAY = 5;
const SATURDAY = 6;

const run = (from: LocalDate, days: number): readonly LocalDate[] =>
  Array.from({ length: Math.max(0, Math.min(days, MOST_NIGHTS)) }, (_, i) => addDays(from, i));

/** The next day of that name from a date on, the date itself included. */
const nextWeekday = (from: LocalDate, weekday: number): LocalDate =>
  addDays(from, (weekday - weekdayOf(from) + DAYS_A_WEEK) % DAYS_A_WEEK);

/** Friday and Saturday; on a Saturday what is left of it. */
const weekendFrom = (from: LocalDate): readonly LocalDate[] =>
  weekdayOf(from) === SATURDAY ? [from] : run(nextWeekday(from, FRIDAY), 2);

const monthFrom = (from: LocalDate): readonly LocalDate[] => {
  const lastDay = new Date(Date.UTC(from.year, from.month, 0)).getUTCDate();
  return run(from, lastDay - from.day + 1);
};

const monthNamed = (words: string, tonight: LocalDate): readonly LocalDate[] | null => {
  const [, name = '', year] = /^(?:in )?([a-z]{3,9})(?: (\d{4}))?$/.exec(words) ?? [];
  const month = name === '' ? 0 : MONTHS.findIndex((each) => each.startsWith(name)) + 1;
  if (month === 0) return null;
  if (year === undefined && month === tonight.month) return monthFrom(tonight);
  return monthFrom({ year: Number(year ?? tonight.year + Number(month < tonight.month)), month, day: 1 });
};

const counted = (words: string, tonight: LocalDate): readonly LocalDate[] | null => {
  const [, count, unit = ''] = /^(?:the )?(?:next )?(\d{1,2}) (nights?|days?|weeks?)$/.exec(words) ?? [];
  return count === undefined ? null : run(tonight, Number(count) * (unit.startsWith('w') ? DAYS_A_WEEK : 1));
};

const spanNamed = (words: string, tonight: LocalDate): readonly LocalDate[] | null => {
  switch (words.replace(/^(?:of |in |over )?(?:the |this |coming )*/, '')) {
    case 'week':
      return run(tonight, DAYS_A_WEEK);
    case 'next week':
      return run(nextWeekday(addDays(tonight, 1), MONDAY), DAYS_A_WEEK);
    case 'weekend':
      return weekendFrom(tonight);
    case 'next weekend': {
      const isWeekend = weekdayOf(tonight) === SATURDAY || weekdayOf(tonight) === 0;
      return run(addDays(nextWeekday(tonight, FRIDAY), isWeekend ? 0 : DAYS_A_WEEK), 2);
    }
    case 'month':
      return monthFrom(tonight);
    case 'next month':
      return monthFrom({
        year: tonight.year + Number(tonight.month === 12),
        month: (tonight.month % 12) + 1,
        day: 1,
      });
    default:
      return null;
  }
};

/** The dates on whose evenings they begin, in the order that was said; never empty. Never throws. */
export const nightsOver = (
  text: string,
  zone: string,
  nowUtcMs: number,
): { readonly dates: readonly LocalDate[] } | TimeProblem => {
  if (text.length > LONGEST_TEXT) return timeProblem({ problem: 'too-long', text: '' });
  const words = cleanText(text).toLowerCase();
  const { tonight } = todayAndTonight(zone, nowUtcMs);
  const span = spanNamed(words, tonight) ?? counted(words, tonight) ?? monthNamed(words, tonight);
  if (span !== null && span.length > 0) return { dates: span };
  const dates: LocalDate[] = [];
  for (const part of words.split(/,| or | and /).filter((each) => each.trim() !== '')) {
    const found = parseDate(part.trim(), zone, nowUtcMs);
    if (isProblem(found)) return found;
    dates.push(found.date);
  }
  return dates.length === 0 ? timeProblem({ problem: 'unreadable-date', text: words }) : { dates };
};
