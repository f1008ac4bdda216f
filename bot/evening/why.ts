/** A few words on why an object is in the list and what to expect of it. */
import type { Target } from '../catalogue/index.js';
import { degrees } from '../reply/wording.js';
import { isHandHeld, type Equipment } from './equipment.js';
import { planetWords } from './planet-words.js';
import type { Pick } from './tonight-picks.js';

const PLAIN_MAG = 2.5;
const FAINT_MAG = 1.2;
/** Nothing is seen under this but by chance. */
export const DROWNED_MAG = 0.2;
const BRIGHT_MOON_LIT = 0.3;
const WIDE_ARCMIN = 50;
const SMALL_ARCMIN = 2;
const LOW_DEG = 25;
const isGlow = ({ kind }: Target): boolean =>
  ['galaxy', 'nebula', 'supernova-remnant', 'planetary-nebula', 'globular-cluster'].includes(kind);

const shows = ({ target, marginMag }: Pick): string | null => {
  if (!isGlow(target)) return null;
  if (marginMag < DROWNED_MAG) return 'drowned in the bright sky';
  if (marginMag < FAINT_MAG) return 'faint, look beside it';
  return marginMag >= PLAIN_MAG ? 'plain to see' : 'easy';
};

const size = ({ double, sizeArcmin, kind }: Target, equipment: Equipment): string | null => {
  if (double !== null)
    return `${double.separationArcsec < 10 ? double.separationArcsec.toFixed(1) : Math.round(double.separationArcsec)}″ apart`;
  if (sizeArcmin === null || kind === 'moon') return null;
  if (sizeArcmin >= WIDE_ARCMIN && !isHandHeld(equipment)) return 'large: lowest power';
  return sizeArcmin < SMALL_ARCMIN ? 'small: high power' : null;
};

const moon = ({ target, moonAltitudeDeg, moonLitFraction, moonSeparationDeg }: Pick): string | null =>
  isGlow(target) && moonAltitudeDeg > 0 && moonLitFraction >= BRIGHT_MOON_LIT
    ? `Moon ${degrees(moonSeparationDeg)} off`
    : null;

const MOST_BESIDE = 2;
const beside = ({ target, beside: others }: Pick): string | null => {
  // A pair is its members.
  if (target.kindText.startsWith('pair')) return null;
  const names = others
    .filter(({ showpieceRank }) => showpieceRank !== null)
    .slice(0, MOST_BESIDE)
    .map(({ name }) => name);
  return names.length === 0 ? null : `${names.join(' and ')} beside it`;
};

const OVERHEAD_DEG = 80;

const height = ({ bestAltitudeDeg }: Pick): string | null => {
  if (bestAltitudeDeg < LOW_DEG) return 'low';
  return bestAltitudeDeg > OVERHEAD_DEG ? 'nearly overhead, hard for a Dobsonian' : null;
};

const planet = ({ target: { body }, bestUtcMs }: Pick, equipment: Equipment): string | null =>
  body.kind === 'solarSystem' ? planetWords(body.body, bestUtcMs, equipment) : null;

/** "plain to see, Moon 62° off"; "" when there is nothing to add. */
export const whyOf = (pick: Pick, equipment: Equipment): string =>
  [shows(pick), planet(pick, equipment), size(pick.target, equipment), moon(pick), height(pick), beside(pick)]
    .filter((part) => part !== null)
    .join(', ');
