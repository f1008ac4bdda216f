/** What is said first of something bright that is seen by day: most often it is the Sun. */
import { isTowards, offDeg, type Towards } from '../../evening/towards.js';
import type { PointsAt } from '../../reply/reply.js';
import { degrees, direction } from '../../reply/wording.js';
import { horizontalOf } from '../../sky/place.js';
import { sunUpAltitudeDeg } from '../../sky/sun-safety.js';
import { SUN } from '../../sky/twilight.js';
import type { Observer, UtcMs } from '../../sky/types.js';

/** So far aside of where it was said to be the Sun is meant all the same; common practice, no source. */
const SUN_ASIDE_DEG = 60;

export interface BrightByDay {
  readonly isDay: boolean;
  /** The Sun, where it is what was seen: it is judged with the others. */
  readonly points: readonly Pick<PointsAt, 'what' | 'direction'>[];
  /** What else would be said, and what comes before it. */
  readonly before: (words: string) => string;
}

export const brightByDay = (observer: Observer, utcMs: UtcMs, towards: Towards | null): BrightByDay => {
  const at = horizontalOf(SUN, observer, utcMs);
  if (at.altitudeDeg <= sunUpAltitudeDeg(observer)) return { isDay: false, points: [], before: (words) => words };
  const stands = `${degrees(Math.max(0, at.altitudeDeg))} high in the ${direction(at.azimuthDeg)}`;
  const isThere =
    towards === null || (towards === 'overhead' ? isTowards(towards, at) : offDeg(towards, at) <= SUN_ASIDE_DEG);
  return isThere
    ? {
        isDay: true,
        points: [{ what: 'the Sun', direction: SUN }],
        before: () => `It is day then: that is the Sun, ${stands}. Do not look at it, and point nothing there.`,
      }
    : {
        isDay: true,
        points: [],
        before: (words) => `It is day then, the Sun ${stands}: never sweep for anything. ${words}`,
      };
};
