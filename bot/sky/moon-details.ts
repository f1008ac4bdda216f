/** What people ask of the Moon itself: its phase by name, its age, how it tips. */
import { Libration, SearchMoonPhase } from 'astronomy-engine';
import { MS_PER_DAY } from '../ground/durations.js';
import { engineTime } from './engine-time.js';
import type { UtcMs } from './types.js';

/** Each principal phase is given a day on either side, as almanacs and calendars speak; common practice, no source. */
const PRINCIPAL_WITHIN_DEG = 6;

const PRINCIPAL = ['new Moon', 'first quarter', 'full Moon', 'last quarter'] as const;
const BETWEEN = ['waxing crescent', 'waxing gibbous', 'waning gibbous', 'waning crescent'] as const;

/** "waxing gibbous", from the Moon's ecliptic longitude less the Sun's, 0..360°. */
export const moonPhaseName = (elongationDeg: number): string => {
  const nearest = Math.round(elongationDeg / 90) % 4;
  const off = Math.abs(elongationDeg - Math.round(elongationDeg / 90) * 90);
  return (off <= PRINCIPAL_WITHIN_DEG ? PRINCIPAL[nearest] : BETWEEN[Math.floor(elongationDeg / 90) % 4]) ?? 'new Moon';
};

/** Days since the last new Moon. */
export const moonAgeDays = (utcMs: UtcMs): number => {
  const found = SearchMoonPhase(0, engineTime(utcMs), -31);
  return found === null ? 0 : (utcMs - found.date.getTime()) / MS_PER_DAY;
};

export interface MoonLibration {
  /** Selenographic latitude of the disc's middle: north positive tips the north into view. */
  readonly latitudeDeg: number;
  /** Selenographic longitude of the disc's middle: east positive brings Mare Crisium's side into view. */
  readonly longitudeDeg: number;
  /** From the Earth's centre. */
  readonly distanceKm: number;
}

/** Optical libration seen from the Earth's centre (astronomy-engine, after Meeus, Astronomical Algorithms, ch. 53). */
export const moonLibration = (utcMs: UtcMs): MoonLibration => {
  const { elat, elon, dist_km } = Libration(engineTime(utcMs));
  return { latitudeDeg: elat, longitudeDeg: elon, distanceKm: dist_km };
};
