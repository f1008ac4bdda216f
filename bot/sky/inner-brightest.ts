/** When Venus and Mercury are brightest: Venus at its greatest brilliancy, Mercury where it stands clear of the twilight. */
import { Body, SearchPeakMagnitude } from 'astronomy-engine';
import { MS_PER_DAY } from '../ground/durations.js';
import { apparentMagnitude } from './brightness.js';
import { engineTime } from './engine-time.js';
import { nightOf } from './night.js';
import { horizontalOf } from './place.js';
import { twilights } from './twilight.js';
import type { Observer, UtcMs } from './types.js';

export interface Brightest {
  readonly utcMs: UtcMs;
  readonly magnitude: number;
}

/** A peak that has only just been is the one that is meant; the light stays within a tenth of a magnitude for a fortnight about it. */
const JUST_PAST_DAYS = 21;

/** The greatest brilliancy of Venus about or after an instant (a maximum of astronomy-engine's magnitude, after Hilton 2005). */
export const venusBrightest = (aboutUtcMs: UtcMs): Brightest => {
  const { time, mag } = SearchPeakMagnitude(Body.Venus, engineTime(aboutUtcMs - JUST_PAST_DAYS * MS_PER_DAY));
  return { utcMs: time.date.getTime(), magnitude: mag };
};

export interface MercurySeen extends Brightest {
  readonly altitudeDeg: number;
  readonly isMorning: boolean;
}

/** Three apparitions in the morning and three in the evening come in a year. */
const LOOKED_AHEAD_DAYS = 130;
/** Lower than this at civil dusk or dawn nobody finds it; common practice, no source. */
const LEAST_DEG = 5;
const MERCURY = { kind: 'solarSystem', body: 'Mercury' } as const;

/** At civil dusk or dawn of the days to come, high enough; null where it never is, as in the far north in summer. */
export const mercuryBrightest = (observer: Observer, fromUtcMs: UtcMs): MercurySeen | null => {
  let best: MercurySeen | null = null;
  for (let day = 0; day < LOOKED_AHEAD_DAYS; day++) {
    const date = new Date(fromUtcMs + day * MS_PER_DAY);
    const night = nightOf(
      { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() },
      observer.longitudeDeg,
      observer.longitudeDeg * 4,
    );
    const { civil } = twilights(observer, night.startUtcMs, night.endUtcMs);
    for (const [utcMs, isMorning] of [
      [civil?.duskUtcMs ?? null, false],
      [civil?.dawnUtcMs ?? null, true],
    ] as const) {
      if (utcMs === null || utcMs < fromUtcMs) continue;
      const { altitudeDeg } = horizontalOf(MERCURY, observer, utcMs);
      const magnitude = altitudeDeg < LEAST_DEG ? Infinity : apparentMagnitude('Mercury', utcMs);
      if (magnitude < (best?.magnitude ?? Infinity)) best = { utcMs, magnitude, altitudeDeg, isMorning };
    }
  }
  return best;
};
