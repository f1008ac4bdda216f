/** The gazetteer: three packed files, unpacked at the first look-up and searched where they lie, so that little memory is used. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { countryName } from './countries.js';
import type { PlaceRecord } from './site-resolution.js';

const NO_HEIGHT_M = -440;

/** The gazetteer, opened lazily: nothing is read until the first look-up. */
export interface Places {
  /** Reads the files now (for a warm start); the first look-up does it otherwise. Throws an Error naming a file that cannot be read. */
  warm(): void;
  /** Rows of places that bear exactly this folded name, as their main name and as another; largest first. */
  rowsNamed(foldedName: string): NamedRows;
  /**
   * The `most` best rows with a name that begins so: those named exactly so, then those whose main name begins so, then
   * those with another name that does; largest first within each.
   */
  rowsBeginning(foldedPrefix: string, most: number): readonly number[];
  placeAt(row: number): PlaceRecord;
}

export interface NamedRows {
  readonly own: readonly number[];
  readonly other: readonly number[];
}

const NEWLINE = 10;
const TAB = 9;
const DIGIT_ZERO = 48;
/** Main names come before other names, whatever the size of the place. */
const OWN_TIER = 1_000_000;
const OTHER_TIER = 2_000_000;
/** The largest so many are as well known by their names in other languages (München, Wien), once more than a few letters are typed. */
const GREAT_CITIES = 4000;
/** Prefixes this short are met by very many names; their answers are kept. */
const SHORT_PREFIX_BYTES = 3;

/** A file's rows, where they lie. */
interface Rows {
  readonly text: Buffer;
  /** Where each row begins. */
  readonly starts: Uint32Array;
}

interface Files {
  readonly places: Rows;
  readonly regions: Rows;
  readonly names: Buffer;
  /** Where the first name begins, past the comment lines. */
  readonly namesFrom: number;
}

const unpack = (path: string): Buffer => {
  try {
    return gunzipSync(readFileSync(path));
  } catch (error) {
    throw new Error(`Cannot read the list of places ${path}: ${(error as Error).message}`, { cause: error });
  }
};

const afterComments = (buffer: Buffer): number => {
  let at = 0;
  while (buffer[at] === 35) at = buffer.indexOf(NEWLINE, at) + 1;
  return at;
};

const rowsIn = (text: Buffer): Rows => {
  const starts: number[] = [];
  for (let at = afterComments(text); at < text.length; at = text.indexOf(NEWLINE, at) + 1) starts.push(at);
  return { text, starts: Uint32Array.from(starts) };
};

/** The row's columns; null: there is no such row. */
const columnsAt = ({ text, starts }: Rows, row: number): readonly string[] | null => {
  const start = starts[row];
  return start === undefined ? null : text.toString('utf8', start, text.indexOf(NEWLINE, start)).split('\t');
};

const read = (folder: string): Files => {
  const places = rowsIn(unpack(join(folder, 'places.tsv.gz')));
  const regions = rowsIn(unpack(join(folder, 'place-regions.tsv.gz')));
  const names = unpack(join(folder, 'place-names.tsv.gz'));
  return { places, regions, names, namesFrom: afterComments(names) };
};

/** The start of the first line in `names` whose name is not below `key`. */
const lowerBound = ({ names, namesFrom }: Files, key: Buffer): number => {
  let low = namesFrom;
  let high = names.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    const start = Math.max(names.lastIndexOf(NEWLINE, Math.max(middle - 1, 0)) + 1, namesFrom);
    const tab = names.indexOf(TAB, start);
    if (key.compare(names, start, tab) > 0) low = names.indexOf(NEWLINE, tab) + 1;
    else high = start;
  }
  return low;
};

/** Calls `take` with the rows of a line in `names`, own names first, from where its name ends; gives where the next line begins. */
const eachRow = (names: Buffer, from: number, take: (row: number, isOwn: boolean) => void): number => {
  let isOwn = true;
  let row = -1;
  for (let i = from; ; i += 1) {
    const byte = names[i] ?? NEWLINE;
    if (byte >= DIGIT_ZERO) {
      row = Math.max(row, 0) * 10 + byte - DIGIT_ZERO;
      continue;
    }
    if (row >= 0) take(row, isOwn);
    row = -1;
    if (byte === TAB) isOwn = false;
    if (byte === NEWLINE) return i + 1;
  }
};

