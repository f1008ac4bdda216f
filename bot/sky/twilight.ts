/** Sunset, the three twilights and darkness within a span of time, polar day and night told apart. */
import { createKept } from '../ground/kept.js';
import { once } from '../ground/once.js';
import { intervalsBelowIn, sampled } from './crossings.js';
import type { Interval } from './crossings.js';
import type { TimeSpan } from './night.js';
import { SUN_HORIZON_ALTITUDE_DEG } from './rise-set.js';
import { skyTrack } from './sky-track.js';
import type { Observer, SkyBody, UtcMs } from './types.js';

/** Altitudes of the Sun's centre at which each twilight ends (US Naval Observatory's definitions). */
const CIVIL_TWILIGHT_DEG = -6;
const NAUTICAL_TWILIGHT_DEG = -12;
const ASTRONOMICAL_TWILIGHT_DEG = -18;

export const SUN: SkyBody = { kind: 'solarSystem', body: 'Sun' };

/** The time the Sun spends below one twilight's altitude. */
export interface TwilightTimes {
  /** When the Sun sinks below the altitude; null when it is below it from the start of the span. */
  readonly duskUtcMs: UtcMs | null;
  /** When the Sun climbs above it again; null when it stays below to the end of the span. */
  readonly dawnUtcMs: UtcMs | null;
  /** Whether the Sun is below it for the whole span (polar night): then dusk and dawn are both null. */
  readonly darkAllNight: boolean;
}

export interface Twilights {
  readonly sunsetUtcMs: UtcMs | null;
  readonly sunriseUtcMs: UtcMs | null;
  /** Each is null when the Sun never gets that low in the span. */
  readonly civil: TwilightTimes | null;
  readonly nautical: TwilightTimes | null;
  readonly astronomical: TwilightTimes | null;
  /** Polar day: the Sun does not set in the span. */
  readonly sunAlwaysUp: boolean;
  /** Polar night: the Sun does not rise in the span. */
  readonly sunAlwaysDown: boolean;
}

const longest = (intervals: readonly Interval[]): Interval | null =>
  intervals.reduce<Interval | null>(
    (best, next) => (best === null || next.endUtcMs - next.startUtcMs > best.endUtcMs - best.startUtcMs ? next : best),
    null,
  );

type LongestBelow = (altitudeDeg: number) => Interval | null;

/** Of a night most answers ask several times, and the members of a club all of the same one. */
const KEPT_SPANS = 60;
const kept = createKept<string, LongestBelow>(KEPT_SPANS);

const sunBelow = (observer: Observer, startUtcMs: UtcMs, endUtcMs: UtcMs): LongestBelow => {
  const { latitudeDeg, longitudeDeg, elevationM } = observer;
  return kept(`${latitudeDeg} ${longitudeDeg} ${elevationM} ${startUtcMs} ${endUtcMs}`, () => {
    const heights = once(() => sampled(skyTrack(SUN, observer).altitudeDegAt, startUtcMs, endUtcMs));
    const known = new Map<number, Interval | null>();
    return (altitudeDeg) => {
      const before = known.get(altitudeDeg);
      if (before !== undefined) return before;
      const found = longest(intervalsBelowIn(heights(), altitudeDeg));
      known.set(altitudeDeg, found);
      return found;
    };
  });
};

const duskOf = (interval: Interval | null): UtcMs | null => (interval?.startsByCrossing ? interval.startUtcMs : null);
const dawnOf = (interval: Interval | null): UtcMs | null => (interval?.endsByCrossing ? interval.endUtcMs : null);

const twilightTimes = (interval: Interval | null): TwilightTimes | null =>
  interval && {
    duskUtcMs: duskOf(interval),
    dawnUtcMs: dawnOf(interval),
    darkAllNight: !interval.startsByCrossing && !interval.endsByCrossing,
  };

/**
 * Sunset and sunrise (upper edge, −50′) and the three twilights of a night, meant for a span from noon to noon. Each pair
 * bounds the longest stretch of the span with the Sun that low.
 */
export const twilights = (observer: Observer, startUtcMs: UtcMs, endUtcMs: UtcMs): Twilights => {
  const below = sunBelow(observer, startUtcMs, endUtcMs);
  const down = below(SUN_HORIZON_ALTITUDE_DEG);
  return {
    sunsetUtcMs: duskOf(down),
    sunriseUtcMs: dawnOf(down),
    civil: twilightTimes(below(CIVIL_TWILIGHT_DEG)),
    nautical: twilightTimes(below(NAUTICAL_TWILIGHT_DEG)),
    astronomical: twilightTimes(below(ASTRONOMICAL_TWILIGHT_DEG)),
    sunAlwaysUp: down === null,
    sunAlwaysDown: down !== null && !down.startsByCrossing && !down.endsByCrossing,
  };
};

/** The longest stretch of the span with the Sun below −18°, cut to the span; null when it never gets that dark. */
export const darkness = (observer: Observer, startUtcMs: UtcMs, endUtcMs: UtcMs): TimeSpan | null => {
  const dark = sunBelow(observer, startUtcMs, endUtcMs)(ASTRONOMICAL_TWILIGHT_DEG);
  return dark && { startUtcMs: dark.startUtcMs, endUtcMs: dark.endUtcMs };
};
