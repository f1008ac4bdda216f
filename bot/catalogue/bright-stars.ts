/** The bright named stars that people align on. */
import { onceOf } from '../ground/once.js';
import type { Catalogue } from './catalogue.js';
import { TARGET_KINDS } from './target.js';
import type { Target } from './target.js';
import type { FixedBody } from '../sky/types.js';

export interface BrightNamedStar extends Target {
  readonly magnitude: number;
  readonly body: FixedBody;
}

/** Fainter stars are hard to tell apart in a finder; common practice, no source. */
export const FAINTEST_ALIGNMENT_MAGNITUDE = 2.6;

const STAR = TARGET_KINDS.indexOf('star');
const DOUBLE_STAR = TARGET_KINDS.indexOf('double-star');

/** Named stars down to magnitude 2.6, brightest first. */
export const brightNamedStars = onceOf((catalogue: Catalogue): readonly BrightNamedStar[] => {
  const { sweep } = catalogue;
  const stars: BrightNamedStar[] = [];
  for (let i = 0; i < sweep.length; i++) {
    const kind = sweep.kindIndex[i];
    if (
      (kind !== STAR && kind !== DOUBLE_STAR) ||
      sweep.wellKnown[i] !== 1 ||
      !(sweep.magnitude[i]! <= FAINTEST_ALIGNMENT_MAGNITUDE)
    )
      continue;
    const target = catalogue.targetAt(i);
    if (target.body.kind === 'fixed' && target.magnitude !== null)
      stars.push({ ...target, magnitude: target.magnitude, body: target.body });
  }
  return stars.sort((a, b) => a.magnitude - b.magnitude);
});
