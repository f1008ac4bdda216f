/** The Sun warning that every command naming a place to point carries by itself, when there is something to warn of. */
import { type Target } from '../../catalogue/target.js';
import type { Level } from '../../reply/reply.js';
import { degrees } from '../../reply/wording.js';
import { SUN_HORIZON_ALTITUDE_DEG } from '../../sky/rise-set.js';
import { sunSafety, type SunLevel } from '../../sky/sun-safety.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { cautionText } from '../../cautions/cautions.js';
import type { Deps } from '../core/deps.js';

export interface SunWarning {
  /** About the place pointed at: `clear` when nothing needs saying. */
  readonly level: SunLevel;
  /** Ready to append to a reply's cautions; empty when the level is clear. */
  readonly cautions: readonly string[];
}

const RANK: readonly Level[] = ['good', 'info', 'caution', 'danger'];

/** The more serious of two reply levels; info counts as more than good, so that it never hides behind it. */
export const graver = (a: Level, b: Level): Level => (RANK.indexOf(b) > RANK.indexOf(a) ? b : a);

/** A reply's level with a Sun level added: `clear` changes nothing. */
export const levelWithSun = (level: Level, sun: SunLevel): Level => (sun === 'clear' ? level : graver(level, sun));

/**
 * How pointing at a target stands to the Sun. By day: danger and caution by the club's limits; before sunrise: caution with
 * the time, when the Sun rises within the hour; the Sun itself: always danger, with the filter text.
 */
export const sunWarning = (
  deps: Pick<Deps, 'sunLimits'>,
  target: Pick<Target, 'name' | 'body'>,
  observer: Observer,
  utcMs: UtcMs,
  zone: string,
): SunWarning => {
  const { level, separationDeg, sunAltitudeDeg, nextSunriseUtcMs } = sunSafety(
    target.body,
    observer,
    utcMs,
    deps.sunLimits,
  );
  if (level === 'clear') return { level, cautions: [] };
  if (target.body.kind === 'solarSystem' && target.body.body === 'Sun') {
    return { level, cautions: [`This is the Sun. ${cautionText('sun-filter')}`] };
  }
  if (sunAltitudeDeg <= SUN_HORIZON_ALTITUDE_DEG) {
    return {
      level,
      cautions: [`Sunrise at ${formatLocalTime(nextSunriseUtcMs ?? utcMs, zone)}. ${cautionText('sunrise')}`],
    };
  }
  return { level, cautions: [`The Sun is up, ${degrees(separationDeg)} from ${target.name}. ${cautionText('sun')}`] };
};
