/** Finds the place a member names; several of one name are told apart by region and country, and asked about where neither is given. */
import { cleanText, LONGEST_TEXT, quotable } from '../ground/fold-text.js';
import { isProblem } from '../ground/problem.js';
import { countryName, countryNamed, meansCountry, meansRegion } from './countries.js';
import { distanceKm, type Spot } from './distance.js';
import { islandsNamed } from './islands.js';
import { foldPlace } from './fold-place.js';
import type { Places } from './load-places.js';
import type { PlaceRecord, PlaceResolution } from './site-resolution.js';
import { placeLabel, placeSpec } from './wording.js';

const MOST_CANDIDATES = 25;
/** A place this many times as large as the next of its name is taken without asking, and said so. */
const OVERWHELMING = 20;
/** A city that the whole world knows needs less. */
const CITY_OVERWHELMING = 10;
/** So is one near the usual site that is plainly the larger, where the next is no city of a size that many would mean. */
const PLAINLY_LARGER = 3;
const MANY_MEAN_IT = 40_000;
/** One that is no farther from where somebody usually stands, and by so much nearer than any other of its name, may be meant. */
const NEAR_KM = 1000;
const TIMES_NEARER = 3;
const LEAST_FARTHER_KM = 300;
/** Beside places that bear a name as their main one, a place known by it too counts when it is a city, and not much smaller. */
const CITY_POPULATION = 100_000;
const NOT_MUCH_SMALLER = 0.2;
const TIMES_BETTER_KNOWN = 3;
const MOST_NEAREST = 5;

const qualifies = (place: PlaceRecord, qualifier: string): boolean => {
  return (
    meansCountry(qualifier, place.countryCode) ||
    meansRegion(qualifier, place.region, place.regionCode, place.countryCode) ||
    (place.district !== '' &&
      (qualifier === foldPlace(place.district) ||
        qualifier === foldPlace(place.district.replace(/ (County|Parish|District)$/, ''))))
  );
};

const matching = (places: Places, name: string, qualifiers: readonly string[]): readonly PlaceRecord[] => {
  const { own, other } = places.rowsNamed(name);
  const fitting = (rows: readonly number[]): PlaceRecord[] =>
    rows.map((row) => places.placeAt(row)).filter((place) => qualifiers.every((q) => qualifies(place, q)));
  const named = fitting(own);
  // Cologne is a village in the United States, and what the world calls Köln; Newcastle is Newcastle upon Tyne as well.
  const largest = Math.max(0, ...named.map(({ population }) => population));
  // Where a city is called so itself, only one whose name begins so counts beside it: what one language calls Bordeaux is no second Porto.
  const known = fitting(other).filter(
    (place) =>
      largest === 0 ||
      (place.population >= CITY_POPULATION &&
        place.population >= NOT_MUCH_SMALLER * largest &&
        (largest < CITY_POPULATION ||
          place.population >= TIMES_BETTER_KNOWN * largest ||
          foldPlace(place.name).startsWith(name))),
  );
  const islands = islandsNamed(name).filter((place) => qualifiers.every((q) => qualifies(place, q)));
  return [...named, ...known, ...islands].sort((a, b) => b.population - a.population);
};

/** Every way to read a text as a name and what qualifies it; the reading with the longest name first. */
const readings = (text: string): readonly { name: string; qualifiers: readonly string[] }[] => {
  const [first = '', ...rest] = text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');
  if (rest.length > 0) return [{ name: foldPlace(first), qualifiers: rest.map(foldPlace).filter((q) => q !== '') }];
  const words = first.split(/\s+/);
  const found = [{ name: foldPlace(first), qualifiers: [] as string[] }];
  for (let i = words.length - 1; i > 0; i -= 1) {
    const name = foldPlace(words.slice(0, i).join(' '));
    const tail = words.slice(i);
    found.push({ name, qualifiers: [foldPlace(tail.join(' '))] });
    for (let j = 1; j < tail.length; j += 1) {
      found.push({ name, qualifiers: [foldPlace(tail.slice(0, j).join(' ')), foldPlace(tail.slice(j).join(' '))] });
    }
  }
  return found;
};

