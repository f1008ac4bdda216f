/** Whether words name a country or a part of one: what stands after a town to say which of its name is meant. */
import { onceOf } from '../ground/once.js';
import { isCountry } from './countries.js';
import { foldPlace } from './fold-place.js';
import type { Places } from './load-places.js';

/** The largest places lie in every region that anybody names. */
const LARGEST = 4000;
const LEAST_LETTERS = 4;

const regionsOf = onceOf(
  (places: Places) =>
    new Set(
      places
        .rowsBeginning('', LARGEST)
        .map((row) => foldPlace(places.placeAt(row).region))
        .filter((region) => region.length >= LEAST_LETTERS),
    ),
);

/** "Ontario", "New Zealand", "scotland"; short forms are none, as they are words as well. */
export const namesRegion = (places: Places, text: string): boolean => {
  const folded = foldPlace(text);
  return isCountry(folded) || regionsOf(places).has(folded);
};
