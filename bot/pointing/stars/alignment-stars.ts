/** Which two or three stars fix a mount's orientation best: the expected pointing error over the sky, by small-rotation least squares. */
import { dot, sinDeg, type Vector3 } from '../../sky/angles.js';
import type { MountDirection, MountKind } from '../mount/mount.js';
import { HOME, axesFor } from '../mount/mount.js';
import { legMotion } from '../way/slew.js';

export interface AlignmentCandidate {
  readonly name: string;
  readonly magnitude: number;
  /** Unit vector east, north, up. */
  readonly direction: Vector3;
  /** In the mount's own frame, for the order in which to slew. */
  readonly inMountFrame: MountDirection;
}

/** How well a star is centred, by eye in a low-power eyepiece, with the mount's own wobble: one sigma. Common practice, no source. */
export const CENTRING_SIGMA_ARCMIN = 3;
/** Errors are averaged over the sky above this altitude. */
const USEFUL_ALTITUDE_DEG = 20;
/** A star fainter by one magnitude costs this share of the error: the bright one is found and told apart at once. Common practice, no source. */
const FAINTNESS_PENALTY = 0.15;

/** Stars nearer to each other than 10° fix nothing about the turn around them. */
const NEAREST_PAIR_COS = Math.cos((10 * Math.PI) / 180);

type Symmetric = readonly [xx: number, xy: number, xz: number, yy: number, yz: number, zz: number];

const inverse = ([a, b, c, d, e, f]: Symmetric): Symmetric | null => {
  const aa = d * f - e * e;
  const bb = c * e - b * f;
  const cc = b * e - c * d;
  const determinant = a * aa + b * bb + c * cc;
  if (!(determinant > 1e-12)) return null;
  return [
    aa / determinant,
    bb / determinant,
    cc / determinant,
    (a * f - c * c) / determinant,
    (b * c - a * e) / determinant,
    (a * d - b * b) / determinant,
  ];
};

/**
 * Root mean square pointing error in arcminutes over the sky above 20°, when the mount's orientation is taken from these
 * stars: a small rotation w moves a direction u by w × u, each star centred to ±3′ gives (I − uuᵀ)/σ² of information on w,
 * and a direction v is then in error by tr C − vᵀCv on average, C the inverse of the sum. Infinite for fewer than two
 * directions. (Least squares as in G. Wahba, SIAM Review 7, 409, 1965, problem 65-1, for small rotations.)
 */
export const expectedErrorArcmin = (directions: readonly Vector3[]): number => {
  let information: Symmetric = [0, 0, 0, 0, 0, 0];
  for (const [x, y, z] of directions) {
    information = [
      information[0] + 1 - x * x,
      information[1] - x * y,
      information[2] - x * z,
      information[3] + 1 - y * y,
      information[4] - y * z,
      information[5] + 1 - z * z,
    ];
  }
  const covariance = inverse(information);
  if (covariance === null) return Infinity;
  const floor = sinDeg(USEFUL_ALTITUDE_DEG);
  const meanUpSquared = (1 - floor ** 3) / (3 * (1 - floor));
  const meanLevelSquared = (1 - meanUpSquared) / 2;
  const [xx, , , yy, , zz] = covariance;
  const variance = (xx + yy) * (1 - meanLevelSquared) + zz * (1 - meanUpSquared);
  return CENTRING_SIGMA_ARCMIN * Math.sqrt(variance);
};

/**
 * The distance within which 95 of 100 targets land, from the root mean square: an error equally likely in any direction has
 * r95 = √(ln 20) × RMS (the Rayleigh distribution's quantile).
 */
export const within95Arcmin = (rmsArcmin: number): number => Math.sqrt(Math.log(20)) * rmsArcmin;

const sets = <T>(items: readonly T[], size: number, from = 0): T[][] =>
  size === 0
    ? [[]]
    : items.slice(from).flatMap((item, i) => sets(items, size - 1, from + i + 1).map((rest) => [item, ...rest]));

const permutations = <T>(items: readonly T[]): T[][] =>
  items.length <= 1
    ? [[...items]]
    : items.flatMap((item, i) => permutations(items.filter((_, j) => j !== i)).map((rest) => [item, ...rest]));

const travelS = (mount: MountKind, order: readonly AlignmentCandidate[]): number => {
  let at = HOME;
  let total = 0;
  for (const { inMountFrame } of order) {
    const to = axesFor(mount, inMountFrame);
    total += legMotion(mount, { from: at, to }).durationS;
    at = to;
  }
  return total;
};

/** The order that moves the mount least, from home on. */
export const inSlewOrder = (mount: MountKind, stars: readonly AlignmentCandidate[]): AlignmentCandidate[] =>
  permutations(stars).reduce((best, order) => (travelS(mount, order) < travelS(mount, best) ? order : best));

export interface AlignmentChoice {
  /** In the order to slew. */
  readonly stars: readonly AlignmentCandidate[];
  readonly expectedErrorArcmin: number;
}

/** The best set of `count` stars; null when there are fewer, or none that are more than a few degrees apart. */
export const chooseAlignmentStars = (
  mount: MountKind,
  candidates: readonly AlignmentCandidate[],
  count: 2 | 3,
  isWanted: (stars: readonly AlignmentCandidate[]) => boolean = () => true,
): AlignmentChoice | null => {
  let best: { stars: AlignmentCandidate[]; score: number; error: number } | null = null;
  for (const stars of sets(candidates, count)) {
    if (!isWanted(stars)) continue;
    const error = expectedErrorArcmin(stars.map(({ direction }) => direction));
    const score =
      error * stars.reduce((factor, { magnitude }) => factor + FAINTNESS_PENALTY * Math.max(0, magnitude), 1);
    if (Number.isFinite(error) && (best === null || score < best.score)) best = { stars, score, error };
  }
  if (best === null) return null;
  const { stars } = best;
  if (stars.some((a, i) => stars.some((b, j) => i < j && dot(a.direction, b.direction) > NEAREST_PAIR_COS)))
    return null;
  return { stars: inSlewOrder(mount, stars), expectedErrorArcmin: best.error };
};
