/** The words in which a miss is described: who stands where, what was seen, and which mistakes can be behind it. */
import type { Equatorial, Horizontal, Observer, UtcMs } from '../../sky/types.js';
import type { MountKind } from '../mount/mount.js';

export const CAUSE_IDS = [
  'daylight-saving',
  'utc-offset-sign',
  'utc-offset',
  'utc-as-local',
  'twelve-hours',
  'date-off-by-one',
  'day-month-swapped',
  'longitude-sign',
  'minutes-as-decimals',
  'latitude-sign',
  'latitude-longitude-swapped',
  'hemisphere-mode',
  'epoch',
  'not-at-home',
  'wrong-star',
  'polar-axis',
  'not-tracking',
  'mirrored-axis',
  'sidereal-amount',
  'facing',
] as const;
export type CauseId = (typeof CAUSE_IDS)[number];

/** A bright named star, of date. */
export interface AlignmentStar {
  readonly name: string;
  readonly ofDate: Equatorial;
  readonly magnitude: number;
}

/** What the mount was sent to. */
export interface PointedTarget {
  readonly name: string;
  readonly ofDate: Equatorial;
  readonly j2000: Equatorial;
  /** For the Sun, the Moon and the planets: where a controller with another date would put it. */
  readonly ofDateAt?: (utcMs: UtcMs) => Equatorial;
}

/** What the site's clocks do at the instant of the miss. */
export interface LocalClock {
  /** Local time minus UTC, daylight saving included. */
  readonly utcOffsetMinutes: number;
  /** How much of that is daylight saving now; 0 when none is in force. */
  readonly daylightSavingMinutes: number;
  readonly zoneHasDaylightSaving: boolean;
}

export interface StoredPlace {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

export interface Circumstances {
  readonly observer: Observer;
  readonly utcMs: UtcMs;
  readonly mount: MountKind;
  readonly clock: LocalClock;
  /** Bright named stars to align on, brightest first; below the horizon too. */
  readonly stars: readonly AlignmentStar[];
  /** The star the mount was aligned on, where that is known; null: started from home, or not said. */
  readonly alignedOn: AlignmentStar | null;
  /** Other places the controller may still have in store. */
  readonly places: readonly StoredPlace[];
}

export type Observation =
  /** The sidereal time on the controller's display. */
  | { readonly kind: 'lst'; readonly lstHours: number; readonly sigmaS: number }
  /** The altitude and azimuth on the controller's display for a target. */
  | { readonly kind: 'shown'; readonly target: PointedTarget; readonly at: Horizontal; readonly sigmaDeg: number }
  /** Where the tube really went when sent to a target, of date. */
  | { readonly kind: 'landed'; readonly target: PointedTarget; readonly ofDate: Equatorial; readonly sigmaDeg: number };

/** Usual uncertainty of what a member reads off; common practice, no source. */
export const POSITION_SIGMA_DEG = 0.5;
export const LST_SIGMA_S = 20;
