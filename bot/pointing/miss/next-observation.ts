/** Which further observation would best tell the two likeliest causes of a miss apart. */
import {
  asinDeg,
  cosDeg,
  sinDeg,
  unitFromHorizontal,
  wrapDeg180,
  wrapHours12,
  type Vector3,
} from '../../sky/angles.js';
import {
  LST_SIGMA_S,
  POSITION_SIGMA_DEG,
  type Circumstances,
  type Observation,
  type PointedTarget,
} from './astray-types.js';
import { shownHorizontal, type Belief } from './controller-belief.js';
import { landedVector } from './landing.js';
import type { Explanation } from './explain-miss.js';
import { offsetDeg } from './observation-misfit.js';

export type NextObservation =
  /** Read the sidereal time off the controller. */
  | { readonly kind: 'lst' }
  /** Read the altitude and azimuth the controller shows for the target. */
  | { readonly kind: 'shown'; readonly target: PointedTarget }
  /** See where the tube really goes when sent there. */
  | { readonly kind: 'landed'; readonly target: PointedTarget }
  /** Leave the tube alone for so long and see whether the target drifts. */
  | { readonly kind: 'wait'; readonly target: PointedTarget; readonly minutes: number };

const WAIT_MINUTES = 10;
/** Where two causes are this far apart (Bhattacharyya distance), mixing them up has at most 2.5 % chance; cheaper ways suffice. */
const ENOUGH = 3;
const TOO_LITTLE = 0.3;
const STARS_TRIED = 6;

/** Mean and covariance of what a cause predicts, in degrees along two tangents at `origin`. */
interface Cloud {
  readonly mean: readonly [number, number];
  readonly covariance: readonly [number, number, number];
}

const altitudeDeg = (circumstances: Circumstances, belief: Belief, target: PointedTarget): number => {
  const hourAngleDeg = wrapHours12(belief.trueLstHours - target.ofDate.raHours) * 15;
  const { latitudeDeg } = circumstances.observer;
  return asinDeg(
    sinDeg(target.ofDate.decDeg) * sinDeg(latitudeDeg) +
      cosDeg(target.ofDate.decDeg) * cosDeg(hourAngleDeg) * cosDeg(latitudeDeg),
  );
};

const later = (belief: Belief): Belief =>
  belief.stoppedMinutes > 0 ? { ...belief, stoppedMinutes: belief.stoppedMinutes + WAIT_MINUTES } : belief;

type Predict = (belief: Belief) => Vector3;

const cloudOf = (explanation: Explanation, predict: Predict, origin: Vector3): Cloud => {
  const mean = offsetDeg(origin, predict(explanation.belief));
  const variance = POSITION_SIGMA_DEG ** 2;
  let [xx, xy, yy] = [variance, 0, variance];
  const { spread } = explanation;
  if (spread !== null) {
    const step = 0.02;
    const slopes = spread.parameters.map((_, i) => {
      const [x, y] = offsetDeg(
        origin,
        predict(spread.beliefAt(spread.parameters.map((value, j) => value + (i === j ? step : 0)))),
      );
      return [(x - mean[0]) / step, (y - mean[1]) / step] as const;
    });
    slopes.forEach((a, i) =>
      slopes.forEach((b, j) => {
        const c = spread.covariance[i]![j]!;
        xx += a[0] * c * b[0];
        xy += a[0] * c * b[1];
        yy += a[1] * c * b[1];
      }),
    );
  }
  return { mean, covariance: [xx, xy, yy] };
};

/** Distance between two normal distributions in the plane (A. Bhattacharyya, Bull. Calcutta Math. Soc. 35, 99, 1943). */
export const bhattacharyya = (a: Cloud, b: Cloud): number => {
  const [xx, xy, yy] = a.covariance.map((value, i) => (value + b.covariance[i]!) / 2) as [number, number, number];
  const determinant = ([p, q, r]: readonly number[]): number => p! * r! - q! * q!;
  const det = determinant([xx, xy, yy]);
  const dx = a.mean[0] - b.mean[0];
  const dy = a.mean[1] - b.mean[1];
  const mahalanobis = (yy * dx * dx - 2 * xy * dx * dy + xx * dy * dy) / det;
  return mahalanobis / 8 + 0.5 * Math.log(det / Math.sqrt(determinant(a.covariance) * determinant(b.covariance)));
};

