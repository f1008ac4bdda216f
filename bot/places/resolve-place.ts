import type { Places } from './load-places.js';
import type { PlaceResolution } from './site-resolution.js';

/** "Calgary", "Springfield, Illinois", "Cambridge GB"; never throws. */
export function resolvePlace(_places: Places, text: string): PlaceResolution {
  throw new Error(`not yet: ${text}`);
}
