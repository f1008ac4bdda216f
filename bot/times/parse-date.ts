import type { DateResolution } from './time-resolution.js';

/** The date of the evening on which a night begins, as a member types it: "tonight", "tomorrow", "2026-12-01", "friday", "1 Dec". Never throws. */
export function parseDate(text: string, zone: string, nowUtcMs: number): DateResolution {
  throw new Error(`not yet: ${text} ${zone} ${nowUtcMs}`);
}
