import type { PositionResolution } from './site-resolution.js';

/** `LAT,LON` in degrees (north and east positive), with N/S/E/W, D M S, or ISO 6709; null when it does not look like a position. */
export function parsePosition(text: string): PositionResolution {
  throw new Error(`not yet: ${text}`);
}