/** One sigma of the sidereal time a cause predicts, in seconds, the reading's own included. */
const clockSigmaS = ({ belief, spread }: Explanation): number => {
  if (spread === null) return LST_SIGMA_S;
  const step = 0.02;
  const variance = spread.parameters.reduce((sum, _, i) => {
    const moved = spread.beliefAt(spread.parameters.map((value, j) => value + (i === j ? step : 0)));
    const slope = (wrapDeg180((moved.lstHours - belief.lstHours) * 15) * 240) / step;
    return sum + slope * slope * spread.covariance[i]![i]!;
  }, LST_SIGMA_S ** 2);
  return Math.sqrt(variance);
};

const distanceByClock = (seconds: number, first: Explanation, second: Explanation): number => {
  const [a, b] = [clockSigmaS(first), clockSigmaS(second)];
  const variance = (a * a + b * b) / 2;
  return (seconds * seconds) / variance / 8 + 0.5 * Math.log(variance / (a * b));
};

/** Stars to try next: spread over the sky, well up, away from the target. */
const starsToTry = (circumstances: Circumstances, belief: Belief): PointedTarget[] =>
  circumstances.stars
    .map((star): PointedTarget => ({ name: star.name, ofDate: star.ofDate, j2000: star.ofDate }))
    .filter((star) => {
      const altitude = altitudeDeg(circumstances, belief, star);
      return altitude > 25 && altitude < 75;
    })
    .slice(0, STARS_TRIED);

interface Candidate {
  readonly observation: NextObservation;
  /** How well it separates the two causes (Bhattacharyya distance). */
  readonly distance: number;
}

/** What could be asked for, the least troublesome first. */
const candidatesFor = (
  circumstances: Circumstances,
  target: PointedTarget,
  made: readonly Observation[],
  [first, second]: readonly [Explanation, Explanation],
): Candidate[] => {
  const distanceBy = (predict: Predict): number => {
    const origin = predict(first.belief);
    return bhattacharyya(cloudOf(first, predict, origin), cloudOf(second, predict, origin));
  };
  const landing =
    (at: PointedTarget): Predict =>
    (belief) =>
      landedVector(circumstances, belief, at);
  const has = (kind: Observation['kind']): boolean => made.some((observation) => observation.kind === kind);
  const candidates: Candidate[] = [];
  if (!has('lst')) {
    const seconds = wrapDeg180((first.belief.lstHours - second.belief.lstHours) * 15) * 240;
    candidates.push({ observation: { kind: 'lst' }, distance: distanceByClock(seconds, first, second) });
  }
  if (!has('shown')) {
    const shown: Predict = (belief) => unitFromHorizontal(shownHorizontal(belief, target));
    candidates.push({ observation: { kind: 'shown', target }, distance: distanceBy(shown) });
  }
  if (!has('landed'))
    candidates.push({ observation: { kind: 'landed', target }, distance: distanceBy(landing(target)) });
  for (const star of starsToTry(circumstances, first.belief)) {
    if (star.name !== target.name)
      candidates.push({ observation: { kind: 'landed', target: star }, distance: distanceBy(landing(star)) });
  }
  const waited: Predict = (belief) => landing(target)(later(belief));
  if (has('landed'))
    candidates.push({ observation: { kind: 'wait', target, minutes: WAIT_MINUTES }, distance: distanceBy(waited) });
  return candidates;
};

/**
 * The observation that separates two causes best: the least troublesome that separates them well, else the best of all; null
 * when none tried would separate them, which is so when both predict the same everywhere.
 * `mayMove`: false where the mount must be sent nowhere.
 */
export const nextObservation = (
  circumstances: Circumstances,
  target: PointedTarget,
  made: readonly Observation[],
  [first, second]: readonly [Explanation, Explanation],
  mayMove = true,
): Candidate | null => {
  const candidates = candidatesFor(circumstances, target, made, [first, second]).filter(
    ({ observation }) => mayMove || observation.kind === 'lst' || observation.kind === 'shown',
  );
  const enough = candidates.find(({ distance }) => distance >= ENOUGH);
  const best = candidates.reduce<Candidate | null>(
    (most, candidate) => (most === null || candidate.distance > most.distance ? candidate : most),
    null,
  );
  const chosen = enough ?? best;
  return chosen === null || chosen.distance < TOO_LITTLE ? null : chosen;
};
