/** Which magnification suits a target in an aperture, and which eyepiece gives it. Common practice of observers, no source. */
import type { Target } from '../../catalogue/index.js';
import { isHandHeld, USUAL_EQUIPMENT, type Equipment } from '../../evening/equipment.js';

/** Exit pupils in millimetres, the widest first: what the eye takes in is the aperture over the magnification. */
interface Pupils {
  readonly widestMm: number;
  readonly narrowestMm: number;
}

const SMALL: Pupils = { widestMm: 2.5, narrowestMm: 1 };
const PLANETS: Pupils = { widestMm: 1, narrowestMm: 0.6 };
const WIDE: Pupils = { widestMm: 5, narrowestMm: 3 };
const MOON: Pupils = { widestMm: 3, narrowestMm: 0.8 };
const MEDIUM: Pupils = { widestMm: 4, narrowestMm: 2 };

/** What is larger than this fills a field of low power. */
const WIDE_ARCMIN = 30;
/** The air seldom allows more, whatever the telescope. */
const MOST_MAGNIFICATION = 250;
/** No more exit pupil than the eye opens. */
const FOCAL_RATIOS = [5, 8, 10] as const;

const pupilsFor = ({ kind, sizeArcmin }: Target): Pupils => {
  if (kind === 'moon') return MOON;
  if (kind === 'planet' || kind === 'double-star') return PLANETS;
  if ((sizeArcmin ?? 0) >= WIDE_ARCMIN) return WIDE;
  return kind === 'planetary-nebula' || kind === 'globular-cluster' ? SMALL : MEDIUM;
};

const rounded = (value: number, step: number): number => Math.max(step, Math.round(value / step) * step);
const mm = (value: number): string => String(value < 10 ? Number(value.toFixed(1)) : Math.round(value));

export const eyepieceWords = (target: Target, equipment: Equipment): string => {
  if (isHandHeld(equipment)) return `No eyepiece to choose with ${equipment.saidAs}.`;
  const { widestMm, narrowestMm } = pupilsFor(target);
  const { apertureMm, saidAs, focalRatio } = equipment;
  const ratios = focalRatio === undefined ? FOCAL_RATIOS : [focalRatio];
  const most = Math.min(MOST_MAGNIFICATION, apertureMm / narrowestMm);
  const least = Math.min(apertureMm / widestMm, most * 0.6);
  const [wide, narrow] = [apertureMm / least, apertureMm / most];
  const eyepieces = ratios.map((ratio) => `${mm(narrow * ratio)} to ${mm(wide * ratio)} mm at f/${ratio}`);
  return `${target.name} in ${saidAs}: about ${rounded(least, 5)} to ${rounded(most, 5)}×, an exit pupil of ${mm(wide)} to ${mm(narrow)} mm. Eyepieces: ${eyepieces.join(', ')}. Begin with the longest${equipment === USUAL_EQUIPMENT ? '; say with: for yours' : ''}.`;
};
