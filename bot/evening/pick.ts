/** What is asked of the evening, and what an entry of the answer holds. */
import type { Target } from '../catalogue/index.js';
import type { TimeSpan } from '../sky/night.js';
import type { Observer, SkyBody, SolarSystemBody, UtcMs } from '../sky/types.js';
import type { Equipment } from './equipment.js';
import type { PickKind } from './kinds.js';
import type { Towards } from './towards.js';
import type { Worth } from './worth.js';

export interface PickQuestion {
  readonly observer: Observer;
  readonly night: TimeSpan;
  /** The hours for faint things. */
  readonly window: TimeSpan;
  /** The hours for Moon and planets, which need no dark; holds `window`. */
  readonly brightWindow: TimeSpan;
  readonly kind: PickKind;
  /** A second kind beside it; left out: none. */
  readonly also?: PickKind | undefined;
  /** Faintest magnitude wanted. */
  readonly brighter: number;
  /** As asked for; null: 20°, and 10° for Moon and planets. */
  readonly minimumAltitudeDeg: number | null;
  readonly horizon: readonly { readonly azimuthDeg: number; readonly altitudeDeg: number }[] | null;
  readonly equipment: Equipment;
  readonly zenithMagPerArcsec2: number;
  /** Only what stands in that part of the sky; null: anywhere. */
  readonly towards: Towards | null;
  /** Only what lies in one of these constellations, by the IAU's abbreviations; null: in any. */
  readonly constellations: readonly string[] | null;
  readonly limits?: PickLimits;
}

/** What else is asked of what is listed; left out: nothing. */
export interface PickLimits {
  readonly isMessierOnly?: boolean | undefined;
  readonly highestDeg?: number | undefined;
  /** Larger than so much across. */
  readonly largerArcmin?: number | undefined;
  readonly mostArcmin?: number | undefined;
  /** Doubles wider than so much. */
  readonly widerArcsec?: number | undefined;
}

/** An object at its best moment in the hours asked about. */
export interface Candidate {
  readonly target: Target;
  readonly bestUtcMs: UtcMs;
  readonly worth: Worth;
  /** Magnitudes above the threshold of seeing. */
  readonly marginMag: number;
  /** Objects with one number are one stop at the eyepiece; 0 stands alone. */
  readonly group: number;
}

/** Under this the air is thick and roofs are near; common practice, no source. */
export const LEAST_USEFUL_ALTITUDE_DEG = 20;
/** Moon and planets are bright enough to be looked at lower; common practice, no source. */
export const LEAST_PLANET_ALTITUDE_DEG = 10;
/** It never stands high in a dark sky; common practice, no source. */
const LEAST_MERCURY_ALTITUDE_DEG = 6;

/** The height from which a body is worth looking at. */
export const leastAltitudeDegOf = (body: SkyBody): number => {
  if (body.kind !== 'solarSystem') return LEAST_USEFUL_ALTITUDE_DEG;
  return body.body === 'Mercury' ? LEAST_MERCURY_ALTITUDE_DEG : LEAST_PLANET_ALTITUDE_DEG;
};

export const isBody = ({ body }: Target, name: SolarSystemBody): boolean =>
  body.kind === 'solarSystem' && body.body === name;

/** Bright enough for twilight; common practice, no source. */
const TWILIGHT_MAGNITUDE = 3;

export const standsTwilight = ({ body }: Target, magnitude: number | null): boolean =>
  body.kind === 'solarSystem' || (magnitude !== null && magnitude <= TWILIGHT_MAGNITUDE);
