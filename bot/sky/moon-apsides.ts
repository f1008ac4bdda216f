/** When the Moon is next nearest to the Earth, and when farthest. */
import { ApsisKind, NextLunarApsis, SearchLunarApsis } from 'astronomy-engine';
import { engineTime } from './engine-time.js';
import type { UtcMs } from './types.js';

export interface MoonApsis {
  readonly what: 'perigee' | 'apogee';
  readonly utcMs: UtcMs;
  /** From the Earth's centre. */
  readonly distanceKm: number;
}

/** The next of both after an instant, in order; they take turns, some two weeks apart. */
export const nextMoonApsides = (fromUtcMs: UtcMs): readonly [MoonApsis, MoonApsis] => {
  const first = SearchLunarApsis(engineTime(fromUtcMs));
  const told = ({ kind, time, dist_km }: typeof first): MoonApsis => ({
    what: kind === ApsisKind.Pericenter ? 'perigee' : 'apogee',
    utcMs: time.date.getTime(),
    distanceKm: dist_km,
  });
  return [told(first), told(NextLunarApsis(first))];
};