/** Names one slip of the finger away, found by making every such slip: largest places first. */
const nearestPlaces = (places: Places, name: string): readonly PlaceRecord[] => {
  const letters = 'abcdefghijklmnopqrstuvwxyz';
  const slips = new Set<string>();
  for (let i = 0; i <= name.length; i += 1) {
    const before = name.slice(0, i);
    const after = name.slice(i);
    if (after.length > 0) slips.add(before + after.slice(1));
    if (after.length > 1) slips.add(before + after.charAt(1) + after.charAt(0) + after.slice(2));
    for (const letter of letters) {
      slips.add(before + letter + after);
      if (after.length > 0) slips.add(before + letter + after.slice(1));
    }
  }
  slips.delete(name);
  const rows = new Set<number>();
  for (const slip of slips) for (const row of places.rowsNamed(slip).own.slice(0, 2)) rows.add(row);
  if (rows.size < MOST_NEAREST && name.length >= 4)
    for (const row of places.rowsBeginning(name, MOST_NEAREST)) rows.add(row);
  return [...rows]
    .sort((a, b) => a - b)
    .slice(0, MOST_NEAREST)
    .map((row) => places.placeAt(row));
};

/** Those of the name itself, whatever was said of where they are, then those a slip away. */
const alikePlaces = (places: Places, name: string): readonly PlaceRecord[] =>
  [...matching(places, name, []), ...nearestPlaces(places, name)].slice(0, MOST_NEAREST);

/** The one that a usual site speaks for: it is near, and all others of the name are far. */
const spokenFor = (found: readonly PlaceRecord[], near: Spot | null): PlaceRecord | undefined => {
  if (near === null) return undefined;
  const byDistance = found.map((place) => ({ place, km: distanceKm(place, near) })).sort((a, b) => a.km - b.km);
  const [first, second] = byDistance;
  if (first === undefined || first.km > NEAR_KM) return undefined;
  // The largest is spoken for where it is alone near; another, where the largest is far.
  const [largest] = found;
  const rival = first.place === largest ? second : byDistance.find(({ place }) => place === largest);
  return rival !== undefined && rival.km >= Math.max(TIMES_NEARER * first.km, LEAST_FARTHER_KM)
    ? first.place
    : undefined;
};

/** As they are offered: the one near the usual site, but for a city that the whole world knows, then the largest. */
const nearestFirst = (found: readonly PlaceRecord[], near: Spot | null): readonly PlaceRecord[] => {
  if (near === null) return found;
  const kmOf = (place: PlaceRecord): number => distanceKm(place, near);
  const nearest = found.reduce((best, place) => (kmOf(place) < kmOf(best) ? place : best));
  const [largest = nearest] = found;
  const isWorldCity = largest.population >= Math.max(WORLD_CITY, CITY_OVERWHELMING * nearest.population);
  return isWorldCity || kmOf(nearest) > NEAR_KM ? found : [nearest, ...found.filter((place) => place !== nearest)];
};

/** Larger ones are meant wherever somebody stands. */
const WORLD_CITY = 500_000;

/** "York" said in Tucson: where that was taken to be. */
const farNote = (place: PlaceRecord, near: Spot | null): string | undefined => {
  const km = near === null ? 0 : distanceKm(place, near);
  return km > NEAR_KM && place.population < WORLD_CITY
    ? `Took ${placeLabel(place)}, ${Math.round(km / 100) * 100} km from your usual site.`
    : undefined;
};

/** The largest places lie in every country that anybody names. */
const LARGEST = 4000;

