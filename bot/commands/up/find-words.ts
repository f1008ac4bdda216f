/** How to come to what is faint and moves: the constellation, and how far which way from a star that the eye shows. */
import { constellationName, starsForTheEye, type Catalogue, type Target } from '../../catalogue/index.js';
import type { Fact } from '../../reply/reply.js';
import { compassWord, degrees, magnitudeText } from '../../reply/wording.js';
import { positionAngleDeg, separationDeg } from '../../sky/angles.js';
import { constellationAt } from '../../sky/constellation.js';
import { placeOf } from '../../sky/place.js';
import type { Observer, UtcMs } from '../../sky/types.js';

/** What is brighter finds itself; common practice, no source. */
const FAINT_MAGNITUDE = 4.5;

/** Of planets, minor planets and comets alone: all else has its constellation in what it is. */
export const findFact = (
  catalogue: Catalogue,
  { body, magnitude: listed }: Target,
  {
    magnitude,
    observer,
    utcMs,
  }: { readonly magnitude: number | null; readonly observer: Observer; readonly utcMs: UtcMs },
): readonly Fact[] => {
  const shown = magnitude ?? listed;
  if (body.kind === 'fixed' || shown === null || shown < FAINT_MAGNITUDE) return [];
  const { j2000 } = placeOf(body, observer, utcMs);
  const stars = starsForTheEye(catalogue).map((star) => ({
    star,
    awayDeg: separationDeg(star.position, j2000),
  }));
  const nearest = stars.reduce((a, b) => (b.awayDeg < a.awayDeg ? b : a));
  const { star, awayDeg } = nearest;
  const way = compassWord(positionAngleDeg(star.position, j2000));
  return [
    {
      label: 'Find it',
      value: `in ${constellationName(constellationAt(j2000))}, ${degrees(awayDeg, awayDeg < 10 ? 1 : 0)} ${way} of ${star.name}, mag ${magnitudeText(star.magnitude)}`,
    },
  ];
};
