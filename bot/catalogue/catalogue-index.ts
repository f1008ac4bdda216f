/** The look-up tables of a catalogue: every key a target can be found under, strong keys apart from weak ones. */
import { catalogueNumberKey, flamsteedKey, bayerKey, starDesignations } from './designation.js';
import { foldWords } from '../ground/fold-text.js';

/** Positions in the sweep that a key leads to. */
export type KeyTable = Map<string, number | number[]>;

/** A name for spelling correction and completion. */
export interface NameEntry {
  /** Folded, without spaces. */
  readonly key: string;
  /** As shown. */
  readonly text: string;
  readonly position: number;
}

/** The tables that the rows of the files fill. */
export interface CatalogueTables {
  /** Catalogue numbers ("ngc7331"), star designations ("bayer:alp:Lyr", "flamsteed:61:Cyg") and full names ("deerlickgalaxy"). */
  readonly exact: KeyTable;
  /** Bayer letters without their superscripts ("bayer:alp:Cap" for α¹ and α² Cap). */
  readonly unnumbered: KeyTable;
  /** Common names without their last word of kind ("deerlick"). */
  readonly short: KeyTable;
  /** Proper and common names, for spelling correction. */
  readonly names: NameEntry[];
}

export interface CatalogueIndex extends Readonly<CatalogueTables> {
  /** Numbers listed by their catalogue's makers where nothing is. */
  readonly nonexistent: ReadonlySet<string>;
  /** Lower is better known; by position. */
  readonly rank: Float32Array;
}

/** Adds one more position under a key; a position is listed once. */
export const addKey = (table: KeyTable, key: string, position: number): void => {
  const there = table.get(key);
  if (there === undefined) table.set(key, position);
  else if (typeof there === 'number') {
    if (there !== position) table.set(key, [there, position]);
  } else if (!there.includes(position)) there.push(position);
};

/** The positions under a key, as a list. */
export const positionsAt = (table: KeyTable, key: string): readonly number[] => {
  const there = table.get(key);
  if (there === undefined) return [];
  return typeof there === 'number' ? [there] : there;
};

const KIND_WORDS = new Set([
  'galaxy',
  'galaxies',
  'nebula',
  'nebulae',
  'cluster',
  'clusters',
  'globular',
  'star',
  'group',
  'cloud',
  'asterism',
]);

/** Folded words without what only says the kind: "andromeda galaxy" → "andromeda"; null when nothing would be left or nothing changes. */
export const withoutKind = (foldedWords: string): string | null => {
  const words = foldedWords.split(' ');
  while (words.length > 1 && KIND_WORDS.has(words.at(-1) ?? '')) words.pop();
  const short = words.join('');
  return short === foldedWords.replaceAll(' ', '') || KIND_WORDS.has(short) ? null : short;
};

/** Enters a common or proper name: whole, without its word of kind, and as the star designation it may also be ("47 Tucanae"). */
export const addName = (index: CatalogueTables, text: string, position: number): void => {
  const words = foldWords(text);
  const key = words.replaceAll(' ', '');
  addKey(index.exact, key, position);
  index.names.push({ key, text, position });
  const short = withoutKind(words);
  if (short !== null) addKey(index.short, short, position);
};

/** Keys of a common name that reads as a star's designation: the cluster ω Centauri, 47 Tucanae. */
export const designationKeysOf = (name: string): readonly string[] => {
  const words = foldWords(name);
  return [words, withoutKind(words) ?? ''].flatMap(starDesignations).flatMap((d) => {
    if (d.letter !== null) return [bayerKey(d.letter, d.letterNumber, d.constellation)];
    return d.flamsteed === null ? [] : [flamsteedKey(d.flamsteed, d.constellation)];
  });
};

/** The key of a designation as the CSV files write it ("NGC 80 NED01", "Sh2-155"). */
export const numberKeyOf = (designation: string): string => {
  // The common case by hand: thousands of these are read at every start.
  const plain = /^(NGC|IC) (\d+)([A-Z]?)$/.exec(designation);
  if (plain) return `${plain[1] === 'NGC' ? 'ngc' : 'ic'}${plain[2]}${(plain[3] ?? '').toLowerCase()}`;
  return catalogueNumberKey(designation) ?? foldWords(designation).replaceAll(' ', '');
};
