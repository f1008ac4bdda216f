/** The star that the eye sees close beside another: Alcor by Mizar, which is no part of the double star that a telescope splits. */
import { starsForTheEye, type Catalogue, type Target } from '../../catalogue/index.js';
import type { Fact } from '../../reply/reply.js';
import { magnitudeText } from '../../reply/wording.js';
import { separationDeg } from '../../sky/angles.js';

const ARCMIN_A_DEG = 60;
const FARTHEST_ARCMIN = 15;
/** Nearer ones are the double star itself. */
const LEAST_ARCMIN = 1;
/** Two stars so far apart a good eye parts; common practice, no source (its resolution is an arcminute, faint light wants more). */
const EYE_ARCMIN = 4;

interface Beside {
  readonly name: string;
  readonly magnitude: number;
  readonly awayArcmin: number;
}

/** Null where none stands so close. */
const besideStar = (catalogue: Catalogue, { body, kind }: Target): Beside | null => {
  if (body.kind !== 'fixed' || !kind.endsWith('star')) return null;
  const here = { raHours: body.raHoursJ2000, decDeg: body.decDegJ2000 };
  const [nearest] = starsForTheEye(catalogue)
    .map(({ name, magnitude, position }) => ({
      name,
      magnitude,
      awayArcmin: separationDeg(position, here) * ARCMIN_A_DEG,
    }))
    .filter(({ awayArcmin }) => awayArcmin >= LEAST_ARCMIN && awayArcmin <= FARTHEST_ARCMIN)
    .sort((a, b) => a.awayArcmin - b.awayArcmin);
  return nearest ?? null;
};

const partedWords = ({ awayArcmin }: Beside): string =>
  awayArcmin >= EYE_ARCMIN
    ? 'the eye alone parts them, binoculars with ease'
    : 'binoculars part them, a keen eye perhaps';

export const besideFact = (catalogue: Catalogue, target: Target): readonly Fact[] => {
  const beside = besideStar(catalogue, target);
  return beside === null
    ? []
    : [
        {
          label: 'Beside it',
          value: `${beside.name}, mag ${magnitudeText(beside.magnitude)}, ${Math.round(beside.awayArcmin)}′ away: ${partedWords(beside)}`,
        },
      ];
};

/** "Mizar and Alcor": both were named; null: the neighbour was not. */
export const bothNamed = (catalogue: Catalogue, target: Target, typed: string): string | null => {
  if (!/ (?:and|&|\+|-) |[,/+&]/u.test(typed)) return null;
  const beside = besideStar(catalogue, target);
  return beside === null || !typed.toLowerCase().includes(beside.name.toLowerCase())
    ? null
    : `${target.name} and ${beside.name} stand ${Math.round(beside.awayArcmin)}′ apart: ${partedWords(beside)}.`;
};
