/** The moment a reminder is about: when a target passes an altitude, clears the horizon or transits, when it is dark, when the Sun rises. Pure. */
import { MS_PER_HOUR } from '../ground/durations.js';
import { clearanceDeg, type ProfilePoint } from '../pointing/horizon/horizon-profile.js';
import { crossingsOf, type TimeFunction } from '../sky/crossings.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import { riseTransitSet, SUN_HORIZON_ALTITUDE_DEG } from '../sky/rise-set.js';
import { SUN, twilights } from '../sky/twilight.js';
import type { Horizontal, Observer, SkyBody, UtcMs } from '../sky/types.js';

export interface Moment {
  readonly utcMs: UtcMs;
  /** Until then it is still worth saying. */
  readonly untilUtcMs: UtcMs;
}

export type Search =
  | { readonly found: Moment }
  /** It is so already, and for how long. */
  | { readonly already: TimeSpan }
  | { readonly never: true };

const LONGEST_SENSE_MS = 6 * MS_PER_HOUR;

const isSun = (body: SkyBody): boolean => body.kind === 'solarSystem' && body.body === 'Sun';

/** Positive while the Sun is down; the Sun itself is looked for by day. */
const nightfall = (body: SkyBody, observer: Observer): TimeFunction =>
  isSun(body) ? () => 1 : (utcMs) => SUN_HORIZON_ALTITUDE_DEG - horizontalOf(SUN, observer, utcMs).altitudeDeg;

/** The first stretch, from `nowUtcMs` on, of a night in which the function is positive. */
const firstStretch = (f: TimeFunction, night: TimeSpan, nowUtcMs: UtcMs): Search => {
  const startUtcMs = Math.max(nowUtcMs, night.startUtcMs);
  if (startUtcMs >= night.endUtcMs) return { never: true };
  const crossings = crossingsOf(f, startUtcMs, night.endUtcMs);
  const endAfter = (utcMs: UtcMs): UtcMs =>
    crossings.find((crossing) => !crossing.rising && crossing.utcMs > utcMs)?.utcMs ?? night.endUtcMs;
  const foundAt = (utcMs: UtcMs): Search => ({
    found: { utcMs, untilUtcMs: Math.min(endAfter(utcMs), utcMs + LONGEST_SENSE_MS) },
  });
  if (f(startUtcMs) > 0 && crossings[0]?.rising !== true)
    // Of a night to come its very beginning is the moment: that is no reason to refuse.
    return nowUtcMs < night.startUtcMs
      ? foundAt(startUtcMs)
      : { already: { startUtcMs, endUtcMs: endAfter(startUtcMs) } };
  const rise = crossings.find(({ rising }) => rising);
  return rise === undefined ? { never: true } : foundAt(rise.utcMs);
};

/** When a body is first higher than `aboveDeg` with the Sun down. */
export const whenAbove = (
  body: SkyBody,
  observer: Observer,
  aboveDeg: number,
  night: TimeSpan,
  nowUtcMs: UtcMs,
): Search => {
  const dark = nightfall(body, observer);
  return firstStretch(
    (utcMs) => Math.min(horizontalOf(body, observer, utcMs).altitudeDeg - aboveDeg, dark(utcMs)),
    night,
    nowUtcMs,
  );
};

/** When a body first stands clear of the profile with the Sun down. */
export const whenClear = (
  body: SkyBody,
  observer: Observer,
  profile: readonly ProfilePoint[],
  night: TimeSpan,
  nowUtcMs: UtcMs,
): Search => {
  const dark = nightfall(body, observer);
  return firstStretch(
    (utcMs) => Math.min(clearanceDeg(profile, horizontalOf(body, observer, utcMs)), dark(utcMs)),
    night,
    nowUtcMs,
  );
};

const whenAtHorizon =
  (event: 'riseUtcMs' | 'setUtcMs') =>
  (body: SkyBody, observer: Observer, night: TimeSpan, nowUtcMs: UtcMs): Search => {
    const startUtcMs = Math.max(nowUtcMs, night.startUtcMs);
    if (startUtcMs >= night.endUtcMs) return { never: true };
    const utcMs = riseTransitSet(body, observer, startUtcMs, night.endUtcMs)[event];
    return utcMs === null ? { never: true } : { found: { utcMs, untilUtcMs: utcMs + MS_PER_HOUR } };
  };

