/** The next eclipse of the Sun from a place in a sentence: whether it is total there, which decides when a filter may come off. */
import { MS_PER_DAY } from '../../../ground/durations.js';
import { timeZoneAt, type Spot } from '../../../places/index.js';
import { solarEclipses, type Eclipse } from '../../../sky/eclipses.js';
import type { UtcMs } from '../../../sky/types.js';
import { formatLocalDate } from '../../../times/index.js';

const LOOK_AHEAD_MS = 3 * 365 * MS_PER_DAY;

const outcomeOf = ({ kind, coveredFraction }: Eclipse): string => {
  if (kind === 'total') return 'is total there: ask its times with ahead eclipses';
  return `${kind === 'annular' ? 'is a ring there' : `covers ${Math.floor(coveredFraction * 100)} % there`}: the filter stays on throughout`;
};

/** "From your site the next eclipse of the Sun (Mon 2 Aug 2027) covers 33 % there: the filter stays on throughout." */
export const nextEclipseWords = ({ latitudeDeg, longitudeDeg }: Spot, nowUtcMs: UtcMs): string => {
  const observer = { latitudeDeg, longitudeDeg, elevationM: 0 };
  const [next] = solarEclipses(observer, { startUtcMs: nowUtcMs, endUtcMs: nowUtcMs + LOOK_AHEAD_MS });
  if (next === undefined) return 'At your site no eclipse of the Sun comes within three years.';
  const day = formatLocalDate(next.greatestUtcMs, timeZoneAt(latitudeDeg, longitudeDeg));
  return `At your site the next (${day}) ${outcomeOf(next)}.`;
};
