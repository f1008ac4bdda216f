/** Julian dates, as light elements and circulars count time; UTC taken for the scale. */
import { MS_PER_DAY } from '../ground/durations.js';
import type { UtcMs } from './types.js';

/** Julian date of 1970-01-01T00:00Z. */
const UNIX_EPOCH_JD = 2_440_587.5;

export const julianDateOf = (utcMs: UtcMs): number => utcMs / MS_PER_DAY + UNIX_EPOCH_JD;
export const utcMsOfJulianDate = (julianDate: number): UtcMs => (julianDate - UNIX_EPOCH_JD) * MS_PER_DAY;
