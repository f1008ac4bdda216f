/** Reads an instant as a member types it, on the clocks of a site's zone. */
import { isProblem } from '../ground/problem.js';
import { DateTime } from 'luxon';
import { MS_PER_HOUR, MS_PER_MINUTE } from '../ground/durations.js';
import { cleanText, LONGEST_TEXT } from '../ground/fold-text.js';
import { EPHEMERIS_FIRST_YEAR, EPHEMERIS_LAST_YEAR } from '../sky/ephemeris-range.js';
import { addDays, NIGHT_ENDS_AT_HOUR, readDay, todayAndTonight, type DayText } from './calendar-words.js';
import { readClock, type ClockText } from './clock-reading.js';
import { formatClock, formatDate, formatLocalTime, localDateAt, zoneName } from './format-local.js';
import { localToUtc, NOON, offsetMinutes, type ClockReading } from './local-to-utc.js';
import type { LocalDate, TimeResolution } from './time-resolution.js';
import { timeProblem, type TimeFault } from './wording.js';

/** What a day without a time is taken to mean: well into the evening, wherever one is. */
const EVENING: ClockReading = { hour: 22, minute: 0, second: 0 };

const within = (utcMs: number, note?: string): TimeResolution => {
  const year = new Date(utcMs).getUTCFullYear();
  if (!(year >= EPHEMERIS_FIRST_YEAR && year <= EPHEMERIS_LAST_YEAR))
    return timeProblem({ problem: 'out-of-range', year });
  return { utcMs, ...(note === undefined || note === '' ? {} : { note }) };
};

const at = (date: LocalDate, clock: ClockReading, zone: string, notes: readonly string[] = []): TimeResolution => {
  const { utcMs, clocks } = localToUtc(date, clock, zone);
  const two = (n: number): string => String(n).padStart(2, '0');
  const reading = `${two(clock.hour)}:${two(clock.minute)}`;
  const day = formatDate(date);
  const daylight: string[] = [];
  if (clocks === 'skipped') {
    daylight.push(`The clocks are put forward past ${reading} on ${day}; took ${formatLocalTime(utcMs, zone)}.`);
  }
  if (clocks === 'repeated') {
    daylight.push(
      `The clocks are put back on ${day} and show ${reading} twice; took the first, ${formatLocalTime(utcMs, zone)}. For the second add its offset, such as ${secondReading(date, clock, zone)}.`,
    );
  }
  return within(utcMs, [...notes, ...daylight].join(' '));
};

/** The ISO form, with its offset, of the second time that the clocks show a repeated reading. */
const secondReading = (date: LocalDate, clock: ClockReading, zone: string): string => {
  const first = localToUtc(date, clock, zone).utcMs;
  const gain = offsetMinutes(zone, first) - offsetMinutes(zone, first + 24 * MS_PER_HOUR);
  return DateTime.fromMillis(first + gain * MS_PER_MINUTE, { zone }).toFormat("yyyy-MM-dd'T'HH:mmZZ");
};

/** "in 2 hours", "in 1h 30m", "in half an hour", "90 minutes ago" as milliseconds from now; null when the text is none. */
const fromNow = (words: string): number | null => {
  const match = /^(?:in (.+)|(.+) ago|\+(.+))$/.exec(words);
  if (!match) return null;
  const text = (match[1] ?? match[2] ?? match[3] ?? '')
    .replace(/\bhalf an? hour\b/, '30 min')
    .replace(/\b(?:an?|one)\b/g, '1')
    .replace(/\band\b/g, ' ')
    .trim();
  const parts = /^(?:(\d{1,4}(?:\.\d+)?)\s?(?:h|hr|hrs|hours?))?\s*(?:(\d{1,5})\s?(?:m|min|mins|minutes?)?)?$/.exec(
    text,
  );
  if (!parts || (parts[1] === undefined && (parts[2] === undefined || /^\d+$/.test(text)))) return null;
  const size = Number(parts[1] ?? 0) * MS_PER_HOUR + Number(parts[2] ?? 0) * MS_PER_MINUTE;
  return match[2] === undefined ? size : -size;
};

/** ISO 8601 with an offset or Z, the T or a space between date and time; null when the text is not of that form. */
const withOffset = (text: string): TimeResolution | null => {
  const match =
    /^(\d{4}-?\d{2}-?\d{2})[t ]\s?(\d{2}:?\d{2}(?::?\d{2}(?:[.,]\d{1,9})?)?)\s?(z|utc|gmt|[+-]\d{2}(?::?\d{2})?)$/.exec(
      text.replace(/[−–]/g, '-'),
    );
  if (!match) return null;
  const [, date = '', time = '', offset = ''] = match;
  const colons = time.includes(':') === date.includes('-');
  const zoneText = /^(?:z|utc|gmt)$/.test(offset) ? 'Z' : offset;
  const parsed = colons ? DateTime.fromISO(`${date}T${time}${zoneText}`) : DateTime.invalid('mixed');
  if (!parsed.isValid) return timeProblem({ problem: 'unreadable-time', text });
  return within(parsed.toMillis());
};

