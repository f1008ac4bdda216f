/** Reads the catalogue's CSV files once into arrays and look-up tables; the only file reading in this folder. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { addKey, addName, designationKeysOf, numberKeyOf, type KeyTable, type NameEntry } from './catalogue-index.js';
import { TARGET_KINDS, type Catalogue } from './catalogue.js';
import { bayerKey, bayerText, flamsteedKey } from './designation.js';
import { SOLAR_SYSTEM } from './solar-system.js';
import type { Target, TargetKind } from './target.js';

const DEEP_SKY_COLUMNS = 12;
const STAR_COLUMNS = 13;
const DEG = Math.PI / 180;
const KIND_INDEX = new Map<string, number>(TARGET_KINDS.map((kind, i) => [kind, i]));

/** The rows of a file, split at commas (the generators write no quotes), and its comment lines. */
function readRows(path: string, columns: number): { rows: string[][]; comments: string[] } {
  const rows: string[][] = [];
  const comments: string[] = [];
  let lineNumber = 0;
  for (const line of readFileSync(path, 'utf8').split('\n')) {
    lineNumber += 1;
    if (line === '') continue;
    if (line.startsWith('#')) {
      comments.push(line);
      continue;
    }
    const cells = line.split(',');
    if (cells.length !== columns) throw new Error(`${path} line ${lineNumber}: ${cells.length} columns where ${columns} are expected.`);
    rows.push(cells);
  }
  return { rows, comments };
}

function list(cell: string | undefined): string[] {
  return cell ? cell.split(';') : [];
}

