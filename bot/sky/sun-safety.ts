/** How near a place in the sky is to the Sun, and the level of warning that calls for. */
import { MS_PER_DAY } from '../ground/durations.js';
import { crossingsOf, type TimeFunction } from './crossings.js';
import { horizontalOf } from './place.js';
import { SUN_HORIZON_ALTITUDE_DEG } from './rise-set.js';
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
/** How much lower the sea's horizon lies for one who stands so high: 1.76′ for the root of the height in metres, refraction in it (The Nautical Almanac, altitude correction tables). */
const dipDeg = ({ elevationM }: Observer): number => (1.76 / 60) * Math.sqrt(Math.max(0, elevationM));

/** Airless altitude of the Sun's centre above which its edge may be seen from there: refraction, semidiameter and dip. For safety; almanacs leave the dip out. */
export const sunUpAltitudeDeg = (observer: Observer): number => SUN_HORIZON_ALTITUDE_DEG - dipDeg(observer);

/** Degrees by which the Sun is above that, as a function of time. */
export const sunUpHeight = (observer: Observer): TimeFunction => {
  const track = skyTrack(SUN, observer);
  const horizonDeg = sunUpAltitudeDeg(observer);
  return (utcMs) => track.altitudeDegAt(utcMs) - horizonDeg;
};

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
  /** The altitude above which it counts as up: {@link sunUpAltitudeDeg}; at sea level when not said. */
  readonly sunUpAltitudeDeg?: number;
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
  sunUpAltitudeDeg: upDeg = SUN_HORIZON_ALTITUDE_DEG,
  isSun,
  secondsToSunrise,
  limits,
}: SunCircumstances): SunLevel => {
  if (isSun) return 'danger';
  // Each comparison asks for proof of safety, so that a missing number (NaN) counts as the Sun being up and near.
  if (!(sunAltitudeDeg <= upDeg)) {
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
  /** Its edge may be seen, the dip of a high place's horizon reckoned in. */
  readonly isSunUp: boolean;
  readonly level: SunLevel;
  /** The next sunrise within 48 hours, or null. */
  readonly nextSunriseUtcMs: UtcMs | null;
  /** The next sunset within 48 hours, or null. */
  readonly nextSunsetUtcMs: UtcMs | null;
}

/** How a body stands to the Sun for an observer at an instant. */
export const sunSafety = (body: SkyBody, observer: Observer, utcMs: UtcMs, limits?: SunLimits): SunSafety => {
  const sun = horizontalOf(SUN, observer, utcMs);
  const crossings = crossingsOf(sunUpHeight(observer), utcMs, utcMs + SEARCH_DAYS * MS_PER_DAY);
  const nextSunriseUtcMs = crossings.find(({ rising }) => rising)?.utcMs ?? null;
  const isSun = body.kind === 'solarSystem' && body.body === 'Sun';
  const separationDeg = isSun ? 0 : sunSeparationDeg(body, observer, utcMs);
  return {
    separationDeg,
    sunAltitudeDeg: sun.altitudeDeg,
    sunAzimuthDeg: sun.azimuthDeg,
    isSunUp: !(sun.altitudeDeg <= sunUpAltitudeDeg(observer)),
    level: sunLevel({
      separationDeg,
      sunAltitudeDeg: sun.altitudeDeg,
      sunUpAltitudeDeg: sunUpAltitudeDeg(observer),
      isSun,
      secondsToSunrise: nextSunriseUtcMs === null ? null : (nextSunriseUtcMs - utcMs) / 1000,
      ...(limits && { limits }),
    }),
    nextSunriseUtcMs,
    nextSunsetUtcMs: crossings.find(({ rising }) => !rising)?.utcMs ?? null,
  };
};
