/** How a double star shows: whether an aperture splits it, and whether the brighter drowns the fainter. */
import type { DoubleStar, Target } from '../../catalogue/index.js';
import { magnitudeText } from '../../reply/wording.js';
import { isHandHeld, type Equipment } from '../../evening/equipment.js';

/** W. R. Dawes' limit for two equal stars: 116 arcseconds over the aperture in millimetres. */
const DAWES_ARCSEC_MM = 116;
/** Unequal stars want more room: about this much of the limit more a magnitude of difference; common practice, no source. */
const ROOM_A_MAGNITUDE = 0.6;
/** A companion so much fainter is drowned in the glare but on the steadiest nights, a magnitude more for every ten arcseconds; common practice, no source. */
const GLARE_MAG = 6;
const GLARE_ARCSEC_A_MAGNITUDE = 10;
/** So much fainter, it is a spark to be looked for. */
const SPARK_MAG = 5;
const BINOCULARS_ARCSEC = 25;
const EASY_ARCSEC = 10;

const isDrowned = ({ separationArcsec, magnitudes }: Pick<DoubleStar, 'separationArcsec' | 'magnitudes'>): boolean =>
  Math.abs(magnitudes[1] - magnitudes[0]) >= GLARE_MAG + separationArcsec / GLARE_ARCSEC_A_MAGNITUDE;

export const splitWords = ({ separationArcsec, magnitudes }: DoubleStar, equipment: Equipment): string => {
  const difference = Math.abs(magnitudes[1] - magnitudes[0]);
  if (isHandHeld(equipment))
    return separationArcsec >= BINOCULARS_ARCSEC && difference < GLARE_MAG
      ? `split in ${equipment.saidAs}, held steady`
      : `not split in ${equipment.saidAs}`;
  const limit = DAWES_ARCSEC_MM / equipment.apertureMm;
  if (separationArcsec < limit) return `too close for ${equipment.saidAs}`;
  if (isDrowned({ separationArcsec, magnitudes }))
    return 'the companion is lost in the glare on all but the steadiest nights; the bright star is plain';
  if (separationArcsec < limit * (1.5 + ROOM_A_MAGNITUDE * difference))
    return `hard to split in ${equipment.saidAs}: high power, steady air`;
  return separationArcsec >= EASY_ARCSEC
    ? `an easy pair in ${equipment.saidAs}`
    : `split at high power in ${equipment.saidAs}`;
};

/** Wider pairs hardly mind the air; nearer ones want a night when it is still. Common practice, no source. */
const MINDS_AIR_ARCSEC = 4;

const tenths = (arcsec: number): string => `${arcsec < 10 ? arcsec.toFixed(1) : Math.round(arcsec)}″`;

/** Millimetres that part them, and that part them well, by the room that unequal stars want. */
const needs = ({ separationArcsec, magnitudes }: DoubleStar): { readonly leastMm: number; readonly wellMm: number } => {
  const leastMm = DAWES_ARCSEC_MM / separationArcsec;
  return { leastMm, wellMm: leastMm * (1.5 + ROOM_A_MAGNITUDE * Math.abs(magnitudes[1] - magnitudes[0])) };
};

/** Rounded up to what one would name: 5 mm. */
const mm = (value: number): string => `${Math.max(SMALLEST_MM, Math.ceil(value / 5) * 5)} mm`;
const SMALLEST_MM = 30;

const seeingWords = ({ separationArcsec, magnitudes }: DoubleStar): string => {
  if (separationArcsec < MINDS_AIR_ARCSEC) return ' Wait for steady air: bad seeing blurs them into one.';
  return Math.abs(magnitudes[1] - magnitudes[0]) >= SPARK_MAG
    ? ' High power and steady air: the faint one is a spark beside the bright.'
    : '';
};

/** "Yes: 2.4″ apart, and a 102 mm telescope parts 1.1″ (Dawes' limit, 116″ over the millimetres)." */
export const splitAnswer = (double: DoubleStar, equipment: Equipment): string => {
  const { separationArcsec, magnitudes } = double;
  const apart = `${tenths(separationArcsec)} apart, mag ${magnitudes.map(magnitudeText).join(' and ')}`;
  const { leastMm, wellMm } = needs(double);
  if (isHandHeld(equipment)) {
    const isSplit = splitWords(double, equipment).startsWith('split');
    return isSplit
      ? `Yes, held steady: ${apart}; ${equipment.saidAs} part some ${BINOCULARS_ARCSEC}″.`
      : `No: ${apart}, too close for ${equipment.saidAs}; a telescope of ${mm(wellMm)} splits them well.`;
  }
  const { apertureMm, saidAs } = equipment;
  const limit = `Dawes' limit for ${saidAs} is ${tenths(DAWES_ARCSEC_MM / apertureMm)}`;
  if (apertureMm < leastMm) return `No: ${apart}, and ${limit}; it takes ${mm(leastMm)} or more.`;
  if (isDrowned(double))
    return `Hardly: ${apart}. ${limit}, but the faint one drowns in the glare on all but the steadiest nights.`;
  if (apertureMm < wellMm)
    return `Just: ${apart}, and ${limit}; high power on a night of steady air, and ${mm(wellMm)} is better.`;
  return `Yes: ${apart}, and ${limit}.${seeingWords(double)}`;
};

/** Where no aperture was said, or it is what is asked. */
export const apertureNeeded = (double: DoubleStar, isWhether: boolean): string => {
  const { leastMm, wellMm } = needs(double);
  const { separationArcsec, magnitudes } = double;
  const apart = `${tenths(separationArcsec)} apart, mag ${magnitudes.map(magnitudeText).join(' and ')}`;
  if (isDrowned(double))
    return `Some ${mm(2 * wellMm)} on the steadiest nights: ${apart}, the faint one in the other's glare; Dawes' limit, ${mm(leastMm)}, holds for equal stars.`;
  if (mm(wellMm) === mm(leastMm)) return `${isWhether ? 'Yes, in any' : 'Any'} telescope will do: ${apart}.`;
  const begin = isWhether ? `Yes, from about ${mm(wellMm)} of aperture on` : `About ${mm(wellMm)}`;
  return `${begin}: ${apart}; by Dawes' limit ${mm(leastMm)} would just do.${seeingWords(double)}`;
};

/** "sirius b": the fainter of the two was asked about. */
export const asksForCompanion = (typed: string, { double }: Target): boolean =>
  double !== null && /\s(?:b|2|ii|companion)$/iu.test(typed.trim()) && /[a-z]{3}/iu.test(typed);
