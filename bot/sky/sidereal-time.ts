/** Sidereal time, mean and apparent, at Greenwich and at a longitude. */
import { SiderealTime } from 'astronomy-engine';
import { wrapHours24 } from './angles.js';
import { engineTime, ut1DaysSinceJ2000 } from './engine-time.js';
import type { UtcMs } from './types.js';

const DAYS_PER_JULIAN_CENTURY = 36_525;

/** Earth rotation angle in degrees, not wrapped beyond whole days (N. Capitaine et al., A&A 355, 398 (2000), eq. 14; IERS Conventions 2010, eq. 5.15). */
const earthRotationAngleDeg = (ut1Days: number): number =>
  360 * (0.779_057_273_264 + (ut1Days % 1) + 0.002_737_811_911_354_48 * ut1Days);

/** Greenwich mean sidereal time, 0..24 h, IAU 2006 (N. Capitaine, P. T. Wallace and J. Chapront, A&A 432, 355 (2005), eq. 42). */
const gmstHours = (utcMs: UtcMs): number => {
  const t = engineTime(utcMs).tt / DAYS_PER_JULIAN_CENTURY;
  const accumulatedArcsec =
    0.014_506 +
    (4612.156_534 + (1.391_581_7 + (-0.000_000_44 + (-0.000_029_956 - 0.000_000_036_8 * t) * t) * t) * t) * t;
  return wrapHours24((earthRotationAngleDeg(ut1DaysSinceJ2000(utcMs)) + accumulatedArcsec / 3600) / 15);
};

/** Greenwich apparent sidereal time, 0..24 h (IAU 2006 precession, the five largest terms of IAU 2000B nutation). */
export const gastHours = (utcMs: UtcMs): number => SiderealTime(engineTime(utcMs));

/** Local apparent sidereal time, 0..24 h; longitude in degrees, east positive. */
export const lastHours = (utcMs: UtcMs, longitudeDeg: number): number =>
  wrapHours24(gastHours(utcMs) + longitudeDeg / 15);

export interface SiderealTimes {
  /** Greenwich mean sidereal time, 0..24 h. */
  readonly gmstHours: number;
  /** Greenwich apparent sidereal time, 0..24 h. */
  readonly gastHours: number;
  /** Local mean sidereal time, 0..24 h. */
  readonly lmstHours: number;
  /** Local apparent sidereal time, 0..24 h: what a hand controller shows. */
  readonly lastHours: number;
}

/** All four sidereal times at an instant; longitude in degrees, east positive. UT1 − UTC is taken as 0 (it is under 0.9 s). */
export const siderealTimes = (utcMs: UtcMs, longitudeDeg: number): SiderealTimes => {
  const mean = gmstHours(utcMs);
  const apparent = gastHours(utcMs);
  return {
    gmstHours: mean,
    gastHours: apparent,
    lmstHours: wrapHours24(mean + longitudeDeg / 15),
    lastHours: wrapHours24(apparent + longitudeDeg / 15),
  };
};
