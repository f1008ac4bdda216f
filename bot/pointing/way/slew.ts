/** How a mount moves from one pair of axis angles to another: both axes together, each at its own top speed, or one after the other. */
import { wrapDeg180 } from '../../sky/angles.js';
import type { AxisAngles, MountKind } from '../mount/mount.js';

/** Top speed of the faster axis. Common practice, no source: small computerised mounts slew at 2 to 5 degrees a second. */
export const SLEW_SPEED_DEG_PER_S = 3;

/** How the axes go: both set off together, so that the longer one finishes alone; or one waits for the other. */
export interface Motion {
  readonly primaryDegPerS: number;
  readonly secondaryDegPerS: number;
  readonly order: 'together' | 'primary-first' | 'secondary-first';
}

/** Both axes at one speed. */
export const EVEN_MOTION: Motion = {
  primaryDegPerS: SLEW_SPEED_DEG_PER_S,
  secondaryDegPerS: SLEW_SPEED_DEG_PER_S,
  order: 'together',
};

/** One move; a leg in which one axis stands still turns the other alone. */
export interface Leg {
  readonly from: AxisAngles;
  readonly to: AxisAngles;
  /** In azimuth the long way round. */
  readonly isLongWay?: boolean;
}

const longWay = (turnDeg: number): number => (turnDeg > 0 ? turnDeg - 360 : turnDeg + 360);

/**
 * Signed turns of both axes in degrees. Azimuth goes the short way, where nothing else is said; equatorial axes stay inside their
 * range and never wrap.
 */
export const legTurns = (mount: MountKind, { from, to, isLongWay = false }: Leg): AxisAngles => {
  const primary = to.primaryDeg - from.primaryDeg;
  const secondaryDeg = to.secondaryDeg - from.secondaryDeg;
  if (mount !== 'altaz') return { primaryDeg: primary, secondaryDeg };
  const short = wrapDeg180(primary);
  return { primaryDeg: isLongWay ? longWay(short) : short, secondaryDeg };
};

/** A stretch of a leg in which the same axes move; at the most so fast in degrees a second on the sky. */
export interface Phase {
  readonly fromS: number;
  readonly untilS: number;
  readonly moves: 'both' | 'primary' | 'secondary';
}

export interface LegMotion {
  readonly durationS: number;
  readonly phases: readonly Phase[];
  readonly axesAt: (seconds: number) => AxisAngles;
}

const phasesOf = (order: Motion['order'], primaryS: number, secondaryS: number): Phase[] => {
  const all = primaryS + secondaryS;
  const isPrimaryLonger = primaryS > secondaryS;
  const phases: Readonly<Record<Motion['order'], Phase[]>> = {
    together: [
      { fromS: 0, untilS: Math.min(primaryS, secondaryS), moves: 'both' },
      {
        fromS: Math.min(primaryS, secondaryS),
        untilS: Math.max(primaryS, secondaryS),
        moves: isPrimaryLonger ? 'primary' : 'secondary',
      },
    ],
    'primary-first': [
      { fromS: 0, untilS: primaryS, moves: 'primary' },
      { fromS: primaryS, untilS: all, moves: 'secondary' },
    ],
    'secondary-first': [
      { fromS: 0, untilS: secondaryS, moves: 'secondary' },
      { fromS: secondaryS, untilS: all, moves: 'primary' },
    ],
  };
  return phases[order];
};

/** The motion along a leg. */
export const legMotion = (mount: MountKind, leg: Leg, motion: Motion = EVEN_MOTION): LegMotion => {
  const turns = legTurns(mount, leg);
  const primaryS = Math.abs(turns.primaryDeg) / motion.primaryDegPerS;
  const secondaryS = Math.abs(turns.secondaryDeg) / motion.secondaryDegPerS;
  const phases = phasesOf(motion.order, primaryS, secondaryS);
  const primaryFromS = motion.order === 'secondary-first' ? secondaryS : 0;
  const secondaryFromS = motion.order === 'primary-first' ? primaryS : 0;
  const moved = (turnDeg: number, needsS: number, seconds: number): number =>
    needsS === 0 || seconds >= needsS ? turnDeg : turnDeg * (Math.max(0, seconds) / needsS);
  return {
    durationS: phases[1]!.untilS,
    phases,
    axesAt: (seconds) => ({
      primaryDeg: leg.from.primaryDeg + moved(turns.primaryDeg, primaryS, seconds - primaryFromS),
      secondaryDeg: leg.from.secondaryDeg + moved(turns.secondaryDeg, secondaryS, seconds - secondaryFromS),
    }),
  };
};
