/** How far the Moon is now, and when it is nearest and farthest next. */
import { nextMoonApsides, type MoonApsis } from '../../sky/moon-apsides.js';
import { moonDistanceKm } from '../../sky/moon.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDateTime } from '../../times/index.js';

/** To a thousand, as almanacs of the day have it. */
export const kmText = (km: number): string => `${(Math.round(km / 1000) * 1000).toLocaleString('en')} km`;

const NAMES = { perigee: 'nearest (perigee)', apogee: 'farthest (apogee)' } as const;
const HOUR_MS = 3_600_000;

const apsisWords = ({ what, utcMs, distanceKm }: MoonApsis): string =>
  `${NAMES[what]} ${formatLocalDateTime(Math.round(utcMs / HOUR_MS) * HOUR_MS, 'UTC')}, ${kmText(distanceKm)}`;

/** So near, it matters where one stands: told from the Earth's centre, as almanacs do. */
export const moonDistanceWords = (utcMs: UtcMs): string =>
  `Moon is ${kmText(moonDistanceKm(utcMs))} from the Earth now. Next ${nextMoonApsides(utcMs).map(apsisWords).join('; ')}.`;
