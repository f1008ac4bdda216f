/** Sunrise and sunset as every answer tells them: the almanacs' hour first, and the one that is safe to go by from a height behind it. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import { SUN } from '../../sky/twilight.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { formatClock, formatLocalTime } from '../../times/index.js';

/** From a height its edge shows so much sooner at most than on level ground. */
const MOST_DIP_MS = 60 * MS_PER_MINUTE;

/** The instant of almanacs (upper edge, level horizon, 34′ of refraction) beside one with the dip of a high place in it. */
const almanacInstant = (observer: Observer, dippedUtcMs: UtcMs, event: 'rise' | 'set'): UtcMs => {
  const isRise = event === 'rise';
  const { riseUtcMs, setUtcMs } = riseTransitSet(
    SUN,
    observer,
    dippedUtcMs - (isRise ? MS_PER_MINUTE : MOST_DIP_MS),
    dippedUtcMs + (isRise ? MOST_DIP_MS : MS_PER_MINUTE),
  );
  return (isRise ? riseUtcMs : setUtcMs) ?? dippedUtcMs;
};

/** "08:04 GMT (from a height 08:02)"; without the second where it is the same minute. */
export const sunEdgeWords = (
  observer: Observer,
  dippedUtcMs: UtcMs,
  event: 'rise' | 'set',
  zone: string,
  format: (utcMs: UtcMs, zone: string) => string = formatLocalTime,
): string => {
  const level = almanacInstant(observer, dippedUtcMs, event);
  const dipped = formatClock(dippedUtcMs, zone);
  return `${format(level, zone)}${formatClock(level, zone) === dipped ? '' : ` (from a height ${dipped})`}`;
};