/** Reads the catalogue's CSV files from a folder ("knowledge/catalogue"); throws an Error naming file and line where one is malformed. */
export function loadCatalogue(folder: string): Catalogue {
  const deepSky = readRows(join(folder, 'deep-sky.csv'), DEEP_SKY_COLUMNS);
  const stars = readRows(join(folder, 'stars.csv'), STAR_COLUMNS);
  const length = deepSky.rows.length + stars.rows.length;
  const sweep = {
    length,
    unitX: new Float64Array(length), unitY: new Float64Array(length), unitZ: new Float64Array(length),
    magnitude: new Float32Array(length).fill(NaN), sizeArcmin: new Float32Array(length).fill(NaN),
    kindIndex: new Uint8Array(length), wellKnown: new Uint8Array(length),
  };
  const rank = new Float32Array(length);
  const exact: KeyTable = new Map();
  const unnumbered: KeyTable = new Map();
  const short: KeyTable = new Map();
  const names: NameEntry[] = [];
  const tables = { exact, short, names };
  const makers: (() => Target)[] = new Array<() => Target>(length);
  const ids = new Map<string, number>();

  const place = (position: number, file: string, raText: string, decText: string): { ra: number; dec: number } => {
    const ra = Number(raText);
    const dec = Number(decText);
    if (!(ra >= 0 && ra < 360 && dec >= -90 && dec <= 90)) throw new Error(`${file}: position ${raText}, ${decText} is out of range.`);
    sweep.unitX[position] = Math.cos(dec * DEG) * Math.cos(ra * DEG);
    sweep.unitY[position] = Math.cos(dec * DEG) * Math.sin(ra * DEG);
    sweep.unitZ[position] = Math.sin(dec * DEG);
    return { ra, dec };
  };

  stars.rows.forEach((cells, i) => {
    const position = deepSky.rows.length + i;
    const [hip = '', raText = '', decText = '', pmRa = '', pmDec = '', parallax = '', magnitudeText = '', within = '',
      bayer = '', flamsteed = '', designated = '', proper = '', double = ''] = cells;
    const { ra, dec } = place(position, 'stars.csv', raText, decText);
    const magnitude = Number(magnitudeText);
    const kind: TargetKind = double === '1' ? 'double-star' : 'star';
    sweep.magnitude[position] = magnitude;
    sweep.kindIndex[position] = KIND_INDEX.get(kind) ?? 0;
    const properNames = list(proper);
    sweep.wellKnown[position] = properNames.length > 0 ? 1 : 0;
    rank[position] = (properNames.length > 0 ? 30 : bayer ? 100 : flamsteed ? 160 : 300) + 10 * magnitude;
    const id = `hip${hip}`;
    ids.set(id, position);
    addKey(exact, id, position);
    const shown = [...properNames];
    if (bayer) {
      const [, letter = '', number = ''] = /^([A-Za-z]+?)(\d*)$/.exec(bayer) ?? [];
      addKey(exact, bayerKey(letter.length === 1 ? letter.toLowerCase() : letter, number ? Number(number) : null, designated), position);
      if (number) addKey(unnumbered, bayerKey(letter, null, designated), position);
      shown.push(bayerText(bayer, designated));
    }
    if (flamsteed) {
      addKey(exact, flamsteedKey(Number(flamsteed), designated), position);
      shown.push(`${flamsteed} ${designated}`);
    }
    shown.push(`HIP ${hip}`);
    for (const name of properNames) addName(tables, name, position);
    makers[position] = () => ({
      id, name: shown[0] ?? id, aliases: shown.slice(1), kind, kindText: kind === 'star' ? 'star' : 'double star',
      constellation: within, magnitude, sizeArcmin: null,
      body: {
        kind: 'fixed', raHoursJ2000: ra / 15, decDegJ2000: dec,
        pmRaCosDecMasPerYear: Number(pmRa), pmDecMasPerYear: Number(pmDec), parallaxMas: Number(parallax),
      },
    });
  });

  deepSky.rows.forEach((cells, position) => {
    const [designation = '', kindText = '', kindWords = '', raText = '', decText = '', constellation = '', magnitudeText = '',
      sizeText = '', messier = '', caldwell = '', commonText = '', otherText = ''] = cells;
    const { ra, dec } = place(position, 'deep-sky.csv', raText, decText);
    const kindIndex = KIND_INDEX.get(kindText);
    if (kindIndex === undefined) throw new Error(`deep-sky.csv: ${designation} has the unknown kind "${kindText}".`);
    const kind = TARGET_KINDS[kindIndex] ?? 'other';
    const magnitude = magnitudeText ? Number(magnitudeText) : null;
    const sizeArcmin = sizeText ? Number(sizeText) : null;
    if (magnitude !== null) sweep.magnitude[position] = magnitude;
    if (sizeArcmin !== null) sweep.sizeArcmin[position] = sizeArcmin;
    sweep.kindIndex[position] = kindIndex;
    const common = list(commonText);
    sweep.wellKnown[position] = messier || caldwell || common.length > 0 ? 1 : 0;
    rank[position] = (messier ? 0 : caldwell ? 60 : common.length > 0 ? 80 : 250) + 10 * (magnitude ?? 16);
    const ownKey = numberKeyOf(designation);
    const id = ownKey;
    ids.set(id, position);
    addKey(exact, ownKey, position);
    const shown = [messier ? `M ${messier}` : '', designation].filter((name, i, all) => name && all.indexOf(name) === i);
    if (caldwell && designation !== `C ${caldwell}`) shown.push(`C ${caldwell}`);
    if (messier) addKey(exact, `m${messier}`, position);
    if (caldwell) addKey(exact, `c${caldwell}`, position);
    const others = list(otherText);
    for (const other of others) addKey(exact, numberKeyOf(other), position);
    for (const name of common) {
      addName(tables, name, position);
      for (const key of designationKeysOf(name)) if (!exact.has(key)) addKey(exact, key, position);
    }
    // What has no number that members use goes by its common name; all others by their number.
    const name = shown[0] ?? designation;
    const aliases = [...common, ...shown.slice(1), ...others];
    makers[position] = () => ({
      id, name, aliases, kind, kindText: kindWords, constellation, magnitude, sizeArcmin,
      body: { kind: 'fixed', raHoursJ2000: ra / 15, decDegJ2000: dec },
    });
  });

  const nonexistent = new Set(deepSky.comments
    .flatMap((line) => /^# nonexistent: (.*)$/.exec(line)?.[1]?.split(';') ?? []).map(numberKeyOf));
  const made: (Target | undefined)[] = new Array<Target | undefined>(length);
  const targetAt = (position: number): Target => {
    const maker = makers[position];
    if (maker === undefined) throw new RangeError(`No target at ${position}: the catalogue has ${length}.`);
    return (made[position] ??= maker());
  };
  return {
    sweep,
    solarSystem: SOLAR_SYSTEM,
    targetAt,
    targetById: (id) => {
      const position = ids.get(id);
      return position === undefined ? SOLAR_SYSTEM.find((body) => body.id === id) : targetAt(position);
    },
    index: { exact, unnumbered, short, names, nonexistent, rank },
  };
}
