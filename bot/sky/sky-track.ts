/** A body's way across one observer's sky, as a cheap function of time over any span: what searches in time are made on. */
import { MS_PER_DAY } from '../ground/durations.js';
import { createKept } from '../ground/kept.js';
import { asinDeg, DEGREES_PER_RADIAN, multiply, wrapDeg180 } from './angles.js';
import type { Vector3 } from './angles.js';
import { aberrated, earthAt, fixedDirection, seenFromSite, siteOf, toMeridianFrame } from './earth.js';
import { apparentMovingVector } from './solar-system.js';
import type { Observer, SkyBody, UtcMs } from './types.js';

export interface SkyTrack {
  /** Airless altitude in degrees. */
  readonly altitudeDegAt: (utcMs: UtcMs) => number;
  /** Local hour angle in degrees, −180..180, west positive. */
  readonly hourAngleDegAt: (utcMs: UtcMs) => number;
  /** Distance from the observer in astronomical units; infinite for fixed bodies. */
  readonly distanceAuAt: (utcMs: UtcMs) => number;
}

/** Apparent geocentric vectors of date over one UTC day, at Chebyshev–Lobatto nodes, with the sidereal time at both ends. */
interface DaySegment {
  readonly vectors: readonly Vector3[];
  readonly gastStartDeg: number;
  readonly gastPerDayDeg: number;
}

interface NodeSet {
  /** Node positions within the day, 0..1. The ends are nodes, so that one day joins the next without a step. */
  readonly at: readonly number[];
  /** Barycentric weights (H. E. Salzer, Computer Journal 15, 156 (1972)). */
  readonly weights: readonly number[];
}

const lobattoNodes = (count: number): NodeSet => {
  const last = count - 1;
  return {
    at: Array.from({ length: count }, (_, i) => (1 - Math.cos((Math.PI * i) / last)) / 2),
    weights: Array.from({ length: count }, (_, i) => (i % 2 === 0 ? 1 : -1) * (i === 0 || i === last ? 0.5 : 1)),
  };
};

/** Seven nodes a day follow even the Moon to far below the engine's own error; a star's drift of date is all but linear. */
const MOVING_NODES = lobattoNodes(7);
const FIXED_NODES = lobattoNodes(3);

const FULL_TURN_AND_A_DAY_DEG = 360.985_647_366;

const workedOut = (body: SkyBody, day: number, nodes: NodeSet): DaySegment => {
  const states = nodes.at.map((fraction) => earthAt((day + fraction) * MS_PER_DAY));
  const gastStartDeg = states[0]!.gastDeg;
  const excess = states[states.length - 1]!.gastDeg - gastStartDeg - FULL_TURN_AND_A_DAY_DEG;
  return {
    vectors: states.map((earth) =>
      multiply(
        earth.toDate,
        body.kind === 'fixed' ? aberrated(fixedDirection(body, earth), earth) : apparentMovingVector(body, earth),
      ),
    ),
    gastStartDeg,
    gastPerDayDeg: FULL_TURN_AND_A_DAY_DEG + wrapDeg180(excess),
  };
};

/** Of the Sun, the Moon and the planets a day is the same for every observer. */
const kept = createKept<string, DaySegment>(200);

const segmentOf = (body: SkyBody, day: number, nodes: NodeSet): DaySegment =>
  body.kind === 'solarSystem'
    ? kept(`${body.body} ${day}`, () => workedOut(body, day, nodes))
    : workedOut(body, day, nodes);

const interpolated = (vectors: readonly Vector3[], nodes: NodeSet, fraction: number): Vector3 => {
  let x = 0;
  let y = 0;
  let z = 0;
  let total = 0;
  for (let i = 0; i < vectors.length; i++) {
    const distance = fraction - nodes.at[i]!;
    const vector = vectors[i]!;
    if (distance === 0) return vector;
    const weight = nodes.weights[i]! / distance;
    x += weight * vector[0];
    y += weight * vector[1];
    z += weight * vector[2];
    total += weight;
  }
  return [x / total, y / total, z / total];
};

/** The track of a body over an observer's sky. Days are worked out when first asked about and kept for the track's life. */
export const skyTrack = (body: SkyBody, observer: Observer): SkyTrack => {
  const site = siteOf(observer);
  const nodes = body.kind === 'fixed' ? FIXED_NODES : MOVING_NODES;
  const segments = new Map<number, DaySegment>();

  const meridianVectorAt = (utcMs: UtcMs): Vector3 => {
    const day = Math.floor(utcMs / MS_PER_DAY);
    let segment = segments.get(day);
    if (!segment) segments.set(day, (segment = segmentOf(body, day, nodes)));
    const fraction = utcMs / MS_PER_DAY - day;
    const lastDeg = segment.gastStartDeg + segment.gastPerDayDeg * fraction + site.longitudeDeg;
    const meridian = toMeridianFrame(interpolated(segment.vectors, nodes, fraction), lastDeg);
    return body.kind === 'fixed' ? meridian : seenFromSite(meridian, site);
  };

  return {
    altitudeDegAt: (utcMs) => {
      const [x, y, z] = meridianVectorAt(utcMs);
      return asinDeg((x * site.cosLatitude + z * site.sinLatitude) / Math.hypot(x, y, z));
    },
    hourAngleDegAt: (utcMs) => {
      const [x, y] = meridianVectorAt(utcMs);
      return -Math.atan2(y, x) * DEGREES_PER_RADIAN;
    },
    distanceAuAt: (utcMs) => (body.kind === 'fixed' ? Infinity : Math.hypot(...meridianVectorAt(utcMs))),
  };
};
