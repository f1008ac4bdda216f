/** One line of deep-sky.csv: its cells, its keys, and the target it becomes. */
import { addKey, addName, designationKeysOf, numberKeyOf } from './catalogue-index.js';
import type { CatalogueTables } from './catalogue-index.js';
import { cellList } from './csv-lines.js';
import type { Target, TargetKind } from './target.js';

export const DEEP_SKY_COLUMNS = 12;

export interface DeepSkyRow {
  readonly designation: string;
  readonly kind: string;
  readonly kindText: string;
  readonly raDeg: number;
  readonly decDeg: number;
  readonly constellation: string;
  readonly magnitude: number | null;
  readonly sizeArcmin: number | null;
  readonly messier: string;
  readonly caldwell: string;
  readonly commonNames: string;
  readonly otherNames: string;
}

export function readDeepSkyRow(line: string): DeepSkyRow {
  const [
    designation = '',
    kind = '',
    kindText = '',
    ra = '',
    dec = '',
    constellation = '',
    magnitude = '',
    size = '',
    messier = '',
    caldwell = '',
    commonNames = '',
    otherNames = '',
  ] = line.split(',');
  return {
    designation,
    kind,
    kindText,
    raDeg: Number(ra),
    decDeg: Number(dec),
    constellation,
    magnitude: magnitude === '' ? null : Number(magnitude),
    sizeArcmin: size === '' ? null : Number(size),
    messier,
    caldwell,
    commonNames,
    otherNames,
  };
}

/** How well known an object is, lower being better: Messier, Caldwell, named, numbered; each by brightness. */
export function deepSkyRank({ messier, caldwell, commonNames, magnitude }: DeepSkyRow): number {
  return (messier ? 0 : caldwell ? 60 : commonNames ? 80 : 250) + 10 * (magnitude ?? 16);
}

/** Enters every key of the row; returns its stable id. */
export function indexDeepSkyRow(row: DeepSkyRow, position: number, tables: CatalogueTables): string {
  const id = numberKeyOf(row.designation);
  addKey(tables.exact, id, position);
  if (row.messier) addKey(tables.exact, `m${row.messier}`, position);
  if (row.caldwell) addKey(tables.exact, `c${row.caldwell}`, position);
  for (const other of cellList(row.otherNames)) addKey(tables.exact, numberKeyOf(other), position);
  for (const name of cellList(row.commonNames)) {
    addName(tables, name, position);
    for (const key of designationKeysOf(name)) if (!tables.exact.has(key)) addKey(tables.exact, key, position);
  }
  return id;
}

/** The target: shown by its Messier number where it has one, else by its catalogue number. */
export function deepSkyTarget(row: DeepSkyRow): Target {
  const numbers = [row.messier && `M ${row.messier}`, row.designation, row.caldwell && `C ${row.caldwell}`].filter(
    (name, i, all) => name !== '' && all.indexOf(name) === i,
  );
  return {
    id: numberKeyOf(row.designation),
    name: numbers[0] ?? row.designation,
    aliases: [...cellList(row.commonNames), ...numbers.slice(1), ...cellList(row.otherNames)],
    kind: row.kind as TargetKind,
    kindText: row.kindText,
    constellation: row.constellation,
    magnitude: row.magnitude,
    sizeArcmin: row.sizeArcmin,
    body: { kind: 'fixed', raHoursJ2000: row.raDeg / 15, decDegJ2000: row.decDeg },
  };
}
