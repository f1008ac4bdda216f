/** What looking up a site, a place name or a position can come to; the sentences live in wording.ts. */
import type { Site } from './site.js';

/** A named place from the gazetteer. */
export interface PlaceRecord {
  readonly name: string;
  /** Second-level division ("Lee County"), only where the region has two places of the name; else "". */
  readonly district: string;
  /** First-level region ("Alberta"), or "" where there is none. */
  readonly region: string;
  /** GeoNames code of the region within its country ("IL", "01"). */
  readonly regionCode: string;
  /** ISO 3166-1 alpha-2 code. */
  readonly countryCode: string;
  /** In English. */
  readonly country: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Metres above mean sea level, from a terrain model where GeoNames has no height. */
  readonly elevationM: number;
  readonly population: number;
  /** IANA time zone. */
  readonly zone: string;
}

export type PositionFault =
  | 'latitude-range'
  | 'longitude-range'
  | 'sixtieths-range'
  /** Latitude beyond 90 with a second number that could be one: the two may be swapped. */
  | 'maybe-swapped'
  /** Two of the same axis ("51N 52N"). */
  | 'same-axis'
  /** Looks like a position, but cannot be read as one. */
  | 'unreadable';

export interface Position {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** From an ISO 6709 string that carries a height; else null. */
  readonly elevationM: number | null;
}

export type PositionProblem = {
  readonly problem: 'bad-position';
  readonly text: string;
  readonly fault: PositionFault;
  readonly value: number | null;
};

/** `null` when the text does not look like a position at all (then it may be a place name). */
export type PositionResolution = { readonly position: Position } | PositionProblem | null;

export type PlaceProblem =
  | {
      readonly problem: 'unknown-place';
      readonly text: string;
      readonly nearest: readonly PlaceRecord[];
      readonly reason: 'empty' | 'too-long' | 'not-found';
    }
  | {
      readonly problem: 'ambiguous-place';
      readonly text: string;
      readonly candidates: readonly PlaceRecord[];
    };

/** `isQualified`: its region or country was said too. */
export type PlaceResolution =
  { readonly place: PlaceRecord; readonly isQualified: boolean; readonly note?: string } | PlaceProblem;

export type SiteProblem = PlaceProblem | PositionProblem;
export type SiteResolution = { readonly site: Site } | SiteProblem;
