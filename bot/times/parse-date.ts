/** Reads the date of the evening on which a night begins, as a member types it. */
import { isProblem } from '../ground/problem.js';
import { cleanText, LONGEST_TEXT } from '../ground/fold-text.js';
import { EPHEMERIS_FIRST_YEAR, EPHEMERIS_LAST_YEAR } from '../sky/ephemeris-range.js';
import { addDays, readDay, todayAndTonight } from './calendar-words.js';
import type { DateResolution } from './time-resolution.js';
import { timeProblem } from './wording.js';

/**
 * "tonight" (also for an empty text and "now"), "tomorrow", "2026-12-01", "friday", "1 Dec" → the date of the evening.
 * Until 06:00 on the site's clocks "tonight" is the night in progress, so it began on yesterday's date; "tomorrow",
 * "yesterday" and "in 3 nights" then count from it. Weekdays and dates without a year mean the next to come. Never throws.
 */
export const parseDate = (text: string, zone: string, nowUtcMs: number): DateResolution => {
  if (text.length > LONGEST_TEXT) return timeProblem({ problem: 'too-long', text: '' });
  const words = cleanText(text).toLowerCase();
  const { tonight } = todayAndTonight(zone, nowUtcMs);
  if (words === '' || words === 'now') return { date: tonight };
  if (words === 'tomorrow') return { date: addDays(tonight, 1) };
  if (words === 'yesterday') return { date: addDays(tonight, -1) };
  const day = readDay(words, zone, nowUtcMs);
  if (day === null) return timeProblem({ problem: 'unreadable-date', text: words });
  if (isProblem(day)) return timeProblem(day);
  if (day.date.year < EPHEMERIS_FIRST_YEAR || day.date.year > EPHEMERIS_LAST_YEAR) {
    return timeProblem({ problem: 'out-of-range', year: day.date.year });
  }
  return { date: day.date };
};
