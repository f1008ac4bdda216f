/** Whether a target comes to the meridian, and a German mount to its flip, before an hour: from the start until then. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { isProblem, type Problem } from '../../ground/problem.js';
import { nextAtHourAngle } from '../../pointing/mount/tracking-limit.js';
import type { MountKind } from '../../pointing/mount/mount.js';
import { duration } from '../../reply/wording.js';
import { SIDEREAL_DEG_PER_MS } from '../../sky/earth.js';
import { placeOf } from '../../sky/place.js';
import type { Observer, SkyBody, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { dayTimeFor } from '../asking/question-parts.js';

/** One that comes so soon after the hour is the one that is meant; common practice, no source. */
const SOON_MS = 6 * MS_PER_HOUR;
const HALF_DAY_MS = 12 * MS_PER_HOUR;

export interface Crossing {
  readonly name: string;
  readonly body: SkyBody;
  readonly observer: Observer;
  readonly zone: string;
  /** From then on. */
  readonly utcMs: UtcMs;
  readonly mount: MountKind;
  /** How far past the meridian the mount tracks before it flips, in degrees. */
  readonly pastDeg: number;
}

/** The first such hour after the start. */
export const untilOf = (text: string, zone: string, startUtcMs: UtcMs): UtcMs | Problem => {
  const time = dayTimeFor(text, zone, startUtcMs);
  return isProblem(time) ? time : time.utcMs;
};

/** The last crossing, where that is less than half a day back; a target is west of the meridian since. */
export const lastCrossing = ({
  body,
  observer,
  utcMs,
}: Pick<Crossing, 'body' | 'observer' | 'utcMs'>): UtcMs | null => {
  if (placeOf(body, observer, utcMs).hourAngleHours <= 0) return null;
  const lastUtcMs = nextAtHourAngle(body, observer, utcMs - HALF_DAY_MS, 0);
  return lastUtcMs <= utcMs ? lastUtcMs : null;
};

/** "Yes, it crosses the meridian at 02:51, before 03:00, and the mount must flip." */
export const byHourWords = (crossing: Crossing, untilUtcMs: UtcMs): string => {
  const { body, observer, zone, utcMs, mount, pastDeg } = crossing;
  const time = (at: UtcMs): string => formatLocalTime(at, zone);
  const meridianUtcMs = nextAtHourAngle(body, observer, utcMs, 0);
  const isUp = placeOf(body, observer, meridianUtcMs).apparentAltitudeDeg > 0;
  const flipUtcMs = meridianUtcMs + (mount === 'german' ? pastDeg / SIDEREAL_DEG_PER_MS : 0);
  const before = `before ${time(untilUtcMs)}`;
  if (!isUp) return `No: it does not cross the meridian above the horizon here.`;
  if (meridianUtcMs > untilUtcMs) {
    const last = meridianUtcMs - untilUtcMs < SOON_MS ? null : lastCrossing(crossing);
    return last === null
      ? `No, not ${before}: it crosses the meridian at ${time(meridianUtcMs)}.`
      : `No, not ${before}: it crossed the meridian ${duration(utcMs - last)} ago, at ${time(last)}.`;
  }
  const crosses = `it crosses the meridian at ${time(meridianUtcMs)}`;
  if (mount !== 'german') return `Yes, ${crosses}, ${before}; your mount has no flip.`;
  return flipUtcMs > untilUtcMs
    ? `No, not ${before}: ${crosses}, but by your limits the mount need not flip until ${time(flipUtcMs)}.`
    : `Yes, ${before}: ${crosses}${pastDeg === 0 ? ', where the mount must flip' : `, and the mount must flip by ${time(flipUtcMs)}`}.`;
};
