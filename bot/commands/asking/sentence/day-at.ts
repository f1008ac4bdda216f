/** Day and night where the asker usually stands: what a sentence means may hang on whether the Sun is up at the hour it names. */
import { isProblem } from '../../../ground/problem.js';
import { timeZoneAt, type Spot } from '../../../places/index.js';
import { horizontalOf } from '../../../sky/place.js';
import { sunUpAltitudeDeg } from '../../../sky/sun-safety.js';
import { SUN } from '../../../sky/twilight.js';
import { formatClock } from '../../../times/index.js';
import type { UtcMs } from '../../../sky/types.js';
import { dayTimeFor } from '../question-parts.js';

export interface DayAt {
  /** Whether the Sun is up at an hour in the words of the time rooms; true where they cannot be read. */
  readonly isSunUp: (hour: string) => boolean;
  /** From noon to six on the clocks. */
  readonly isAfternoon: boolean;
}

const NOON_HOUR = 12;
const EVENING_HOUR = 18;

export const dayAt = ({ latitudeDeg, longitudeDeg }: Spot, nowUtcMs: UtcMs): DayAt => {
  const observer = { latitudeDeg, longitudeDeg, elevationM: 0 };
  const zone = timeZoneAt(latitudeDeg, longitudeDeg);
  const hour = Number(formatClock(nowUtcMs, zone).slice(0, 2));
  return {
    isAfternoon: hour >= NOON_HOUR && hour < EVENING_HOUR,
    isSunUp: (asked) => {
      const time = dayTimeFor(asked, zone, nowUtcMs);
      return isProblem(time) || horizontalOf(SUN, observer, time.utcMs).altitudeDeg > sunUpAltitudeDeg(observer);
    },
  };
};
