/** How long before the Sun an inner planet rises, or after it sets: who looks for one has that time and no more. */
import type { Target } from '../../catalogue/index.js';
import { MS_PER_HOUR } from '../../ground/durations.js';
import { duration } from '../../reply/wording.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import { SUN } from '../../sky/twilight.js';
import type { Observer, UtcMs } from '../../sky/types.js';

const INNER = /^(?:mercury|venus)$/u;
/** No inner planet is farther from the Sun than 47°, which is some four or five hours; common practice, no source. */
const MOST_MS = 6 * MS_PER_HOUR;

/** ", 3 h 50 min before the Sun"; "" for other targets, and where it rises or sets in daylight. */
export const besideSunWords = (
  { id }: Pick<Target, 'id'>,
  event: 'rise' | 'set' | 'transit',
  utcMs: UtcMs,
  observer: Observer,
): string => {
  if (!INNER.test(id) || event === 'transit') return '';
  const isRise = event === 'rise';
  const sun = isRise
    ? riseTransitSet(SUN, observer, utcMs, utcMs + MOST_MS).riseUtcMs
    : riseTransitSet(SUN, observer, utcMs - MOST_MS, utcMs).setUtcMs;
  return sun === null ? '' : `, ${duration(Math.abs(sun - utcMs))} ${isRise ? 'before' : 'after'} the Sun`;
};
