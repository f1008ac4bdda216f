/** How near a place in the sky is to the Sun, and the level of warning that calls for. */
import { MS_PER_DAY } from '../ground/durations.js';
import { crossingsOf } from './crossings.js';
import { horizontalOf } from './place.js';
import { SUN_HORIZON_ALTITUDE_DEG, aboveHorizon } from './rise-set.js';
import { bodySeparationDeg } from './separation.js';
import { skyTrack } from './sky-track.js';
import { SUN } from './twilight.js';
import type { Observer, SkyBody, UtcMs } from './types.js';

export type SunLevel = 'clear' | 'caution' | 'danger';

/** A club's own limits in degrees. They may widen the usual ones; narrower values have no effect. */
export interface SunLimits {
  readonly dangerDeg?: number;
  readonly cautionDeg?: number;
}

/** Common practice, no source. */
export const SUN_DANGER_DEG = 15;
export const SUN_CAUTION_DEG = 45;
const SUNRISE_WARNING_SECONDS = 3600;
const SEARCH_DAYS = 2;

/** The limits in force: the usual ones, or a club's wider ones. */
export const sunLimits = (limits: SunLimits = {}): Required<SunLimits> => {
  const dangerDeg = Math.max(SUN_DANGER_DEG, limits.dangerDeg ?? SUN_DANGER_DEG);
  return { dangerDeg, cautionDeg: Math.max(SUN_CAUTION_DEG, dangerDeg, limits.cautionDeg ?? SUN_CAUTION_DEG) };
};

/** What {@link sunLevel} judges. */
export interface SunCircumstances {
  readonly separationDeg: number;
  /** Airless altitude of the Sun's centre. */
  readonly sunAltitudeDeg: number;
  /** Whether the Sun itself is to be pointed at. */
  readonly isSun: boolean;
  /** Seconds until the next sunrise; null when there is none in sight. */
  readonly secondsToSunrise: number | null;
  readonly limits?: SunLimits;
}

/**
 * The warning level. The Sun itself is always danger. With the Sun up (above −50′): danger nearer than 15°, caution nearer
 * than 45°. With it down: caution when it rises within the hour, wherever one points.
 */
export const sunLevel = ({
  separationDeg,
  sunAltitudeDeg,
  isSun,
  secondsToSunrise,
  limits,
}: SunCircumstances): SunLevel => {
  if (isSun) return 'danger';
  // Each comparison asks for proof of safety, so that a missing number (NaN) counts as the Sun being up and near.
  if (!(sunAltitudeDeg <= SUN_HORIZON_ALTITUDE_DEG)) {
    const { dangerDeg, cautionDeg } = sunLimits(limits);
    if (!(separationDeg >= dangerDeg)) return 'danger';
    return separationDeg >= cautionDeg ? 'clear' : 'caution';
  }
  return secondsToSunrise !== null && secondsToSunrise <= SUNRISE_WARNING_SECONDS ? 'caution' : 'clear';
};

/** The angle between a body and the Sun's centre in the observer's sky, 0..180°. */
export const sunSeparationDeg = (body: SkyBody, observer: Observer, utcMs: UtcMs): number =>
  bodySeparationDeg(SUN, body, observer, utcMs);

export interface SunSafety {
  readonly separationDeg: number;
  readonly sunAltitudeDeg: number;
  readonly sunAzimuthDeg: number;
  readonly level: SunLevel;
  /** The next sunrise within 48 hours, or null. */
  readonly nextSunriseUtcMs: UtcMs | null;
  /** The next sunset within 48 hours, or null. */
  readonly nextSunsetUtcMs: UtcMs | null;
}

/** How a body stands to the Sun for an observer at an instant. */
export const sunSafety = (body: SkyBody, observer: Observer, utcMs: UtcMs, limits?: SunLimits): SunSafety => {
  const sun = horizontalOf(SUN, observer, utcMs);
  const crossings = crossingsOf(aboveHorizon(SUN, skyTrack(SUN, observer)), utcMs, utcMs + SEARCH_DAYS * MS_PER_DAY);
  const nextSunriseUtcMs = crossings.find(({ rising }) => rising)?.utcMs ?? null;
  const isSun = body.kind === 'solarSystem' && body.body === 'Sun';
  const separationDeg = isSun ? 0 : sunSeparationDeg(body, observer, utcMs);
  return {
    separationDeg,
    sunAltitudeDeg: sun.altitudeDeg,
    sunAzimuthDeg: sun.azimuthDeg,
    level: sunLevel({
      separationDeg,
      sunAltitudeDeg: sun.altitudeDeg,
      isSun,
      secondsToSunrise: nextSunriseUtcMs === null ? null : (nextSunriseUtcMs - utcMs) / 1000,
      ...(limits && { limits }),
    }),
    nextSunriseUtcMs,
    nextSunsetUtcMs: crossings.find(({ rising }) => !rising)?.utcMs ?? null,
  };
};
