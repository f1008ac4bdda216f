/** The least separation between a moving tube and the Sun along a leg, found by bounds rather than by sampling alone. */
import { angleBetween, type Vector3 } from '../../sky/angles.js';
import { tubeVector, type AxisAngles, type MountKind } from '../mount/mount.js';
import { EVEN_MOTION, legMotion, type Leg, type Motion, type Phase } from './slew.js';

/** The answer is no further than this above the true least separation. */
export const SEPARATION_TOLERANCE_DEG = 0.005;

/** Fastest the Sun moves in any mount's frame: one turn a sidereal day at the frame's equator. */
export const SUN_DEG_PER_S = 0.0042;
const FIRST_STEPS = 12;

export interface Closest {
  readonly separationDeg: number;
  /** Seconds after the leg set off. */
  readonly atS: number;
}

interface Interval {
  readonly a: number;
  readonly fa: number;
  readonly b: number;
  readonly fb: number;
}

/**
 * Least value of a function that changes by at most `rate` a second, to within the tolerance. An interval is given up only
 * when no point in it can be lower than the best by more than that (S. A. Piyavskii, USSR Computational Mathematics and
 * Mathematical Physics 12 (4), 57, 1972; B. O. Shubert, SIAM J. Numer. Anal. 9, 379, 1972), so no narrow dip is stepped over.
 * A value below `enough` ends the search: then how low it goes does not matter.
 */
export const leastByBounds = (
  f: (x: number) => number,
  [from, to]: readonly [number, number],
  rate: number,
  tolerance: number,
  enough = -Infinity,
): { x: number; value: number } => {
  let best = { x: from, value: f(from) };
  const seen = (x: number): number => {
    const value = f(x);
    if (value < best.value) best = { x, value };
    return value;
  };
  const stack: Interval[] = [];
  let a = from;
  let fa = best.value;
  for (let step = 1; step <= FIRST_STEPS && best.value >= enough; step++) {
    const b = from + ((to - from) * step) / FIRST_STEPS;
    const fb = seen(b);
    stack.push({ a, fa, b, fb });
    a = b;
    fa = fb;
  }
  // Most promising last, so that the first descents lower `best` and the rest are cut short.
  const lowest = ({ a: x, fa: fx, b: y, fb: fy }: Interval): number => (fx + fy - rate * (y - x)) / 2;
  stack.sort((p, q) => lowest(q) - lowest(p));
  for (let interval = stack.pop(); interval !== undefined && best.value >= enough; interval = stack.pop()) {
    if (lowest(interval) >= best.value - tolerance) continue;
    const middle = (interval.a + interval.b) / 2;
    const fm = seen(middle);
    const left = { a: interval.a, fa: interval.fa, b: middle, fb: fm };
    const right = { a: middle, fa: fm, b: interval.b, fb: interval.fb };
    if (lowest(left) < lowest(right)) stack.push(right, left);
    else stack.push(left, right);
  }
  return best;
};

/** The fastest the tube goes in a phase, degrees a second on the sky. Turning about the first axis alone it goes round a small circle, and hardly moves where it stands near that axis. */
const rateOf = (
  mount: MountKind,
  { primaryDegPerS, secondaryDegPerS }: Motion,
  phase: Phase,
  at: AxisAngles,
): number => {
  if (phase.moves === 'both') return Math.hypot(primaryDegPerS, secondaryDegPerS);
  if (phase.moves === 'secondary') return secondaryDegPerS;
  const [x, y] = tubeVector(mount, at);
  return primaryDegPerS * Math.hypot(x, y);
};

/** Where on a leg the tube is nearest to the Sun, or the first point found that is nearer than `enoughDeg`. `sunAt` counts seconds from the same start as the leg. */
export const closestOnLeg = (
  mount: MountKind,
  leg: Leg,
  sunAt: (seconds: number) => Vector3,
  motion: Motion = EVEN_MOTION,
  enoughDeg = -Infinity,
): Closest => {
  const { phases, axesAt } = legMotion(mount, leg, motion);
  const separation = (seconds: number): number => angleBetween(tubeVector(mount, axesAt(seconds)), sunAt(seconds));
  let least: Closest = { separationDeg: Infinity, atS: 0 };
  for (const phase of phases) {
    const rate = rateOf(mount, motion, phase, axesAt(phase.fromS)) + SUN_DEG_PER_S;
    const found = leastByBounds(separation, [phase.fromS, phase.untilS], rate, SEPARATION_TOLERANCE_DEG, enoughDeg);
    if (found.value < least.separationDeg) least = { separationDeg: found.value, atS: found.x };
    if (least.separationDeg < enoughDeg) return least;
  }
  return least;
};
