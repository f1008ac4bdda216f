/** How far a sundial is ahead of the mean Sun, which clocks follow. */
import { MS_PER_DAY } from '../ground/durations.js';
import type { Observer, UtcMs } from './types.js';

/**
 * Milliseconds, positive where the sundial is ahead (the sign of almanacs): local mean noon less the Sun's crossing of the meridian.
 * @param noonUtcMs of that crossing
 */
export const equationOfTimeMs = ({ longitudeDeg }: Pick<Observer, 'longitudeDeg'>, noonUtcMs: UtcMs): number => {
  const meanMs = noonUtcMs + (longitudeDeg / 360) * MS_PER_DAY;
  const ofDayMs = ((meanMs % MS_PER_DAY) + MS_PER_DAY) % MS_PER_DAY;
  return MS_PER_DAY / 2 - ofDayMs;
};
