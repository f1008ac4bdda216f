/** The way a mount takes to a target, how near it comes to the Sun, and a way in legs that keeps clear where the straight one does not. */
import { angleBetween, dot } from '../../sky/angles.js';
import type { Equatorial, Observer, UtcMs } from '../../sky/types.js';
import { HOME, axesFor, tubeVector, type AxisAngles, type MountKind } from '../mount/mount.js';
import { horizontalOfAxes, mountSky, type MountSky } from '../mount/mount-sky.js';
import { EVEN_MOTION, legMotion, legTurns, type Leg, type Motion } from './slew.js';
import { worstOnLeg } from './worst-motion.js';

/** Below this altitude a tube may meet pier, tripod or ground; ways that stay above it are taken first. Common practice, no source. */
export const LOWEST_TUBE_ALTITUDE_DEG = -5;
const GRID_DEG = 15;
const STILL_DEG = 0.05;

export interface WayRequest {
  readonly mount: MountKind;
  readonly observer: Observer;
  /** When the mount sets off. */
  readonly utcMs: UtcMs;
  /** Of date. */
  readonly target: Equatorial;
  /** Of date, or where the mount is switched on and parked. */
  readonly from: Equatorial | 'home';
  /** How the mount moves its axes; null: not known, so the worst is reckoned with. */
  readonly motion: Motion | null;
}

export interface WayLeg {
  /** `primary`: right ascension or azimuth alone; `secondary`: declination or altitude alone. */
  readonly axes: 'both' | 'primary' | 'secondary';
  readonly to: AxisAngles;
  /** Where the tube points at the leg's end. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  readonly minimumSeparationDeg: number;
  /** Seconds after the whole way began at which this leg ends. */
  readonly endsAtS: number;
  /** The tube stands at the pole (or, alt-azimuth, at the zenith) at the leg's end. */
  readonly endsAtPole: boolean;
  readonly endsAtHome: boolean;
}

export interface Way {
  readonly legs: readonly WayLeg[];
  /** To within 0.005° of the true least separation. */
  readonly minimumSeparationDeg: number;
  /** When the tube is nearest to the Sun. */
  readonly closestUtcMs: UtcMs;
  readonly lowestAltitudeDeg: number;
  readonly durationS: number;
}

type WaypointRule = (start: AxisAngles, end: AxisAngles) => readonly AxisAngles[];

const axesOf = (mount: MountKind, leg: Leg): WayLeg['axes'] | null => {
  const turns = legTurns(mount, leg);
  const primary = Math.abs(turns.primaryDeg) > STILL_DEG;
  const secondary = Math.abs(turns.secondaryDeg) > STILL_DEG;
  if (primary && secondary) return 'both';
  if (primary) return 'primary';
  return secondary ? 'secondary' : null;
};

const isAtPole = (mount: MountKind, { secondaryDeg }: AxisAngles): boolean =>
  Math.abs(mount === 'altaz' ? secondaryDeg - 90 : secondaryDeg) < STILL_DEG;
const isAtHome = ({ primaryDeg, secondaryDeg }: AxisAngles): boolean =>
  Math.abs(primaryDeg) < STILL_DEG && Math.abs(secondaryDeg) < STILL_DEG;

const lowestAltitudeOf = (sky: MountSky, leg: Leg, by: Motion): number => {
  const motion = legMotion(sky.mount, leg, by);
  const steps = Math.max(1, Math.ceil(motion.durationS * Math.max(by.primaryDegPerS, by.secondaryDegPerS)));
  let lowest = 1;
  for (let step = 0; step <= steps; step++) {
    lowest = Math.min(lowest, dot(tubeVector(sky.mount, motion.axesAt((motion.durationS * step) / steps)), sky.zenith));
  }
  return (Math.asin(lowest) * 180) / Math.PI;
};

/** Start and goal of a request as axis angles; the goal moves with the sky, so it is asked for by the second of arrival. */
const endsOf = (
  request: WayRequest,
  sky: MountSky,
): { start: AxisAngles; goalAt: (seconds: number) => AxisAngles } => ({
  start: request.from === 'home' ? HOME : axesFor(request.mount, sky.directionAt(request.from, 0)),
  goalAt: (seconds) => axesFor(request.mount, sky.directionAt(request.target, seconds)),
});

