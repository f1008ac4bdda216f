/** How far a belief's predictions are from what was seen: residuals in units of their uncertainty, and in degrees. */
import { onceOf } from '../../ground/once.js';
import {
  DEGREES_PER_RADIAN,
  angleBetween,
  cross,
  dot,
  normalized,
  unitFromEquatorial,
  unitFromHorizontal,
  wrapDeg180,
  type Vector3,
} from '../../sky/angles.js';
import type { Circumstances, Observation } from './astray-types.js';
import { shownHorizontal, type Belief } from './controller-belief.js';
import { landedVector } from './landing.js';

/** What a belief predicts for an observation: a direction in the observation's own frame, or a sidereal time in hours. */
export const predictedVector = (
  circumstances: Circumstances,
  belief: Belief,
  observation: Exclude<Observation, { kind: 'lst' }>,
): Vector3 =>
  observation.kind === 'shown'
    ? unitFromHorizontal(shownHorizontal(belief, observation.target))
    : landedVector(circumstances, belief, observation.target);

type Seen = Exclude<Observation, { kind: 'lst' }>;

export const observedVector = (observation: Seen): Vector3 =>
  observation.kind === 'shown' ? unitFromHorizontal(observation.at) : unitFromEquatorial(observation.ofDate);

/** Two unit vectors square to `v` and to each other. */
export const tangents = (v: Vector3): [Vector3, Vector3] => {
  const first = normalized(cross(Math.abs(v[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0], v));
  return [first, cross(v, first)];
};

/** `to` as seen from `from`: degrees along two tangents, so that its length is the angle between them. */
export const offsetDeg = (from: Vector3, to: Vector3, [first, second] = tangents(from)): [number, number] => {
  const angle = angleBetween(from, to);
  const x = dot(to, first);
  const y = dot(to, second);
  const length = Math.hypot(x, y);
  return length < 1e-15 ? [angle, 0] : [(angle * x) / length, (angle * y) / length];
};

/** What an observation alone settles; asked for some thousand times while mistakes are weighed. */
const frameOf = onceOf((observation: Seen): { readonly seen: Vector3; readonly along: [Vector3, Vector3] } => {
  const seen = observedVector(observation);
  return { seen, along: tangents(seen) };
});

/** Residuals of all observations, each in its own sigmas: one number for a sidereal time, two for a direction. */
export const standardResiduals = (
  circumstances: Circumstances,
  belief: Belief,
  observations: readonly Observation[],
): number[] => {
  const residuals: number[] = [];
  for (const observation of observations) {
    if (observation.kind === 'lst') {
      residuals.push((wrapDeg180((belief.lstHours - observation.lstHours) * 15) * 240) / observation.sigmaS);
      continue;
    }
    const { seen, along } = frameOf(observation);
    const [x, y] = offsetDeg(seen, predictedVector(circumstances, belief, observation), along);
    residuals.push(x / observation.sigmaDeg, y / observation.sigmaDeg);
  }
  return residuals;
};

/** A residual beyond this many sigmas counts as this many: members misread, and one bad number must not decide alone. */
const OUTLIER_SIGMAS = 12;

/** Half the sum of squared residuals. */
export const misfitOf = (
  circumstances: Circumstances,
  belief: Belief,
  observations: readonly Observation[],
): number => {
  let sum = 0;
  for (const residual of standardResiduals(circumstances, belief, observations))
    sum += Math.min(OUTLIER_SIGMAS, Math.abs(residual)) ** 2;
  return sum / 2;
};

/** What a belief leaves unexplained, in degrees: at the landing where one was seen, else on the display, else in sidereal time (15° an hour). */
export const leftOverDeg = (
  circumstances: Circumstances,
  belief: Belief,
  observations: readonly Observation[],
): number => {
  const misfits = (kind: Observation['kind']): number[] =>
    observations
      .filter((observation) => observation.kind === kind)
      .map((observation) =>
        observation.kind === 'lst'
          ? Math.abs(wrapDeg180((belief.lstHours - observation.lstHours) * 15))
          : angleBetween(observedVector(observation), predictedVector(circumstances, belief, observation)),
      );
  for (const kind of ['landed', 'shown', 'lst'] as const) {
    const found = misfits(kind);
    if (found.length > 0) return Math.max(...found);
  }
  return 0;
};

/** Log density of an observation under "anything goes", relative to a prediction that fits exactly. */
export const logAnything = (observation: Observation): number =>
  observation.kind === 'lst'
    ? Math.log((observation.sigmaS * Math.sqrt(2 * Math.PI)) / 86_400)
    : Math.log((2 * Math.PI * observation.sigmaDeg ** 2) / (4 * Math.PI * DEGREES_PER_RADIAN ** 2));
