/** For whoever goes to bed after midnight: the best of the evening, where the night's best comes later. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import type { Outlook } from '../../evening/outlook.js';
import type { ChartPoint, Fact } from '../../reply/reply.js';
import { compassWord, degrees } from '../../reply/wording.js';
import { bestTime } from '../../sky/best-time.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import type { UtcMs } from '../../sky/types.js';
import { bedtimeOf, formatClock, formatLocalTime, type NamedNight } from '../../times/index.js';
import type { TargetAtSite } from '../asking/question-parts.js';

/** Hours nearer together than this are one to whoever plans an evening. */
const SAME_HOUR_MS = 45 * MS_PER_MINUTE;
/** Lower than this in the evening it is not worth a line. */
const LEAST_EVENING_DEG = 10;

/** Null where there is none, or none worth saying. */
export const eveningBest = (
  { target, where }: TargetAtSite,
  night: NamedNight,
  { best, verdict, isMoonAvoided }: Outlook,
  dark: TimeSpan | null,
  nowUtcMs: UtcMs,
): ChartPoint | null => {
  const { observer, zone } = where.site;
  const bedtimeUtcMs = bedtimeOf(night, zone);
  const startUtcMs = Math.max(dark?.startUtcMs ?? best.utcMs, nowUtcMs < night.endUtcMs ? nowUtcMs : 0);
  const comesLater = best.utcMs - bedtimeUtcMs >= SAME_HOUR_MS && startUtcMs < bedtimeUtcMs;
  if (verdict !== 'up' || isMoonAvoided || !comesLater || where.horizon !== null) return null;
  const evening = bestTime(target.body, observer, { startUtcMs, endUtcMs: bedtimeUtcMs });
  return evening.altitudeDeg < LEAST_EVENING_DEG ? null : evening;
};

/** Past midnight is no evening: it has climbed so high by then, and climbs on. */
const isPastMidnight = (utcMs: UtcMs, zone: string): boolean =>
  Number(formatClock(utcMs, zone).slice(0, 2)) < EARLY_HOUR;
const EARLY_HOUR = 6;

export const eveningFact = ({ target, where }: TargetAtSite, evening: ChartPoint | null): readonly Fact[] => {
  if (evening === null) return [];
  const { observer, zone } = where.site;
  const { azimuthDeg } = horizontalOf(target.body, observer, evening.utcMs);
  const direction = compassWord(azimuthDeg);
  return [
    {
      label: 'This evening',
      value: isPastMidnight(evening.utcMs, zone)
        ? `still climbing, ${degrees(evening.altitudeDeg)} in the ${direction} by ${formatLocalTime(evening.utcMs, zone)}`
        : `best ${formatLocalTime(evening.utcMs, zone)}, ${degrees(evening.altitudeDeg)} in the ${direction}`,
    },
  ];
};
