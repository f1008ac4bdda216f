/** Angles and unit vectors on the sphere: separations, position angles, wrapping; it knows nothing of time or of any observer. */
import type { Equatorial, Horizontal } from './types.js';

/** Cartesian components. Equatorial: x to RA 0 h, y to RA 6 h, z to the north pole. Horizontal: x east, y north, z zenith. Both right-handed. */
export type Vector3 = readonly [number, number, number];

/** Three rows; a matrix times a vector is the three rows' dot products with it. */
export type Matrix3 = readonly [Vector3, Vector3, Vector3];

export const DEGREES_PER_RADIAN = 180 / Math.PI;
export const ARCSEC_PER_RADIAN = 3600 * DEGREES_PER_RADIAN;
const RADIANS_PER_DEGREE = Math.PI / 180;

const wrap = (value: number, period: number): number => {
  const remainder = value % period;
  // A tiny negative remainder plus the period rounds to the period itself, which is outside 0 ≤ x < period.
  const positive = remainder < 0 ? remainder + period : remainder;
  return positive >= period ? 0 : positive + 0;
};

/** The same angle in 0 ≤ x < 360 degrees. */
export const wrapDeg360 = (deg: number): number => wrap(deg, 360);

/** The same angle in −180 ≤ x < 180 degrees. */
export const wrapDeg180 = (deg: number): number => wrap(deg + 180, 360) - 180;

/** The same hour angle or right ascension in 0 ≤ x < 24 hours. */
export const wrapHours24 = (hours: number): number => wrap(hours, 24);

/** The same hour angle in −12 ≤ x < 12 hours. */
export const wrapHours12 = (hours: number): number => wrap(hours + 12, 24) - 12;

export const sinDeg = (deg: number): number => Math.sin(deg * RADIANS_PER_DEGREE);
export const cosDeg = (deg: number): number => Math.cos(deg * RADIANS_PER_DEGREE);

/** Arc sine in degrees; an argument that rounding has put just outside −1..1 is clamped. */
export const asinDeg = (x: number): number => Math.asin(Math.min(1, Math.max(-1, x))) * DEGREES_PER_RADIAN;

export const dot = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

export const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

export const add = (a: Vector3, b: Vector3): Vector3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const scale = (a: Vector3, factor: number): Vector3 => [a[0] * factor, a[1] * factor, a[2] * factor];
export const norm = (a: Vector3): number => Math.sqrt(dot(a, a));

/** The unit vector along `a`. `a` must not be the null vector. */
export const normalized = (a: Vector3): Vector3 => scale(a, 1 / norm(a));

export const multiply = (m: Matrix3, v: Vector3): Vector3 => [dot(m[0], v), dot(m[1], v), dot(m[2], v)];

/** The transpose of a rotation (its inverse) times a vector. */
export const multiplyTransposed = (m: Matrix3, v: Vector3): Vector3 => [
  m[0][0] * v[0] + m[1][0] * v[1] + m[2][0] * v[2],
  m[0][1] * v[0] + m[1][1] * v[1] + m[2][1] * v[2],
  m[0][2] * v[0] + m[1][2] * v[1] + m[2][2] * v[2],
];

/** The unit vector at a longitude (counted from x towards y) and a latitude (towards z), in degrees. */
export const unitVector = (longitudeDeg: number, latitudeDeg: number): Vector3 => {
  const cosLatitude = cosDeg(latitudeDeg);
  return [cosLatitude * cosDeg(longitudeDeg), cosLatitude * sinDeg(longitudeDeg), sinDeg(latitudeDeg)];
};

/** Longitude 0..360° and latitude −90..90° of a vector of any length; at the poles the longitude is 0. */
export const sphericalOf = (v: Vector3): { longitudeDeg: number; latitudeDeg: number } => {
  const equatorial = Math.hypot(v[0], v[1]);
  return {
    longitudeDeg: equatorial === 0 ? 0 : wrapDeg360(Math.atan2(v[1], v[0]) * DEGREES_PER_RADIAN),
    latitudeDeg: Math.atan2(v[2], equatorial) * DEGREES_PER_RADIAN,
  };
};

