/** How a double star shows: whether an aperture splits it, and whether the brighter drowns the fainter. */
import type { Target } from '../../catalogue/index.js';
import { isHandHeld, type Equipment } from '../../evening/equipment.js';

type Double = NonNullable<Target['double']>;

/** W. R. Dawes' limit for two equal stars: 116 arcseconds over the aperture in millimetres. */
const DAWES_ARCSEC_MM = 116;
/** Unequal stars want more room: about this much of the limit more a magnitude of difference; common practice, no source. */
const ROOM_A_MAGNITUDE = 0.6;
/** A companion so much fainter, so near, is drowned in the glare but on the steadiest nights; common practice, no source. */
const GLARE_MAG = 6;
const GLARE_ARCSEC = 20;
const BINOCULARS_ARCSEC = 25;
const EASY_ARCSEC = 10;

export const splitWords = ({ separationArcsec, magnitudes }: Double, equipment: Equipment): string => {
  const difference = Math.abs(magnitudes[1] - magnitudes[0]);
  if (isHandHeld(equipment))
    return separationArcsec >= BINOCULARS_ARCSEC && difference < GLARE_MAG
      ? `split in ${equipment.saidAs}, held steady`
      : `not split in ${equipment.saidAs}`;
  const limit = DAWES_ARCSEC_MM / equipment.apertureMm;
  if (separationArcsec < limit) return `too close for ${equipment.saidAs}`;
  if (difference >= GLARE_MAG && separationArcsec < GLARE_ARCSEC)
    return 'the companion is lost in the glare on all but the steadiest nights; the bright star is plain';
  if (separationArcsec < limit * (1.5 + ROOM_A_MAGNITUDE * difference))
    return `hard to split in ${equipment.saidAs}: high power, steady air`;
  return separationArcsec >= EASY_ARCSEC
    ? `an easy pair in ${equipment.saidAs}`
    : `split at high power in ${equipment.saidAs}`;
};

/** "sirius b": the fainter of the two was asked about. */
export const asksForCompanion = (typed: string, { double }: Target): boolean =>
  double !== null && /\s(?:b|2|ii|companion)$/iu.test(typed.trim()) && /[a-z]{3}/iu.test(typed);
