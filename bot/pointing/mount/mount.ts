/** The mounts Pierhand knows, their axes, and how axis angles and directions belong together; it knows nothing of time or of the Sun. */
import { cosDeg, sinDeg, wrapDeg180, DEGREES_PER_RADIAN, type Vector3 } from '../../sky/angles.js';

/** German equatorial, fork equatorial (on a wedge), alt-azimuth. */
export const MOUNT_KINDS = ['german', 'fork', 'altaz'] as const;
export type MountKind = (typeof MOUNT_KINDS)[number];

/** On which side of the pier a German mount carries its tube. */
export type PierSide = 'east' | 'west';

/**
 * The side of the pier the tube is on for a target at this hour angle: east of the pier, looking west, from the meridian on;
 * west of it, looking east, before. (Common practice, no source: a flip exactly at the meridian.)
 * @param hourAngleHours −12..12, west positive
 */
export const pierSide = (hourAngleHours: number): PierSide => (hourAngleHours >= 0 ? 'east' : 'west');

export const oppositeSide = (side: PierSide): PierSide => (side === 'east' ? 'west' : 'east');

/**
 * Angles of a mount's two axes in degrees.
 * German: primary is the polar axis turned from "counterweight straight down", positive towards the west, −90..90 with the
 * counterweight never above level; secondary is the tube's angle from the elevated pole, positive with the tube west of the
 * pier (looking east), negative with it east (looking west). Both are 0 at home.
 * Fork: primary is the hour angle, secondary the angle from the elevated pole, 0..180.
 * Alt-azimuth: primary is the azimuth from north through east, secondary the altitude.
 */
export interface AxisAngles {
  readonly primaryDeg: number;
  readonly secondaryDeg: number;
}

/**
 * A direction in a mount's own frame. Equatorial mounts: longitude is the hour angle in degrees, latitude the declination
 * counted towards the elevated pole (at southern sites: minus the declination). Alt-azimuth: azimuth and altitude. A southern
 * sky is thus the mirror image of a northern one, and one set of formulas serves both.
 */
export interface MountDirection {
  readonly longitudeDeg: number;
  readonly latitudeDeg: number;
}

/** Where mounts stand when switched on: German, counterweight down and tube at the pole; fork, tube at the pole, arms level; alt-azimuth, tube level and north. Common practice, no source. */
export const HOME: AxisAngles = { primaryDeg: 0, secondaryDeg: 0 };

/** Axis angles for a direction. `side` is for German mounts alone; without it the usual side is taken. */
export const axesFor = (
  mount: MountKind,
  { longitudeDeg, latitudeDeg }: MountDirection,
  side?: PierSide,
): AxisAngles => {
  const longitude = wrapDeg180(longitudeDeg);
  if (mount === 'altaz') return { primaryDeg: longitude, secondaryDeg: latitudeDeg };
  const fromPoleDeg = 90 - latitudeDeg;
  if (mount === 'fork') return { primaryDeg: longitude, secondaryDeg: fromPoleDeg };
  return (side ?? pierSide(longitude / 15)) === 'east'
    ? { primaryDeg: wrapDeg180(longitude - 90), secondaryDeg: -fromPoleDeg }
    : { primaryDeg: wrapDeg180(longitude + 90), secondaryDeg: fromPoleDeg };
};

/** Unit vector in the mount's frame: x to longitude 0, y to longitude 90°, z to latitude 90°. */
export const tubeVector = (mount: MountKind, { primaryDeg, secondaryDeg }: AxisAngles): Vector3 => {
  const cosPrimary = cosDeg(primaryDeg);
  const sinPrimary = sinDeg(primaryDeg);
  const cosSecondary = cosDeg(secondaryDeg);
  const sinSecondary = sinDeg(secondaryDeg);
  if (mount === 'altaz') return [cosSecondary * cosPrimary, cosSecondary * sinPrimary, sinSecondary];
  if (mount === 'fork') return [sinSecondary * cosPrimary, sinSecondary * sinPrimary, cosSecondary];
  // The tube swings in the plane square to the declination axis, a quarter turn from the counterweight bar's plane.
  return [sinSecondary * sinPrimary, -sinSecondary * cosPrimary, cosSecondary];
};

/** The direction a mount's tube has; at a pole of the frame the longitude is 0. */
export const directionOf = (mount: MountKind, axes: AxisAngles): MountDirection => {
  const [x, y, z] = tubeVector(mount, axes);
  const across = Math.hypot(x, y);
  return {
    longitudeDeg: across < 1e-12 ? 0 : Math.atan2(y, x) * DEGREES_PER_RADIAN,
    latitudeDeg: Math.atan2(z, across) * DEGREES_PER_RADIAN,
  };
};
