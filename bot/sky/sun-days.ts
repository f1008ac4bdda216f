/** The Sun's days at a place: how long one is, and when polar night or polar day ends; and the turns of the year. */
import { Seasons } from 'astronomy-engine';
import { MS_PER_DAY } from '../ground/durations.js';
import type { TimeSpan } from './night.js';
import { horizontalOf } from './place.js';
import { riseTransitSet, SUN_HORIZON_ALTITUDE_DEG, type RiseTransitSet } from './rise-set.js';
import { SUN } from './twilight.js';
import type { Observer, UtcMs } from './types.js';

export interface SunDay {
  readonly riseUtcMs: UtcMs | null;
  readonly setUtcMs: UtcMs | null;
  /** How long the Sun is up: 0 in polar night, the whole of it in polar day. */
  readonly lengthMs: number;
  /** When it stands highest, and how high, without the air. */
  readonly noonUtcMs: UtcMs;
  readonly noonAltitudeDeg: number;
}

/** Of a date on the clocks, from midnight to midnight. */
export const sunDay = (observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): SunDay => {
  const found = riseTransitSet(SUN, observer, startUtcMs, endUtcMs);
  const { riseUtcMs, setUtcMs, transitUtcMs } = found;
  const noonUtcMs = transitUtcMs ?? (startUtcMs + endUtcMs) / 2;
  return {
    riseUtcMs,
    setUtcMs,
    lengthMs: lengthMs(found, { startUtcMs, endUtcMs }),
    noonUtcMs,
    noonAltitudeDeg: horizontalOf(SUN, observer, noonUtcMs).altitudeDeg,
  };
};

/** A day that begins or ends with the Sun up has one of the two alone, or the setting before the rising. */
const lengthMs = (
  { riseUtcMs, setUtcMs, alwaysUp, neverUp }: RiseTransitSet,
  { startUtcMs, endUtcMs }: TimeSpan,
): number => {
  if (neverUp) return 0;
  if (alwaysUp) return endUtcMs - startUtcMs;
  const [rise, set] = [riseUtcMs ?? startUtcMs, setUtcMs ?? endUtcMs];
  return set > rise ? set - rise : endUtcMs - startUtcMs - (rise - set);
};

const MOST_DAYS = 200;

/** The first rising or setting from an instant on, however far off; null: none within the half year that polar night lasts at most. */
export const nextSun = (observer: Observer, what: 'rise' | 'set', fromUtcMs: UtcMs): UtcMs | null => {
  for (let day = 0; day < MOST_DAYS; day += 2) {
    const startUtcMs = fromUtcMs + day * MS_PER_DAY;
    const found = riseTransitSet(SUN, observer, startUtcMs, startUtcMs + 2 * MS_PER_DAY);
    const utcMs = what === 'rise' ? found.riseUtcMs : found.setUtcMs;
    if (utcMs !== null) return utcMs;
  }
  return null;
};

/** Whether its edge is above a level horizon. */
export const isSunRisen = (observer: Observer, utcMs: UtcMs): boolean =>
  horizontalOf(SUN, observer, utcMs).altitudeDeg > SUN_HORIZON_ALTITUDE_DEG;

export const TURNS = ['March equinox', 'June solstice', 'September equinox', 'December solstice'] as const;
export type Turn = (typeof TURNS)[number];

/** The next four turns of the year from an instant on, in order. */
export const yearTurns = (fromUtcMs: UtcMs): readonly { readonly turn: Turn; readonly utcMs: UtcMs }[] => {
  const year = new Date(fromUtcMs).getUTCFullYear();
  return [year, year + 1]
    .flatMap((each) => {
      const { mar_equinox, jun_solstice, sep_equinox, dec_solstice } = Seasons(each);
      return [mar_equinox, jun_solstice, sep_equinox, dec_solstice].map((time, i) => ({
        turn: TURNS[i] ?? 'March equinox',
        utcMs: time.date.getTime(),
      }));
    })
    .filter(({ utcMs }) => utcMs >= fromUtcMs)
    .slice(0, TURNS.length);
};