/** The way through the waypoints, or null as soon as it is known to come nearer to the Sun than `keepDeg`. */
const wayKeeping = (request: WayRequest, sky: MountSky, waypoints: WaypointRule, keepDeg: number): Way | null => {
  const { mount } = request;
  const nominal = request.motion ?? EVEN_MOTION;
  const { start, goalAt } = endsOf(request, sky);
  const legsTo = (goal: AxisAngles): Leg[] => {
    const points = [start, ...waypoints(start, goal), goal];
    return points.slice(1).map((to, i) => ({ from: points[i]!, to }));
  };
  const durationOf = (legs: readonly Leg[]): number =>
    legs.reduce((sum, leg) => sum + legMotion(mount, leg, nominal).durationS, 0);
  // The sky turns while the mount moves; aim at where the target will be on arrival.
  let legs = legsTo(goalAt(0));
  for (let turn = 0; turn < 3; turn++) legs = legsTo(goalAt(durationOf(legs)));

  const found: WayLeg[] = [];
  let elapsedS = 0;
  let least = { separationDeg: angleBetween(tubeVector(mount, start), sky.sunAt(0)), atS: 0 };
  if (least.separationDeg < keepDeg) return null;
  let lowestAltitudeDeg = 90;
  for (const leg of legs) {
    const startS = elapsedS;
    const closest = worstOnLeg(mount, leg, (seconds) => sky.sunAt(startS + seconds), request.motion, keepDeg);
    if (closest.separationDeg < keepDeg) return null;
    elapsedS += legMotion(mount, leg, nominal).durationS;
    if (closest.separationDeg < least.separationDeg)
      least = { separationDeg: closest.separationDeg, atS: startS + closest.atS };
    lowestAltitudeDeg = Math.min(lowestAltitudeDeg, lowestAltitudeOf(sky, leg, nominal));
    const axes = axesOf(mount, leg);
    if (axes === null) continue;
    found.push({
      axes,
      to: leg.to,
      minimumSeparationDeg: closest.separationDeg,
      endsAtS: elapsedS,
      endsAtPole: isAtPole(mount, leg.to),
      endsAtHome: isAtHome(leg.to),
      ...horizontalOfAxes(mount, leg.to, request.observer.latitudeDeg),
    });
  }
  return {
    legs: found,
    minimumSeparationDeg: least.separationDeg,
    closestUtcMs: request.utcMs + least.atS * 1000,
    lowestAltitudeDeg,
    durationS: elapsedS,
  };
};

/** The way the mount takes by itself: both axes at once, or at its worst where it is not known how they go. */
export const straightWay = (request: WayRequest): Way =>
  wayKeeping(request, mountSky(request.mount, request.observer, request.utcMs), () => [], -Infinity) as Way;

const grid = (fromDeg: number, toDeg: number): number[] =>
  Array.from({ length: Math.round((toDeg - fromDeg) / GRID_DEG) + 1 }, (_, i) => fromDeg + i * GRID_DEG);

/** Ways to try, the simplest to carry out first. */
const waypointRules = (mount: MountKind): WaypointRule[] => {
  const poleDeg = mount === 'altaz' ? 90 : 0;
  const oneSided = mount === 'fork' ? grid(0, 120) : grid(0, 90);
  const secondaries = mount === 'german' ? grid(-120, 120) : oneSided;
  const primaries = mount === 'german' ? grid(-90, 90) : grid(-180, 180);
  const byAway = (a: number, b: number): number => Math.abs(a - poleDeg) - Math.abs(b - poleDeg);
  return [
    () => [HOME],
    (_, end) => [{ primaryDeg: end.primaryDeg, secondaryDeg: poleDeg }],
    (start, end) => [{ primaryDeg: start.primaryDeg, secondaryDeg: end.secondaryDeg }],
    (start, end) => [{ primaryDeg: end.primaryDeg, secondaryDeg: start.secondaryDeg }],
    (start, end) => [
      { primaryDeg: start.primaryDeg, secondaryDeg: poleDeg },
      { primaryDeg: end.primaryDeg, secondaryDeg: poleDeg },
    ],
    ...[...secondaries].sort(byAway).map((secondaryDeg): WaypointRule => (start, end) => [
      { primaryDeg: start.primaryDeg, secondaryDeg },
      { primaryDeg: end.primaryDeg, secondaryDeg },
    ]),
    ...primaries.map((primaryDeg): WaypointRule => (start, end) => [
      { primaryDeg, secondaryDeg: start.secondaryDeg },
      { primaryDeg, secondaryDeg: end.secondaryDeg },
    ]),
    ...primaries.map((primaryDeg): WaypointRule => () => [{ primaryDeg, secondaryDeg: poleDeg }]),
  ];
};

/**
 * A way in legs that stays at least `keepDeg` from the Sun and as far from it as `wishDeg` if any tried way does; the simplest
 * of those, above −5° altitude where possible. Null when none of the ways tried keeps `keepDeg`.
 */
export const saferWay = (request: WayRequest, keepDeg: number, wishDeg: number): Way | null => {
  const sky = mountSky(request.mount, request.observer, request.utcMs);
  let best: { way: Way; isLow: boolean } | null = null;
  for (const rule of waypointRules(request.mount)) {
    const way = wayKeeping(request, sky, rule, keepDeg);
    if (way === null) continue;
    // The ends themselves may lie lower than the limit (a parked tube, a low pole); only the way between is judged.
    const isLow = way.lowestAltitudeDeg < LOWEST_TUBE_ALTITUDE_DEG;
    if (!isLow && way.minimumSeparationDeg >= wishDeg) return way;
    if (
      best === null ||
      Number(isLow) < Number(best.isLow) ||
      (isLow === best.isLow && way.minimumSeparationDeg > best.way.minimumSeparationDeg + 1)
    )
      best = { way, isLow };
  }
  return best?.way ?? null;
};
