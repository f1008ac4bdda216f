import type { TimeResolution } from './time-resolution.js';

/** A time as a member types it, in the clocks of `zone` (IANA): ISO 8601, "tonight 22:30", "tomorrow 4am", "in 2 hours". Never throws. */
export function parseTime(text: string, zone: string, nowUtcMs: number): TimeResolution {
  throw new Error(`not yet: ${text} ${zone} ${nowUtcMs}`);
}
