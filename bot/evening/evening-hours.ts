/** Which hours of a night to list for: the evening, as people observe it, or the hours asked for; never hours that are past. */
import { MS_PER_HOUR } from '../ground/durations.js';
import type { TimeSpan } from '../sky/night.js';
import type { UtcMs } from '../sky/types.js';

/** The evening ends half an hour past midnight on the clocks, but lasts this long in any case; common practice, no source. */
const SHORTEST_MS = 3 * MS_PER_HOUR;

export interface HoursAsked {
  /** Darkness, or the darkest there is. */
  readonly dark: TimeSpan;
  /** The Sun at least 6° down. */
  readonly bright: TimeSpan;
  /** Half past midnight on the site's clocks. */
  readonly bedtimeUtcMs: UtcMs;
  readonly nowUtcMs: UtcMs;
  readonly fromUtcMs: UtcMs | null;
  readonly untilUtcMs: UtcMs | null;
}

export interface EveningHours {
  /** For faint things. */
  readonly window: TimeSpan;
  /** For Moon and planets. */
  readonly brightWindow: TimeSpan;
}

const within = (span: TimeSpan, utcMs: UtcMs): UtcMs => Math.max(span.startUtcMs, Math.min(span.endUtcMs, utcMs));
const isSpan = ({ startUtcMs, endUtcMs }: TimeSpan): boolean => endUtcMs > startUtcMs;

/** Null where none of the night's dark and twilit hours are among those asked for. */
export const eveningHours = (asked: HoursAsked): EveningHours | null => {
  const { dark, bright, bedtimeUtcMs, nowUtcMs, fromUtcMs, untilUtcMs } = asked;
  const isUnderWay = nowUtcMs > bright.startUtcMs && nowUtcMs < bright.endUtcMs;
  const earliest = Math.max(fromUtcMs ?? bright.startUtcMs, isUnderWay ? nowUtcMs : bright.startUtcMs);
  const begins = Math.max(earliest, fromUtcMs === null ? dark.startUtcMs : earliest);
  const ends = untilUtcMs ?? Math.max(bedtimeUtcMs, begins + SHORTEST_MS);
  const brightWindow = { startUtcMs: within(bright, earliest), endUtcMs: within(bright, ends) };
  if (!isSpan(brightWindow)) return null;
  const window = { startUtcMs: within(dark, begins), endUtcMs: within(dark, ends) };
  // Asked for twilight alone: what shows in it is judged by its light.
  return { brightWindow, window: isSpan(window) ? window : brightWindow };
};
