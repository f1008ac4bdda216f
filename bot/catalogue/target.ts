/** A target: something with a name that a mount can be pointed at. Made by the catalogue; used by every command. */
import type { SkyBody } from '../sky/types.js';

export type TargetKind =
  | 'sun'
  | 'moon'
  | 'planet'
  | 'star'
  | 'double-star'
  | 'galaxy'
  | 'open-cluster'
  | 'globular-cluster'
  | 'planetary-nebula'
  | 'nebula'
  | 'supernova-remnant'
  | 'dark-nebula'
  | 'asterism'
  | 'other'
  | 'coordinates';

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
  /** IAU constellation abbreviation ("And"), or null for what moves. */
  readonly constellation: string | null;
  /** Visual magnitude (blue where no visual is known is never mixed in silently: then null). */
  readonly magnitude: number | null;
  /** Largest apparent size in arcminutes, or null. */
  readonly sizeArcmin: number | null;
  readonly body: SkyBody;
}
