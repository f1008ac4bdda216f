/**
 * Which night is meant. "Tonight" is {@link todayAndTonight}'s: until 06:00 on the site's clocks the night in progress, from then
 * on the coming one. An instant lies in the night that runs from local mean noon to the next, whatever the clocks show.
 */
import { MS_PER_DAY } from '../ground/durations.js';
import { localDateOfNight, nightOf, type TimeSpan } from '../sky/night.js';
import type { UtcMs } from '../sky/types.js';
import { todayAndTonight } from './calendar-words.js';
import { formatDate } from './format-local.js';
import { localToUtc, NOON, offsetMinutes } from './local-to-utc.js';
import type { LocalDate } from './time-resolution.js';

export interface NamedNight extends TimeSpan {
  /** On whose evening it begins. */
  readonly date: LocalDate;
  /** "Wed 25 Nov 2026". */
  readonly said: string;
}

/** What of a site decides which night is meant. */
interface Place {
  /** IANA. */
  readonly zone: string;
  readonly observer: { readonly longitudeDeg: number };
}

/** The night that begins on the date's evening. */
export const nightOn = (date: LocalDate, { zone, observer }: Place): NamedNight => ({
  date,
  said: formatDate(date),
  ...nightOf(date, observer.longitudeDeg, offsetMinutes(zone, localToUtc(date, NOON, zone).utcMs)),
});

const BEDTIME = { hour: 0, minute: 30, second: 0 };

/** Half past midnight on the site's clocks in a night; common practice, no source. */
export const bedtimeOf = ({ date }: NamedNight, zone: string): UtcMs =>
  localToUtc(date, BEDTIME, zone).utcMs + MS_PER_DAY;

/** Tonight. */
export const tonightAt = (place: Place, nowUtcMs: UtcMs): NamedNight =>
  nightOn(todayAndTonight(place.zone, nowUtcMs).tonight, place);

/** The night that an instant lies in, and the night after: where something is looked for from that instant on. */
export const nightsFrom = (utcMs: UtcMs, place: Place): readonly [NamedNight, NamedNight] => {
  const { longitudeDeg } = place.observer;
  const holding = (instant: UtcMs): NamedNight =>
    nightOn(localDateOfNight(instant, longitudeDeg, offsetMinutes(place.zone, instant)), place);
  const first = holding(utcMs);
  return [first, holding(first.endUtcMs)];
};

/** The night that an instant lies in. */
export const nightAround = (utcMs: UtcMs, place: Place): NamedNight => nightsFrom(utcMs, place)[0];
