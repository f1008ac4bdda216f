/** A time of day as members write it: "22:30", "10pm", "10:30 p.m.", "22h30", "2230", "noon", "midnight". */
import { NOON, type ClockReading } from './local-to-utc.js';
import { tableOf } from '../ground/table-of.js';
import type { TimeFault } from './wording.js';

/** `midnight` is the one at the end of the day that goes with it. */
export type ClockText = { readonly clock: ClockReading; readonly midnight: boolean } | TimeFault;

const NAMED = tableOf<ClockText>({
  midnight: { clock: { hour: 0, minute: 0, second: 0 }, midnight: true },
  noon: { clock: NOON, midnight: false },
  midday: { clock: NOON, midnight: false },
});

/** "10:30 p.m." and "22h30", else four figures: hours, minutes, seconds, then what half of the day or "o'clock" follows. */
const CLOCK = /^(\d{1,2})(?:[:.h](\d{2})(?:[:.m](\d{2})(?:\.\d+)?s?)?|h)?\s?(am|pm|a\.m\.?|p\.m\.?|a|p|o'?clock)?$/;
const FOUR_FIGURES = /^(\d{2})(\d{2})()()$/;

/** The hour on the 24-hour clock; null where am or pm stands beside one that the 12-hour clock has not. */
const hourOf = (hour: number, halfOfDay: string): number | null => {
  if (halfOfDay === '') return hour;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (halfOfDay.startsWith('p') ? 12 : 0);
};

/** An hour that could be of the morning or the evening: "10", "10 o'clock". */
const bareHour = (text: string, hour: number): TimeFault =>
  hour > 23 ? { problem: 'clock-range', text } : { problem: 'bare-hour', text, hour };

const isOnTheClock = ({ hour, minute, second }: ClockReading): boolean => hour <= 23 && minute <= 59 && second <= 59;

/** Reads a time of day; null when the text is none. The text is lower case, single-spaced. */
export const readClock = (text: string): ClockText | null => {
  const named = NAMED.get(text);
  if (named !== undefined) return named;
  const match = CLOCK.exec(text) ?? FOUR_FIGURES.exec(text);
  if (!match) return null;
  const [, hours = '', minutes, seconds, suffix = ''] = match;
  const written = Number(hours);
  const isBare = suffix === '' && minutes === undefined && !text.endsWith('h');
  if (isBare || suffix.startsWith('o')) return bareHour(text, written);
  const hour = hourOf(written, suffix);
  if (hour === null) return { problem: 'twelve-hour-clock', text };
  const clock = { hour, minute: Number(minutes ?? 0), second: Number(seconds || 0) };
  return isOnTheClock(clock) ? { clock, midnight: false } : { problem: 'clock-range', text };
};
