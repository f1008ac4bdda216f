/** Tells words that name a night or an hour from other words, without reading which one: for words typed after a target or a place. */
import { cleanText, LONGEST_TEXT } from '../ground/fold-text.js';
import { createKept } from '../ground/kept.js';
import { isProblem } from '../ground/problem.js';
import { moonPhaseNamed, readDay } from './calendar-words.js';
import { readClock } from './clock-reading.js';
import { parseTime } from './parse-time.js';

const plainWords = (text: string): string | null =>
  text.length > LONGEST_TEXT ? null : cleanText(text).toLowerCase().replace(/\s+/g, ' ');

/** Figures alone ("2024") name an object as often as a date or an hour. */
const isFigures = (words: string): boolean => /^[\d\s.]*$/.test(words);

/** Which night words name hangs on the date; whether they name one does not, and the same words are tried again and again. */
const WORDS_KEPT = 1000;
const nightsKept = createKept<string, boolean>(WORDS_KEPT);

/** Whether the text names a night ("saturday", "1 Dec", "new moon"), be it one that cannot be ("31 Feb"). */
export const namesNight = (text: string, nowUtcMs: number): boolean => {
  if (text.length > LONGEST_TEXT) return false;
  return nightsKept(text, () => {
    const words = plainWords(text);
    if (words === null || isFigures(words)) return false;
    return moonPhaseNamed(words) !== null || readDay(words, 'Etc/UTC', nowUtcMs) !== null;
  });
};

/** Whether the text names an hour and no day ("9pm", "22:30", "in 2 hours", "now"). */
export const namesHour = (text: string, nowUtcMs: number): boolean => {
  const words = plainWords(text);
  if (words === null || isFigures(words)) return false;
  if (words === 'now' || words === 'right now') return true;
  if (/^in .*\d.*(?:h|m|hours?|minutes?|mins?)$/.test(words)) return !isProblem(parseTime(words, 'Etc/UTC', nowUtcMs));
  const clock = readClock(words);
  return clock !== null && !isProblem(clock);
};

const IS_DATE = /^(?:today|tomorrow|yesterday)$|^(?!in ).*\d/u;
const IS_WEEKDAY = /\b(?:mon|tue|wed|thu|fri|sat|sun)\p{L}*\b/u;
/** From this hour on one gets up, and "Tuesday 5am" is Tuesday's morning; before it one is still out. */
const MORNING_HOUR = 4;
const NOON_HOUR = 12;

/** The hour from which on one is of the day's own date; null: none is. */
const earliestOf = (day: string): number | null => {
  if (IS_DATE.test(day)) return 0;
  return IS_WEEKDAY.test(day) ? MORNING_HOUR : null;
};

/**
 * Whether an hour said with a day is of that very date ("3am tomorrow", "01:30 on 25 October", "Tuesday 5am"), and not of the night that
 * begins on it ("tonight 2am", "friday 2am").
 */
export const isOfThatDate = (day: string, hour: string, nowUtcMs: number): boolean => {
  const found = readDay(day.toLowerCase(), 'Etc/UTC', nowUtcMs);
  if (found === null || isProblem(found) || found.night) return false;
  const from = earliestOf(day.toLowerCase());
  const clock = readClock(hour.toLowerCase());
  return (
    from !== null &&
    clock !== null &&
    !isProblem(clock) &&
    !clock.midnight &&
    clock.clock.hour >= from &&
    clock.clock.hour < NOON_HOUR
  );
};
