/** Countries and their parts as members write them: ISO codes, English names, and everyday short forms. */
import { onceOf } from '../ground/once.js';
import { foldPlace } from './fold-place.js';

const english = new Intl.DisplayNames(['en'], { type: 'region' });
const names = new Map<string, string>();

/** "CA" → "Canada"; the code itself where it is not known. */
export const countryName = (code: string): string => {
  let name = names.get(code);
  if (name === undefined) {
    name = /^[A-Z]{2}$/.test(code) ? (english.of(code) ?? code) : code;
    names.set(code, name);
  }
  return name;
};

const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

/** All that have a name, by their two letters. */
const allCodes = onceOf((_: typeof names): readonly (readonly [code: string, name: string])[] =>
  LETTERS.flatMap((first) => LETTERS.map((second) => `${first}${second}`))
    .map((code) => [code, countryName(code)] as const)
    // Codes out of use stand for the countries of today: "DD" is Germany too.
    .filter(([code, name]) => name !== code && new Intl.Locale(`und-${code}`).region === code),
);
const allNames = (all: typeof names): readonly string[] => allCodes(all).map(([, name]) => name);

/** The words of countries' names, in lower case: right as they stand. */
export const countryWords = (): readonly string[] =>
  allNames(names).flatMap((name) => name.toLowerCase().match(/\p{L}{4,}/gu) ?? []);

/** As their people and their neighbours call them: "España", "Deutschland", "Allemagne"; a name that two bear is neither's. */
const LANGUAGES = ['es', 'de', 'fr', 'it', 'nl', 'pl', 'pt', 'sv', 'nb', 'da', 'fi', 'cs', 'hu'];
const namesAbroad = onceOf((_: typeof names): ReadonlyMap<string, string> => {
  const found = new Map<string, string>();
  const shared = new Set<string>();
  for (const language of LANGUAGES) {
    const inIt = new Intl.DisplayNames([language], { type: 'region', fallback: 'none' });
    for (const [code] of allCodes(names)) {
      const name = foldPlace(inIt.of(code) ?? '');
      if (name === '') continue;
      if (found.has(name) && found.get(name) !== code) shared.add(name);
      found.set(name, code);
    }
  }
  for (const name of shared) found.delete(name);
  return found;
});

const EVERYDAY: ReadonlyMap<string, string> = new Map(
  Object.entries({
    uk: 'GB',
    nz: 'NZ',
    greatbritain: 'GB',
    britain: 'GB',
    usa: 'US',
    america: 'US',
    unitedstatesofamerica: 'US',
    uae: 'AE',
    holland: 'NL',
    czechrepublic: 'CZ',
    turkey: 'TR',
    southkorea: 'KR',
    northkorea: 'KP',
    ivorycoast: 'CI',
    burma: 'MM',
    russia: 'RU',
  }),
);

/** Postal abbreviations of Canada's provinces and territories and Australia's states: those in the gazetteer are numbers. */
const REGION_ABBREVIATIONS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    'CA ab': 'Alberta',
    'CA bc': 'British Columbia',
    'CA mb': 'Manitoba',
    'CA nb': 'New Brunswick',
    'CA nl': 'Newfoundland and Labrador',
    'CA ns': 'Nova Scotia',
    'CA nt': 'Northwest Territories',
    'CA nu': 'Nunavut',
    'CA on': 'Ontario',
    'CA pe': 'Prince Edward Island',
    'CA qc': 'Quebec',
    'CA sk': 'Saskatchewan',
    'CA yt': 'Yukon',
    'AU act': 'Australian Capital Territory',
    'AU nsw': 'New South Wales',
    'AU nt': 'Northern Territory',
    'AU qld': 'Queensland',
    'AU sa': 'South Australia',
    'AU tas': 'Tasmania',
    'AU vic': 'Victoria',
    'AU wa': 'Western Australia',
  }),
);

const foldedCountries = onceOf((_: typeof names) => new Set([...allNames(names).map(foldPlace), ...EVERYDAY.keys()]));

/** Whether a folded text is a country's name, an everyday one too; a code is not. */
export const isCountry = (folded: string): boolean => foldedCountries(names).has(folded);

/** The two letters of the country that a folded text names; null: of none. A code by itself is none. */
export const countryNamed = (folded: string): string | null => (IS_REGION.has(folded) ? null : nameOfOne(folded));
/** More often one of the United States. */
const IS_REGION: ReadonlySet<string> = new Set(['georgia']);
const nameOfOne = (folded: string): string | null =>
  EVERYDAY.get(folded) ??
  englishCodes(names).get(folded) ??
  (folded.length > 3 ? (namesAbroad(names).get(folded) ?? null) : null);
const englishCodes = onceOf(
  (_: typeof names): ReadonlyMap<string, string> =>
    new Map(allCodes(names).map(([code, name]) => [foldPlace(name), code])),
);

/** Whether a folded word means this country. */
export const meansCountry = (folded: string, code: string): boolean => {
  return (
    folded === code.toLowerCase() ||
    EVERYDAY.get(folded) === code ||
    folded === foldPlace(countryName(code)) ||
    (folded.length > 3 && namesAbroad(names).get(folded) === code)
  );
};

/** Whether a folded word means this region of a country: its name, its code where that is letters, or its postal abbreviation. */
export const meansRegion = (folded: string, region: string, regionCode: string, countryCode: string): boolean => {
  return (
    folded === foldPlace(region) ||
    (/^[A-Z]{2,3}$/.test(regionCode) && folded === regionCode.toLowerCase()) ||
    REGION_ABBREVIATIONS.get(`${countryCode} ${folded}`) === region
  );
};
