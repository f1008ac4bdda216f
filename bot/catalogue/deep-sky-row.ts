/** One line of deep-sky.csv: its cells, its keys, and the target it becomes. */
import { addKey, addName, designationKeysOf, numberKeyOf } from './catalogue-index.js';
import type { CatalogueTables } from './catalogue-index.js';
import { cellList } from './csv-lines.js';
import type { Showpiece } from './showpieces.js';
import { meanSurfaceBrightness, NO_CATALOGUE_DATA, type Target, type TargetKind } from './target.js';

export const DEEP_SKY_COLUMNS = 14;

export interface DeepSkyRow {
  readonly designation: string;
  readonly kind: string;
  readonly kindText: string;
  readonly alsoKind: string;
  readonly raDeg: number;
  readonly decDeg: number;
  readonly constellation: string;
  readonly magnitude: number | null;
  readonly sizeArcmin: number | null;
  readonly minorSizeArcmin: number | null;
  readonly messier: string;
  readonly caldwell: string;
  readonly commonNames: string;
  readonly otherNames: string;
}

/** The cells of a line, in the file's order; a line of another number of cells is refused where the file is read. */
type Cells = readonly [
  designation: string,
  kind: string,
  kindText: string,
  alsoKind: string,
  ra: string,
  dec: string,
  constellation: string,
  magnitude: string,
  size: string,
  minorSize: string,
  messier: string,
  caldwell: string,
  commonNames: string,
  otherNames: string,
];

const numberOrNull = (cell: string): number | null => (cell === '' ? null : Number(cell));

export const readDeepSkyRow = (line: string): DeepSkyRow => {
  const [
    designation,
    kind,
    kindText,
    alsoKind,
    ra,
    dec,
    constellation,
    magnitude,
    size,
    minorSize,
    messier,
    caldwell,
    commonNames,
    otherNames,
  ] = line.split(',') as unknown as Cells;
  return {
    designation,
    kind,
    kindText,
    alsoKind,
    raDeg: Number(ra),
    decDeg: Number(dec),
    constellation,
    magnitude: numberOrNull(magnitude),
    sizeArcmin: numberOrNull(size),
    minorSizeArcmin: numberOrNull(minorSize),
    messier,
    caldwell,
    commonNames,
    otherNames,
  };
};

/** How well known an object is, lower being better: Messier, Caldwell, named, numbered; each by brightness. */
export const deepSkyRank = ({ messier, caldwell, commonNames, magnitude }: DeepSkyRow): number => {
  const brightness = 10 * (magnitude ?? 16);
  if (messier) return brightness;
  if (caldwell) return 60 + brightness;
  return (commonNames ? 80 : 250) + brightness;
};

/** Enters every key of the row; returns its stable id. */
export const indexDeepSkyRow = (row: DeepSkyRow, position: number, tables: CatalogueTables): string => {
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
};

/** The rank its own line has, else 3 for a Messier number, 4 for a Caldwell number, else null. */
export const showpieceRank = ({ messier, caldwell }: DeepSkyRow, showpiece: Showpiece | undefined): number | null => {
  if (showpiece?.rank != null) return showpiece.rank;
  if (messier) return 3;
  return caldwell ? 4 : null;
};

/** What it goes by: its Messier number, else its catalogue number or, where nobody says that, its name; then all its others. */
const namesOf = (row: DeepSkyRow): { readonly name: string; readonly aliases: readonly string[] } => {
  const names = cellList(row.commonNames);
  // Star patterns have no number of their own, and nobody says an ESO number where there is a name.
  const isPattern = row.designation.startsWith('Asterism ');
  const goesByName = names.length > 0 && (isPattern || row.designation.startsWith('ESO '));
  const shown = goesByName ? names.shift() : row.designation;
  const [name = row.designation, ...numbers] = [
    row.messier && `M ${row.messier}`,
    shown ?? row.designation,
    goesByName && !isPattern ? row.designation : '',
    row.caldwell && `C ${row.caldwell}`,
  ].filter((one, i, all) => one !== '' && all.indexOf(one) === i);
  return { name, aliases: [...names, ...numbers, ...cellList(row.otherNames)] };
};

/** The target: shown by its Messier number where it has one, else by its catalogue number. */
export const deepSkyTarget = (row: DeepSkyRow, showpiece: Showpiece | undefined): Target => {
  const { magnitude, sizeArcmin, minorSizeArcmin } = row;
  return {
    id: numberKeyOf(row.designation),
    ...namesOf(row),
    kind: row.kind as TargetKind,
    kindText: row.kindText,
    ...NO_CATALOGUE_DATA,
    alsoKind: row.alsoKind === '' ? null : (row.alsoKind as TargetKind),
    constellation: row.constellation,
    magnitude,
    sizeArcmin,
    minorSizeArcmin,
    surfaceBrightness:
      magnitude === null || sizeArcmin === null
        ? null
        : meanSurfaceBrightness(magnitude, sizeArcmin, minorSizeArcmin ?? sizeArcmin),
    showpieceRank: showpieceRank(row, showpiece),
    groupId: showpiece?.groupId ?? null,
    body: { kind: 'fixed', raHoursJ2000: row.raDeg / 15, decDegJ2000: row.decDeg },
  };
};
