/** A time of day as members write it: "22:30", "10pm", "10:30 p.m.", "22h30", "2230", "noon", "midnight". */
import { NOON, type ClockReading } from './local-to-utc.js';
import type { TimeFault } from './wording.js';

/** `midnight` is the one at the end of the day that goes with it. */
export type ClockText = { readonly clock: ClockReading; readonly midnight: boolean } | TimeFault;

/** Reads a time of day; null when the text is none. The text is lower case, single-spaced. */
export const readClock = (text: string): ClockText | null => {
  if (text === 'midnight') return { clock: { hour: 0, minute: 0, second: 0 }, midnight: true };
  if (text === 'noon' || text === 'midday') return { clock: NOON, midnight: false };
  const match =
    /^(\d{1,2})(?:[:.h](\d{2})(?:[:.m](\d{2})(?:\.\d+)?s?)?|h)?\s?(am|pm|a\.m\.?|p\.m\.?|a|p|o'?clock)?$/.exec(text) ??
    /^(\d{2})(\d{2})()()$/.exec(text);
  if (!match) return null;
  const [, hours = '', minutes, seconds, suffix = ''] = match;
  let hour = Number(hours);
  const minute = Number(minutes ?? 0);
  const second = Number(seconds || 0);
  if (suffix.startsWith('o') || (suffix === '' && minutes === undefined && !text.endsWith('h'))) {
    return hour > 23 ? { fault: 'clock-range', text } : { fault: 'bare-hour', text, hour };
  }
  if (suffix !== '') {
    if (hour < 1 || hour > 12) return { fault: 'twelve-hour-clock', text };
    hour = (hour % 12) + (suffix.startsWith('p') ? 12 : 0);
  }
  if (hour > 23 || minute > 59 || second > 59) return { fault: 'clock-range', text };
  return { clock: { hour, minute, second }, midnight: false };
};
