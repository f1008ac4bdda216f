/** The nearest a tube comes to the Sun on a leg however the mount goes: whichever axis is the faster, by up to four to one, or goes first. */
import { angleBetween, type Vector3 } from '../../sky/angles.js';
import { tubeVector, type MountKind } from '../mount/mount.js';
import { SEPARATION_TOLERANCE_DEG, SUN_DEG_PER_S, closestOnLeg, type Closest } from './least-separation.js';
import { EVEN_MOTION, SLEW_SPEED_DEG_PER_S, legTurns, type Leg, type Motion } from './slew.js';

/** The first axis from a quarter of the second one's speed to four times. Common practice, no source. */
export const GREATEST_RATIO = 4;
const STILL_DEG = 0.05;
/** A patch of axis angles on the fan's edge is given up at this size. */
const SMALLEST_DEG = 0.1;
const FIRST_PATCHES = 6;

/** A patch of turns of both axes, by its middle and half its sides, in degrees from the leg's start. */
interface Patch {
  readonly primaryDeg: number;
  readonly secondaryDeg: number;
  readonly halfPrimaryDeg: number;
  readonly halfSecondaryDeg: number;
}

/** Whether the tube can be there while both axes move together: their turns so far stand within four to one. */
const isInFan = (primaryDeg: number, secondaryDeg: number): boolean =>
  primaryDeg <= GREATEST_RATIO * secondaryDeg && secondaryDeg <= GREATEST_RATIO * primaryDeg;
const touchesFan = ({ primaryDeg, secondaryDeg, halfPrimaryDeg, halfSecondaryDeg }: Patch): boolean =>
  primaryDeg - halfPrimaryDeg <= GREATEST_RATIO * (secondaryDeg + halfSecondaryDeg) &&
  secondaryDeg - halfSecondaryDeg <= GREATEST_RATIO * (primaryDeg + halfPrimaryDeg);

const quarters = ({ primaryDeg, secondaryDeg, halfPrimaryDeg, halfSecondaryDeg }: Patch): Patch[] => {
  const [p, s] = [halfPrimaryDeg / 2, halfSecondaryDeg / 2];
  // The longer side alone is halved where the patch is long.
  if (halfPrimaryDeg > 2 * halfSecondaryDeg)
    return [-p, p].map((by) => ({ primaryDeg: primaryDeg + by, secondaryDeg, halfPrimaryDeg: p, halfSecondaryDeg }));
  if (halfSecondaryDeg > 2 * halfPrimaryDeg)
    return [-s, s].map((by) => ({ primaryDeg, secondaryDeg: secondaryDeg + by, halfPrimaryDeg, halfSecondaryDeg: s }));
  return [-p, p].flatMap((byP) =>
    [-s, s].map((byS) => ({
      primaryDeg: primaryDeg + byP,
      secondaryDeg: secondaryDeg + byS,
      halfPrimaryDeg: p,
      halfSecondaryDeg: s,
    })),
  );
};

/**
 * The least over all the ways in which both axes can go together: every point of the fan that those ways sweep, by bounds in two
 * dimensions as in `leastByBounds`. The tube moves on the sky by no more than the root of the squares of both turns.
 */
