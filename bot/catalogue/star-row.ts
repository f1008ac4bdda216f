/** One line of stars.csv: its cells, its keys, and the target it becomes. */
import { foldKey } from '../ground/fold-text.js';
import { addKey, addName, type CatalogueTables } from './catalogue-index.js';
import { cellList } from './csv-lines.js';
import { bayerKey, bayerText, flamsteedKey } from './designation.js';
import type { StarExtras } from './star-extras.js';
import { NO_CATALOGUE_DATA, type DoubleStar, type Target } from './target.js';

export const STAR_COLUMNS = 13;
/** Marks a name in everyday use that is not the star's approved one. */
const EVERYDAY = '~';

export interface StarRow {
  readonly hip: string;
  readonly raDeg: number;
  readonly decDeg: number;
  readonly pmRaCosDecMasPerYear: number;
  readonly pmDecMasPerYear: number;
  readonly parallaxMas: number;
  readonly magnitude: number;
  readonly constellation: string;
  /** "alp2", "P", or "". */
  readonly bayer: string;
  readonly flamsteed: string;
  /** Constellation of the designations: a few stars have moved over a border since. */
  readonly designated: string;
  readonly names: string;
  readonly isDouble: boolean;
}

export const readStarRow = (line: string): StarRow => {
  const [
    hip = '',
    ra,
    dec,
    pmRa,
    pmDec,
    parallax,
    magnitude,
    constellation = '',
    bayer = '',
    flamsteed = '',
    designated = '',
    names = '',
    double,
  ] = line.split(',');
  return {
    hip,
    raDeg: Number(ra),
    decDeg: Number(dec),
    pmRaCosDecMasPerYear: Number(pmRa),
    pmDecMasPerYear: Number(pmDec),
    parallaxMas: Number(parallax),
    magnitude: Number(magnitude),
    constellation,
    bayer,
    flamsteed,
    designated,
    names,
    isDouble: double === '1',
  };
};

/** How well known a star is, lower being better: named, lettered, numbered, the rest; each by brightness. */
export const starRank = ({ names, bayer, flamsteed, magnitude }: StarRow): number => {
  const brightness = 10 * magnitude;
  if (names) return 30 + brightness;
  if (bayer) return 100 + brightness;
  return (flamsteed ? 160 : 300) + brightness;
};

/** Numbers of other catalogues stand among the names, but are never guessed at: HR 7002 is not HR 7001 misspelt. */
const enterName = (name: string, position: number, tables: CatalogueTables): void => {
  if (/^H[RD] \d+$/.test(name)) addKey(tables.exact, foldKey(name), position);
  else addName(tables, name, position);
};

/** Enters every key of the row; returns its stable id. */
export const indexStarRow = (row: StarRow, position: number, tables: CatalogueTables): string => {
  const id = `hip${row.hip}`;
  addKey(tables.exact, id, position);
  if (row.bayer) {
    const [, letter = '', number = ''] = /^([A-Za-z]+?)(\d*)$/.exec(row.bayer) ?? [];
    addKey(tables.exact, bayerKey(letter, number ? Number(number) : null, row.designated), position);
    if (number) addKey(tables.unnumbered, bayerKey(letter, null, row.designated), position);
  }
  if (row.flamsteed) addKey(tables.exact, flamsteedKey(Number(row.flamsteed), row.designated), position);
  for (const name of cellList(row.names)) enterName(name.replace(EVERYDAY, ''), position, tables);
  return id;
};

const starKindText = (isDouble: boolean, isVariable: boolean): string => {
  if (isDouble) return isVariable ? 'double and variable star' : 'double star';
  return isVariable ? 'variable star' : 'star';
};

const doubleOf = ({ separationArcsec, positionAngleDeg, year, magnitudes, orbit }: DoubleStar): DoubleStar => ({
  separationArcsec,
  positionAngleDeg,
  year,
  magnitudes,
  ...(orbit === undefined ? {} : { orbit }),
});

/** The target: shown by its approved name, else its designation, else an everyday name, else its HIP number. */
export const starTarget = (row: StarRow, { doubles, variables }: StarExtras): Target => {
  const measured = doubles.get(row.hip);
  const isDouble = row.isDouble || measured !== undefined;
  const names = cellList(row.names);
  const shown = [
    ...names.filter((name) => !name.startsWith(EVERYDAY)),
    ...(row.bayer ? [bayerText(row.bayer, row.designated)] : []),
    ...(row.flamsteed ? [`${row.flamsteed} ${row.designated}`] : []),
    ...names.filter((name) => name.startsWith(EVERYDAY)).map((name) => name.slice(1)),
    `HIP ${row.hip}`,
  ];
  return {
    id: `hip${row.hip}`,
    name: shown[0] ?? row.hip,
    aliases: shown.slice(1),
    kind: isDouble ? 'double-star' : 'star',
    kindText: starKindText(isDouble, variables.has(row.hip)),
    ...NO_CATALOGUE_DATA,
    constellation: row.constellation,
    magnitude: row.magnitude,
    showpieceRank: measured?.showpieceRank ?? null,
    double: measured === undefined ? null : doubleOf(measured),
    variable: variables.get(row.hip) ?? null,
    body: {
      kind: 'fixed',
      raHoursJ2000: row.raDeg / 15,
      decDegJ2000: row.decDeg,
      pmRaCosDecMasPerYear: row.pmRaCosDecMasPerYear,
      pmDecMasPerYear: row.pmDecMasPerYear,
      parallaxMas: row.parallaxMas,
    },
  };
};
