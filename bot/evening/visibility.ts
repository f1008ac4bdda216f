/**
 * How far above the threshold of seeing an object stands, in magnitudes, by its kind: stars and clusters of stars by the faintest
 * star that shows, galaxies and nebulae by their light against that of the sky behind them.
 */
import type { TargetKind } from '../catalogue/index.js';
import { extinctionOverZenith, nakedEyeLimit } from '../sky/sky-brightness.js';
import { isEyes, isHandHeld, type Equipment } from './equipment.js';

export interface Seen {
  readonly kind: TargetKind;
  /** NaN where not known. */
  readonly magnitude: number;
  /** NaN where not known. */
  readonly sizeArcmin: number;
  readonly minorSizeArcmin: number;
  /** 1 to 4, 0 for none, as the catalogue has it. */
  readonly showpieceRank: number;
}

const EYE_MM = 7;
/**
 * A telescope's power darkens the sky behind a star, and not the star: by 2.5 magnitudes where the beam that leaves it is a third as wide as
 * the eye's pupil. Under the night's own glow nothing more is gained. Common practice, no source.
 */
const POWER_DARKENS_MAG = 2.5;
const DARK_ENOUGH_MAG = 21.2;
/** Hands shake; common practice, no source. */
const HAND_HELD_LOSS_MAG = 0.5;

/** Faintest star, zenith magnitude, that shows under a sky with an aperture: the eye's limit and the light gained. */
export const faintestStar = (skyMagPerArcsec2: number, equipment: Equipment): number =>
  nakedEyeLimit(skyMagPerArcsec2) +
  5 * Math.log10(equipment.apertureMm / EYE_MM) -
  (isHandHeld(equipment) && equipment.apertureMm > EYE_MM ? HAND_HELD_LOSS_MAG : 0);

/** The members that make a cluster a sight are about so much fainter than the whole. Common practice, no source. */
const MEMBERS_FAINTER_MAG = 3;
/** Taken for a showpiece whose magnitude nobody gives; common practice, no source. */
const UNKNOWN_SURFACE_MAG: Readonly<Record<number, number>> = { 1: 20.5, 2: 21.6 };
const LARGE_ARCMIN = 60;
/** Dark clouds so small show only against a glow that itself hardly shows; common practice, no source. */
const SMALL_DARK_ARCMIN = 30;
const BEHIND_DARK_MAG = 23.3;
/** A face-on spiral's middle outshines its mean by so much; common practice, no source. */
const SPIRAL_ARCMIN = 10;
const SPIRAL_GAIN_MAG = 0.6;

interface Glow {
  /** Least ratio of its light to the sky's, over the part looked at, that an eye at the telescope notices. */
  readonly leastContrast: number;
  /** Share of the size that holds the light looked at. */
  readonly core: number;
  /** Magnitudes by which that part outshines the mean. */
  readonly gainMag: number;
}

/** Over so many degrees the bar of a Magellanic Cloud is looked at, V 20.6 a square arcsecond in the Large one's. Common practice, no source. */
const CLOUD_ARCMIN = 240;
const CLOUD_GAIN_MAG = 2.3;

const galaxyGain = (isGreat: boolean, sizeArcmin: number): number => {
  if (isGreat) return sizeArcmin >= CLOUD_ARCMIN ? CLOUD_GAIN_MAG : 1.8;
  return sizeArcmin >= SPIRAL_ARCMIN ? SPIRAL_GAIN_MAG : 0;
};

/** By kind; common practice, no source, set so that what handbooks call easy, fair and hard comes out so. */
const glowOf = ({ kind, sizeArcmin, showpieceRank }: Seen): Glow => {
  const isLarge = sizeArcmin > LARGE_ARCMIN;
  switch (kind) {
    case 'galaxy':
      return { leastContrast: 0.1, core: 1, gainMag: galaxyGain(isLarge && showpieceRank === 1, sizeArcmin) };
    case 'globular-cluster':
      return { leastContrast: 0.05, core: 0.4, gainMag: 0 };
    case 'planetary-nebula':
      return { leastContrast: 0.05, core: 1, gainMag: 0 };
    default:
      return showpieceRank === 1
        ? { leastContrast: 0.08, core: 0.4, gainMag: 3 }
        : { leastContrast: sizeArcmin > 40 ? 0.3 : 0.12, core: 1, gainMag: 0 };
  }
};

const areaArcsec2 = (majorArcmin: number, minorArcmin: number): number =>
  (Math.PI / 4) * Math.max(0.1, majorArcmin) * Math.max(0.1, minorArcmin) * 3600;

