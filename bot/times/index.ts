/** The door to plain-word times: read what a member typed, and say instants in a site's local clocks. */
export { parseTime } from './parse-time.js';
export { parseDate } from './parse-date.js';
export { MONTH_WORDS, MONTHS, weekdayOf } from './calendar-words.js';
export { nightsOver } from './nights-over.js';
export {
  formatClock,
  formatDate,
  formatLocalDate,
  formatLocalDateTime,
  formatLocalSecond,
  formatLocalTime,
  formatSpan,
  localDateAt,
  zoneName,
} from './format-local.js';
export { localToUtc, offsetMinutes } from './local-to-utc.js';
export { clockChanges, type ClockChange } from './clock-changes.js';
export { offsetWords, siteClock, type SiteClock } from './site-clock.js';
export { isOfThatDate, namesHour, namesNight } from './day-words.js';
export { bedtimeOf, nightAround, nightOn, nightsFrom, tonightAt, type NamedNight } from './nights.js';
export { parsePeriod, type Period } from './periods.js';
