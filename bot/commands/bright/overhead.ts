/** Which constellation stands overhead. */
import { constellationName } from '../../catalogue/index.js';
import { constellationAt } from '../../sky/constellation.js';
import { j2000FromHorizontal } from '../../sky/place.js';
import type { Observer, UtcMs } from '../../sky/types.js';

const ZENITH = { altitudeDeg: 90, azimuthDeg: 0 };

export const constellationOverhead = (observer: Observer, utcMs: UtcMs): string =>
  constellationName(constellationAt(j2000FromHorizontal(ZENITH, observer, utcMs)));
