/** In which country somebody stands: that of the nearest of the large places. */
import { onceOf } from '../ground/once.js';
import { distanceKm, type Spot } from './distance.js';
import type { Places } from './load-places.js';
import type { PlaceRecord } from './site-resolution.js';

const LARGEST = 4000;

const largestOf = onceOf((places: Places): readonly PlaceRecord[] =>
  places.rowsBeginning('', LARGEST).map((row) => places.placeAt(row)),
);

/** Two letters; "" where the list is empty. */
export const countryAt = (places: Places, spot: Spot): string => {
  let nearest = '';
  let leastKm = Infinity;
  for (const place of largestOf(places)) {
    const km = distanceKm(place, spot);
    if (km >= leastKm) continue;
    leastKm = km;
    nearest = place.countryCode;
  }
  return nearest;
};
