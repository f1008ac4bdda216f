/** Which night belongs to a date, and which date a night belongs to, by local mean time alone. */
import { MS_PER_DAY, MS_PER_HOUR } from '../ground/durations.js';
import type { UtcMs } from './types.js';

/** A day of the civil calendar; month 1..12. */
export interface LocalDate {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** From an instant up to a later one. */
export interface TimeSpan {
  readonly startUtcMs: UtcMs;
  readonly endUtcMs: UtcMs;
}

/** Local mean noon after UTC midnight, to the whole millisecond so that a night begins exactly where the one before ends. */
const meanNoonMs = (longitudeDeg: number): number => Math.round((12 - longitudeDeg / 15) * MS_PER_HOUR);

/** UTC midnight that opens the date; `Date.UTC` alone would read the years 0..99 as 1900..1999. */
const utcMidnightOf = ({ year, month, day }: LocalDate): UtcMs => new Date(0).setUTCFullYear(year, month - 1, day);

/**
 * Whole days by which a place's civil date runs ahead of the date its longitude alone would give: 0 nearly everywhere, ±1
 * where the date line is bent (Kiribati, Samoa, Tonga).
 */
const civilDaysAhead = (longitudeDeg: number, utcOffsetMinutes: number | undefined): number =>
  utcOffsetMinutes === undefined ? 0 : Math.round((utcOffsetMinutes / 60 - longitudeDeg / 15) / 24);

/**
 * The night of a local date: from local mean noon (12:00 − longitude/15° h UTC) on that date to the next.
 * @param longitudeDeg east positive, −180..180
 * @param utcOffsetMinutes the zone's offset, wanted only for places whose clock is a day away from their longitude
 */
export const nightOf = (localDate: LocalDate, longitudeDeg: number, utcOffsetMinutes?: number): TimeSpan => {
  const startUtcMs =
    utcMidnightOf(localDate) + meanNoonMs(longitudeDeg) - civilDaysAhead(longitudeDeg, utcOffsetMinutes) * MS_PER_DAY;
  return { startUtcMs, endUtcMs: startUtcMs + MS_PER_DAY };
};

/** The local date whose night (see {@link nightOf}, same parameters) contains the instant. */
export const localDateOfNight = (utcMs: UtcMs, longitudeDeg: number, utcOffsetMinutes?: number): LocalDate => {
  const noonShifted = new Date(
    utcMs - meanNoonMs(longitudeDeg) + civilDaysAhead(longitudeDeg, utcOffsetMinutes) * MS_PER_DAY,
  );
  return { year: noonShifted.getUTCFullYear(), month: noonShifted.getUTCMonth() + 1, day: noonShifted.getUTCDate() };
};