const closestInFan = (
  mount: MountKind,
  leg: Leg,
  sunAt: (seconds: number) => Vector3,
  before: Closest,
  enoughDeg: number,
): Closest => {
  const turns = legTurns(mount, leg);
  const [all, allSecondary] = [Math.abs(turns.primaryDeg), Math.abs(turns.secondaryDeg)];
  let best = before;
  const visit = ({ primaryDeg, secondaryDeg }: Patch): number => {
    // The faster axis at the usual speed; the other as it must be to come by here.
    const atS = Math.max(primaryDeg, secondaryDeg) / SLEW_SPEED_DEG_PER_S;
    const axes = {
      primaryDeg: leg.from.primaryDeg + Math.sign(turns.primaryDeg) * primaryDeg,
      secondaryDeg: leg.from.secondaryDeg + Math.sign(turns.secondaryDeg) * secondaryDeg,
    };
    const separationDeg = angleBetween(tubeVector(mount, axes), sunAt(atS));
    if (separationDeg < best.separationDeg && isInFan(primaryDeg, secondaryDeg)) best = { separationDeg, atS };
    return separationDeg;
  };
  const reachDeg = ({ halfPrimaryDeg: p, halfSecondaryDeg: s }: Patch): number =>
    Math.hypot(p, s) + (Math.max(p, s) / SLEW_SPEED_DEG_PER_S) * SUN_DEG_PER_S;
  const half = { primary: all / FIRST_PATCHES / 2, secondary: allSecondary / FIRST_PATCHES / 2 };
  const first: Patch[] = Array.from({ length: FIRST_PATCHES ** 2 }, (_, i) => ({
    primaryDeg: half.primary * (2 * (i % FIRST_PATCHES) + 1),
    secondaryDeg: half.secondary * (2 * Math.floor(i / FIRST_PATCHES) + 1),
    halfPrimaryDeg: half.primary,
    halfSecondaryDeg: half.secondary,
  }));
  const bounded = (patches: readonly Patch[]): { patch: Patch; leastDeg: number }[] =>
    patches
      .filter(touchesFan)
      .map((patch) => ({ patch, leastDeg: visit(patch) - reachDeg(patch) }))
      // Most promising last, so that it is taken first.
      .sort((a, b) => b.leastDeg - a.leastDeg);
  const stack = bounded(first);
  for (let next = stack.pop(); next !== undefined && best.separationDeg >= enoughDeg; next = stack.pop()) {
    const isSettled = next.leastDeg >= best.separationDeg - SEPARATION_TOLERANCE_DEG * 10;
    if (isSettled || next.patch.halfPrimaryDeg + next.patch.halfSecondaryDeg < SMALLEST_DEG) continue;
    stack.push(...bounded(quarters(next.patch)));
  }
  return best;
};

/** Near half a turn a base may go round by either side: play in the axis, or a guard of the cables, decides. Common practice, no source. */
export const EITHER_WAY_DEG = 150;

/** The worst over all motions of a leg that goes round by one side. */
const worstOneWay = (
  mount: MountKind,
  leg: Leg,
  sunAt: (seconds: number) => Vector3,
  known: Motion | null,
  enoughDeg = -Infinity,
): Closest => {
  const by = (motion: Motion): Closest => closestOnLeg(mount, leg, sunAt, motion, enoughDeg);
  if (known !== null) return by(known);
  const turns = legTurns(mount, leg);
  if (Math.abs(turns.primaryDeg) < STILL_DEG || Math.abs(turns.secondaryDeg) < STILL_DEG) return by(EVEN_MOTION);
  // However they go together, what is left at the end lies on one of the two ways axis by axis.
  const first = by({ ...EVEN_MOTION, order: 'primary-first' });
  if (first.separationDeg < enoughDeg) return first;
  const second = by({ ...EVEN_MOTION, order: 'secondary-first' });
  const byAxis = first.separationDeg <= second.separationDeg ? first : second;
  return byAxis.separationDeg < enoughDeg ? byAxis : closestInFan(mount, leg, sunAt, byAxis, enoughDeg);
};

/**
 * The worst over all motions; `known`: the mount's own, where its speeds are known. An alt-azimuth base that turns by nearly
 * half a circle may go by either side, where nothing is known. Ends early at anything nearer than `enoughDeg`.
 */
export const worstOnLeg = (
  mount: MountKind,
  leg: Leg,
  sunAt: (seconds: number) => Vector3,
  known: Motion | null,
  enoughDeg = -Infinity,
): Closest => {
  const short = worstOneWay(mount, leg, sunAt, known, enoughDeg);
  const isEitherWay = known === null && mount === 'altaz' && Math.abs(legTurns(mount, leg).primaryDeg) > EITHER_WAY_DEG;
  if (!isEitherWay || short.separationDeg < enoughDeg) return short;
  const long = worstOneWay(mount, { ...leg, isLongWay: true }, sunAt, known, enoughDeg);
  return long.separationDeg < short.separationDeg ? long : short;
};
