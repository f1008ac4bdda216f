/** What a zone's clocks do at an instant: offset, daylight saving, and the wall clock's figures. */
import { DateTime } from 'luxon';
import type { LocalClock } from '../pointing/miss/astray-types.js';
import type { UtcMs } from '../sky/types.js';

export interface SiteClock extends LocalClock {
  readonly local: DateTime;
  /** Local time minus UTC without daylight saving. */
  readonly standardOffsetMinutes: number;
}

/** Daylight saving is what the offset exceeds the year's least by (as clocks and controllers see it, also where a law calls winter the exception). */
export const siteClock = (zone: string, utcMs: UtcMs): SiteClock => {
  const local = DateTime.fromMillis(utcMs, { zone });
  const offsets = [1, 7].map((month) => DateTime.fromObject({ year: local.year, month }, { zone }).offset);
  const daylightSavingMinutes = Math.max(0, local.offset - Math.min(...offsets));
  return {
    local,
    utcOffsetMinutes: local.offset,
    daylightSavingMinutes,
    standardOffsetMinutes: local.offset - daylightSavingMinutes,
    zoneHasDaylightSaving: offsets[0] !== offsets[1],
  };
};

/** "UTC−7", "UTC+5:45". */
export const offsetWords = (minutes: number): string => {
  const size = Math.abs(minutes);
  return `UTC${minutes < 0 ? '−' : '+'}${Math.floor(size / 60)}${size % 60 === 0 ? '' : `:${String(size % 60).padStart(2, '0')}`}`;
};
