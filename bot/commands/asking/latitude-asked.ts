/** How far north or south the place is that a sentence is about. */
import { isProblem } from '../../ground/problem.js';
import { resolvePlace } from '../../places/index.js';
import { placeKnowledge, type Known } from './sentence/asked.js';
import { takePlace } from './sentence/where.js';
import { sentenceOf } from './sentence/words.js';

/** In degrees, south negative: of a town that is named, else of where the asker usually stands; null where nobody knows. */
export const latitudeAsked = (plain: string, known: Known): number | null => {
  const usual = known.usual ?? null;
  const place = takePlace(sentenceOf(plain), placeKnowledge(known));
  const found = place === null ? null : resolvePlace(known.places(), place, usual);
  return found === null || isProblem(found) ? (usual?.latitudeDeg ?? null) : found.place.latitudeDeg;
};
