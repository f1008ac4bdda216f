/** When two planets stand closest to each other: the last time and the next, seen or not. */
import { MS_PER_DAY, MS_PER_HOUR } from '../ground/durations.js';
import { angleBetween, unitFromEquatorial } from '../sky/angles.js';
import { EPHEMERIS_END_UTC_MS } from '../sky/ephemeris-range.js';
import { horizontalOf, placeOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { Horizontal, Observer, SkyBody, SolarSystemBody, UtcMs } from '../sky/types.js';

export interface PairMeeting {
  readonly utcMs: UtcMs;
  readonly separationDeg: number;
  /** Of the nearer to the Sun of the two. */
  readonly fromSunDeg: number;
  /** The hour about it at which both are best seen here, with the Sun well down; null: not in those nights. */
  readonly seen: ({ readonly utcMs: UtcMs; readonly separationDeg: number } & Horizontal) | null;
}

/** What nobody calls close any more; common practice, no source. */
const LIMIT_DEG = 8;
const SUN_BELOW_DEG = -5;
const LEAST_ALTITUDE_DEG = 5;
/** The nights that are looked at: a little more than half a day each way holds one. */
const ABOUT_MS = 14 * MS_PER_HOUR;
/** Jupiter and Saturn meet every 20 years. */
const SLOW: readonly SolarSystemBody[] = ['Jupiter', 'Saturn', 'Uranus', 'Neptune'];
const LOOKED_AHEAD_DAYS = { fast: 4 * 365, slow: 25 * 365 } as const;
const STEP_DAYS = { fast: 2, slow: 20 } as const;

const bodyOf = (body: SolarSystemBody): SkyBody => ({ kind: 'solarSystem', body });

const apartAt = (a: SkyBody, b: SkyBody, observer: Observer, utcMs: UtcMs): number =>
  angleBetween(
    unitFromEquatorial(placeOf(a, observer, utcMs).j2000),
    unitFromEquatorial(placeOf(b, observer, utcMs).j2000),
  );

type Apart = (utcMs: UtcMs) => number;

/** The least between two instants about a minimum, to half an hour. */
const leastBetween = (apart: Apart, startUtcMs: UtcMs, endUtcMs: UtcMs): UtcMs => {
  let [a, b] = [startUtcMs, endUtcMs];
  while (b - a > MS_PER_HOUR / 2) {
    const third = (b - a) / 3;
    if (apart(a + third) < apart(b - third)) b -= third;
    else a += third;
  }
  return (a + b) / 2;
};

const bestSeen = (a: SkyBody, b: SkyBody, observer: Observer, nearUtcMs: UtcMs): PairMeeting['seen'] => {
  let best: PairMeeting['seen'] = null;
  for (let utcMs = nearUtcMs - ABOUT_MS; utcMs <= nearUtcMs + ABOUT_MS; utcMs += MS_PER_HOUR / 2) {
    if (horizontalOf(SUN, observer, utcMs).altitudeDeg > SUN_BELOW_DEG) continue;
    const [one, other] = [horizontalOf(a, observer, utcMs), horizontalOf(b, observer, utcMs)];
    const lowest = one.altitudeDeg < other.altitudeDeg ? one : other;
    if (lowest.altitudeDeg < LEAST_ALTITUDE_DEG || (best !== null && lowest.altitudeDeg <= best.altitudeDeg)) continue;
    best = { utcMs, separationDeg: apartAt(a, b, observer, utcMs), ...lowest };
  }
  return best;
};

/** The first minimum after an instant or, with `back`, the last before it. */
const nearest = (
  pair: readonly [SolarSystemBody, SolarSystemBody],
  observer: Observer,
  fromUtcMs: UtcMs,
  isBack: boolean,
): PairMeeting | null => {
  const [a, b] = [bodyOf(pair[0]), bodyOf(pair[1])];
  const speed = pair.every((body) => SLOW.includes(body)) ? 'slow' : 'fast';
  const stepMs = STEP_DAYS[speed] * MS_PER_DAY * (isBack ? -1 : 1);
  const apart: Apart = (utcMs) => apartAt(a, b, observer, utcMs);
  let [before, now] = [Infinity, apart(fromUtcMs - stepMs)];
  for (let i = 0; Math.abs(i * stepMs) < LOOKED_AHEAD_DAYS[speed] * MS_PER_DAY; i++) {
    const utcMs = fromUtcMs + i * stepMs;
    if (utcMs + stepMs > EPHEMERIS_END_UTC_MS) return null;
    const after = apart(utcMs);
    // The minimum lies about the instant before this one.
    if (now <= before && now < after && now < 2 * LIMIT_DEG) {
      const [start, end] = [utcMs - 2 * stepMs, utcMs].sort((x, y) => x - y) as [UtcMs, UtcMs];
      const least = leastBetween(apart, start, end);
      const separationDeg = apart(least);
      if ((isBack ? least <= fromUtcMs : least > fromUtcMs) && separationDeg <= LIMIT_DEG)
        return {
          utcMs: least,
          separationDeg,
          fromSunDeg: Math.min(apartAt(a, SUN, observer, least), apartAt(b, SUN, observer, least)),
          seen: bestSeen(a, b, observer, least),
        };
    }
    [before, now] = [now, after];
  }
  return null;
};

export interface PairMeetings {
  readonly last: PairMeeting | null;
  readonly next: PairMeeting | null;
}

export const pairMeetings = (
  pair: readonly [SolarSystemBody, SolarSystemBody],
  observer: Observer,
  nowUtcMs: UtcMs,
): PairMeetings => ({
  last: nearest(pair, observer, nowUtcMs, true),
  next: nearest(pair, observer, nowUtcMs, false),
});
