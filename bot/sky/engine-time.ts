/** UTC milliseconds into astronomy-engine's time, with UT1 − UTC taken as 0 and terrestrial time from the leap seconds. */
import { AstroTime, DeltaT_EspenakMeeus, SetDeltaTFunction } from 'astronomy-engine';
import { MS_PER_DAY } from '../ground/durations.js';
import type { UtcMs } from './types.js';

const J2000_UTC_MS = Date.UTC(2000, 0, 1, 12);

/** Days after which TAI − UTC took a new value, and that value in seconds (IERS Bulletin C; the whole list since 1972). */
const TAI_MINUS_UTC: readonly (readonly [UtcMs, number])[] = (
  [
    [1972, 0, 10],
    [1972, 6, 11],
    [1973, 0, 12],
    [1974, 0, 13],
    [1975, 0, 14],
    [1976, 0, 15],
    [1977, 0, 16],
    [1978, 0, 17],
    [1979, 0, 18],
    [1980, 0, 19],
    [1981, 6, 20],
    [1982, 6, 21],
    [1983, 6, 22],
    [1985, 6, 23],
    [1988, 0, 24],
    [1990, 0, 25],
    [1991, 0, 26],
    [1992, 6, 27],
    [1993, 6, 28],
    [1994, 6, 29],
    [1996, 0, 30],
    [1997, 6, 31],
    [1999, 0, 32],
    [2006, 0, 33],
    [2009, 0, 34],
    [2012, 6, 35],
    [2015, 6, 36],
    [2017, 0, 37],
  ] as const
).map(([year, month, seconds]) => [Date.UTC(year, month, 1), seconds] as const);

const TT_MINUS_TAI_SECONDS = 32.184;

/**
 * TT − UTC in seconds. From 1972 it is exact, by the leap seconds; no leap second after 2017 is known, so 69.184 s is kept
 * for the future. Before 1972 it is Espenak and Meeus's ΔT polynomial (Five Millennium Canon of Solar Eclipses, 2006).
 */
const ttMinusUtcSeconds = (utcMs: UtcMs): number => {
  for (let i = TAI_MINUS_UTC.length - 1; i >= 0; i--) {
    const [since, seconds] = TAI_MINUS_UTC[i]!;
    if (utcMs >= since) return seconds + TT_MINUS_TAI_SECONDS;
  }
  return DeltaT_EspenakMeeus((utcMs - J2000_UTC_MS) / MS_PER_DAY);
};

// The engine's own ΔT extrapolates a rising trend (75 s in 2026 where 69.2 s holds); left alone it would move the Moon by 3″.
SetDeltaTFunction((utDays) => ttMinusUtcSeconds(J2000_UTC_MS + utDays * MS_PER_DAY));

/** Days of UT1 (taken as UTC) since 2000-01-01T12:00. */
export const ut1DaysSinceJ2000 = (utcMs: UtcMs): number => (utcMs - J2000_UTC_MS) / MS_PER_DAY;

/** The instant as the engine wants it. Throws a RangeError unless it is a finite number. */
export const engineTime = (utcMs: UtcMs): AstroTime => {
  if (!Number.isFinite(utcMs))
    throw new RangeError(`An instant must be a finite number of UTC milliseconds, not ${utcMs}.`);
  return new AstroTime(ut1DaysSinceJ2000(utcMs));
};
