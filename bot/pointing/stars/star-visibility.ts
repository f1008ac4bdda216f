/** Which stars a person can find and centre: in the twilight there is, clear of Sun, Moon, horizon, zenith and pole. */

/** Faintest magnitude found with the naked eye by the Sun's altitude in degrees. Common practice, no source. */
const FAINTEST_BY_SUN_ALTITUDE: readonly (readonly [sunAltitudeDeg: number, magnitude: number])[] = [
  [-3, -1.2],
  [-6, 0.8],
  [-9, 2],
  [-12, 3.5],
  [-18, 5.5],
];

/** Null while the sky is too bright for any star (the Sun above −3°). */
export const faintestVisibleMagnitude = (sunAltitudeDeg: number): number | null => {
  const first = FAINTEST_BY_SUN_ALTITUDE[0]!;
  if (sunAltitudeDeg > first[0]) return null;
  let before = first;
  for (const point of FAINTEST_BY_SUN_ALTITUDE) {
    if (sunAltitudeDeg >= point[0]) {
      const share = before[0] === point[0] ? 0 : (before[0] - sunAltitudeDeg) / (before[0] - point[0]);
      return before[1] + share * (point[1] - before[1]);
    }
    before = point;
  }
  return before[1];
};

/** Limits for alignment stars in degrees; common practice, no source. */
export const LOWEST_ALTITUDE_DEG = 20;
export const HIGHEST_ALTITUDE_DEG = 75;
export const LEAST_FROM_POLE_DEG = 20;
export const ABOVE_PROFILE_DEG = 2;

export interface StarCircumstances {
  readonly magnitude: number;
  readonly altitudeDeg: number;
  readonly decDeg: number;
  /** How high the site's own horizon stands there. */
  readonly horizonDeg: number;
  /** Null with the Moon down. */
  readonly moonSeparationDeg: number | null;
  readonly moonIlluminatedFraction: number;
  readonly sunAltitudeDeg: number;
}

export type Unfit = 'low' | 'hidden' | 'high' | 'pole' | 'moon' | 'twilight';

/** Why a star will not do; null when it will. */
export const unfitReason = (star: StarCircumstances): Unfit | null => {
  const faintest = faintestVisibleMagnitude(star.sunAltitudeDeg);
  if (star.altitudeDeg < LOWEST_ALTITUDE_DEG) return 'low';
  if (star.altitudeDeg < star.horizonDeg + ABOVE_PROFILE_DEG) return 'hidden';
  if (star.altitudeDeg > HIGHEST_ALTITUDE_DEG) return 'high';
  if (90 - Math.abs(star.decDeg) < LEAST_FROM_POLE_DEG) return 'pole';
  if (star.moonSeparationDeg !== null && star.moonSeparationDeg < 3 + 9 * star.moonIlluminatedFraction) return 'moon';
  return faintest === null || star.magnitude > faintest ? 'twilight' : null;
};
