/** What a loaded catalogue offers: targets by index or id, and plain arrays for sweeping all of them; it knows nothing of observers or time. */
import type { CatalogueIndex } from './catalogue-index.js';
import type { MovingTargets } from './moving-targets.js';
import type { Target } from './target.js';

/** In `CatalogueSweep.alsoKindIndex`: no second kind. */
export const NO_KIND = 255;

/**
 * Every object fixed among the stars, as parallel arrays, so that a sweep over all of them touches no objects.
 * Position `i` belongs to `catalogue.targetAt(i)`. Sun, Moon and planets are not in it.
 */
export interface CatalogueSweep {
  readonly length: number;
  /** Unit vectors, ICRS/J2000 at epoch J2000.0: x to RA 0 h, y to RA 6 h, z to the north pole. */
  readonly unitX: Float64Array;
  readonly unitY: Float64Array;
  readonly unitZ: Float64Array;
  /** Visual magnitude; NaN where not known. */
  readonly magnitude: Float32Array;
  /** Largest apparent size in arcminutes; NaN where not known (stars, and some objects). */
  readonly sizeArcmin: Float32Array;
  /** Smallest apparent size in arcminutes; equal to the largest where round or not known. */
  readonly minorSizeArcmin: Float32Array;
  /** Index into `TARGET_KINDS`. */
  readonly kindIndex: Uint8Array;
  /** Index into `TARGET_KINDS` of the second kind it is asked for under; `NO_KIND` where it has none. */
  readonly alsoKindIndex: Uint8Array;
  /** 1 (what a beginner is shown) to 4, as `Target.showpieceRank`; 0 where it has none. */
  readonly showpieceRank: Uint8Array;
  /** Objects with the same number are one stop at the eyepiece (`Target.groupId`); 0 where it stands alone. */
  readonly group: Uint16Array;
  /** Separation of a double star in arcseconds; NaN where it is none or not known. */
  readonly separationArcsec: Float32Array;
  /** 1 where the object has a Messier or Caldwell number or a common name, or is a named star: what a club would call known. */
  readonly wellKnown: Uint8Array;
}

export interface Catalogue {
  readonly sweep: CatalogueSweep;
  /** Sun, Moon and planets, in the usual order. */
  readonly solarSystem: readonly Target[];
  /** The target at a place in `sweep`; throws a RangeError outside 0..length-1. A new object each time. */
  targetAt(index: number): Target;
  /** By stable id ("ngc7331", "hip91262", "moon"), or undefined. */
  targetById(id: string): Target | undefined;
  /** Comets and minor planets, where the operator gave a list. */
  readonly moving?: MovingTargets;
  /** Look-up tables; for this folder's own use. */
  readonly index: CatalogueIndex;
}
