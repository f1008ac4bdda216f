/** Day and night where the asker usually stands: what a sentence means may hang on whether the Sun is up at the hour it names. */
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import { isProblem } from '../../../ground/problem.js';
import { timeZoneAt, type Spot } from '../../../places/index.js';
import { horizontalOf } from '../../../sky/place.js';
import { sunUpAltitudeDeg } from '../../../sky/sun-safety.js';
import { SUN } from '../../../sky/twilight.js';
import { formatClock } from '../../../times/index.js';
import type { UtcMs } from '../../../sky/types.js';
import { dayTimeFor, timeFor } from '../question-parts.js';

export interface DayAt {
  /** Whether the Sun is up at an hour in the words of the time rooms; true where they cannot be read. */
  readonly isSunUp: (hour: string) => boolean;
  /** By how many minutes an hour of tonight is past; less than 0: it is to come, or cannot be read. */
  readonly minutesPast: (hour: string) => number;
  /** Whether the Sun is so far down at an hour that stars show, its centre 6° below the horizon. */
  readonly isDark: (hour: string) => boolean;
  /** From noon to six on the clocks. */
  readonly isAfternoon: boolean;
}

const CIVIL_DEG = -6;
const NOON_HOUR = 12;
const EVENING_HOUR = 18;

export const dayAt = ({ latitudeDeg, longitudeDeg }: Spot, nowUtcMs: UtcMs): DayAt => {
  const observer = { latitudeDeg, longitudeDeg, elevationM: 0 };
  const zone = timeZoneAt(latitudeDeg, longitudeDeg);
  // Each line asks of this very moment many times.
  const upAt = new Map<string, boolean>();
  const hour = Number(formatClock(nowUtcMs, zone).slice(0, 2));
  return {
    isAfternoon: hour >= NOON_HOUR && hour < EVENING_HOUR,
    minutesPast: (asked) => {
      const time = timeFor(asked, zone, nowUtcMs);
      return isProblem(time) ? -1 : Math.round((nowUtcMs - time.utcMs) / MS_PER_MINUTE);
    },
    isDark: (asked) => {
      const time = dayTimeFor(asked, zone, nowUtcMs);
      return !isProblem(time) && horizontalOf(SUN, observer, time.utcMs).altitudeDeg < CIVIL_DEG;
    },
    isSunUp: (asked) => {
      const known = upAt.get(asked);
      if (known !== undefined) return known;
      const time = dayTimeFor(asked, zone, nowUtcMs);
      const isUp = isProblem(time) || horizontalOf(SUN, observer, time.utcMs).altitudeDeg > sunUpAltitudeDeg(observer);
      upAt.set(asked, isUp);
      return isUp;
    },
  };
};
