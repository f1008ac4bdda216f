/** Suggestions as a member types a place's name: the largest first, each told apart by its region and country. */
import { createKept } from '../ground/kept.js';
import { onceOf } from '../ground/once.js';
import { cleanText, LONGEST_TEXT } from '../ground/fold-text.js';
import { foldPlace } from './fold-place.js';
import type { Places } from './load-places.js';
import { placeLabel, placeSpec } from './wording.js';

/** One suggestion: `value` resolves to the place alone; `label` (≤ 100 characters) is what a member sees. */
export interface PlaceCompletion {
  readonly value: string;
  readonly label: string;
}

/** How many places of a name's beginning are looked through for what follows the comma. */
const LOOKED_THROUGH = 400;

const named = (places: Places, folded: string): readonly number[] => {
  const { own, other } = places.rowsNamed(folded);
  return [...own, ...other].slice(0, LOOKED_THROUGH);
};

/** Many who type a name begin alike, and each letter is asked for. Some 4 kB each. */
const LATELY_TYPED = 100;
const latelyOf = onceOf((_places: Places) => createKept<string, readonly PlaceCompletion[]>(LATELY_TYPED));

/** Suggestions for a partly typed place ("cal", "springfield, il"); nothing for fewer than two letters. Never throws on any text. */
export const completePlaces = (places: Places, partial: string, limit = 25): readonly PlaceCompletion[] => {
  if (partial.length > LONGEST_TEXT) return [];
  const [name = '', ...rest] = cleanText(partial).split(',');
  const folded = foldPlace(name);
  const qualifier = foldPlace(rest.join(' '));
  if (folded.length < 2) return [];
  const most = Math.max(0, Math.min(limit, 100));
  return latelyOf(places)(JSON.stringify([most, rest.length > 0, folded, qualifier]), () => {
    const rows = rest.length > 0 ? named(places, folded) : places.rowsBeginning(folded, most);
    return rows
      .map((row) => places.placeAt(row))
      .filter((p) =>
        [p.region, p.regionCode, p.country, p.countryCode, p.district].some((part) =>
          foldPlace(part).startsWith(qualifier),
        ),
      )
      .slice(0, most)
      .map((place) => ({ value: placeSpec(place), label: placeLabel(place) }));
  });
};
