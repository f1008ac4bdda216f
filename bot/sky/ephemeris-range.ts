/** The years for which the sky core's answers are vouched for, and the test of an instant against them. */
import type { UtcMs } from './types.js';

/**
 * First and last calendar year, UTC, both inclusive. The engine itself claims 1′ over millennia (astronomy-engine
 * documentation, overview); these two centuries are what our own comparison (test/reference) stands behind: Sun, Moon and
 * planets within 0.01° of JPL DE421 for 1900–2052, the Sun within 0.01° of ERFA's epv00, good for 1900–2100, after that,
 * and stars within 0.001° of ERFA for 1973–2099. Further off, ΔT alone would turn the sky by more than the promised precision.
 */
export const EPHEMERIS_FIRST_YEAR = 1900;
export const EPHEMERIS_LAST_YEAR = 2100;

export const EPHEMERIS_START_UTC_MS: UtcMs = Date.UTC(EPHEMERIS_FIRST_YEAR, 0, 1);
/** Exclusive. */
export const EPHEMERIS_END_UTC_MS: UtcMs = Date.UTC(EPHEMERIS_LAST_YEAR + 1, 0, 1);

/** Whether places at this instant are vouched for. */
export const isWithinEphemeris = (utcMs: UtcMs): boolean =>
  utcMs >= EPHEMERIS_START_UTC_MS && utcMs < EPHEMERIS_END_UTC_MS;
