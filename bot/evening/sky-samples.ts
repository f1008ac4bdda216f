/** The sky of an evening worked out once, every quarter of an hour: Sun, Moon, twilight; then its brightness anywhere costs next to nothing. */
import { unitFromEquatorial, type Vector3 } from '../sky/angles.js';
import { moonLightAt } from '../sky/moon.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import {
  magnitudePerArcsec2,
  moonlightFactor,
  moonlightNanolamberts,
  siteNanolamberts,
  twilightNanolamberts,
} from '../sky/sky-brightness.js';
import { SUN } from '../sky/twilight.js';
import type { Observer, UtcMs } from '../sky/types.js';

const STEP_MS = 15 * 60_000;
const MOST_SAMPLES = 60;

export interface SkySample {
  readonly utcMs: UtcMs;
  readonly sunAltitudeDeg: number;
  readonly moonAltitudeDeg: number;
  readonly moonLitFraction: number;
  /** J2000 unit vector, as seen from the site. */
  readonly moonDirection: Vector3;
  /** See {@link moonlightFactor}. */
  readonly moonlight: number;
  readonly twilightNanolamberts: number;
}

export const skySample = (observer: Observer, utcMs: UtcMs): SkySample => {
  const sunAltitudeDeg = horizontalOf(SUN, observer, utcMs).altitudeDeg;
  const moon = moonLightAt(observer, utcMs);
  return {
    utcMs,
    sunAltitudeDeg,
    moonAltitudeDeg: moon.place.altitudeDeg,
    moonLitFraction: moon.illuminatedFraction,
    moonDirection: unitFromEquatorial(moon.place.j2000),
    moonlight: moonlightFactor({ moonAltitudeDeg: moon.place.altitudeDeg, phaseAngleDeg: moon.phaseAngleDeg }),
    twilightNanolamberts: twilightNanolamberts(sunAltitudeDeg),
  };
};

/** Both ends of the span and every quarter of an hour between. */
export const skySamples = (observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): readonly SkySample[] => {
  const steps = Math.max(1, Math.min(MOST_SAMPLES, Math.ceil((endUtcMs - startUtcMs) / STEP_MS)));
  return Array.from({ length: steps + 1 }, (_, i) =>
    skySample(observer, startUtcMs + ((endUtcMs - startUtcMs) * i) / steps),
  );
};

export const moonSeparationDegOf = ({ moonDirection }: SkySample, [x, y, z]: Vector3): number => {
  const [mx, my, mz] = moonDirection;
  return (Math.acos(Math.max(-1, Math.min(1, x * mx + y * my + z * mz))) * 180) / Math.PI;
};

/** V magnitudes a square arcsecond towards a J2000 direction that stands at an altitude. */
export const skyMagAt = (
  sample: SkySample,
  direction: Vector3,
  altitudeDeg: number,
  zenithMagPerArcsec2: number,
): number =>
  magnitudePerArcsec2(
    siteNanolamberts(zenithMagPerArcsec2, altitudeDeg) +
      sample.twilightNanolamberts +
      (sample.moonlight === 0
        ? 0
        : moonlightNanolamberts(sample.moonlight, moonSeparationDegOf(sample, direction), altitudeDeg)),
  );
