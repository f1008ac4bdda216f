/** When the Moon next reaches a phase. */
import { SearchMoonPhase } from 'astronomy-engine';
import { engineTime } from './engine-time.js';
import type { UtcMs } from './types.js';

/** A month and a day: within it every phase comes once. */
const LONGEST_WAIT_DAYS = 31;

/**
 * The first instant after `fromUtcMs` at which the Moon's ecliptic longitude exceeds the Sun's by `elongationDeg` (0 new, 90
 * first quarter, 180 full, 270 last quarter), to about a minute.
 */
export const nextMoonPhase = (elongationDeg: number, fromUtcMs: UtcMs): UtcMs => {
  const found = SearchMoonPhase(elongationDeg, engineTime(fromUtcMs), LONGEST_WAIT_DAYS);
  return found === null ? fromUtcMs : found.date.getTime();
};
