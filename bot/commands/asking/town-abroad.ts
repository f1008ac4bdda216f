/** The town in a question of another language, "à Lyon", "em São Paulo", and the question without it. */
import { isProblem } from '../../ground/problem.js';
import { isNamed, resolveTarget } from '../../catalogue/index.js';
import { tableOf } from '../../ground/table-of.js';
import { placeSpec, resolvePlace } from '../../places/index.js';
import type { Known } from './sentence/asked.js';
import { bent } from './sentence/told-place.js';

/** What stands before a place in German, French, Spanish, Italian, Portuguese, Dutch and Polish; from memory. */
const BEFORE =
  /^(?:in|im|bei|aus|von|vom|à|a|ad|en|depuis|desde|da|di|de|em|no|na|w|we|z|te|vanuit|vanaf|dalla|près|cerca|vicino|blisko)$/iu;
const MOST_WORDS = 3;
/** Written small, a name has to be that of a town that many know: others are words. */
const KNOWN_TOWN = 50_000;

const bare = (word: string): string => word.replace(/^[¿¡(]+|[?!.,;:)]+$/gu, '');

const mayBeTown = (words: string, { places, usual }: Known): boolean => {
  if (words.length < 3) return false;
  const found = resolvePlace(places(), words, usual ?? null);
  const isCapital = /^\p{Lu}/u.test(words);
  if (isProblem(found)) return isCapital && found.problem === 'ambiguous-place';
  return isCapital || found.place.population >= KNOWN_TOWN;
};

/** Among places it is looked for first: what is no name is dear to look for among targets. */
const isTown = (words: string, known: Known): boolean =>
  mayBeTown(words, known) && !isNamed(resolveTarget(known.catalogue, words));

export interface WithTown {
  readonly rest: string;
  readonly town: string;
}

/** The longest name after the last such word; null where none is a town's. */
export const townAbroad = (text: string, known: Known): WithTown | null => {
  const words = text.trim().split(/\s+/u);
  for (let at = words.length - 2; at > 0; at--) {
    if (!BEFORE.test(bare(words[at] ?? ''))) continue;
    for (let count = Math.min(MOST_WORDS, words.length - at - 1); count > 0; count--) {
      const town = bare(words.slice(at + 1, at + 1 + count).join(' '));
      const meant = bent(town, `${bare(words[at] ?? '')} `).find((form) => isTown(form, known));
      if (meant !== undefined)
        return { rest: [...words.slice(0, at), ...words.slice(at + 1 + count)].join(' '), town: meant };
    }
  }
  return null;
};

/** Where the languages are spoken by most. */
const SPOKEN_IN = tableOf<readonly string[]>({
  de: ['DE', 'AT', 'CH'],
  es: [
    'ES',
    'MX',
    'AR',
    'CO',
    'CL',
    'PE',
    'VE',
    'EC',
    'UY',
    'PY',
    'BO',
    'CR',
    'PA',
    'GT',
    'HN',
    'NI',
    'SV',
    'CU',
    'DO',
  ],
  fr: ['FR', 'BE', 'CH'],
  it: ['IT', 'CH'],
  nl: ['NL', 'BE'],
  pl: ['PL'],
  pt: ['PT', 'BR'],
});
/** So many times as many people as in the next one: that is meant. Common practice, no source. */
const FAR_LARGER = 5;

/** Of several places of a name the one where the language is spoken, if one is far larger; else as it was said, for it to be asked. */
export const townMeant = (town: string, language: string, { places, usual }: Known): string => {
  const found = resolvePlace(places(), town, usual ?? null);
  if (!isProblem(found) || found.problem !== 'ambiguous-place') return town;
  const [first, next] = found.candidates
    .filter(({ countryCode }) => SPOKEN_IN.get(language)?.includes(countryCode) === true)
    .sort((a, b) => b.population - a.population);
  return first === undefined || first.population < FAR_LARGER * (next?.population ?? 0) ? town : placeSpec(first);
};
