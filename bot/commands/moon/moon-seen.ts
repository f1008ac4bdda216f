/** When the Moon is well seen from a place: up, with the Sun down. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { MOON } from '../../sky/moon.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import { SUN } from '../../sky/twilight.js';
import type { Observer, UtcMs } from '../../sky/types.js';

const STEP_MS = 15 * MS_PER_MINUTE;
/** The Moon's own face shows well from early dusk on, and not through the murk at the horizon. Common practice, no source. */
const SUN_BELOW_DEG = -3;
const LEAST_DEG = 8;

export interface MoonStands {
  readonly utcMs: UtcMs;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
}

const standsAt = (observer: Observer, utcMs: UtcMs): MoonStands | null => {
  if (horizontalOf(SUN, observer, utcMs).altitudeDeg > SUN_BELOW_DEG) return null;
  const moon = horizontalOf(MOON, observer, utcMs);
  return moon.altitudeDeg < LEAST_DEG ? null : { utcMs, ...moon };
};

/** The stretches of a span, to a quarter of an hour, in which it is so seen, each with where it stands highest. */
export const moonSeenIn = (
  observer: Observer,
  { startUtcMs, endUtcMs }: TimeSpan,
): readonly (TimeSpan & { readonly best: MoonStands })[] => {
  const found: { startUtcMs: UtcMs; endUtcMs: UtcMs; best: MoonStands }[] = [];
  for (let utcMs = startUtcMs; utcMs <= endUtcMs; utcMs += STEP_MS) {
    const stands = standsAt(observer, utcMs);
    const last = found.at(-1);
    if (stands === null) continue;
    if (last === undefined || last.endUtcMs < utcMs - STEP_MS)
      found.push({ startUtcMs: utcMs, endUtcMs: utcMs, best: stands });
    else {
      last.endUtcMs = utcMs;
      if (stands.altitudeDeg > last.best.altitudeDeg) last.best = stands;
    }
  }
  return found;
};