export const unitFromEquatorial = (eq: Equatorial): Vector3 => unitVector(eq.raHours * 15, eq.decDeg);

export const equatorialFromVector = (v: Vector3): Equatorial => {
  const { longitudeDeg, latitudeDeg } = sphericalOf(v);
  return { raHours: longitudeDeg / 15, decDeg: latitudeDeg };
};

/** East, north, zenith. */
export const unitFromHorizontal = (h: Horizontal): Vector3 => unitVector(90 - h.azimuthDeg, h.altitudeDeg);

/** From east, north, zenith; at the zenith and the nadir the azimuth is 0. */
export const horizontalFromVector = (v: Vector3): Horizontal => {
  const level = Math.hypot(v[0], v[1]);
  return {
    altitudeDeg: Math.atan2(v[2], level) * DEGREES_PER_RADIAN,
    azimuthDeg: level === 0 ? 0 : wrapDeg360(Math.atan2(v[0], v[1]) * DEGREES_PER_RADIAN),
  };
};

/** The angle between two vectors of any length, 0..180°, exact to rounding near 0° and 180° alike. */
export const angleBetween = (a: Vector3, b: Vector3): number =>
  Math.atan2(norm(cross(a, b)), dot(a, b)) * DEGREES_PER_RADIAN;

/** `v` turned by `angleDeg` about the unit vector `axis`, counter-clockwise as seen from the axis's tip (Rodrigues' formula). */
export const rotatedAbout = (v: Vector3, axis: Vector3, angleDeg: number): Vector3 => {
  const cosine = cosDeg(angleDeg);
  const sine = sinDeg(angleDeg);
  const along = dot(axis, v) * (1 - cosine);
  const across = cross(axis, v);
  return [
    v[0] * cosine + across[0] * sine + axis[0] * along,
    v[1] * cosine + across[1] * sine + axis[1] * along,
    v[2] * cosine + across[2] * sine + axis[2] * along,
  ];
};

/**
 * The angle between two points of a sphere, 0..180°, good at small and at antipodal separations (T. Vincenty, "Direct and
 * inverse solutions of geodesics on the ellipsoid", Survey Review 23 (176), 1975, taken on the sphere).
 */
const sphericalSeparationDeg = (
  longitudeA: number,
  latitudeA: number,
  longitudeB: number,
  latitudeB: number,
): number => {
  const sinA = sinDeg(latitudeA);
  const cosA = cosDeg(latitudeA);
  const sinB = sinDeg(latitudeB);
  const cosB = cosDeg(latitudeB);
  const sinDifference = sinDeg(longitudeB - longitudeA);
  const cosDifference = cosDeg(longitudeB - longitudeA);
  const opposite = Math.hypot(cosB * sinDifference, cosA * sinB - sinA * cosB * cosDifference);
  return Math.atan2(opposite, sinA * sinB + cosA * cosB * cosDifference) * DEGREES_PER_RADIAN;
};

/** The angle between two directions given in one equatorial frame, 0..180°. */
export const separationDeg = (a: Equatorial, b: Equatorial): number =>
  sphericalSeparationDeg(a.raHours * 15, a.decDeg, b.raHours * 15, b.decDeg);

/** The angle between two directions of one observer's sky, 0..180°. */
export const horizontalSeparationDeg = (a: Horizontal, b: Horizontal): number =>
  sphericalSeparationDeg(a.azimuthDeg, a.altitudeDeg, b.azimuthDeg, b.altitudeDeg);

/**
 * The position angle of `b` as seen from `a`, 0..360° from north through east (W. M. Smart, Textbook on Spherical
 * Astronomy, ch. I, four-parts formula). Where `a` and `b` coincide it is 0.
 */
export const positionAngleDeg = (a: Equatorial, b: Equatorial): number => {
  const difference = (b.raHours - a.raHours) * 15;
  const east = cosDeg(b.decDeg) * sinDeg(difference);
  const north = cosDeg(a.decDeg) * sinDeg(b.decDeg) - sinDeg(a.decDeg) * cosDeg(b.decDeg) * cosDeg(difference);
  return wrapDeg360(Math.atan2(east, north) * DEGREES_PER_RADIAN);
};
