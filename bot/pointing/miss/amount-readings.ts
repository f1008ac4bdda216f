/** What a sidereal time off by some amount can come from: which clock, date, longitude or stored place would give just that. */
import { wrapDeg180 } from '../../sky/angles.js';
import type { StoredPlace } from './astray-types.js';

/** The mean Sun's daily motion in minutes of sidereal time (Explanatory Supplement: 3 min 56.555 s). */
const MINUTES_PER_DAY = 3.942_585;
const NEAR_MINUTES = 1.5;
/** Beyond so many days one types another month. */
const MOST_DAYS = 45;
const DAYS_PER_YEAR = 365.2422;

export type AmountReading =
  | { readonly kind: 'clock'; readonly minutes: number }
  /** The controller's date minus the true one. */
  | { readonly kind: 'date'; readonly days: number }
  /** The controller stands at 1 January, as many do that have forgotten. */
  | { readonly kind: 'default-date' }
  | { readonly kind: 'longitude'; readonly longitudeDeg: number }
  | { readonly kind: 'stored-place'; readonly name: string };

/**
 * The readings that fit, the most telling first: another stored place, a forgotten date, whole days, then the clock and the
 * longitude, which fit any amount.
 * @param offsetMinutes positive where the controller's sidereal time is ahead
 * @param dayOfYear 1 on 1 January, local
 */
export const amountReadings = (
  offsetMinutes: number,
  dayOfYear: number,
  longitudeDeg: number,
  places: readonly StoredPlace[],
): AmountReading[] => {
  const differs = (minutes: number): number => Math.abs(wrapDeg180((minutes - offsetMinutes) / 4) * 4);
  const stored = places.filter(
    (place) =>
      Math.abs(place.longitudeDeg - longitudeDeg) > 0.3 &&
      differs((place.longitudeDeg - longitudeDeg) * 4) < 2 * NEAR_MINUTES,
  );
  // 1 January of this year or of the next: by the sidereal time they are alike.
  const isDefaultDate = [1 - dayOfYear, 1 - dayOfYear + DAYS_PER_YEAR].some(
    (days) => Math.abs(days) > 2 && differs(days * MINUTES_PER_DAY) < NEAR_MINUTES,
  );
  const days = Math.round(offsetMinutes / MINUTES_PER_DAY);
  const isDays = days !== 0 && Math.abs(days) <= MOST_DAYS && differs(days * MINUTES_PER_DAY) < NEAR_MINUTES;
  return [
    ...stored.map(({ name }): AmountReading => ({ kind: 'stored-place', name })),
    ...(isDefaultDate ? [{ kind: 'default-date' } as const] : []),
    ...(isDays ? [{ kind: 'date', days } as const] : []),
    { kind: 'clock', minutes: offsetMinutes },
    { kind: 'longitude', longitudeDeg: wrapDeg180(longitudeDeg + offsetMinutes / 4) },
  ];
};
