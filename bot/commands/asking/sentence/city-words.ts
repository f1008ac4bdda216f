/**
 * A city of several words behind a word that leads to a place, "from New York", "em Rio de Janeiro": its words are held together before slips
 * are mended and names are looked for, so that none of them is greeted away ("buenos"), mended or taken for a target.
 */
import { isNamed, resolveTarget, type Catalogue } from '../../../catalogue/index.js';
import { foldPlace, populationFound, resolvePlace, type PlaceRecord, type Places } from '../../../places/index.js';

/** What holds them: no name that anybody types has it. */
const JOIN = '__';
/** Of English, and of German, French, Spanish, Italian, Portuguese, Dutch and Polish; from memory. */
const LEAD =
  /^(?:from|in|at|near|outside|is|to|for|over|around|by|im|bei|aus|von|à|a|en|depuis|desde|de|da|di|em|no|na|w|we|z|te|vanuit|dalla)$/iu;
/** Of those the ones that are no English word, so that a single name behind them is a city's too: "da Roma", "à Lyon". */
const LEAD_ABROAD = /^(?:bei|aus|à|en|depuis|desde|da|em|w|vanuit|dalla)$/iu;
const CITY_POPULATION = 100_000;
/** So large a city is meant, though an asteroid is called after it. */
const GREAT_CITY = 500_000;
const MOST_WORDS = 4;

/** Whether a city is called so by its own name, or by what its name begins with ("New York City"). */
const isCityOf = (places: Places, folded: string): boolean => {
  const { own, other } = places.rowsNamed(folded);
  const largest = (rows: readonly number[]): PlaceRecord | null =>
    rows[0] === undefined ? null : places.placeAt(rows[0]);
  const named = largest(own);
  if (named !== null && named.population >= CITY_POPULATION) return true;
  const begun = largest(other);
  return begun !== null && begun.population >= CITY_POPULATION && foldPlace(begun.name).startsWith(folded);
};

export interface CityKnowledge {
  readonly places: () => Places;
  readonly catalogue: Catalogue;
}

const NAME_WORD = /^\p{L}[\p{L}'’.-]*$/u;

const withoutEnd = (word: string): string => word.replace(/[?!.,;:]+$/u, '');

/** How many words from `first` are a city's name; 0: none. */
const cityAt = (words: readonly string[], first: number, { places, catalogue }: CityKnowledge): number => {
  for (let count = Math.min(MOST_WORDS, words.length - first); count > 1; count--) {
    const run = words.slice(first, first + count);
    const name = [...run.slice(0, -1), withoutEnd(run.at(-1) ?? '')];
    if (!name.every((word) => NAME_WORD.test(word))) continue;
    if (isCityOf(places(), foldPlace(name.join(' '))) && !isNamed(resolveTarget(catalogue, name.join(' '))))
      return count;
  }
  return 0;
};

/** "Roma", "Lyon", "Krakowie": one word with a capital that is a city's, in any language. */
const isCityAbroad = (word: string, { places, catalogue }: CityKnowledge): boolean =>
  /^\p{Lu}\p{Ll}{2,}$/u.test(word) &&
  (populationFound(resolvePlace(places(), word)) ?? 0) >=
    (isNamed(resolveTarget(catalogue, word)) ? GREAT_CITY : CITY_POPULATION);

/**
 * The text with the words of each such city held together, and "from" before it for a word of another language.
 * @param isPlaceFirst the text may begin with the place: what stands behind the name of a command
 */
export const withCitiesHeld = (text: string, known: CityKnowledge, isPlaceFirst = false): string => {
  const words = text.split(' ');
  if (words.length < 2) return text;
  const held: string[] = [];
  for (let at = 0; at < words.length; at++) {
    const before = held.at(-1);
    const isLed = before === undefined ? isPlaceFirst : LEAD.test(before);
    const count = isLed ? cityAt(words, at, known) : 0;
    const isAbroad = before !== undefined && LEAD_ABROAD.test(before);
    const isOne = isAbroad && count === 0 && isCityAbroad(withoutEnd(words[at] ?? ''), known);
    if (isAbroad && (count > 0 || isOne)) held[held.length - 1] = 'from';
    const name = words.slice(at, at + Math.max(1, count)).join(JOIN);
    held.push(isOne ? name.replace(/(?<=\p{L})(?=[?!.,;:]*$)/u, JOIN) : name);
    at += Math.max(0, count - 1);
  }
  return held.join(' ');
};

/** "San Francisco": no "San" with a slip in it. */
export const beginsWithCity = (text: string, known: CityKnowledge): boolean =>
  cityAt(text.trim().split(' '), 0, known) > 0;

/** What names of towns begin with in many languages: the word behind it is of the name, though no list has the town. */
export const beginsTownName = (word: string): boolean =>
  /^(?:los|las|san|santa|santo|saint|sao|são|sankt|puerto|porto|port|villa|buenos|rio|monte|bad)$/u.test(word);

/** Whether a word is such a city. */
export const isHeldCity = (word: string): boolean => word.includes(JOIN);

/** As it was said. */
export const withCitiesLoose = (text: string): string => text.replace(/__(?!\p{L})/gu, '').replaceAll(JOIN, ' ');
