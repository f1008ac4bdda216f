/** What reminders say, and why one cannot be set. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { tidy } from '../../ground/tidy.js';
import { problem, type Problem } from '../../ground/problem.js';
import type { Target } from '../../catalogue/index.js';
import { clearanceDeg } from '../../pointing/horizon/horizon-profile.js';
import { capital, compassWord, degrees, degreesAsAsked, listed } from '../../reply/wording.js';
import type { Moment } from '../../reminders/find-moment.js';
import { horizontalOf } from '../../sky/place.js';
import { riseTransitSet, SUN_HORIZON_ALTITUDE_DEG } from '../../sky/rise-set.js';
import { SUN } from '../../sky/twilight.js';
import { formatClock, formatLocalTime } from '../../times/index.js';
import type { ResolvedSite } from '../asking/resolve-site.js';
import { tableOf } from '../../ground/table-of.js';

export type ReminderKind = 'altitude' | 'horizon' | 'transit' | 'set' | 'hour' | 'dark' | 'sunrise';

const LONGEST_WORDS = 120;

/** What the member wants to be told, as a sentence. */
export const ownWords = (say: string): string => {
  const words = tidy(say, LONGEST_WORDS);
  return `${capital(words)}${/[.!?…]$/u.test(words) ? '' : '.'}`;
};

/** "30° high in the east-north-east (67°)". */
const place = (target: Target, { site }: ResolvedSite, utcMs: number): string => {
  const { altitudeDeg, azimuthDeg } = horizontalOf(target.body, site.observer, utcMs);
  return `${degrees(altitudeDeg)} high in the ${compassWord(azimuthDeg)} (${Math.round(azimuthDeg) % 360}°)`;
};

/** "The Sun has set (16:48 GMT), and", where that is what was waited for; else a night to come begins so. */
const beforeIt = ({ site: { observer, zone } }: ResolvedSite, utcMs: number): string => {
  const time = formatLocalTime(utcMs, zone);
  const hasSet = Math.abs(horizontalOf(SUN, observer, utcMs).altitudeDeg - SUN_HORIZON_ALTITUDE_DEG) < 0.5;
  return hasSet ? `The Sun has set (${time}), and` : `At ${time}`;
};

/** Higher than asked at the moment itself: it passed the altitude by day, and the Sun has only now set. */
export const altitudeText = (target: Target, where: ResolvedSite, aboveDeg: number, { utcMs }: Moment): string => {
  const passedByDay = horizontalOf(target.body, where.site.observer, utcMs).altitudeDeg > aboveDeg + 0.1;
  const time = formatLocalTime(utcMs, where.site.zone);
  return passedByDay
    ? `${beforeIt(where, utcMs)} ${target.name} is already ${place(target, where, utcMs)}, seen from ${where.site.name}.`
    : `${target.name} passes ${degreesAsAsked(aboveDeg)} at ${time}, in the ${compassWord(horizontalOf(target.body, where.site.observer, utcMs).azimuthDeg)}, seen from ${where.site.name}.`;
};

export const horizonText = (target: Target, where: ResolvedSite, { utcMs }: Moment): string => {
  const time = formatLocalTime(utcMs, where.site.zone);
  const passedByDay = clearanceDeg(where.horizon, horizontalOf(target.body, where.site.observer, utcMs)) > 0.1;
  return passedByDay
    ? `${beforeIt(where, utcMs)} ${target.name} is already clear of the horizon of ${where.site.name}, ${place(target, where, utcMs)}.`
    : `${target.name} clears the horizon of ${where.site.name} at ${time}, ${place(target, where, utcMs)}.`;
};

export const transitText = (target: Target, where: ResolvedSite, { utcMs }: Moment): string =>
  `${target.name} crosses the meridian at ${formatLocalTime(utcMs, where.site.zone)}, ${place(target, where, utcMs)}, seen from ${where.site.name}. A German mount flips sides about now.`;

export const dueText = (target: Target, where: ResolvedSite, side: string, { utcMs }: Moment): string =>
  `${target.name} is due ${side} at ${formatLocalTime(utcMs, where.site.zone)}, ${place(target, where, utcMs)}, seen from ${where.site.name}.`;

export const riseText = (target: Target, where: ResolvedSite, { utcMs }: Moment): string => {
  const { azimuthDeg } = horizontalOf(target.body, where.site.observer, utcMs);
  return `${target.name} rises at ${formatLocalTime(utcMs, where.site.zone)} in the ${compassWord(azimuthDeg)}, seen from ${where.site.name}.`;
};

export const setText = (target: Target, where: ResolvedSite, { utcMs }: Moment): string =>
  `${target.name} sets at ${formatLocalTime(utcMs, where.site.zone)}, seen from ${where.site.name}.`;

/** "It is 23:00 GMT: Jupiter is 30° high in the east (95°), seen from …", or that it is down. */
export const hourText = (target: Target | null, where: ResolvedSite, { utcMs }: Moment): string => {
  const time = formatLocalTime(utcMs, where.site.zone);
  if (target === null) return `It is ${time}, as you asked.`;
  const { altitudeDeg } = horizontalOf(target.body, where.site.observer, utcMs);
  const { riseUtcMs } = riseTransitSet(target.body, where.site.observer, utcMs, utcMs + MS_PER_DAY);
  const rises = riseUtcMs === null ? '' : ` until ${formatLocalTime(riseUtcMs, where.site.zone)}`;
  return altitudeDeg > 0
    ? `It is ${time}: ${target.name} is ${place(target, where, utcMs)}, seen from ${where.site.name}.`
    : `It is ${time}, and ${target.name} is below the horizon${rises}, seen from ${where.site.name}.`;
};

export const darkText = (where: ResolvedSite, { utcMs, untilUtcMs }: Moment): string =>
  `It is astronomically dark at ${where.site.name} from ${formatClock(utcMs, where.site.zone)} to ${formatLocalTime(untilUtcMs, where.site.zone)}.`;

const EVENINGS = tableOf({ mon: 1, tue: 2, wed: 3, thu: 4, fri: 5, sat: 6, sun: 7 });
const EVENING_NAMES = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** "every", or evenings by name: "fri sat"; as ISO weekdays in order. */
export const readEvenings = (text: string): readonly number[] | Problem => {
  const words = text
    .toLowerCase()
    .split(/[\s,;+&]+/u)
    .filter((word) => word !== '' && word !== 'and' && word !== 'nights' && word !== 'night');
  if (words.length === 1 && ['every', 'all', 'daily', 'yes'].includes(words[0] ?? '')) return [1, 2, 3, 4, 5, 6, 7];
  const evenings = words.map((word) => EVENINGS.get(word.slice(0, 3)));
  if (
    evenings.length === 0 ||
    words.some(
      (word, i) =>
        evenings[i] === undefined ||
        !EVENING_NAMES[(evenings[i] ?? 1) - 1]?.toLowerCase().startsWith(word.replace(/s$/u, '')),
    )
  ) {
    return problem('bad-nights', 'nights: takes every, or the evenings by name, such as nights:"fri sat".');
  }
  return [...new Set(evenings.filter((evening) => evening !== undefined))].sort((a, b) => a - b);
};

/** "every day", "every Monday and Friday". */
export const daysWords = (days: readonly number[]): string =>
  days.length === 7 ? 'every day' : `every ${listed(days.map((day) => EVENING_NAMES[day - 1] ?? ''))}`;

export const eveningsWords = (evenings: readonly number[]): string =>
  evenings.length === 7
    ? 'every night'
    : `on the nights of ${listed(evenings.map((evening) => EVENING_NAMES[evening - 1] ?? ''))}`;