const nextNoon = (zone: string, nowUtcMs: number): number => {
  const today = localDateAt(nowUtcMs, zone);
  const noon = localToUtc(today, NOON, zone).utcMs;
  return noon >= nowUtcMs ? noon : localToUtc(addDays(today, 1), NOON, zone).utcMs;
};

const HANDS = /^next (1[0-2]|[1-9]):([0-5]\d)$/;
const HALF_DAY_HOURS = 12;

/** "next 11:00" on a clock with hands: the first time they stand so, before or after noon. Null when the text is none, or no zone shows it. */
const nextByHands = (words: string, zone: string, nowUtcMs: number): number | null => {
  const [, hours = '', minutes = ''] = HANDS.exec(words) ?? [];
  if (hours === '') return null;
  const today = localDateAt(nowUtcMs, zone);
  const hour = Number(hours) % HALF_DAY_HOURS;
  const instants = [today, addDays(today, 1)].flatMap((date) =>
    [hour, hour + HALF_DAY_HOURS].map(
      (inDay) => localToUtc(date, { hour: inDay, minute: Number(minutes), second: 0 }, zone).utcMs,
    ),
  );
  return instants.find((utcMs) => utcMs >= nowUtcMs) ?? null;
};

/** Words of three to five letters after a figure that are no zone's name. */
const NO_ZONE =
  /^(?:am|pm|[a-z]*day|today|noon|night|jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec|mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|june|july|march|april|hour|hours|days|weeks)$/;

/** Words for an instant that no site's clocks are needed for, and the next noon; null when the text is none of them. */
const plainInstant = (words: string, zone: string, nowUtcMs: number): TimeResolution | null => {
  if (words === 'now' || words === 'right now') return within(nowUtcMs);
  const ahead = fromNow(words);
  if (ahead !== null) return within(nowUtcMs + ahead);
  if (words === 'next noon') return within(nextNoon(zone, nowUtcMs));
  const byHands = nextByHands(words, zone, nowUtcMs);
  if (byHands !== null) return within(byHands);
  return withOffset(words);
};

/**
 * A time as a member types it, on the clocks of `zone` (IANA). Never throws.
 * - "now", "in 2 hours", "90 minutes ago"; "next noon", the first that has not passed; "next 11:00", the first
 *   time a clock with hands shows it; ISO 8601 with an offset or Z.
 * - A clock reading alone ("22:30", "4am") is of tonight: from noon on the evening's date, before noon the next
 *   morning's. Until 06:00 tonight is the night in progress: at 02:00 "4am" is two hours off, and "22:30" that of the
 *   coming evening, as its note says; "last night 22:30" has passed.
 * - With "tonight", "tomorrow night" or "friday night", readings before noon are of the morning after; with "today",
 *   "tomorrow", a weekday or a date, of that very date; in the small hours "tomorrow 22:00" is of the evening to come. "midnight"
 *   is always the one at the end of its day.
 * - A day without a time is 22:00, and said so.
 */
export const parseTime = (text: string, zone: string, nowUtcMs: number): TimeResolution => {
  if (text.length > LONGEST_TEXT) return timeProblem({ problem: 'too-long', text: '' });
  const words = cleanText(text).toLowerCase().replace(/\s+/g, ' ');
  if (words === '') return timeProblem({ problem: 'empty', text });
  const instant = plainInstant(words, zone, nowUtcMs);
  if (instant !== null) return instant;

  const zoned = /^(.*\d(?:\s?[ap]m)?)\s?(utc|gmt|z)$/.exec(words);
  if (zoned) return inUtc(zoned[1] ?? '', zone, nowUtcMs, words);
  const foreign = /^(.*\d(?:\s?[ap]m)?) ([a-z]{3,5})$/.exec(words);
  if (foreign && !NO_ZONE.test(foreign[2] ?? '')) {
    const inner = parseTime(foreign[1] ?? '', zone, nowUtcMs);
    if (isProblem(inner) || zoneName(inner.utcMs, zone).toLowerCase() === foreign[2]) return inner;
    return timeProblem({ problem: 'other-zone', text: words });
  }
  return onSiteClocks(words, zone, nowUtcMs);
};

/** A reading in UTC: of its date where it has one, else the one that falls in tonight, noon to noon on the site's clocks. */
const inUtc = (text: string, zone: string, nowUtcMs: number, words: string): TimeResolution => {
  const clock = readClock(text.trim());
  if (clock === null || isProblem(clock)) {
    const reading = onSiteClocks(text.trim(), 'Etc/UTC', nowUtcMs);
    return isProblem(reading) ? timeProblem({ problem: 'unreadable-time', text: words }) : reading;
  }
  const { tonight } = todayAndTonight(zone, nowUtcMs);
  const noon = localToUtc(tonight, NOON, zone).utcMs;
  const sameDay = localToUtc(localDateAt(noon, 'Etc/UTC'), clock.clock, 'Etc/UTC').utcMs;
  return within(sameDay < noon ? sameDay + 24 * MS_PER_HOUR : sameDay);
};

