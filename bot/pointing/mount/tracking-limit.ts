/** How long a mount can follow a target: to the meridian (German mounts), down to a lowest altitude, or until the Sun comes up. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { wrapHours12 } from '../../sky/angles.js';
import { placeOf } from '../../sky/place.js';
import { SUN_HORIZON_ALTITUDE_DEG, altitudeCrossings } from '../../sky/rise-set.js';
import { SUN } from '../../sky/twilight.js';
import type { Observer, SkyBody, UtcMs } from '../../sky/types.js';
import type { MountKind } from './mount.js';

const SIDEREAL_HOURS_PER_HOUR = 1.002_737_909;
const LOOK_AHEAD_MS = 24 * MS_PER_HOUR;

/** When the body next stands at an hour angle, within a day; found by following its own motion. */
export const nextAtHourAngle = (body: SkyBody, observer: Observer, utcMs: UtcMs, hourAngleHours: number): UtcMs => {
  const hourAngleAt = (instant: UtcMs): number => placeOf(body, observer, instant).hourAngleHours;
  const ahead = wrapHours12(hourAngleHours - hourAngleAt(utcMs));
  let at = utcMs + ((ahead < 0 ? ahead + 24 : ahead) / SIDEREAL_HOURS_PER_HOUR) * MS_PER_HOUR;
  // The Moon moves half an hour a day; three turns bring it to the second.
  for (let turn = 0; turn < 4; turn++)
    at += (wrapHours12(hourAngleHours - hourAngleAt(at)) / SIDEREAL_HOURS_PER_HOUR) * MS_PER_HOUR;
  return at;
};

export type LimitReason = 'meridian' | 'low' | 'sunrise' | 'none';

export interface TrackingLimit {
  /** Null when nothing ends it within a day. */
  readonly untilUtcMs: UtcMs | null;
  readonly reason: LimitReason;
  /** When each limit falls, where it does within a day. */
  readonly flipUtcMs: UtcMs | null;
  /** That flip is at the meridian below the pole. */
  readonly isFlipBelowPole: boolean;
  readonly lowUtcMs: UtcMs | null;
  readonly sunriseUtcMs: UtcMs | null;
}

export interface TrackingRequest {
  readonly mount: MountKind;
  readonly body: SkyBody;
  readonly observer: Observer;
  readonly utcMs: UtcMs;
  /** How far past the meridian the mount may track before it must flip, in degrees of hour angle, 0..45. */
  readonly pastMeridianDeg: number;
  readonly lowestAltitudeDeg: number;
}

/** The first thing that ends tracking from an instant on. The target must be above the lowest altitude then, else `low` at once. */
export const trackingLimit = ({
  mount,
  body,
  observer,
  utcMs,
  pastMeridianDeg,
  lowestAltitudeDeg,
}: TrackingRequest): TrackingLimit => {
  const end = utcMs + LOOK_AHEAD_MS;
  const place = placeOf(body, observer, utcMs);
  // The counterweight bar is level at the meridian above the pole and at the one below it: one side of the pier serves from the
  // one to the other.
  const isBelowPoleNext = place.hourAngleHours >= 0;
  const flipUtcMs =
    mount === 'german'
      ? nextAtHourAngle(body, observer, utcMs, wrapHours12((isBelowPoleNext ? 12 : 0) + pastMeridianDeg / 15))
      : null;
  const lowUtcMs =
    place.altitudeDeg < lowestAltitudeDeg
      ? utcMs
      : (altitudeCrossings(body, observer, lowestAltitudeDeg, utcMs, end).find(({ rising }) => !rising)?.utcMs ?? null);
  const sunriseUtcMs =
    altitudeCrossings(SUN, observer, SUN_HORIZON_ALTITUDE_DEG, utcMs, end).find(({ rising }) => rising)?.utcMs ?? null;
  const limits = (
    [
      ['meridian', flipUtcMs],
      ['low', lowUtcMs],
      ['sunrise', sunriseUtcMs],
    ] as const
  )
    .flatMap(([reason, at]) => (at === null ? [] : [{ reason, at }]))
    .sort((a, b) => a.at - b.at);
  return {
    untilUtcMs: limits[0]?.at ?? null,
    reason: limits[0]?.reason ?? 'none',
    flipUtcMs,
    isFlipBelowPole: isBelowPoleNext,
    lowUtcMs,
    sunriseUtcMs,
  };
};
