/** A reading of a zone's clocks as an instant, with daylight saving's skipped and repeated hours said. */
import { IANAZone } from 'luxon';
import { MS_PER_DAY, MS_PER_MINUTE } from '../ground/durations.js';
import type { LocalDate } from './time-resolution.js';

/** Hours, minutes and seconds on a 24-hour clock. */
export interface ClockReading {
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
}

export const NOON: ClockReading = { hour: 12, minute: 0, second: 0 };

export interface LocalInstant {
  readonly utcMs: number;
  /** 'skipped': the clocks jump over this reading; 'repeated': they show it twice. */
  readonly clocks: 'plain' | 'skipped' | 'repeated';
}

/** From 1973 on every zone of the IANA's list changes its clocks at a whole minute UTC; before, some kept odd seconds. */
const WHOLE_MINUTES_FROM_UTC_MS = Date.UTC(1973, 0, 1);
const MINUTES_PER_DAY = MS_PER_DAY / MS_PER_MINUTE;
const MOST_KEPT = 20_000;
/** Asking the platform's calendar is dear, and an answer asks for the same night dozens of times. */
const kept = new Map<string, number>();

const askedMinutes = (zone: string, utcMs: number): number => {
  const offset = IANAZone.create(zone).offset(utcMs);
  return Number.isFinite(offset) ? offset : 0;
};

const minutesAtMinute = (zone: string, minute: number): number => {
  const key = `${zone} ${minute}`;
  const known = kept.get(key);
  if (known !== undefined) return known;
  const minutes = askedMinutes(zone, minute * MS_PER_MINUTE);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, minutes);
  return minutes;
};

/**
 * Minutes east of UTC that a zone's clocks keep at an instant; an unknown zone counts as UTC. No zone changes its clocks twice in
 * a day: where they are the same at both ends of it, they are so all day.
 */
export const offsetMinutes = (zone: string, utcMs: number): number => {
  if (!(utcMs >= WHOLE_MINUTES_FROM_UTC_MS)) return askedMinutes(zone, utcMs);
  const minute = Math.floor(utcMs / MS_PER_MINUTE);
  const dayStart = minute - (minute % MINUTES_PER_DAY);
  const atStart = minutesAtMinute(zone, dayStart);
  return minutesAtMinute(zone, dayStart + MINUTES_PER_DAY) === atStart ? atStart : minutesAtMinute(zone, minute);
};

/** The date and time that a zone's clocks show at an instant, as a UTC instant bearing the same figures. */
export const clocksAsUtcMs = (zone: string, utcMs: number): number => {
  return utcMs + offsetMinutes(zone, utcMs) * MS_PER_MINUTE;
};

/**
 * The instant of a clock reading. A repeated reading is taken the first time it is shown, a skipped one as if the clocks
 * had not yet been put forward (02:30 then is what the clocks show as 03:30).
 */
export const localToUtc = (date: LocalDate, clock: ClockReading, zone: string): LocalInstant => {
  const figures = Date.UTC(date.year, date.month - 1, date.day, clock.hour, clock.minute, clock.second);
  const before = offsetMinutes(zone, figures - MS_PER_DAY);
  const after = offsetMinutes(zone, figures + MS_PER_DAY);
  const fitting = [...new Set([before, after])]
    .filter((offset) => offsetMinutes(zone, figures - offset * MS_PER_MINUTE) === offset)
    .map((offset) => figures - offset * MS_PER_MINUTE)
    .sort((a, b) => a - b);
  const first = fitting[0];
  if (first === undefined) return { utcMs: figures - before * MS_PER_MINUTE, clocks: 'skipped' };
  return { utcMs: first, clocks: fitting.length > 1 ? 'repeated' : 'plain' };
};
