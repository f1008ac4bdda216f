/** The years for which the sky core's answers are vouched for, and the test of an instant against them. */
import type { UtcMs } from './types.js';

/**
 * First and last calendar year, UTC, both inclusive. The engine's planets are fitted and tested for 1700–2200 (astronomy-engine
 * documentation, "Accuracy"); our own comparison (test/reference) covers 1900–2053 against JPL DE421 and, for stars and
 * the Sun, 1900–2100 against ERFA, whose Earth ephemeris (epv00) holds for those two centuries.
 */
export const EPHEMERIS_FIRST_YEAR = 1900;
export const EPHEMERIS_LAST_YEAR = 2100;

export const EPHEMERIS_START_UTC_MS: UtcMs = Date.UTC(EPHEMERIS_FIRST_YEAR, 0, 1);
/** Exclusive. */
export const EPHEMERIS_END_UTC_MS: UtcMs = Date.UTC(EPHEMERIS_LAST_YEAR + 1, 0, 1);

/** Whether places at this instant are vouched for. */
export const isWithinEphemeris = (utcMs: UtcMs): boolean =>
  utcMs >= EPHEMERIS_START_UTC_MS && utcMs < EPHEMERIS_END_UTC_MS;
