/** What the Sun does, where that is what was asked: when it next sets or rises, whether it is up at all, how long the day is. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../../ground/durations.js';
import { degrees, duration } from '../../reply/wording.js';
import { isSunRisen, nextSun, sunDay, type SunDay } from '../../sky/sun-days.js';
import type { TimeSpan } from '../../sky/night.js';
import type { UtcMs } from '../../sky/types.js';
import {
  formatLocalDate,
  formatLocalDateTime,
  formatLocalTime,
  localDateAt,
  localToUtc,
  type NamedNight,
} from '../../times/index.js';
import { equationWords, noonWords } from './solar-noon.js';
import type { ResolvedSite } from '../asking/resolve-site.js';

type Site = ResolvedSite['site'];

const AGAINST_SUN = ['after-sunrise', 'before-sunrise', 'after-sunset', 'before-sunset'] as const;
const OF_NOON = ['solar-noon', 'sundial'] as const;
export const SUN_FIRST = ['sunset', 'sunrise', 'sun-up', 'sun-back', 'day-length', ...OF_NOON, ...AGAINST_SUN] as const;

/** Whether an hour is held against the Sun's rising or setting: nothing of it is called good. */
export const isAgainstSun = (first: string | undefined): boolean => AGAINST_SUN.some((one) => one === first);

export const isOfNoon = (first: string | undefined): boolean => OF_NOON.some((one) => one === first);

const MIDNIGHT = { hour: 0, minute: 0, second: 0 };
const TWO_DAYS_MS = 2 * MS_PER_DAY;

/** From midnight to midnight on the site's clocks. */
const dayFrom = (date: NamedNight['date'], zone: string): TimeSpan => {
  const startUtcMs = localToUtc(date, MIDNIGHT, zone).utcMs;
  const noonAfter = localDateAt(startUtcMs + 1.5 * MS_PER_DAY, zone);
  return { startUtcMs, endUtcMs: localToUtc(noonAfter, MIDNIGHT, zone).utcMs };
};

const eventWords = (what: 'rise' | 'set', { observer, zone }: Site, fromUtcMs: UtcMs, nowUtcMs: UtcMs): string => {
  const utcMs = nextSun(observer, what, fromUtcMs);
  if (utcMs === null) return `The Sun does not ${what} there in the half year to come`;
  if (utcMs - fromUtcMs > TWO_DAYS_MS)
    return `The Sun does not ${what} there in these days: polar ${isSunRisen(observer, fromUtcMs) ? 'day' : 'night'}. It next ${what}s on ${formatLocalDateTime(utcMs, zone)}`;
  const past = what === 'set' ? 'set' : 'rose';
  const does = `The Sun ${utcMs < nowUtcMs ? past : `${what}s`}`;
  return formatLocalDate(utcMs, zone) === formatLocalDate(nowUtcMs, zone)
    ? `${does} at ${formatLocalTime(utcMs, zone)}`
    : `${does}${fromUtcMs === nowUtcMs ? ' next' : ''} on ${formatLocalDateTime(utcMs, zone)}`;
};

const isWhole = ({ lengthMs }: SunDay): boolean => lengthMs >= MS_PER_DAY - 60_000;

/** "No: it stays down, at its highest 1.0° below the horizon at 11:32 CET. It next rises on …". */
const upWords = ({ observer, zone }: Site, day: TimeSpan): string => {
  const sun = sunDay(observer, day);
  const on = formatLocalDate((day.startUtcMs + day.endUtcMs) / 2, zone);
  if (sun.lengthMs === 0) {
    const next = nextSun(observer, 'rise', day.endUtcMs);
    const back = next === null ? '' : `. It comes back on ${formatLocalDateTime(next, zone)}`;
    return `No, the Sun stays down on ${on}: at its highest ${degrees(Math.abs(sun.noonAltitudeDeg), 1)} ${sun.noonAltitudeDeg < 0 ? 'below' : 'above'} the level horizon, at ${formatLocalTime(sun.noonUtcMs, zone)}${back}`;
  }
  if (isWhole(sun)) {
    const next = nextSun(observer, 'set', day.endUtcMs);
    return `Yes, all day on ${on}: the Sun does not set${next === null ? '' : ` before ${formatLocalDateTime(next, zone)}`}`;
  }
  const times = [
    ...(sun.riseUtcMs === null ? [] : [`rises at ${formatLocalTime(sun.riseUtcMs, zone)}`]),
    ...(sun.setUtcMs === null ? [] : [`sets at ${formatLocalTime(sun.setUtcMs, zone)}`]),
  ];
  const next = nextSun(observer, 'rise', day.endUtcMs);
  const isLast = next !== null && next - day.endUtcMs > TWO_DAYS_MS;
  return `Yes, on ${on} the Sun ${times.join(' and ')}${isLast ? `; not again before ${formatLocalDateTime(next, zone)}` : ''}`;
};

