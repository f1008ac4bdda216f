/** How a direction stands to the Sun at the worst instant of a stretch of time. */
import { MS_PER_HOUR, MS_PER_MINUTE } from '../ground/durations.js';
import { horizontalSeparationDeg } from './angles.js';
import { crossingsOf, intervalsBelow, leastIn, type TimeFunction } from './crossings.js';
import type { TimeSpan } from './night.js';
import { horizontalOf } from './place.js';
import { SUN_HORIZON_ALTITUDE_DEG } from './rise-set.js';
import { sunLevel, sunSeparationDeg, sunUpHeight, type SunLevel, type SunLimits } from './sun-safety.js';
import { SUN } from './twilight.js';
import type { Horizontal, Observer, SkyBody, UtcMs } from './types.js';

/** A body of the sky, or a direction fixed to the ground. */
export type SunDirection = SkyBody | Horizontal;

export interface SunAtWorst {
  /** The worst instant of the span; its start where all is clear. */
  readonly utcMs: UtcMs;
  readonly level: SunLevel;
  readonly isSun: boolean;
  /** At that instant; 0 for the Sun itself. */
  readonly separationDeg: number;
  readonly isSunUp: boolean;
  /** The next sunrise where it is what calls for the caution, else null. */
  readonly sunriseUtcMs: UtcMs | null;
}

const isBody = (direction: SunDirection): direction is SkyBody => 'kind' in direction;
const isTheSun = (direction: SunDirection): boolean =>
  isBody(direction) && direction.kind === 'solarSystem' && direction.body === 'Sun';

/** Bodies drift past the Sun by under a degree an hour; what is fixed to the ground sees it pass at fifteen. */
const BODY_STEP_MS = MS_PER_HOUR;
const GROUND_STEP_MS = 10 * MS_PER_MINUTE;

const separationFrom =
  (direction: SunDirection, observer: Observer): TimeFunction =>
  (utcMs) =>
    isBody(direction)
      ? sunSeparationDeg(direction, observer, utcMs)
      : horizontalSeparationDeg(horizontalOf(SUN, observer, utcMs), direction);

/** The stretches of a span with the Sun up; a span may be a single instant. */
const daylightIn = (height: TimeFunction, { startUtcMs, endUtcMs }: TimeSpan): readonly TimeSpan[] => {
  if (endUtcMs <= startUtcMs) return height(startUtcMs) > 0 ? [{ startUtcMs, endUtcMs: startUtcMs }] : [];
  return intervalsBelow((utcMs) => -height(utcMs), startUtcMs, endUtcMs);
};

/**
 * The worst instant of a span: by day the nearest to the Sun (sampled and refined), else the last hour before a sunrise.
 * A span whose end is not after its start is the instant of its start.
 */
export const sunAtWorst = (
  direction: SunDirection,
  observer: Observer,
  span: TimeSpan,
  limits?: SunLimits,
): SunAtWorst => {
  const { startUtcMs, endUtcMs } = span;
  const isSun = isTheSun(direction);
  const height = sunUpHeight(observer);
  const separation = separationFrom(direction, observer);
  const judged = (utcMs: UtcMs, sunriseUtcMs: UtcMs | null, isByDay = false): SunAtWorst => {
    const separationDeg = isSun ? 0 : separation(utcMs);
    // The worst of a day may be its very last instant, where rounding has the Sun just down.
    const isSunUp = isByDay || (sunriseUtcMs === null && !(height(utcMs) <= 0));
    const level = sunLevel({
      separationDeg,
      sunAltitudeDeg: isSunUp ? SUN_HORIZON_ALTITUDE_DEG + 1 : SUN_HORIZON_ALTITUDE_DEG,
      isSun,
      secondsToSunrise: sunriseUtcMs === null ? null : (sunriseUtcMs - utcMs) / 1000,
      ...(limits && { limits }),
    });
    return { utcMs, level, isSun, separationDeg, isSunUp, sunriseUtcMs };
  };
  if (isSun) return judged(startUtcMs, null);
  const stepMs = isBody(direction) ? BODY_STEP_MS : GROUND_STEP_MS;
  const byDay = daylightIn(height, span)
    .map((day) => judged(leastIn(separation, day, stepMs), null, true))
    .reduce<SunAtWorst | null>(
      (worst, at) => (worst === null || at.separationDeg < worst.separationDeg ? at : worst),
      null,
    );
  if (byDay !== null && byDay.level !== 'clear') return byDay;
  const sunrise = crossingsOf(height, startUtcMs, Math.max(startUtcMs, endUtcMs) + MS_PER_HOUR).find(
    ({ rising }) => rising,
  );
  if (sunrise !== undefined) return judged(Math.max(startUtcMs, sunrise.utcMs - MS_PER_HOUR), sunrise.utcMs);
  return byDay ?? judged(startUtcMs, null);
};
