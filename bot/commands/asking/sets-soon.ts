/** When a target that is up sets, told before anybody sends a tube there. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../../ground/durations.js';
import { hoursMinutes } from '../../reply/wording.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import type { Observer, SkyBody, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';

/** So near its setting nothing is worth a slew but what is bright; common practice, no source. */
const SOON_MIN = 60;

export interface Setting {
  /** "22:16 GMT, in 11 min". */
  readonly words: string;
  readonly isSoon: boolean;
}

/** Null: it does not set in the day from then. */
export const settingOf = (
  body: SkyBody,
  {
    observer,
    zone,
    utcMs,
    isNow = true,
  }: {
    readonly observer: Observer;
    readonly zone: string;
    readonly utcMs: UtcMs;
    /** The instant is now; of another hour it is told how long after that. */
    readonly isNow?: boolean;
  },
): Setting | null => {
  const { setUtcMs } = riseTransitSet(body, observer, utcMs, utcMs + MS_PER_DAY);
  if (setUtcMs === null) return null;
  const minutes = Math.floor((setUtcMs - utcMs) / MS_PER_MINUTE);
  const after = minutes < SOON_MIN ? `${minutes} min` : hoursMinutes(minutes);
  return {
    words: `${formatLocalTime(setUtcMs, zone)}, ${isNow ? `in ${after}` : `${after} after that hour`}`,
    isSoon: minutes < SOON_MIN,
  };
};
