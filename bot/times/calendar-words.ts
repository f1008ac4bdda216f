/** A day as members write it: "tonight", "tomorrow night", "friday", "1 Dec", "2026-12-01", "in 3 days". */
import { nextMoonPhase } from '../sky/moon-phase.js';
import { MS_PER_DAY } from '../ground/durations.js';
import { clocksAsUtcMs } from './local-to-utc.js';
import type { LocalDate } from './time-resolution.js';
import type { TimeFault } from './wording.js';
import { tableOf } from '../ground/table-of.js';

/** A day; `night` where the words mean the night that begins on it, so that 01:30 falls on the next date. */
export type DayText = { readonly date: LocalDate; readonly night: boolean } | TimeFault;

/** Before this hour on the site's clocks "tonight" is the night in progress; from it on, the coming one. */
const NIGHT_ENDS_AT_HOUR = 6;

const WEEKDAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];
const MONTHS = [
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
  if (month < 1 || month > 12) return { fault: 'no-such-month', month };
  const lastDay = new Date(Date.UTC(year, month, 0)).getUTCDate();
  if (day < 1 || day > lastDay) return { fault: 'no-such-day', year, month, day, lastDay };
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
  if ('fault' in dayFirst) return monthFirst;
  if ('fault' in monthFirst || a === b) return dayFirst;
  return { fault: 'day-or-month-first', text, readings: [dayFirst.date, monthFirst.date] };
};

const namedMonth = (text: string, today: LocalDate): DayText | null => {
  const words = text.replace(/,/g, ' ').split(/\s+/);
  const year = words.length === 3 && /^\d{4}$/.test(words[2] ?? '') ? Number(words[2]) : null;
  if (words.length !== 2 && year === null) return null;
  const [first = '', second = ''] = words;
  const dayWord = /^\d/.test(first) ? first : second;
  const month = named(MONTHS, dayWord === first ? second : first) + 1;
  const day = /^(\d{1,2})(?:st|nd|rd|th)?\.?$/.exec(dayWord)?.[1];
  if (month === 0 || day === undefined) return null;
  if (year !== null) return checked(year, month, Number(day));
  // Without a year: the next time that this date comes round, today included (29 February waits for a leap year).
  for (let ahead = 0; ahead <= 8; ahead += 1) {
    const reading = checked(today.year + ahead, month, Number(day));
    const past = ahead === 0 && (month < today.month || (month === today.month && Number(day) < today.day));
    if ('fault' in reading && !(reading.fault === 'no-such-day' && month === 2 && Number(day) === 29)) return reading;
    if (!('fault' in reading) && !past) return reading;
  }
  return null;
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

/** Reads a day; null when the text is none. The text is lower case, single-spaced. */
export const readDay = (text: string, zone: string, nowUtcMs: number): DayText | null => {
  const { today, tonight } = todayAndTonight(zone, nowUtcMs);
  const words = text.replace(/^(?:on|the night of) /, '');
  if (words === 'tonight' || words === 'this evening' || words === 'this night') return { date: tonight, night: true };
  if (words === 'tomorrow night' || words === 'tomorrow evening') return { date: addDays(tonight, 1), night: true };
  if (words === 'last night' || words === 'yesterday night' || words === 'yesterday evening')
    return { date: addDays(tonight, -1), night: true };
  const phase = moonPhaseNamed(words);
  if (phase !== null) return nightOfPhase(phase, zone, nowUtcMs);
  if (words === 'today') return { date: today, night: false };
  if (words === 'tomorrow') return { date: addDays(today, 1), night: false };
  if (words === 'yesterday') return { date: addDays(today, -1), night: false };
  const ahead = /^in (\d{1,3}|a|one|two|three) (days?|nights?|weeks?)$/.exec(words);
  if (ahead) {
    const count = { a: 1, one: 1, two: 2, three: 3 }[ahead[1] ?? ''] ?? Number(ahead[1]);
    return {
      date: addDays(today, count * (ahead[2]?.startsWith('week') ? 7 : 1)),
      night: ahead[2]?.startsWith('night') ?? false,
    };
  }
  const weekday = /^(next |this |coming |last )?([a-z]{3,9}\.?)( night| evening)?$/.exec(words);
  const index = weekday ? named(WEEKDAYS, weekday[2] ?? '') : -1;
  if (weekday && index >= 0) {
    const todayIndex = new Date(Date.UTC(today.year, today.month - 1, today.day)).getUTCDay();
    const days = (index - todayIndex + 7) % 7;
    const onward = weekday[1] === 'next ' && days === 0 ? 7 : days;
    const shift = weekday[1] === 'last ' ? days - 7 : onward;
    return { date: addDays(today, shift), night: weekday[3] !== undefined };
  }
  const night = /^(.*) (?:night|evening)$/.exec(words);
  const rest = night?.[1] ?? words;
  const led = /^([a-z]{3,9}\.?),? (.+)$/.exec(rest);
  const weekdayNamed = led ? named(WEEKDAYS, led[1] ?? '') : -1;
  const dateText = led && weekdayNamed >= 0 ? (led[2] ?? '') : rest;
  const reading = numericDate(dateText) ?? namedMonth(dateText, today);
  if (reading === null || 'fault' in reading) return reading;
  if (
    weekdayNamed >= 0 &&
    weekdayNamed !== new Date(Date.UTC(reading.date.year, reading.date.month - 1, reading.date.day)).getUTCDay()
  ) {
    return { fault: 'another-weekday', date: reading.date };
  }
  return { date: reading.date, night: night !== null };
};