interface Met {
  /** The name is the prefix itself. */
  readonly isWhole: boolean;
  readonly isOwn: boolean;
  /** More than a few letters are typed. */
  readonly isLong: boolean;
}

/** Lower comes first. */
const scoreOf = (row: number, { isWhole, isOwn, isLong }: Met): number => {
  if (isWhole) return row;
  if (isOwn) return row + OWN_TIER;
  return row < GREAT_CITIES && isLong ? 10 * row + OWN_TIER : row + OTHER_TIER;
};

/** A gazetteer over a folder ("knowledge/places"). Reading happens at the first look-up; a file that cannot be read throws then, naming it. */
export const loadPlaces = (folder: string): Places => {
  let opened: Files | null = null;
  const shortPrefixes = new Map<string, readonly number[]>();
  const files = (): Files => (opened ??= read(folder));

  const rowsNamed = (foldedName: string): NamedRows => {
    const none = { own: [], other: [] };
    if (foldedName === '') return none;
    const all = files();
    const key = Buffer.from(foldedName);
    const at = lowerBound(all, key);
    const tab = all.names.indexOf(TAB, at);
    if (at >= all.names.length || key.compare(all.names, at, tab) !== 0) return none;
    const [own = [], other = []] = all.names
      .toString('latin1', tab + 1, all.names.indexOf(NEWLINE, tab))
      .split('\t')
      .map((cell) =>
        cell
          .split(' ')
          .filter((row) => row !== '')
          .map(Number),
      );
    return { own, other };
  };

  const gather = (key: Buffer, most: number): readonly number[] => {
    const all = files();
    const { names } = all;
    const scores = new Map<number, number>();
    const isLong = key.length > SHORT_PREFIX_BYTES;
    let at = lowerBound(all, key);
    while (at < names.length && key.compare(names, at, at + key.length) === 0) {
      const tab = names.indexOf(TAB, at);
      const isWhole = tab === at + key.length;
      at = eachRow(names, tab + 1, (row, isOwn) => {
        const score = scoreOf(row, { isWhole, isOwn, isLong });
        if (score < (scores.get(row) ?? Infinity)) scores.set(row, score);
      });
    }
    return [...scores]
      .sort((a, b) => a[1] - b[1])
      .slice(0, most)
      .map(([row]) => row);
  };

  const rowsBeginning = (foldedPrefix: string, most: number): readonly number[] => {
    const key = Buffer.from(foldedPrefix);
    if (key.length === 0) return Array.from({ length: Math.min(most, files().places.starts.length) }, (_, i) => i);
    if (key.length > SHORT_PREFIX_BYTES) return gather(key, most);
    let kept = shortPrefixes.get(foldedPrefix);
    if (!kept || kept.length < most) {
      kept = gather(key, Math.max(most, 100));
      if (shortPrefixes.size < 2000) shortPrefixes.set(foldedPrefix, kept);
    }
    return kept.slice(0, most);
  };

  /** The list has −450 where its height model has the sea; no town lies so low. */
  const heightOf = (elevation: string | undefined): number =>
    Number(elevation) <= NO_HEIGHT_M ? 0 : Number(elevation);

  const placeAt = (row: number): PlaceRecord => {
    const { places, regions } = files();
    const columns = columnsAt(places, row);
    if (columns === null) throw new RangeError(`No place in row ${row}.`);
    const [name = '', district = '', regionRow, lat, lon, elevation, population] = columns;
    const [region = '', regionCode = '', countryCode = '', zone = ''] = columnsAt(regions, Number(regionRow)) ?? [];
    return {
      name,
      district,
      region,
      regionCode,
      countryCode,
      country: countryName(countryCode),
      latitudeDeg: Number(lat),
      longitudeDeg: Number(lon),
      elevationM: heightOf(elevation),
      population: Number(population),
      zone,
    };
  };

  return { warm: () => void files(), rowsNamed, rowsBeginning, placeAt };
};
