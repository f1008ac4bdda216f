/** A few words on why an object is in the list and what to expect of it. */
import { commonName, type Target } from '../catalogue/index.js';
import { degrees } from '../reply/wording.js';
import { separationDeg } from '../sky/angles.js';
import type { Equatorial, FixedBody } from '../sky/types.js';
import { easeOf, type Ease } from './ease.js';
import { isHandHeld, type Equipment } from './equipment.js';
import { planetWords } from './planet-words.js';
import type { Pick } from './tonight-picks.js';

const BRIGHT_MOON_LIT = 0.3;
/** So near the Moon is what one sees first, whatever it lights; common practice, no source. */
const BESIDE_DEG = 8;
const WIDE_ARCMIN = 50;
const SMALL_ARCMIN = 2;
const LOW_DEG = 25;
const isGlow = ({ kind }: Target): boolean =>
  ['galaxy', 'nebula', 'supernova-remnant', 'planetary-nebula', 'globular-cluster'].includes(kind);

const SHOWS: Readonly<Record<Ease, string>> = {
  plain: 'plain to see',
  easy: 'easy',
  faint: 'faint, look beside it',
  hidden: 'drowned in the bright sky',
};

const shows = ({ target, marginMag }: Pick): string | null =>
  isGlow(target) ? SHOWS[easeOf(target, marginMag)] : null;

const size = ({ double, sizeArcmin, kind }: Target, equipment: Equipment): string | null => {
  if (double !== null)
    return `${double.separationArcsec < 10 ? double.separationArcsec.toFixed(1) : Math.round(double.separationArcsec)}″ apart`;
  if (sizeArcmin === null || kind === 'moon') return null;
  if (sizeArcmin >= WIDE_ARCMIN && !isHandHeld(equipment)) return 'large: lowest power';
  return sizeArcmin < SMALL_ARCMIN ? 'small: high power' : null;
};

const moon = ({ target, moonAltitudeDeg, moonLitFraction, moonSeparationDeg }: Pick): string | null => {
  if (target.kind === 'moon' || moonAltitudeDeg <= 0) return null;
  if (moonSeparationDeg < BESIDE_DEG)
    return `the Moon ${degrees(moonSeparationDeg, moonSeparationDeg < 1 ? 1 : 0)} from it`;
  return isGlow(target) && moonLitFraction >= BRIGHT_MOON_LIT ? `Moon ${degrees(moonSeparationDeg)} off` : null;
};

const MOST_BESIDE = 2;

const named = (others: readonly Target[], where: string): string | null => {
  const names = others.slice(0, MOST_BESIDE).map(commonName);
  return names.length === 0 ? null : `${names.join(' and ')} ${where} it`;
};

const equatorialOf = ({ raHoursJ2000, decDegJ2000 }: FixedBody): Equatorial => ({
  raHours: raHoursJ2000,
  decDeg: decDegJ2000,
});

/** Whether the second stands within the first's outline, taken for round. */
const isWithin = (target: Target, other: Target): boolean =>
  target.sizeArcmin !== null &&
  target.body.kind === 'fixed' &&
  other.body.kind === 'fixed' &&
  separationDeg(equatorialOf(target.body), equatorialOf(other.body)) * 60 < target.sizeArcmin / 2;

const beside = ({ target, beside: others }: Pick): readonly (string | null)[] => {
  // A pair is its members.
  if (target.kindText.startsWith('pair')) return [];
  const known = others.filter(({ showpieceRank }) => showpieceRank !== null);
  const within = known.filter((other) => isWithin(target, other));
  return [
    named(within, 'in'),
    named(
      known.filter((other) => !within.includes(other)),
      'beside',
    ),
  ];
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
  [shows(pick), planet(pick, equipment), size(pick.target, equipment), moon(pick), height(pick), ...beside(pick)]
    .filter((part) => part !== null)
    .join(', ');
