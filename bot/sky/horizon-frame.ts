/** One observer's sky at one instant, worked out once, so that each fixed direction then costs a dot product or three. */
import {
  DEGREES_PER_RADIAN,
  add,
  dot,
  horizontalFromVector,
  multiply,
  norm,
  normalized,
  scale,
  wrapDeg360,
} from './angles.js';
import type { Matrix3, Vector3 } from './angles.js';
import { earthAt, fixedDirection, siteOf, toEastNorthUp, toMeridianFrame } from './earth.js';
import type { FixedBody, Horizontal, Observer, UtcMs } from './types.js';

export interface HorizonFrame {
  readonly utcMs: UtcMs;
  /** Local apparent sidereal time, 0..360 degrees. */
  readonly lastDeg: number;
  /** Unit vector, J2000 axes, of a fixed body at this instant: proper motion and parallax in, aberration not. */
  readonly directionOf: (body: FixedBody) => Vector3;
  /** Airless altitude in degrees of such a unit vector. */
  readonly altitudeDegOf: (directionJ2000: Vector3) => number;
  /** Azimuth in degrees from north through east. */
  readonly azimuthDegOf: (directionJ2000: Vector3) => number;
  /** Airless altitude and azimuth. */
  readonly horizontalOf: (directionJ2000: Vector3) => Horizontal;
  /** East, north, zenith components of the apparent direction (unit vector). */
  readonly eastNorthUpOf: (directionJ2000: Vector3) => Vector3;
}

/** The frame for an observer at an instant: precession, nutation, sidereal time and aberration (to first order in v/c). */
export const horizonFrame = (observer: Observer, utcMs: UtcMs): HorizonFrame => {
  const earth = earthAt(utcMs);
  const site = siteOf(observer);
  const lastDeg = wrapDeg360(earth.gastDeg + observer.longitudeDeg);
  // Columns: where the J2000 axes stand in the observer's sky.
  const columns = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const
  ).map((axis) => toEastNorthUp(toMeridianFrame(multiply(earth.toDate, axis), lastDeg), site));
  const [x, y, z] = columns as [Vector3, Vector3, Vector3];
  const rows: Matrix3 = [
    [x[0], y[0], z[0]],
    [x[1], y[1], z[1]],
    [x[2], y[2], z[2]],
  ];
  // The observer's whole velocity over that of light: round the Sun, and eastward with the Earth's spin.
  const velocity = add(earth.aberration, scale(rows[0], site.diurnalAberration));
  const apparent = (direction: Vector3): Vector3 => add(direction, velocity);
  const eastNorthUpOf = (direction: Vector3): Vector3 => normalized(multiply(rows, apparent(direction)));
  return {
    utcMs,
    lastDeg,
    directionOf: (body) => fixedDirection(body, earth),
    altitudeDegOf: (direction) => {
      const seen = apparent(direction);
      return Math.asin(Math.max(-1, Math.min(1, dot(rows[2], seen) / norm(seen)))) * DEGREES_PER_RADIAN;
    },
    azimuthDegOf: (direction) => horizontalFromVector(multiply(rows, apparent(direction))).azimuthDeg,
    horizontalOf: (direction) => horizontalFromVector(multiply(rows, apparent(direction))),
    eastNorthUpOf,
  };
};
