/** Which of two looks the larger at an hour: the discs of planets and the Moon as they are then, the listed sizes of the rest. */
import type { Target } from '../../catalogue/index.js';
import { capital } from '../../reply/wording.js';
import { moonDiameterArcsec, moonDistanceKm } from '../../sky/moon.js';
import { planetLook } from '../../sky/planet-look.js';
import type { UtcMs } from '../../sky/types.js';
import type { Pair, Stand } from './pair.js';

/** At its mean distance. */
const SUN_DIAMETER_ARCSEC = 1919;
const ARCSEC_PER_ARCMIN = 60;

/** Across the longer way, in arcseconds; null for a point of light or what no list has. */
const diameterArcsec = ({ id, body, sizeArcmin }: Target, utcMs: UtcMs): number | null => {
  if (id === 'moon') return moonDiameterArcsec(moonDistanceKm(utcMs));
  if (id === 'sun') return SUN_DIAMETER_ARCSEC;
  if (body.kind === 'solarSystem') return planetLook(body.body, utcMs)?.diameterArcsec ?? null;
  return sizeArcmin === null ? null : sizeArcmin * ARCSEC_PER_ARCMIN;
};

const across = (arcsec: number): string => {
  if (arcsec < 10) return `${arcsec.toFixed(1)}″`;
  if (arcsec < 2 * ARCSEC_PER_ARCMIN) return `${Math.round(arcsec)}″`;
  return `${Number((arcsec / ARCSEC_PER_ARCMIN).toFixed(arcsec < 600 ? 1 : 0))}′`;
};

/** Under this share of difference the eye tells none; common practice, no source. */
const ALIKE = 1.05;

const noSize = ({ name }: Stand): string =>
  `${capital(name)} is a point of light here, or its size is in no list of mine.`;

/** "Jupiter looks the larger: 39″ across against 19″, 2.1 times." */
export const largerWords = ({ first, second, utcMs }: Pair): string => {
  const firstArcsec = diameterArcsec(first.target, utcMs);
  const secondArcsec = diameterArcsec(second.target, utcMs);
  if (firstArcsec === null) return noSize(first);
  if (secondArcsec === null) return noSize(second);
  const [large, small] = firstArcsec >= secondArcsec ? [first, second] : [second, first];
  const [mostArcsec, leastArcsec] = [Math.max(firstArcsec, secondArcsec), Math.min(firstArcsec, secondArcsec)];
  const times = mostArcsec / leastArcsec;
  const figures = `${across(mostArcsec)} across against ${across(leastArcsec)}`;
  return times < ALIKE
    ? `${capital(large.name)} and ${small.name} look alike in size: ${figures}.`
    : `${capital(large.name)} looks the larger: ${figures}, ${Number(times.toFixed(times < 10 ? 1 : 0))} times, as they are then.`;
};
