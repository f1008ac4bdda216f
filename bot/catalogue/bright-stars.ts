/** The bright named stars that people align on. */
import { onceOf } from '../ground/once.js';
import type { Catalogue } from './catalogue.js';
import { commonName } from './spoken-names.js';
import { TARGET_KINDS } from './target.js';
import type { Target } from './target.js';
import type { Equatorial, FixedBody } from '../sky/types.js';

export interface BrightNamedStar extends Target {
  readonly magnitude: number;
  readonly body: FixedBody;
}

/** Fainter stars are hard to tell apart in a finder; common practice, no source. */
export const FAINTEST_ALIGNMENT_MAGNITUDE = 2.6;

const STAR = TARGET_KINDS.indexOf('star');
const DOUBLE_STAR = TARGET_KINDS.indexOf('double-star');

const starsDownTo = (catalogue: Catalogue, faintest: number, isWanted: (index: number) => boolean) => {
  const { sweep } = catalogue;
  const stars: BrightNamedStar[] = [];
  for (let i = 0; i < sweep.length; i++) {
    const kind = sweep.kindIndex[i];
    if ((kind !== STAR && kind !== DOUBLE_STAR) || !(sweep.magnitude[i]! <= faintest) || !isWanted(i)) continue;
    const target = catalogue.targetAt(i);
    if (target.body.kind === 'fixed' && target.magnitude !== null)
      stars.push({ ...target, magnitude: target.magnitude, body: target.body });
  }
  return stars.sort((a, b) => a.magnitude - b.magnitude);
};

/** Named stars down to magnitude 2.6, brightest first. */
export const brightNamedStars = onceOf((catalogue: Catalogue): readonly BrightNamedStar[] =>
  starsDownTo(catalogue, FAINTEST_ALIGNMENT_MAGNITUDE, (index) => catalogue.sweep.wellKnown[index] === 1),
);

/** What an eye shows under the sky of a suburb; common practice, no source. */
const FAINTEST_FOR_THE_EYE = 4;

/** Stars from which one goes on to what is faint, brightest first; positions of J2000. */
export const starsForTheEye = onceOf(
  (
    catalogue: Catalogue,
  ): readonly { readonly name: string; readonly magnitude: number; readonly position: Equatorial }[] =>
    starsDownTo(catalogue, FAINTEST_FOR_THE_EYE, () => true).map((star) => ({
      name: commonName(star),
      magnitude: star.magnitude,
      position: { raHours: star.body.raHoursJ2000, decDeg: star.body.decDegJ2000 },
    })),
);
