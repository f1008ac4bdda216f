/** A month or a year as members write it: "2028", "december", "august 2027", "next year", "this month". */
import { cleanText } from '../ground/fold-text.js';
import { EPHEMERIS_FIRST_YEAR, EPHEMERIS_LAST_YEAR } from '../sky/ephemeris-range.js';
import type { TimeSpan } from '../sky/night.js';
import { MONTHS, todayAndTonight } from './calendar-words.js';
import { localToUtc } from './local-to-utc.js';
import type { LocalDate, TimeProblem } from './time-resolution.js';
import { timeProblem } from './wording.js';

export interface Period extends TimeSpan {
  /** "2028", "August 2027"; what is left of the present one is called "the rest of" it. */
  readonly said: string;
}

interface Named {
  readonly year: number;
  /** 1 to 12; null: the whole year. */
  readonly month: number | null;
}

const LEAST_LETTERS = 3;

const monthNamed = (word: string): number | null => {
  const index =
    word.length < LEAST_LETTERS ? -1 : MONTHS.findIndex((name) => name.startsWith(word.replace('sept', 'sep')));
  return index < 0 ? null : index + 1;
};

const ofNow = (which: string, unit: string, { year, month }: LocalDate): Named => {
  const ahead = which === 'next' ? 1 : 0;
  if (unit === 'year') return { year: year + ahead, month: null };
  return month + ahead > 12 ? { year: year + 1, month: 1 } : { year, month: month + ahead };
};

const namedIn = (words: string, today: LocalDate): Named | null => {
  const [, which, unit] = /^(this|next) (year|month)$/u.exec(words) ?? [];
  if (which !== undefined && unit !== undefined) return ofNow(which, unit, today);
  if (/^\d{4}$/u.test(words)) return { year: Number(words), month: null };
  const [, word = '', year] = /^(\p{L}+)(?: (\d{4}))?$/u.exec(words) ?? [];
  const month = monthNamed(word);
  if (month === null) return null;
  return { month, year: year === undefined ? today.year + Number(month < today.month) : Number(year) };
};

const MIDNIGHT = { hour: 0, minute: 0, second: 0 };

/**
 * On the clocks of `zone` (IANA). A month without a year is the next to come, the present one included. Of the present month or year what is
 * past is left out. Never throws.
 */
export const parsePeriod = (text: string, zone: string, nowUtcMs: number): Period | TimeProblem => {
  const words = cleanText(text).toLowerCase();
  const named = namedIn(words, todayAndTonight(zone, nowUtcMs).today);
  if (named === null) return timeProblem({ problem: 'unreadable-date', text: words });
  const { year, month } = named;
  if (year < EPHEMERIS_FIRST_YEAR || year >= EPHEMERIS_LAST_YEAR) return timeProblem({ problem: 'out-of-range', year });
  const after = month === null || month === 12 ? { year: year + 1, month: 1 } : { year, month: month + 1 };
  const startUtcMs = localToUtc({ year, month: month ?? 1, day: 1 }, MIDNIGHT, zone).utcMs;
  const endUtcMs = localToUtc({ ...after, day: 1 }, MIDNIGHT, zone).utcMs;
  const name = MONTHS[(month ?? 0) - 1];
  const said = name === undefined ? String(year) : `${name.charAt(0).toUpperCase()}${name.slice(1)} ${year}`;
  const isNow = startUtcMs < nowUtcMs && nowUtcMs < endUtcMs;
  return { startUtcMs: isNow ? nowUtcMs : startUtcMs, endUtcMs, said: isNow ? `the rest of ${said}` : said };
};
