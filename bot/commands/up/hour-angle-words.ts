/** An hour angle in words, and when the target was on the meridian or comes to it. */
import { nextAtHourAngle } from '../../pointing/mount/tracking-limit.js';
import { hoursMinutes } from '../../reply/wording.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import type { TargetAtSite } from '../asking/question-parts.js';
import { lastCrossing } from '../meridian/by-hour.js';

/** "−3 h 14 min", a true minus sign before what is east of the meridian. */
export const hourAngleText = (hours: number): string => {
  const minutes = Math.round(Math.abs(hours) * 60);
  const time = hoursMinutes(minutes);
  if (minutes === 0) return '0 h, on the meridian';
  return hours < 0 ? `−${time}, east of the meridian` : `+${time}, west of the meridian`;
};

/** When it was on the meridian, or comes to it. */
export const crossingWords = ({ target: { body }, where: { site } }: TargetAtSite, utcMs: UtcMs): string => {
  const { observer, zone } = site;
  const last = lastCrossing({ body, observer, utcMs });
  return last === null
    ? `; it crosses it at ${formatLocalTime(nextAtHourAngle(body, observer, utcMs, 0), zone)}`
    : `; it crossed it at ${formatLocalTime(last, zone)}`;
};
