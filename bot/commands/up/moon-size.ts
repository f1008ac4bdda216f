/** How large the Moon looks, now and at the next full Moon, and whether that is called a supermoon. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { kmText } from './moon-distance.js';
import { moonDiameterArcsec, moonDistanceKm } from '../../sky/moon.js';
import { nextMoonPhase } from '../../sky/moon-phase.js';
import type { UtcMs } from '../../sky/types.js';

/** A full Moon no farther than this is called so; common practice, no source. */
const SUPERMOON_KM = 360_000;
const FULL_DEG = 180;

const arcminAt = (km: number): string => `${(moonDiameterArcsec(km) / 60).toFixed(1)}′`;

const dateText = (utcMs: UtcMs): string =>
  new Date(utcMs).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });
/** In so many months there is always one. */
const MOST_MONTHS = 15;

/** The first full Moon after the next that is called so; "" where the next one is. */
const supermoonAfter = (fullUtcMs: UtcMs): string => {
  for (let at = fullUtcMs, i = 0; i < MOST_MONTHS; i++) {
    at = nextMoonPhase(FULL_DEG, at + MS_PER_DAY);
    if (moonDistanceKm(at) <= SUPERMOON_KM)
      return `; the next is that of ${dateText(at)} ${new Date(at).getUTCFullYear()}`;
  }
  return '';
};

export const moonSize = (utcMs: UtcMs): string => {
  const km = moonDistanceKm(utcMs);
  const fullUtcMs = nextMoonPhase(FULL_DEG, utcMs);
  const fullKm = moonDistanceKm(fullUtcMs);
  const isSuper = fullKm <= SUPERMOON_KM;
  return `The Moon is ${arcminAt(km)} across now, ${kmText(km)} away, half a degree as always: it goes from 29.4′ to 33.5′, which an eye hardly tells. The next full Moon, ${dateText(fullUtcMs)}, is ${arcminAt(fullKm)}: ${isSuper ? 'what is called a supermoon' : `no supermoon${supermoonAfter(fullUtcMs)}`}.`;
};
