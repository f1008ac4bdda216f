/** The headline: how it stands at the hour asked about, or now, before what the night holds. */
import type { Outlook } from '../../evening/outlook.js';
import { leastAltitudeDegOf } from '../../evening/pick.js';
import { compassWord, degrees } from '../../reply/wording.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import { SUN_HORIZON_ALTITUDE_DEG } from '../../sky/rise-set.js';
import { SUN } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { formatClock, formatLocalTime } from '../../times/index.js';
import type { TargetAtSite } from '../asking/question-parts.js';

export interface AtHour {
  readonly utcMs: UtcMs;
  readonly altitudeDeg: number;
  /** High enough to be looked at, and the Sun down. */
  readonly isUseful: boolean;
  readonly words: string;
}

const nextRise = ({ times }: Outlook, utcMs: UtcMs, zone: string): string =>
  times.riseUtcMs !== null && times.riseUtcMs > utcMs ? `; it rises at ${formatClock(times.riseUtcMs, zone)}` : '';

/** "At 22:00 GMT down, 3° below the horizon; it rises at 22:19." */
export const atHour = ({ target, where }: TargetAtSite, found: Outlook, utcMs: UtcMs): AtHour => {
  const { observer, zone } = where.site;
  const { altitudeDeg, azimuthDeg } = horizontalOf(target.body, observer, utcMs);
  const isDay = horizontalOf(SUN, observer, utcMs).altitudeDeg > SUN_HORIZON_ALTITUDE_DEG;
  const least = leastAltitudeDegOf(target.body);
  const time = formatLocalTime(utcMs, zone);
  const there = `${degrees(altitudeDeg)} high in the ${compassWord(azimuthDeg)}`;
  const low = altitudeDeg < least ? ', low' : '';
  return {
    utcMs,
    altitudeDeg,
    isUseful: altitudeDeg >= least && !isDay,
    words:
      altitudeDeg > 0
        ? `At ${time} ${there}${isDay ? ', but by day' : low}.`
        : `At ${time} down, ${degrees(-altitudeDeg)} below the horizon${nextRise(found, utcMs, zone)}.`,
  };
};

/** "Not up yet: it rises at 22:19." while the night is under way; null where it is up, or nothing is to come. */
export const notYet = (
  { target, where }: TargetAtSite,
  { times, verdict }: Outlook,
  night: TimeSpan,
  nowUtcMs: UtcMs,
): string | null => {
  const { observer, zone } = where.site;
  const { riseUtcMs } = times;
  const isUnderWay = nowUtcMs > night.startUtcMs && nowUtcMs < night.endUtcMs;
  if (!isUnderWay || verdict !== 'up' || riseUtcMs === null || riseUtcMs <= nowUtcMs) return null;
  const isDark = horizontalOf(SUN, observer, nowUtcMs).altitudeDeg < SUN_HORIZON_ALTITUDE_DEG;
  const isDown = horizontalOf(target.body, observer, nowUtcMs).altitudeDeg <= 0;
  return isDark && isDown ? `Not up yet: it rises at ${formatLocalTime(riseUtcMs, zone)}.` : null;
};