/** Clusters and asterisms are as visible as their stars, stars and planets as themselves. */
const starLike = (kind: TargetKind): number | null => {
  if (kind === 'open-cluster' || kind === 'asterism') return MEMBERS_FAINTER_MAG;
  return kind === 'star' || kind === 'double-star' || kind === 'planet' || kind === 'moon' ? 0 : null;
};

/** To the eye alone a cluster is one soft spot of light: as a star of all its light, less so much. Common practice, no source. */
const SOFT_SPOT_MAG = 1;
const softSpotMag = ({ kind, magnitude }: Seen): number | null =>
  (kind === 'open-cluster' || kind === 'globular-cluster') && !Number.isNaN(magnitude)
    ? magnitude + SOFT_SPOT_MAG
    : null;

/** What of an object decides how it shows, under whatever sky. */
export type Look = {
  /** How bright a star is as plain to the eye alone; null where that is no other than the look itself. */
  readonly softSpotMag: number | null;
} & (
  | { readonly by: 'stars'; readonly isSinglePoint: boolean; readonly magnitude: number; readonly fainter: number }
  | {
      readonly by: 'glow';
      readonly surfaceMag: number;
      readonly areaArcsec2: number;
      /** See {@link Glow}. */
      readonly leastContrast: number;
    }
);

/** Null where nothing tells. */
export const lookOf = (seen: Seen): Look | null => {
  const { kind, magnitude, sizeArcmin, minorSizeArcmin, showpieceRank } = seen;
  const fainter = starLike(kind);
  if (fainter !== null)
    return Number.isNaN(magnitude)
      ? null
      : { by: 'stars', softSpotMag: softSpotMag(seen), isSinglePoint: fainter === 0, magnitude, fainter };
  const { leastContrast, core, gainMag } = glowOf(seen);
  const size = Number.isNaN(sizeArcmin) ? 1 : sizeArcmin;
  const minor = Number.isNaN(minorSizeArcmin) ? size : minorSizeArcmin;
  const isDarkSpot = kind === 'dark-nebula' && size < SMALL_DARK_ARCMIN;
  const unknown = isDarkSpot ? BEHIND_DARK_MAG : UNKNOWN_SURFACE_MAG[showpieceRank];
  if (Number.isNaN(magnitude) && unknown === undefined) return null;
  const wholeArea = areaArcsec2(size, minor);
  const surfaceMag = (Number.isNaN(magnitude) ? (unknown ?? 30) : magnitude + 2.5 * Math.log10(wholeArea)) - gainMag;
  return {
    by: 'glow',
    softSpotMag: softSpotMag(seen),
    surfaceMag,
    areaArcsec2: wholeArea * core ** 2,
    leastContrast,
  };
};

/** As the object shows in itself; `lost`: magnitudes that the air takes. */
const marginInItself = (look: Look, skyMagPerArcsec2: number, lost: number, equipment: Equipment): number => {
  if (look.by === 'stars') {
    const behindMag =
      look.isSinglePoint && !isHandHeld(equipment)
        ? Math.max(skyMagPerArcsec2, Math.min(skyMagPerArcsec2 + POWER_DARKENS_MAG, DARK_ENOUGH_MAG))
        : skyMagPerArcsec2;
    return faintestStar(behindMag, equipment) - look.magnitude - look.fainter - lost;
  }
  const { surfaceMag, areaArcsec2: area, leastContrast } = look;
  const limit = faintestStar(skyMagPerArcsec2, equipment);
  const light = 10 ** (-0.4 * (surfaceMag + lost)) * area;
  const needed = 10 ** (-0.4 * limit) + leastContrast * 10 ** (-0.4 * skyMagPerArcsec2) * area;
  return 2.5 * Math.log10(light / needed);
};

/** {@link marginMag} of a look. */
export const marginOfLook = (
  look: Look | null,
  skyMagPerArcsec2: number,
  altitudeDeg: number,
  equipment: Equipment,
): number => {
  if (look === null) return -9;
  const lost = extinctionOverZenith(altitudeDeg);
  const margin = marginInItself(look, skyMagPerArcsec2, lost, equipment);
  return look.softSpotMag !== null && isEyes(equipment)
    ? Math.max(margin, faintestStar(skyMagPerArcsec2, equipment) - look.softSpotMag - lost)
    : margin;
};

/**
 * Magnitudes above the threshold at an altitude under a sky: 0 is barely seen by one who knows where, 1 is seen, 3 is plain. −9 where
 * nothing tells.
 */
export const marginMag = (seen: Seen, skyMagPerArcsec2: number, altitudeDeg: number, equipment: Equipment): number =>
  marginOfLook(lookOf(seen), skyMagPerArcsec2, altitudeDeg, equipment);
