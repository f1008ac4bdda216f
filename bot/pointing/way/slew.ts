/** How a mount moves from one pair of axis angles to another: both axes set off together at one top speed, so the longer one finishes alone. */
import { wrapDeg180 } from '../../sky/angles.js';
import type { AxisAngles, MountKind } from '../mount/mount.js';

/** Top speed of both axes. Common practice, no source: small computerised mounts slew at 2 to 5 degrees a second. */
export const SLEW_SPEED_DEG_PER_S = 3;

/** One move; a leg in which one axis stands still turns the other alone. */
export interface Leg {
  readonly from: AxisAngles;
  readonly to: AxisAngles;
}

/** Signed turns of both axes in degrees. Azimuth goes the short way; equatorial axes stay inside their range and never wrap. */
export const legTurns = (mount: MountKind, { from, to }: Leg): AxisAngles => {
  const primary = to.primaryDeg - from.primaryDeg;
  return {
    primaryDeg: mount === 'altaz' ? wrapDeg180(primary) : primary,
    secondaryDeg: to.secondaryDeg - from.secondaryDeg,
  };
};

export interface LegMotion {
  readonly durationS: number;
  /** Until then both axes move; from then on the longer one alone. 0 where only one moves at all. */
  readonly bothUntilS: number;
  readonly axesAt: (seconds: number) => AxisAngles;
}

/** The motion along a leg. */
export const legMotion = (mount: MountKind, leg: Leg, speedDegPerS = SLEW_SPEED_DEG_PER_S): LegMotion => {
  const turns = legTurns(mount, leg);
  const primaryS = Math.abs(turns.primaryDeg) / speedDegPerS;
  const secondaryS = Math.abs(turns.secondaryDeg) / speedDegPerS;
  const moved = (turnDeg: number, needsS: number, seconds: number): number =>
    seconds >= needsS ? turnDeg : Math.sign(turnDeg) * speedDegPerS * Math.max(0, seconds);
  return {
    durationS: Math.max(primaryS, secondaryS),
    bothUntilS: Math.min(primaryS, secondaryS),
    axesAt: (seconds) => ({
      primaryDeg: leg.from.primaryDeg + moved(turns.primaryDeg, primaryS, seconds),
      secondaryDeg: leg.from.secondaryDeg + moved(turns.secondaryDeg, secondaryS, seconds),
    }),
  };
};
