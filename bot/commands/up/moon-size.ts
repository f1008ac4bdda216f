/** How large the Moon looks, now and at the next full Moon, and whether that is called a supermoon. */
import { moonDistanceKm } from '../../sky/moon.js';
import { nextMoonPhase } from '../../sky/moon-phase.js';
import type { UtcMs } from '../../sky/types.js';

/** The Moon's mean radius (IAU). */
const RADIUS_KM = 1737.4;
const ARCMIN_PER_RADIAN = 3437.75;
/** A full Moon no farther than this is called so; common practice, no source. */
const SUPERMOON_KM = 360_000;
const FULL_DEG = 180;

const arcminAt = (km: number): string => `${(2 * ARCMIN_PER_RADIAN * Math.asin(RADIUS_KM / km)).toFixed(1)}′`;
const kmText = (km: number): string => `${(Math.round(km / 1000) * 1000).toLocaleString('en')} km`;

export const moonSize = (utcMs: UtcMs): string => {
  const km = moonDistanceKm(utcMs);
  const fullUtcMs = nextMoonPhase(FULL_DEG, utcMs);
  const fullKm = moonDistanceKm(fullUtcMs);
  const date = new Date(fullUtcMs).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });
  return `The Moon is ${arcminAt(km)} across now, ${kmText(km)} away, half a degree as always: it goes from 29.4′ to 33.5′, which an eye hardly tells. The next full Moon, ${date}, is ${arcminAt(fullKm)}: ${fullKm <= SUPERMOON_KM ? 'what is called a supermoon' : 'no supermoon'}.`;
};
