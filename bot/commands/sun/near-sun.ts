/** What stands near the Sun: the Moon, the planets and the bright named stars, the nearest first. */
import { brightNamedStars, type Catalogue } from '../../catalogue/index.js';
import { degrees } from '../../reply/wording.js';
import { SUN_CAUTION_DEG, sunSeparationDeg } from '../../sky/sun-safety.js';
import type { Observer, SkyBody, UtcMs } from '../../sky/types.js';

const WANDERERS = ['Moon', 'Mercury', 'Venus', 'Mars', 'Jupiter', 'Saturn', 'Uranus', 'Neptune'] as const;
/** Stars that the eye knows; those of the ecliptic are among them. */
const FAINTEST_STAR = 1.7;
const NAMED_AT_MOST = 8;

/** "Antares 6.5°, Mercury 19°"; that nothing bright is, where nothing is. */
export const nearWords = (catalogue: Catalogue, observer: Observer, utcMs: UtcMs): string => {
  const bodies: readonly (readonly [string, SkyBody])[] = [
    ...WANDERERS.map((body) => [body, { kind: 'solarSystem', body }] as const),
    ...brightNamedStars(catalogue)
      .filter(({ magnitude }) => magnitude < FAINTEST_STAR)
      .map(({ name, body }) => [name.replace(/ \(.*/u, ''), body] as const),
  ];
  const near = bodies
    .map(([name, body]) => ({ name, awayDeg: sunSeparationDeg(body, observer, utcMs) }))
    .filter(({ awayDeg }) => awayDeg < SUN_CAUTION_DEG)
    .sort((a, b) => a.awayDeg - b.awayDeg)
    .slice(0, NAMED_AT_MOST)
    .map(({ name, awayDeg }) => `${name} ${degrees(awayDeg, awayDeg < 10 ? 1 : 0)}`);
  return near.length === 0 ? `nothing bright within ${SUN_CAUTION_DEG}°` : near.join(', ');
};
