/** When a zone's clocks are next put forward and back. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../ground/durations.js';
import type { UtcMs } from '../sky/types.js';
import { offsetMinutes } from './local-to-utc.js';

export interface ClockChange {
  readonly utcMs: UtcMs;
  /** More than 0: forward. */
  readonly byMinutes: number;
  /** What the clocks show just before, in minutes after midnight. */
  readonly fromMinutes: number;
}

const LOOK_AHEAD_DAYS = 400;
const MINUTES_PER_DAY = MS_PER_DAY / MS_PER_MINUTE;

/** To the minute, between two instants whose offsets differ. */
const changeBetween = (zone: string, beforeUtcMs: UtcMs, afterUtcMs: UtcMs): ClockChange => {
  const old = offsetMinutes(zone, beforeUtcMs);
  let [low, high] = [Math.floor(beforeUtcMs / MS_PER_MINUTE), Math.ceil(afterUtcMs / MS_PER_MINUTE)];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetMinutes(zone, middle * MS_PER_MINUTE) === old) low = middle;
    else high = middle;
  }
  const utcMs = high * MS_PER_MINUTE;
  return {
    utcMs,
    byMinutes: offsetMinutes(zone, utcMs) - old,
    fromMinutes: (((high + old) % MINUTES_PER_DAY) + MINUTES_PER_DAY) % MINUTES_PER_DAY,
  };
};

/** Within the year to come, in order; none where the clocks stay as they are. */
export const clockChanges = (zone: string, fromUtcMs: UtcMs): readonly ClockChange[] => {
  const found: ClockChange[] = [];
  for (let day = 0; day < LOOK_AHEAD_DAYS; day++) {
    const [before, after] = [fromUtcMs + day * MS_PER_DAY, fromUtcMs + (day + 1) * MS_PER_DAY];
    if (offsetMinutes(zone, before) !== offsetMinutes(zone, after)) found.push(changeBetween(zone, before, after));
  }
  return found;
};
