/** The errors of an equatorial mount from where several stars landed: polar axis, zero points, cone; small errors, by least squares. */
import { cosDeg, sinDeg, wrapDeg180 } from '../../sky/angles.js';
import type { Equatorial } from '../../sky/types.js';
import { inverted, times } from './small-matrix.js';

/** Where a star should have been and where the tube was, of date. */
export interface StarMiss {
  readonly name: string;
  readonly aim: Equatorial;
  readonly landed: Equatorial;
}

export interface PolarFit {
  /** The polar axis's raised end, degrees too high. */
  readonly raisedDeg: number;
  /** The base, turned too far clockwise as seen from above (in the north: its pole end too far east). */
  readonly turnedDeg: number;
  /** What is added to every hour angle and declination. */
  readonly zeroHourAngleDeg: number;
  readonly zeroDecDeg: number;
  /** Tube and declination axis out of square; null with too few stars to tell. */
  readonly coneDeg: number | null;
  /** One sigma of the first two, by what the fit leaves. */
  readonly raisedSigmaDeg: number;
  readonly turnedSigmaDeg: number;
  readonly leftDeg: readonly LeftOver[];
  readonly rmsDeg: number;
}

/** What the fit leaves of one star's miss, on the sky: west and north positive. */
export interface LeftOver {
  readonly name: string;
  readonly offDeg: number;
  readonly westDeg: number;
  readonly northDeg: number;
}

export const LEAST_STARS = 3;
const STARS_FOR_CONE = 5;

/**
 * Rows of the equations of condition for one star, for hour angle on the sky and for declination, in the order raised, turned,
 * zero points, cone. An axis raised by r and a base turned by a at latitude φ move hour angle h and declination δ by
 * Δh = −r sin h tan δ − a cos φ cos h tan δ (a sin φ goes into the zero of h), Δδ = −r cos h + a cos φ sin h; a cone of c by
 * Δh = c sec δ (W. Chauvenet, A Manual of Spherical and Practical Astronomy II, "The Equatorial Telescope"; from memory, and
 * derived anew from the rotations).
 */
const rowsFor = (hourAngleDeg: number, decDeg: number, latitudeDeg: number): [number[], number[]] => {
  const up = latitudeDeg < 0 ? -1 : 1;
  const [sinH, cosH, sinD, cosD] = [sinDeg(hourAngleDeg), cosDeg(hourAngleDeg), sinDeg(decDeg), cosDeg(decDeg)];
  const level = cosDeg(latitudeDeg);
  return [
    [-up * sinH * sinD, -level * cosH * sinD, cosD, 0, 1],
    [-up * cosH, level * sinH, 0, 1, 0],
  ];
};

/** Null with too few stars, or with stars that stand so that they cannot tell the errors apart. */
export const fitPolarAxis = (misses: readonly StarMiss[], latitudeDeg: number, lstHours: number): PolarFit | null => {
  if (misses.length < LEAST_STARS) return null;
  const unknowns = misses.length >= STARS_FOR_CONE ? 5 : 4;
  const rows: number[][] = [];
  const seen: number[] = [];
  for (const { aim, landed } of misses) {
    const hourAngleDeg = (lstHours - aim.raHours) * 15;
    const eastwardDeg = wrapDeg180((landed.raHours - aim.raHours) * 15);
    for (const row of rowsFor(hourAngleDeg, aim.decDeg, latitudeDeg)) rows.push(row.slice(0, unknowns));
    // A landing farther east has the smaller hour angle.
    seen.push(-eastwardDeg * cosDeg(aim.decDeg), landed.decDeg - aim.decDeg);
  }
  const columns = Array.from({ length: unknowns }, (_, i) => rows.map((row) => row[i]!));
  const dotted = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
  const { inverse, determinant } = inverted(columns.map((a) => columns.map((b) => dotted(a, b))));
  if (!(Math.abs(determinant) > 1e-9)) return null;
  const found = times(
    inverse,
    columns.map((column) => dotted(column, seen)),
  );
  const left = seen.map((value, i) => value - dotted(rows[i]!, found));
  const squares = left.reduce((sum, value) => sum + value * value, 0);
  const sigmaDeg = (i: number): number => Math.sqrt((inverse[i]![i]! * squares) / (rows.length - unknowns));
  return {
    raisedDeg: found[0]!,
    turnedDeg: found[1]!,
    zeroHourAngleDeg: found[2]!,
    zeroDecDeg: found[3]!,
    coneDeg: found[4] ?? null,
    raisedSigmaDeg: sigmaDeg(0),
    turnedSigmaDeg: sigmaDeg(1),
    leftDeg: misses.map(({ name }, i) => ({
      name,
      offDeg: Math.hypot(left[2 * i]!, left[2 * i + 1]!),
      westDeg: left[2 * i]!,
      northDeg: left[2 * i + 1]!,
    })),
    rmsDeg: Math.sqrt(squares / misses.length),
  };
};