/** When a body next rises, and sets: the air's lift and the disc's edge counted, as almanacs do. */
export const whenRises = whenAtHorizon('riseUtcMs');
export const whenSets = whenAtHorizon('setUtcMs');

/** When a body crosses the upper meridian above the horizon. */
export const whenTransits = (body: SkyBody, observer: Observer, night: TimeSpan, nowUtcMs: UtcMs): Search => {
  const startUtcMs = Math.max(nowUtcMs, night.startUtcMs);
  if (startUtcMs >= night.endUtcMs) return { never: true };
  const { transitUtcMs } = riseTransitSet(body, observer, startUtcMs, night.endUtcMs);
  if (transitUtcMs === null || horizontalOf(body, observer, transitUtcMs).altitudeDeg <= 0) return { never: true };
  return { found: { utcMs: transitUtcMs, untilUtcMs: transitUtcMs + MS_PER_HOUR } };
};

/** Due north, east, south, west, in degrees from north through east. */
export const SIDES = { north: 0, east: 90, south: 180, west: 270 } as const;
export type Side = keyof typeof SIDES;

const RADIANS = Math.PI / 180;

/** When a body first stands in one of the four directions, above the horizon with the Sun down. */
export const whenDue = (body: SkyBody, observer: Observer, side: Side, night: TimeSpan, nowUtcMs: UtcMs): Search => {
  const startUtcMs = Math.max(nowUtcMs, night.startUtcMs);
  if (startUtcMs >= night.endUtcMs) return { never: true };
  const dark = nightfall(body, observer);
  const fromSide = (utcMs: UtcMs): number => (horizontalOf(body, observer, utcMs).azimuthDeg - SIDES[side]) * RADIANS;
  const found = crossingsOf((utcMs) => Math.sin(fromSide(utcMs)), startUtcMs, night.endUtcMs).find(
    ({ utcMs }) =>
      Math.cos(fromSide(utcMs)) > 0 && horizontalOf(body, observer, utcMs).altitudeDeg > 0 && dark(utcMs) > 0,
  );
  return found === undefined
    ? { never: true }
    : { found: { utcMs: found.utcMs, untilUtcMs: found.utcMs + MS_PER_HOUR } };
};

/** When astronomical dark begins. */
export const whenDark = (observer: Observer, night: TimeSpan, nowUtcMs: UtcMs): Search => {
  const { astronomical } = twilights(observer, night.startUtcMs, night.endUtcMs);
  if (astronomical === null) return { never: true };
  const startUtcMs = astronomical.duskUtcMs ?? night.startUtcMs;
  const untilUtcMs = astronomical.dawnUtcMs ?? night.endUtcMs;
  if (nowUtcMs >= untilUtcMs) return { never: true };
  return nowUtcMs >= startUtcMs
    ? { already: { startUtcMs, endUtcMs: untilUtcMs } }
    : { found: { utcMs: startUtcMs, untilUtcMs } };
};

/** When the Sun rises at the end of the night. */
export const whenSunrise = (observer: Observer, night: TimeSpan, nowUtcMs: UtcMs): Search => {
  const { sunriseUtcMs } = twilights(observer, night.startUtcMs, night.endUtcMs);
  return sunriseUtcMs === null || sunriseUtcMs <= nowUtcMs
    ? { never: true }
    : { found: { utcMs: sunriseUtcMs, untilUtcMs: sunriseUtcMs } };
};

/** The highest a body stands in a night with the Sun down, to a few minutes; null when the Sun does not set. */
export const highestByNight = (body: SkyBody, observer: Observer, night: TimeSpan): Horizontal | null => {
  const dark = nightfall(body, observer);
  let best: Horizontal | null = null;
  for (let utcMs = night.startUtcMs; utcMs <= night.endUtcMs; utcMs += 300_000) {
    if (dark(utcMs) <= 0) continue;
    const direction = horizontalOf(body, observer, utcMs);
    if (best === null || direction.altitudeDeg > best.altitudeDeg) best = direction;
  }
  return best;
};
