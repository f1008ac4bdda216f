/** When the Moon passes one planet, star or cluster: each month's closest, and the hour at which both are best seen here. */
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE } from '../ground/durations.js';
import { horizontalSeparationDeg } from '../sky/angles.js';
import { EPHEMERIS_END_UTC_MS } from '../sky/ephemeris-range.js';
import { MOON, moonAt, moonSeparationDeg } from '../sky/moon.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { Horizontal, Observer, SkyBody, UtcMs } from '../sky/types.js';

export interface MoonSeen extends Horizontal {
  readonly utcMs: UtcMs;
  readonly separationDeg: number;
}

export interface MoonMeeting {
  /** Of the least distance, as seen from the place, the horizon left out. */
  readonly utcMs: UtcMs;
  readonly separationDeg: number;
  /** 0..1, then. */
  readonly litFraction: number;
  /** The closest of the hours about it in which both are up with the Sun down; null: in none of them. */
  readonly seen: MoonSeen | null;
}

/** The Moon goes 6° in half a day: often enough to see each minimum coming. */
const STEP_MS = MS_PER_DAY / 2;
const FINE_MS = 2 * MS_PER_MINUTE;
/** The nights on both sides of a minimum, wherever in the day it falls. */
const ABOUT_MS = 20 * MS_PER_HOUR;
const LOOK_MS = 20 * MS_PER_MINUTE;
/** With the Sun higher only the brightest shows, and what is lower is behind roofs. Common practice, no source. */
const SUN_BELOW_DEG = -5;
const LEAST_ALTITUDE_DEG = 5;

type Apart = (utcMs: UtcMs) => number;

const leastBetween = (apart: Apart, startUtcMs: UtcMs, endUtcMs: UtcMs): UtcMs => {
  let [a, b] = [startUtcMs, endUtcMs];
  while (b - a > FINE_MS) {
    const third = (b - a) / 3;
    if (apart(a + third) < apart(b - third)) b -= third;
    else a += third;
  }
  return (a + b) / 2;
};

/** Both as they stand, seen together or not. */
const together = (body: SkyBody, observer: Observer, utcMs: UtcMs): MoonSeen | null => {
  if (horizontalOf(SUN, observer, utcMs).altitudeDeg > SUN_BELOW_DEG) return null;
  const moon = horizontalOf(MOON, observer, utcMs);
  if (moon.altitudeDeg < LEAST_ALTITUDE_DEG) return null;
  const there = horizontalOf(body, observer, utcMs);
  if (there.altitudeDeg < LEAST_ALTITUDE_DEG) return null;
  return { utcMs, separationDeg: horizontalSeparationDeg(moon, there), ...there };
};

/** The closest of the hours of a span in which both are seen; null: in none. */
export const closestSeen = (body: SkyBody, observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): MoonSeen | null => {
  let best: MoonSeen | null = null;
  for (let utcMs = startUtcMs; utcMs <= endUtcMs; utcMs += LOOK_MS) {
    const here = together(body, observer, utcMs);
    if (here !== null && (best === null || here.separationDeg < best.separationDeg)) best = here;
  }
  return best;
};

/** The first `most` passes that begin in the span, in order; fewer where it ends before. */
export const moonMeetings = (
  body: SkyBody,
  observer: Observer,
  { startUtcMs, endUtcMs }: TimeSpan,
  most: number,
): readonly MoonMeeting[] => {
  const apart: Apart = (utcMs) => moonSeparationDeg(body, observer, utcMs);
  const found: MoonMeeting[] = [];
  const last = Math.min(endUtcMs, EPHEMERIS_END_UTC_MS - 2 * STEP_MS);
  let [before, now] = [apart(startUtcMs - STEP_MS), apart(startUtcMs)];
  for (let utcMs = startUtcMs; utcMs < last && found.length < most; utcMs += STEP_MS) {
    const after = apart(utcMs + STEP_MS);
    if (now <= before && now < after) {
      const least = leastBetween(apart, utcMs - STEP_MS, utcMs + STEP_MS);
      const seen = closestSeen(body, observer, {
        startUtcMs: Math.max(startUtcMs, least - ABOUT_MS),
        endUtcMs: least + ABOUT_MS,
      });
      // A pass that is over, and of which no hour is left, is none to come.
      if (least >= startUtcMs || seen !== null)
        found.push({
          utcMs: least,
          separationDeg: apart(least),
          litFraction: moonAt(observer, least).illuminatedFraction,
          seen,
        });
    }
    [before, now] = [now, after];
  }
  return found;
};