const onSiteClocks = (words: string, zone: string, nowUtcMs: number): TimeResolution => {
  const clock = readClock(words.replace(/^(?:at|@) ?/, ''));
  if (clock !== null) return isProblem(clock) ? timeProblem(clock) : clockAlone(clock.clock, zone, nowUtcMs);
  const day = readDay(words, zone, nowUtcMs);
  if (day !== null)
    return isProblem(day)
      ? timeProblem(day)
      : dayAlone(words, dateOf(words, day, EVENING, { zone, nowUtcMs }), zone, nowUtcMs);
  return dayAndClock(words, zone, nowUtcMs);
};

/** A clock reading without a day is of tonight; after midnight one of an evening is of the coming one. */
const clockAlone = (clock: ClockReading, zone: string, nowUtcMs: number): TimeResolution => {
  const { today, tonight } = todayAndTonight(zone, nowUtcMs);
  if (clock.hour < 12) return at(addDays(tonight, 1), clock, zone);
  const isAfterMidnight = today.day !== tonight.day;
  return at(
    today,
    clock,
    zone,
    isAfterMidnight ? ['Took the coming evening; for the one past say yesterday with the hour.'] : [],
  );
};

/** The evening before today's date, be it that of the night in progress. */
const LAST_EVENING = /^(?:last|yesterday) (?:night|evening)$/u;

/** A day without a clock reading is its evening, but for a "tonight" whose evening is over. */
const dayAlone = (words: string, date: LocalDate, zone: string, nowUtcMs: number): TimeResolution => {
  if (words === 'tonight' && nowUtcMs > localToUtc(date, EVENING, zone).utcMs)
    return within(nowUtcMs, `No time given: took now, ${formatClock(nowUtcMs, zone)}.`);
  return at(date, EVENING, zone, ['No time given: took 22:00.']);
};

/**
 * The date of a day's clock reading. After midnight "tomorrow" begins once one has slept: from the hour on at which the night ends it is the
 * date that has just begun, as it is for whole nights; hours before that are those of the coming night.
 */
const dateOf = (
  dayText: string,
  { date }: Exclude<DayText, TimeFault>,
  { hour }: ClockReading,
  { zone, nowUtcMs }: { readonly zone: string; readonly nowUtcMs: number },
): LocalDate =>
  dayText === 'tomorrow' && hour >= NIGHT_ENDS_AT_HOUR ? addDays(todayAndTonight(zone, nowUtcMs).tonight, 1) : date;

/** "Tonight at 9pm", in the small hours too: the evening to come, as the one before is "last night". */
const isTonightsEvening = (dayText: string, hour: number): boolean =>
  /^(?:tonight|this night)$/u.test(dayText) && hour >= NOON.hour;

/** A day and a clock reading in either order, wherever the words part so. */
const dayAndClock = (words: string, zone: string, nowUtcMs: number): TimeResolution => {
  const tokens = words
    .replace(/(\d)t(\d)/, '$1 $2')
    .replace(/\s(?:at|@)\s/g, ' ')
    .replace(/,\s/g, ' ')
    .split(' ');
  const parted = tokens.slice(1).flatMap((_, i): (readonly [string, string])[] => {
    const head = tokens.slice(0, i + 1).join(' ');
    const tail = tokens.slice(i + 1).join(' ');
    return [
      [head, tail],
      [tail, head],
    ];
  });
  let refused: TimeResolution | null = null;
  for (const [dayText, clockText] of parted) {
    const clock = readClock(clockText);
    const day = clock === null ? null : readDay(dayText, zone, nowUtcMs);
    if (clock === null || day === null) continue;
    if (isProblem(day)) refused ??= timeProblem(day);
    else if (isProblem(clock)) refused ??= timeProblem(clock);
    else if (LAST_EVENING.test(dayText) && clock.clock.hour >= 12)
      return at(addDays(todayAndTonight(zone, nowUtcMs).today, -1), clock.clock, zone);
    else {
      const read = clock.midnight ? EVENING : clock.clock;
      const date = isTonightsEvening(dayText, read.hour)
        ? todayAndTonight(zone, nowUtcMs).today
        : dateOf(dayText, day, read, { zone, nowUtcMs });
      return ofDay({ ...day, date }, clock, zone);
    }
  }
  return refused ?? timeProblem({ problem: 'unreadable-time', text: words });
};

const ofDay = (
  { date, night }: Exclude<DayText, TimeFault>,
  { clock, midnight }: Exclude<ClockText, TimeFault>,
  zone: string,
): TimeResolution => {
  const isNextDay = midnight || (night && clock.hour < 12);
  const notes = midnight && !night ? [`Took midnight at the end of ${formatDate(date)}.`] : [];
  return at(isNextDay ? addDays(date, 1) : date, clock, zone, notes);
};
