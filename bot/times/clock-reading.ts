/** A time of day as members write it: "22:30", "10pm", "10:30 p.m.", "22h30", "2230", "noon", "midnight". */
import { NOON, type ClockReading } from './local-to-utc.js';
import type { TimeFault } from './wording.js';

/** `midnight` is the one at the end of the day that goes with it. */
export type ClockText = { readonly clock: ClockReading; readonly midnight: boolean } | TimeFault;

const MIDNIGHT: ClockReading = { hour: 0, minute: 0, second: 0 };

/** "10:30 p.m." and "22h30", else four figures: hours, minutes, seconds, then what half of the day or "o'clock" follows. */
const CLOCK = /^(\d{1,2})(?:[:.h](\d{2})(?:[:.m](\d{2})(?:\.\d+)?s?)?|h)?\s?(am|pm|a\.m\.?|p\.m\.?|a|p|o'?clock)?$/;
const FOUR_FIGURES = /^(\d{2})(\d{2})()()$/;

/** The hour on the 24-hour clock; null where am or pm stands beside one that the 12-hour clock has not. */
const hourOf = (hour: number, halfOfDay: string): number | null => {
  if (halfOfDay === '') return hour;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (halfOfDay.startsWith('p') ? 12 : 0);
};

/** Reads a time of day; null when the text is none. The text is lower case, single-spaced. */
export const readClock = (text: string): ClockText | null => {
  if (text === 'midnight') return { clock: MIDNIGHT, midnight: true };
  if (text === 'noon' || text === 'midday') return { clock: NOON, midnight: false };
  const match = CLOCK.exec(text) ?? FOUR_FIGURES.exec(text);
  if (!match) return null;
  const [, hours = '', minutes, seconds, suffix = ''] = match;
  const written = Number(hours);
  const isBare = suffix === '' && minutes === undefined && !text.endsWith('h');
  if (isBare || suffix.startsWith('o'))
    return written > 23 ? { problem: 'clock-range', text } : { problem: 'bare-hour', text, hour: written };
  const hour = hourOf(written, suffix);
  if (hour === null) return { problem: 'twelve-hour-clock', text };
  const minute = Number(minutes ?? 0);
  const second = Number(seconds || 0);
  if (hour > 23 || minute > 59 || second > 59) return { problem: 'clock-range', text };
  return { clock: { hour, minute, second }, midnight: false };
};