/** "Spain": its largest city, as a country is wide; null where no country is named, or a city is called so. */
const ofCountry = (places: Places, folded: string): PlaceRecord | null => {
  const code = countryNamed(folded);
  if (code === null) return null;
  const isCity = ([first]: readonly PlaceRecord[]): boolean =>
    first !== undefined && (first.countryCode === code || first.population >= WORLD_CITY);
  if (isCity(matching(places, folded, []))) return null;
  for (const row of places.rowsBeginning('', LARGEST)) {
    const place = places.placeAt(row);
    if (place.countryCode === code) return place;
  }
  return null;
};

/** So near to it one stands in it. */
const STANDS_IN_KM = 15;

/** Whether the largest is meant: by its size, where the usual site does not speak for another, or by both. */
const isMeant = (
  largest: PlaceRecord,
  next: PlaceRecord,
  here: PlaceRecord | undefined,
  near: Spot | null,
): boolean => {
  const times = largest.population / Math.max(1, next.population);
  if (here === undefined) return times >= (largest.population >= WORLD_CITY ? CITY_OVERWHELMING : OVERWHELMING);
  if (here === largest && near !== null && distanceKm(here, near) <= STANDS_IN_KM) return true;
  return here === largest && times >= PLAINLY_LARGER && (times >= OVERWHELMING || next.population < MANY_MEAN_IT);
};

/** Those alike; where a country is named, of that one alone. */
const alikeNamed = (places: Places, text: string): readonly PlaceRecord[] => {
  const [first] = readings(text);
  if (first === undefined) return [];
  const code = countryNamed(first.qualifiers.at(-1) ?? '');
  const alike = alikePlaces(places, first.name.slice(0, 40));
  return code === null ? alike : alike.filter(({ countryCode }) => countryCode === code);
};

/**
 * "Calgary", "Springfield, Illinois", "Cambridge GB". One of several places of a name is taken when it has at least 20 times the people of
 * the next (ten times where half a million live), or three times where that is a small town and it is the one near `near`, where the asker stands, and never where another is
 * that one; `note` then says so.
 * Never throws on any text (only when the list cannot be read).
 */
export const resolvePlace = (places: Places, text: string, near: Spot | null = null): PlaceResolution => {
  const shown = quotable(text);
  const clean = text.length > 10 * LONGEST_TEXT ? null : cleanText(text);
  if (clean === null || clean.length > LONGEST_TEXT)
    return { problem: 'unknown-place', text: shown, nearest: [], reason: 'too-long' };
  if (foldPlace(clean) === '') return { problem: 'unknown-place', text: shown, nearest: [], reason: 'empty' };
  const whole = ofCountry(places, foldPlace(clean));
  if (whole !== null)
    return {
      place: whole,
      isQualified: true,
      note: `Took ${placeLabel(whole)} for all of ${countryName(whole.countryCode)}; name a town for yours.`,
    };
  for (const { name, qualifiers } of readings(clean)) {
    const found = matching(places, name, qualifiers);
    const [largest, next] = found;
    if (!largest) continue;
    const isQualified = qualifiers.length > 0;
    const far = isQualified ? undefined : farNote(largest, near);
    if (!next) return { place: largest, isQualified, ...(far === undefined ? {} : { note: far }) };
    if (isMeant(largest, next, isQualified ? undefined : spokenFor(found, near), near)) {
      const note = `Took ${placeLabel(largest)}. The next place of that name is ${placeSpec(next)}; add the region or country to choose it.`;
      return { place: largest, isQualified, note };
    }
    return { problem: 'ambiguous-place', text: shown, candidates: nearestFirst(found, near).slice(0, MOST_CANDIDATES) };
  }
  return {
    problem: 'unknown-place',
    text: shown,
    // Dear to look for, and whoever only asks whether it is a place at all needs none.
    get nearest() {
      return alikeNamed(places, clean);
    },
    reason: 'not-found',
  };
};

/** How many live in the place that was found, or in the largest of those it may be; `null` where none is known. */
export const populationFound = (found: PlaceResolution): number | null => {
  if (!isProblem(found)) return found.place.population;
  return found.problem === 'ambiguous-place'
    ? Math.max(0, ...found.candidates.map(({ population }) => population))
    : null;
};
