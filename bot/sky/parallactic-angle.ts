/** How a field is turned against the horizon. */
import { cosDeg, DEGREES_PER_RADIAN, sinDeg } from './angles.js';
import type { Observer } from './types.js';

/**
 * The angle at a body between the directions to the zenith and to the north celestial pole, −180..180°, negative east of the meridian
 * (seen from the north): J. Meeus, Astronomical Algorithms (2nd ed.), formula 14.1. At the zenith itself it has no meaning and is 0.
 */
export const parallacticAngleDeg = (hourAngleHours: number, decDeg: number, { latitudeDeg }: Observer): number => {
  const hourAngleDeg = hourAngleHours * 15;
  const across = sinDeg(hourAngleDeg) * cosDeg(latitudeDeg);
  const along = sinDeg(latitudeDeg) * cosDeg(decDeg) - cosDeg(latitudeDeg) * sinDeg(decDeg) * cosDeg(hourAngleDeg);
  return Math.atan2(across, along) * DEGREES_PER_RADIAN;
};
