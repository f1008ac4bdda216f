/** Airmass: how much air a line of sight passes through, in units of the zenith's. */
import { sinDeg } from './angles.js';

/**
 * Airmass at a refracted altitude in degrees: 1 at the zenith, about 39 at the horizon, null below it.
 * K. A. Pickering, "The Southern Limits of the Ancient Star Catalog", DIO 12, 3 (2002).
 */
export const airmass = (apparentAltitudeDeg: number): number | null => {
  if (!(apparentAltitudeDeg >= 0)) return null;
  const altitude = Math.min(90, apparentAltitudeDeg);
  return Math.max(1, 1 / sinDeg(altitude + 244 / (165 + 47 * altitude ** 1.1)));
};
