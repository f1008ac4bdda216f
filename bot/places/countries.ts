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
const allNames = onceOf((_: typeof names): readonly string[] =>
  LETTERS.flatMap((first) => LETTERS.map((second) => `${first}${second}`))
    .map((code) => ({ code, name: countryName(code) }))
    .flatMap(({ code, name }) => (name === code ? [] : [name])),
);

/** The words of countries' names, in lower case: right as they stand. */
export const countryWords = (): readonly string[] =>
  allNames(names).flatMap((name) => name.toLowerCase().match(/\p{L}{4,}/gu) ?? []);

const EVERYDAY: ReadonlyMap<string, string> = new Map(
  Object.entries({
    uk: 'GB',
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

/** Whether a folded word means this country. */
export const meansCountry = (folded: string, code: string): boolean => {
  return folded === code.toLowerCase() || EVERYDAY.get(folded) === code || folded === foldPlace(countryName(code));
};

/** Whether a folded word means this region of a country: its name, its code where that is letters, or its postal abbreviation. */
export const meansRegion = (folded: string, region: string, regionCode: string, countryCode: string): boolean => {
  return (
    folded === foldPlace(region) ||
    (/^[A-Z]{2,3}$/.test(regionCode) && folded === regionCode.toLowerCase()) ||
    REGION_ABBREVIATIONS.get(`${countryCode} ${folded}`) === region
  );
};