/** When polar night ends, or polar day; elsewhere tomorrow's rising. */
const backWords = (site: Site, nowUtcMs: UtcMs): string => {
  const { observer, zone } = site;
  const today = sunDay(observer, dayFrom(localDateAt(nowUtcMs, zone), zone));
  const words = isWhole(today)
    ? eventWords('set', site, nowUtcMs, nowUtcMs)
    : eventWords('rise', site, nowUtcMs, nowUtcMs);
  return /polar/u.test(words) || today.lengthMs === 0 ? words : `${words}: no polar night here now`;
};

const change = (ms: number): string => {
  const minutes = Math.round(Math.abs(ms) / 60_000);
  if (minutes === 0) return 'as long as the day before';
  return `${minutes} min ${ms > 0 ? 'longer' : 'shorter'} than the day before`;
};

const lengthWords = (site: Site, day: TimeSpan): string => {
  const { observer, zone } = site;
  const sun = sunDay(observer, day);
  const on = formatLocalDate((day.startUtcMs + day.endUtcMs) / 2, zone);
  if (sun.lengthMs === 0 || isWhole(sun)) return upWords(site, day).replace(/^(?:No|Yes), (?:the Sun )?/u, 'The Sun: ');
  const before = sunDay(observer, { startUtcMs: day.startUtcMs - MS_PER_DAY, endUtcMs: day.startUtcMs });
  const hours =
    sun.riseUtcMs === null || sun.setUtcMs === null
      ? ''
      : `, ${formatLocalTime(sun.riseUtcMs, zone)} to ${formatLocalTime(sun.setUtcMs, zone)}`;
  return `The day of ${on} is ${duration(sun.lengthMs)} long${hours}; ${change(sun.lengthMs - before.lengthMs)}`;
};

const NEAR_MS = 45 * MS_PER_MINUTE;

/** "No: 07:00 GMT is 1 h 4 min before sunrise, 08:04 GMT". */
const againstWords = (first: string, { observer, zone }: Site, night: TimeSpan, hourUtcMs: UtcMs): string => {
  const [way, event] = first.split('-');
  const isRise = event === 'sunrise';
  const utcMs = nextSun(observer, isRise ? 'rise' : 'set', night.startUtcMs);
  if (utcMs === null || utcMs > night.endUtcMs) return `The Sun does not ${isRise ? 'rise' : 'set'} there that night`;
  const isAfter = hourUtcMs >= utcMs;
  const apartMs = Math.abs(hourUtcMs - utcMs);
  const yes = isAfter === (way === 'after') ? 'Yes' : 'No';
  const near = apartMs < NEAR_MS ? ', and that is little' : '';
  return `${yes}: ${formatLocalTime(hourUtcMs, zone)} is ${duration(apartMs)} ${isAfter ? 'after' : 'before'} ${event ?? ''}, ${formatLocalTime(utcMs, zone)}${near}`;
};

/** Without its full stop; null where nothing of it was asked. */
export const sunFirst = (
  { first, on }: { readonly first?: string | undefined; readonly on?: string | undefined },
  site: Site,
  night: NamedNight,
  nowUtcMs: UtcMs,
  hourUtcMs: UtcMs | null,
): string | null => {
  if (first !== undefined && isAgainstSun(first))
    return hourUtcMs === null ? null : againstWords(first, site, night, hourUtcMs);
  const date = on === undefined ? localDateAt(nowUtcMs, site.zone) : night.date;
  const day = dayFrom(date, site.zone);
  switch (first) {
    case 'sunset':
    case 'sunrise':
      return eventWords(
        first === 'sunset' ? 'set' : 'rise',
        site,
        on === undefined ? nowUtcMs : day.startUtcMs,
        nowUtcMs,
      );
    case 'sun-up':
      return upWords(site, day);
    case 'sun-back':
      return backWords(site, nowUtcMs);
    case 'day-length':
      return lengthWords(site, day);
    case 'solar-noon':
      return noonWords(site, day);
    case 'sundial':
      return equationWords(site, day);
    default:
      return null;
  }
};
