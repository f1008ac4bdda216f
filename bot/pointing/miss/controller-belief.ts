/** What a controller believes, and from that the sidereal time and the place that it shows. */
import { asinDeg, cosDeg, sinDeg, wrapDeg180, wrapDeg360, wrapHours24 } from '../../sky/angles.js';
import { SIDEREAL_DEG_PER_MS } from '../../sky/earth.js';
import { lastHours } from '../../sky/sidereal-time.js';
import type { Equatorial, Horizontal, UtcMs } from '../../sky/types.js';
import type { AlignmentStar, Circumstances, PointedTarget } from './astray-types.js';
import type { AxisAngles } from '../mount/mount.js';

/** How a base stands that should stand level and true. */
export interface Stance {
  /** Turned about the vertical, east positive: true azimuth minus believed. */
  readonly turnDeg: number;
  /** Raised at the end of the elevated pole (alt-azimuth: at the north end). */
  readonly raisedDeg: number;
  /** Leaning sideways, the east side up. */
  readonly tiltDeg: number;
}

export const STANDS_TRUE: Stance = { turnDeg: 0, raisedDeg: 0, tiltDeg: 0 };

/** The controller's picture of the world, and how the mount that obeys it differs from what it takes for granted. */
export interface Belief {
  readonly utcMs: UtcMs;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** The sidereal time it shows, by its own time and longitude. */
  readonly lstHours: number;
  /** The sidereal time it ought to show. */
  readonly trueLstHours: number;
  /** Drives an equatorial mount as south of the equator. */
  readonly southern: boolean;
  /** With the wrong hemisphere set, takes the other pole for its own but still turns the polar axis in the right sense. */
  readonly poleAlone: boolean;
  /** `none`: right; `j2000-as-date`: catalogue coordinates used unprecessed; `twice`: coordinates of date precessed again. */
  readonly epochSlip: 'none' | 'j2000-as-date' | 'twice';
  /** −1 where an axis runs the wrong way. */
  readonly axisSigns: { readonly primary: 1 | -1; readonly secondary: 1 | -1 };
  /** How far the axes stood from home when the controller took them to be at home. */
  readonly axisOffsets: AxisAngles;
  /**
   * Where a wrong zero is kept on a German mount: on its axes, so that its declination part turns round with the tube on the
   * other side of the pier, or as a shift of hour angle and declination, the same on both sides. Controllers do either.
   */
  readonly zeroKeptOn: 'axes' | 'sky';
  readonly stance: Stance;
  /** Minutes since the mount stopped following the sky. */
  readonly stoppedMinutes: number;
  /** The star the controller was told, and the one that was centred; null: trusts its home position. */
  readonly alignment: { readonly expected: AlignmentStar; readonly centred: AlignmentStar } | null;
}

/** Everything as it should be. */
export const rightBelief = ({ observer, utcMs, alignedOn }: Circumstances): Belief => {
  const lst = lastHours(utcMs, observer.longitudeDeg);
  return {
    utcMs,
    latitudeDeg: observer.latitudeDeg,
    longitudeDeg: observer.longitudeDeg,
    lstHours: lst,
    trueLstHours: lst,
    southern: observer.latitudeDeg < 0,
    poleAlone: false,
    epochSlip: 'none',
    axisSigns: { primary: 1, secondary: 1 },
    axisOffsets: { primaryDeg: 0, secondaryDeg: 0 },
    zeroKeptOn: alignedOn === null ? 'axes' : 'sky',
    stance: STANDS_TRUE,
    stoppedMinutes: 0,
    alignment: alignedOn === null ? null : { expected: alignedOn, centred: alignedOn },
  };
};

/** The same belief with the clock moved on; the sidereal time goes with it (to the second even over months). */
export const withClockMoved = (belief: Belief, ms: number): Belief => ({
  ...belief,
  utcMs: belief.utcMs + ms,
  lstHours: wrapHours24(belief.lstHours + (ms * SIDEREAL_DEG_PER_MS) / 15),
});

/** The same belief at another place. */
export const withSite = (belief: Belief, latitudeDeg: number, longitudeDeg: number): Belief => ({
  ...belief,
  latitudeDeg,
  longitudeDeg,
  lstHours: wrapHours24(belief.lstHours + (longitudeDeg - belief.longitudeDeg) / 15),
  southern: latitudeDeg < 0,
});

/** The coordinates the controller aims at. */
export const aimedAt = (belief: Belief, target: PointedTarget): Equatorial => {
  if (belief.epochSlip === 'j2000-as-date') return target.j2000;
  if (belief.epochSlip === 'twice') {
    // Once more by the same small step as from J2000 to now.
    return {
      raHours: wrapHours24(2 * target.ofDate.raHours - target.j2000.raHours),
      decDeg: Math.max(-90, Math.min(90, 2 * target.ofDate.decDeg - target.j2000.decDeg)),
    };
  }
  return target.ofDateAt?.(belief.utcMs) ?? target.ofDate;
};

export const horizontalOfHourAngle = (hourAngleDeg: number, decDeg: number, latitudeDeg: number): Horizontal => {
  const altitudeDeg = asinDeg(
    sinDeg(decDeg) * sinDeg(latitudeDeg) + cosDeg(decDeg) * cosDeg(hourAngleDeg) * cosDeg(latitudeDeg),
  );
  const east = -cosDeg(decDeg) * sinDeg(hourAngleDeg);
  const north = sinDeg(decDeg) * cosDeg(latitudeDeg) - cosDeg(decDeg) * cosDeg(hourAngleDeg) * sinDeg(latitudeDeg);
  return { altitudeDeg, azimuthDeg: wrapDeg360((Math.atan2(east, north) * 180) / Math.PI) };
};

/** The altitude and azimuth the controller shows for a target. */
export const shownHorizontal = (belief: Belief, target: PointedTarget): Horizontal => {
  const aim = aimedAt(belief, target);
  return horizontalOfHourAngle((belief.lstHours - aim.raHours) * 15, aim.decDeg, belief.latitudeDeg);
};

/** Controller's sidereal time minus the true one, −12 h..12 h, in seconds. */
export const lstErrorS = ({ lstHours, trueLstHours }: Belief): number =>
  wrapDeg180((lstHours - trueLstHours) * 15) * 240;
