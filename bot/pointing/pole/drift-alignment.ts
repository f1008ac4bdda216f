/** Which way, and how far, to turn a polar axis by the drift of a star in declination. */
import { cosDeg } from '../../sky/angles.js';
import { TURN_PER_MINUTE } from './polar-drift.js';

/** Where the star stands: at the meridian it tells of azimuth, low in the east or west of altitude. */
export type DriftPlace = 'meridian' | 'east' | 'west';

export interface DriftFinding {
  readonly screw: 'azimuth' | 'altitude';
  /** Too far east, or too high, by so many minutes of arc; negative: west, low. In azimuth the turn of the base at the horizon. */
  readonly errorArcmin: number;
}

/**
 * The polar axis's error from a star's drift (the drift method; formulas as for the fit of several stars: declination changes with
 * hour angle h by a cos φ cos h + r sin h for each radian of the sky's turn, and the star drifts against it).
 * @param northArcsecPerMinute positive where the star drifts north in declination
 */
export const driftFinding = (place: DriftPlace, northArcsecPerMinute: number, latitudeDeg: number): DriftFinding => {
  const offArcmin = northArcsecPerMinute / TURN_PER_MINUTE / 60;
  const up = latitudeDeg < 0 ? -1 : 1;
  if (place === 'meridian') {
    // The base turned clockwise from above by a: the star drifts south by a cos φ. The southern pole's end goes west by that.
    const turnedArcmin = -offArcmin / Math.max(0.05, cosDeg(latitudeDeg));
    return { screw: 'azimuth', errorArcmin: turnedArcmin * up };
  }
  return { screw: 'altitude', errorArcmin: offArcmin * up * (place === 'east' ? 1 : -1) };
};
