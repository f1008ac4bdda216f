/** Magnetic declination by the World Magnetic Model 2025, which holds from 2025 to the end of 2029. */
import { MODEL_EPOCH, MODEL_VALID_UNTIL, calculateMagneticField } from 'magvar';
import type { Observer, UtcMs } from '../../sky/types.js';

export interface MagneticNorth {
  /** Degrees from true north to magnetic north, east positive, to 0.01°. */
  readonly declinationDeg: number;
  /** Horizontal intensity in nanotesla; where it is small a compass is sluggish and wrong. */
  readonly horizontalNt: number;
}

/** The model's own caution zone: below this horizontal intensity a compass is unreliable (WMM2025 technical report: under 6000 nT). */
export const UNRELIABLE_COMPASS_NT = 6000;

export const decimalYear = (utcMs: UtcMs): number => {
  const year = new Date(utcMs).getUTCFullYear();
  const start = Date.UTC(year, 0, 1);
  return year + (utcMs - start) / (Date.UTC(year + 1, 0, 1) - start);
};

/** Null outside the years for which the model is published. */
export const magneticNorth = (
  { latitudeDeg, longitudeDeg, elevationM }: Observer,
  utcMs: UtcMs,
): MagneticNorth | null => {
  const year = decimalYear(utcMs);
  if (year < MODEL_EPOCH || year >= MODEL_VALID_UNTIL) return null;
  const { declination, h } = calculateMagneticField(year, latitudeDeg, longitudeDeg, elevationM / 1000);
  return { declinationDeg: declination, horizontalNt: h };
};
