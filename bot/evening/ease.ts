/** How plainly something shows, in the three words that lists and answers share. */
import type { Target } from '../catalogue/index.js';

export type Ease = 'plain' | 'easy' | 'faint' | 'hidden';

const PLAIN_MAG = 2.5;
const EASY_MAG = 1.2;
/** Nothing is seen under this but by chance. */
export const SHOWS_MAG = 0.2;
/** The light of a galaxy of so low a surface brightness is spread too thin to be called easy; common practice, no source. */
const THIN_MAG_PER_ARCSEC2 = 22.5;
const EASY_THOUGH_THIN_MAG = 2;

const isThin = ({ kind, surfaceBrightness }: Target): boolean =>
  kind === 'galaxy' && surfaceBrightness !== null && surfaceBrightness >= THIN_MAG_PER_ARCSEC2;

export const easeOf = (target: Target, marginMag: number): Ease => {
  if (marginMag < SHOWS_MAG) return 'hidden';
  if (marginMag >= PLAIN_MAG) return 'plain';
  return marginMag >= (isThin(target) ? EASY_THOUGH_THIN_MAG : EASY_MAG) ? 'easy' : 'faint';
};
