/** A target: something with a name that a mount can be pointed at. Made by the catalogue; used by every command. */
import type { BinaryOrbit } from '../sky/binary-orbit.js';
import type { SkyBody } from '../sky/types.js';

/** In the order `CatalogueSweep.kindIndex` counts them. */
export const TARGET_KINDS = [
  'sun',
  'moon',
  'planet',
  'star',
  'double-star',
  'galaxy',
  'open-cluster',
  'globular-cluster',
  'planetary-nebula',
  'nebula',
  'supernova-remnant',
  'dark-nebula',
  'asterism',
  'other',
  'coordinates',
  'comet',
  'minor-planet',
] as const;
export type TargetKind = (typeof TARGET_KINDS)[number];

/** A double star as last measured, or as its orbit has it for the year. */
export interface DoubleStar {
  readonly separationArcsec: number;
  /** Of the fainter from the brighter, 0..360° from north through east. */
  readonly positionAngleDeg: number;
  /** The year of the two. */
  readonly year: number;
  /** Visual magnitudes, the brighter first. */
  readonly magnitudes: readonly [number, number];
  /** Left out: none that tells more than the measure. */
  readonly orbit?: BinaryOrbit;
}

/** A variable star, with what it takes to say when it is next at its brightest or faintest. */
export interface VariableStar {
  /** The type in words: "eclipsing", "Cepheid", "long-period (Mira)". */
  readonly type: string;
  readonly brightestMagnitude: number;
  readonly faintestMagnitude: number;
  /** Null where it keeps no period. */
  readonly periodDays: number | null;
  /** A mid-eclipse or a maximum, heliocentric Julian date; null where it cannot be told ahead. */
  readonly epochJd: number | null;
  readonly epochIs: 'minimum' | 'maximum' | null;
}

export interface Target {
  /** Stable, lower case, e.g. "ngc7331", "hip91262", "moon". */
  readonly id: string;
  /** As shown to a member: "NGC 7331", "Vega", "Moon". */
  readonly name: string;
  /** Other names, best known first: "Deer Lick galaxy", "α Lyr", "M 31". */
  readonly aliases: readonly string[];
  readonly kind: TargetKind;
  /** The kind in words, singular: "spiral galaxy", "open cluster". */
  readonly kindText: string;
  /** A second kind it is asked for under (a cluster with its nebula), or null. */
  readonly alsoKind: TargetKind | null;
  /** IAU constellation abbreviation ("And"), or null for what moves. */
  readonly constellation: string | null;
  /** Visual magnitude (blue where no visual is known is never mixed in silently: then null). */
  readonly magnitude: number | null;
  /** Largest apparent size in arcminutes, or null. */
  readonly sizeArcmin: number | null;
  /** Across the narrow way, in arcminutes; null where round or not known. */
  readonly minorSizeArcmin: number | null;
  /** Mean visual surface brightness in magnitudes a square arcsecond, from magnitude and size; null for stars and where either is not known. */
  readonly surfaceBrightness: number | null;
  /** 1: what a beginner is shown; 2: repays any small telescope; 3: the rest of Messier; 4: the rest of Caldwell; null: none of these. */
  readonly showpieceRank: number | null;
  /** Id of the object it is one stop at the eyepiece with (its own id on that object); null where it stands alone. */
  readonly groupId: string | null;
  readonly double: DoubleStar | null;
  readonly variable: VariableStar | null;
  readonly body: SkyBody;
}

/** What a target without catalogue data has of it. */
export const NO_CATALOGUE_DATA = {
  alsoKind: null,
  constellation: null,
  magnitude: null,
  sizeArcmin: null,
  minorSizeArcmin: null,
  surfaceBrightness: null,
  showpieceRank: null,
  groupId: null,
  double: null,
  variable: null,
} as const satisfies Partial<Target>;

/** Mean surface brightness of an ellipse, in magnitudes a square arcsecond: the light spread evenly over it. */
export const meanSurfaceBrightness = (magnitude: number, majorArcmin: number, minorArcmin: number): number =>
  magnitude + 2.5 * Math.log10((Math.PI / 4) * majorArcmin * minorArcmin * 3600);

/** One suggestion: `value` resolves to the target; `label` (≤ 100 characters) is what a member sees. */
export interface TargetCompletion {
  readonly value: string;
  readonly label: string;
}
