/** What stands near the Moon in a night, at the hour when the Moon is best seen. */
import { MS_PER_MINUTE } from '../ground/durations.js';
import { horizontalSeparationDeg } from '../sky/angles.js';
import { MOON, moonAt } from '../sky/moon.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { Observer, SkyBody, UtcMs } from '../sky/types.js';

export interface Bright {
  readonly name: string;
  readonly body: SkyBody;
}

export interface NearMoon {
  readonly utcMs: UtcMs;
  readonly moonAltitudeDeg: number;
  readonly moonAzimuthDeg: number;
  readonly litFraction: number;
  /** The nearest first. */
  readonly near: readonly (Bright & { readonly separationDeg: number })[];
}

const STEP_MS = 10 * MS_PER_MINUTE;
/** With the Sun higher nobody sees a star beside the Moon, nor with the Moon lower. Common practice, no source. */
const MOST_SUN_DEG = -4;
const LEAST_MOON_DEG = 4;
/** A field of the eye, a hand and a half at arm's length. Common practice, no source. */
const NEAR_DEG = 15;
const MOST = 3;

/** The hour at which the Moon stands highest with the Sun well down; null where it is not seen in the dark. */
const hourOfMoon = (observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): UtcMs | null => {
  let best: { readonly utcMs: UtcMs; readonly altitudeDeg: number } | null = null;
  for (let utcMs = startUtcMs; utcMs <= endUtcMs; utcMs += STEP_MS) {
    const { altitudeDeg } = horizontalOf(MOON, observer, utcMs);
    if (altitudeDeg < LEAST_MOON_DEG || altitudeDeg <= (best?.altitudeDeg ?? -90)) continue;
    if (horizontalOf(SUN, observer, utcMs).altitudeDeg <= MOST_SUN_DEG) best = { utcMs, altitudeDeg };
  }
  return best?.utcMs ?? null;
};

/** @returns null where the Moon is not seen in the dark of that span */
export const nearMoon = (observer: Observer, span: TimeSpan, bright: readonly Bright[]): NearMoon | null => {
  const utcMs = hourOfMoon(observer, span);
  if (utcMs === null) return null;
  const moon = horizontalOf(MOON, observer, utcMs);
  const near = bright
    .map((one) => ({ ...one, separationDeg: horizontalSeparationDeg(moon, horizontalOf(one.body, observer, utcMs)) }))
    .filter(({ separationDeg }) => separationDeg <= NEAR_DEG)
    .sort((a, b) => a.separationDeg - b.separationDeg)
    .slice(0, MOST);
  return {
    utcMs,
    moonAltitudeDeg: moon.altitudeDeg,
    moonAzimuthDeg: moon.azimuthDeg,
    litFraction: moonAt(observer, utcMs).illuminatedFraction,
    near,
  };
};
