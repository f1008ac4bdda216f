/** One observer's night, worked out once, so that a fixed body's rising, transit, setting and best hour are closed forms. */
import { DEGREES_PER_RADIAN, asinDeg, cosDeg, multiply, sinDeg, wrapDeg180, wrapDeg360 } from './angles.js';
import type { Vector3 } from './angles.js';
import { SIDEREAL_DEG_PER_MS, aberrated, earthAt, fixedDirection, siteOf } from './earth.js';
import type { TimeSpan } from './night.js';
import type { FixedBody, Observer, UtcMs } from './types.js';

/** A fixed body's apparent place of date, held for the night (it drifts by some 0.2″ in half a day). */
export interface NightDirection {
  /** Apparent right ascension of date in degrees, 0..360. */
  readonly raDeg: number;
  readonly sinDec: number;
  readonly cosDec: number;
}

/** When a direction passes an altitude: the half arc of hour angle above it, or that it never does. */
type Arc = { readonly kind: 'crosses'; readonly halfArcDeg: number } | { readonly kind: 'above' | 'below' };

export interface NightFrame extends TimeSpan {
  readonly observer: Observer;
  /** Unit vector, J2000 axes, of a fixed body this night: proper motion and parallax in, aberration not. */
  readonly unitOf: (body: FixedBody) => Vector3;
  /** The apparent place of date of such a unit vector. */
  readonly directionOf: (unitJ2000: Vector3) => NightDirection;
  readonly directionOfBody: (body: FixedBody) => NightDirection;
  /** Local hour angle in degrees, −180..180. */
  readonly hourAngleDegAt: (direction: NightDirection, utcMs: UtcMs) => number;
  /** Airless altitude in degrees. */
  readonly altitudeDegAt: (direction: NightDirection, utcMs: UtcMs) => number;
  readonly arcAbove: (direction: NightDirection, altitudeDeg: number) => Arc;
  /** The first instant at or after `fromUtcMs` at which the hour angle is the given one. */
  readonly nextAtHourAngle: (direction: NightDirection, hourAngleDeg: number, fromUtcMs: UtcMs) => UtcMs;
  /** When within a span the direction is highest, and how high (airless). */
  readonly highestIn: (direction: NightDirection, span: TimeSpan) => { utcMs: UtcMs; altitudeDeg: number };
}

/**
 * The frame for a night. Meant for spans of about a day: precession, nutation and aberration are those of its middle, so
 * that at the ends of a day an altitude is out by at most some 0.3″ and a rising by less than a tenth of a second.
 */
export const nightFrame = (observer: Observer, startUtcMs: UtcMs, endUtcMs: UtcMs): NightFrame => {
  const middleUtcMs = (startUtcMs + endUtcMs) / 2;
  const earth = earthAt(middleUtcMs);
  const { sinLatitude, cosLatitude } = siteOf(observer);
  const middleLastDeg = earth.gastDeg + observer.longitudeDeg;

  const directionOf = (unitJ2000: Vector3): NightDirection => {
    const [x, y, z] = multiply(earth.toDate, aberrated(unitJ2000, earth));
    return { raDeg: wrapDeg360(Math.atan2(y, x) * DEGREES_PER_RADIAN), sinDec: z, cosDec: Math.hypot(x, y) };
  };
  const lastDegAt = (utcMs: UtcMs): number => middleLastDeg + (utcMs - middleUtcMs) * SIDEREAL_DEG_PER_MS;
  const hourAngleDegAt = (direction: NightDirection, utcMs: UtcMs): number =>
    wrapDeg180(lastDegAt(utcMs) - direction.raDeg);
  const altitudeDegAt = (direction: NightDirection, utcMs: UtcMs): number =>
    asinDeg(
      sinLatitude * direction.sinDec + cosLatitude * direction.cosDec * cosDeg(lastDegAt(utcMs) - direction.raDeg),
    );
  const nextAtHourAngle = (direction: NightDirection, hourAngleDeg: number, fromUtcMs: UtcMs): UtcMs =>
    fromUtcMs + wrapDeg360(hourAngleDeg + direction.raDeg - lastDegAt(fromUtcMs)) / SIDEREAL_DEG_PER_MS;
  const unitOf = (body: FixedBody): Vector3 => fixedDirection(body, earth);

  return {
    startUtcMs,
    endUtcMs,
    observer,
    unitOf,
    directionOf,
    directionOfBody: (body) => directionOf(unitOf(body)),
    hourAngleDegAt,
    altitudeDegAt,
    // cos H = (sin h − sin φ sin δ) / (cos φ cos δ): Meeus, Astronomical Algorithms (2nd ed.), formula 15.1.
    arcAbove: (direction, altitudeDeg) => {
      const excess = sinDeg(altitudeDeg) - sinLatitude * direction.sinDec;
      const reach = cosLatitude * direction.cosDec;
      if (excess >= reach) return { kind: 'below' };
      if (excess <= -reach) return { kind: 'above' };
      return { kind: 'crosses', halfArcDeg: Math.acos(excess / reach) * DEGREES_PER_RADIAN };
    },
    nextAtHourAngle,
    highestIn: (direction, span) => {
      const transitUtcMs = nextAtHourAngle(direction, 0, span.startUtcMs);
      let utcMs = transitUtcMs;
      if (transitUtcMs > span.endUtcMs) {
        // With no transit between, the altitude has no peak inside: the end nearer to a transit is the higher one.
        const start = Math.abs(hourAngleDegAt(direction, span.startUtcMs));
        const end = Math.abs(hourAngleDegAt(direction, span.endUtcMs));
        utcMs = start <= end ? span.startUtcMs : span.endUtcMs;
      }
      return { utcMs, altitudeDeg: altitudeDegAt(direction, utcMs) };
    },
  };
};
