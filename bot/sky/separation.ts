/** How far apart two bodies stand in one observer's sky. */
import { horizontalSeparationDeg } from './angles.js';
import { horizontalOf } from './place.js';
import type { Observer, SkyBody, UtcMs } from './types.js';

/** The angle between two bodies' centres, apparent and topocentric, airless, 0..180°. */
export const bodySeparationDeg = (a: SkyBody, b: SkyBody, observer: Observer, utcMs: UtcMs): number =>
  horizontalSeparationDeg(horizontalOf(a, observer, utcMs), horizontalOf(b, observer, utcMs));
