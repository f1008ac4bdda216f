/** Local dates and times in words: 24-hour clock, the zone named. */
import { MS_PER_MINUTE } from '../ground/durations.js';
import { tableOf } from '../ground/table-of.js';
import { clocksAsUtcMs, offsetMinutes } from './local-to-utc.js';
import type { LocalDate } from './time-resolution.js';

const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
/** Each knows the everyday abbreviations of its own part of the world (Unicode CLDR). */
const LOCALES = ['en-US', 'en-GB', 'en-AU', 'en-CA', 'en-IN', 'en-ZA'];
/** Those that know any in a part of the world; a test asks all of them. Each asked takes 50 kB and 0.2 ms. */
const LOCALES_OF = tableOf<readonly string[]>({
  Africa: ['en-US', 'en-GB', 'en-ZA'],
  America: ['en-US', 'en-CA'],
  Antarctica: ['en-US', 'en-AU'],
  Arctic: ['en-GB'],
  Asia: ['en-GB', 'en-IN'],
  Atlantic: ['en-US', 'en-GB'],
  Australia: ['en-AU'],
  Etc: ['en-US'],
  Europe: ['en-US', 'en-GB'],
  Indian: ['en-ZA'],
  Pacific: ['en-US', 'en-AU'],
});
const localesOf = (zone: string): readonly string[] => LOCALES_OF.get(zone.slice(0, zone.indexOf('/'))) ?? LOCALES;

const two = (n: number): string => String(n).padStart(2, '0');
const abbreviations = new Map<string, string>();

const offsetName = (minutes: number): string => {
  if (minutes === 0) return 'UTC';
  const size = Math.abs(minutes);
  return `UTC${minutes < 0 ? '−' : '+'}${Math.floor(size / 60)}${size % 60 === 0 ? '' : `:${two(Math.floor(size % 60))}`}`;
};

/** "MST", "CET"; where the zone has no English abbreviation, its offset: "UTC+5:45". */
export const zoneName = (utcMs: number, zone: string): string => {
  const offset = offsetMinutes(zone, utcMs);
  // A year's hours of one offset have one name: asking Intl costs a millisecond or more.
  const key = `${zone} ${offset} ${new Date(utcMs).getUTCFullYear()}`;
  let name = abbreviations.get(key);
  if (name === undefined) {
    name = offsetName(offset);
    for (const locale of localesOf(zone)) {
      try {
        const part =
          new Intl.DateTimeFormat(locale, { timeZone: zone, timeZoneName: 'short' })
            .formatToParts(utcMs)
            .find((p) => p.type === 'timeZoneName')?.value ?? '';
        if (/^[A-Z]{2,5}$/.test(part)) {
          name = part;
          break;
        }
      } catch {
        break; // Not a zone that Intl knows: its offset is all there is to say.
      }
    }
    if (abbreviations.size < 5000) abbreviations.set(key, name);
  }
  return name;
};

/** "23:40", to the nearest minute. */
export const formatClock = (utcMs: number, zone: string): string => {
  const local = new Date(clocksAsUtcMs(zone, Math.round(utcMs / MS_PER_MINUTE) * MS_PER_MINUTE));
  return `${two(local.getUTCHours())}:${two(local.getUTCMinutes())}`;
};

/** "23:40 MST"; where the zone has no English abbreviation, its offset: "23:40 UTC+5:45". */
export const formatLocalTime = (utcMs: number, zone: string): string => {
  return `${formatClock(utcMs, zone)} ${zoneName(Math.round(utcMs / MS_PER_MINUTE) * MS_PER_MINUTE, zone)}`;
};

/** The date that the clocks of `zone` show at an instant. */
export const localDateAt = (utcMs: number, zone: string): LocalDate => {
  const local = new Date(clocksAsUtcMs(zone, utcMs));
  return { year: local.getUTCFullYear(), month: local.getUTCMonth() + 1, day: local.getUTCDate() };
};

/** "Wed 25 Nov 2026" of a date that stands alone. */
export const formatDate = (date: LocalDate): string => {
  const weekday = new Date(Date.UTC(date.year, date.month - 1, date.day)).getUTCDay();
  return `${DAYS[weekday]} ${date.day} ${MONTHS[date.month - 1]} ${date.year}`;
};

/** "Wed 25 Nov 2026" on the clocks of `zone`. */
export const formatLocalDate = (utcMs: number, zone: string): string => {
  return formatDate(localDateAt(utcMs, zone));
};

/** "Wed 25 Nov 2026, 23:40 MST". */
export const formatLocalDateTime = (utcMs: number, zone: string): string => {
  const rounded = Math.round(utcMs / MS_PER_MINUTE) * MS_PER_MINUTE;
  return `${formatLocalDate(rounded, zone)}, ${formatLocalTime(rounded, zone)}`;
};

/** "Wed 25 Nov 2026, 23:40:17 MST": where a second counts; a full minute is said without. */
export const formatLocalSecond = (utcMs: number, zone: string): string => {
  const rounded = Math.round(utcMs / 1000) * 1000;
  if (rounded % MS_PER_MINUTE === 0) return formatLocalDateTime(rounded, zone);
  const local = new Date(clocksAsUtcMs(zone, rounded));
  const clock = [local.getUTCHours(), local.getUTCMinutes(), local.getUTCSeconds()].map(two).join(':');
  return `${formatLocalDate(rounded, zone)}, ${clock} ${zoneName(rounded, zone)}`;
};

/** "19:40 to 04:48 GMT"; over a change of the clocks each in its own: "19:40 BST to 04:48 GMT". */
export const formatSpan = (startUtcMs: number, endUtcMs: number, zone: string): string => {
  const start =
    zoneName(startUtcMs, zone) === zoneName(endUtcMs, zone)
      ? formatClock(startUtcMs, zone)
      : formatLocalTime(startUtcMs, zone);
  return `${start} to ${formatLocalTime(endUtcMs, zone)}`;
};
