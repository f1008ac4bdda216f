/** When in the year the core of the Milky Way stands in the dark: from which date before dawn, until which date after dusk. Pure. */
import { MS_PER_DAY } from '../ground/durations.js';
import { wrapDeg180, DEGREES_PER_RADIAN, cosDeg, sinDeg } from '../sky/angles.js';
import { placeOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { Observer, UtcMs } from '../sky/types.js';

/** Sagittarius A*, J2000 (Reid and Brunthaler, ApJ 616, 872 (2004), from memory). */
export const CORE = { kind: 'fixed', raHoursJ2000: 17.7611, decDegJ2000: -29.0078 } as const;

/** So dark, and so high, it begins to show; common practice, no source. */
const SUN_BELOW_DEG = -15;
const USUAL_LEAST_DEG = 10;
const BELOW_HIGHEST_DEG = 2;
/** Lower than this at its highest it is lost in the air; common practice, no source. */
const HOPELESS_DEG = 3;
const STEP_DAYS = 2;
const YEAR_DAYS = 366;

export interface CoreSeason {
  readonly highestDeg: number;
  /** It is in the dark in these nights already. */
  readonly isNow: boolean;
  /** When that next begins, and when it next ends; null where it does not within a year. */
  readonly beginsUtcMs: UtcMs | null;
  readonly endsUtcMs: UtcMs | null;
}

/** Half of the arc, in degrees of hour angle, that a declination spends above an altitude; 0 and 180 where always below or above. */
const halfArcDeg = (latitudeDeg: number, decDeg: number, altitudeDeg: number): number => {
  const cosine = (sinDeg(altitudeDeg) - sinDeg(latitudeDeg) * sinDeg(decDeg)) / (cosDeg(latitudeDeg) * cosDeg(decDeg));
  return Math.acos(Math.max(-1, Math.min(1, cosine))) * DEGREES_PER_RADIAN;
};

/** Whether some of the night about an instant has the core up in the dark: the arcs of both in hour angle overlap. */
const isInTheDark = (observer: Observer, leastDeg: number, utcMs: UtcMs): boolean => {
  const { latitudeDeg } = observer;
  const sun = placeOf(SUN, observer, utcMs).ofDate;
  const darkHalfDeg = 180 - halfArcDeg(latitudeDeg, sun.decDeg, SUN_BELOW_DEG);
  const coreHalfDeg = halfArcDeg(latitudeDeg, CORE.decDegJ2000, leastDeg);
  const fromMidnightDeg = Math.abs(wrapDeg180((CORE.raHoursJ2000 - sun.raHours) * 15 - 180));
  return darkHalfDeg > 0 && fromMidnightDeg < darkHalfDeg + coreHalfDeg;
};

/** Null where it never stands high enough. */
export const coreSeason = (observer: Observer, nowUtcMs: UtcMs): CoreSeason | null => {
  const highestDeg = 90 - Math.abs(observer.latitudeDeg - CORE.decDegJ2000);
  if (highestDeg < HOPELESS_DEG) return null;
  const leastDeg = Math.min(USUAL_LEAST_DEG, highestDeg - BELOW_HIGHEST_DEG);
  const isNow = isInTheDark(observer, leastDeg, nowUtcMs);
  let beginsUtcMs: UtcMs | null = null;
  let endsUtcMs: UtcMs | null = null;
  let was = isNow;
  for (let day = STEP_DAYS; day <= YEAR_DAYS; day += STEP_DAYS) {
    const utcMs = nowUtcMs + day * MS_PER_DAY;
    const is = isInTheDark(observer, leastDeg, utcMs);
    if (is && !was) beginsUtcMs ??= utcMs;
    if (!is && was) endsUtcMs ??= utcMs;
    was = is;
  }
  return { highestDeg, isNow, beginsUtcMs, endsUtcMs };
};
