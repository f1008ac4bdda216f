/** What more is known of some stars, by Hipparcos number: doubles.csv, orbits.csv and variables.csv. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { readCsvLines } from './csv-lines.js';
import type { BinaryOrbit } from '../sky/binary-orbit.js';
import type { DoubleStar, VariableStar } from './target.js';

export interface StarExtras {
  readonly doubles: ReadonlyMap<string, DoubleStar & { readonly showpieceRank: number }>;
  readonly variables: ReadonlyMap<string, VariableStar>;
}

const DOUBLE_COLUMNS = 7;
const VARIABLE_COLUMNS = 7;
const ORBIT_COLUMNS = 8;

const linesOf = (folder: string, file: string, columns: number): readonly string[] => {
  const path = join(folder, file);
  return existsSync(path) ? readCsvLines(path, columns).lines : [];
};

const orNull = (cell: string): number | null => (cell === '' ? null : Number(cell));

const readVariable = (cells: readonly string[]): VariableStar => {
  const [, type = '', brightest, faintest, period = '', epoch = '', epochIs = ''] = cells;
  return {
    type: type.replace(';', ','),
    brightestMagnitude: Number(brightest),
    faintestMagnitude: Number(faintest),
    periodDays: orNull(period),
    epochJd: orNull(epoch),
    epochIs: epochIs === 'minimum' || epochIs === 'maximum' ? epochIs : null,
  };
};

const readOrbit = (cells: readonly string[]): BinaryOrbit => {
  const [, period, periastron, eccentricity, semiMajor, inclination, node, argument] = cells.map(Number);
  return {
    periodYears: period ?? 0,
    periastronYear: periastron ?? 0,
    eccentricity: eccentricity ?? 0,
    semiMajorArcsec: semiMajor ?? 0,
    inclinationDeg: inclination ?? 0,
    nodeDeg: node ?? 0,
    periastronDeg: argument ?? 0,
  };
};

const orbitsIn = (folder: string): ReadonlyMap<string, BinaryOrbit> =>
  new Map(
    linesOf(folder, 'orbits.csv', ORBIT_COLUMNS).map((line) => {
      const cells = line.split(',');
      return [cells[0] ?? '', readOrbit(cells)];
    }),
  );

/** Reads the files of the folder; a file that is not there has nothing. */
export const readStarExtras = (folder: string): StarExtras => {
  const orbits = orbitsIn(folder);
  return {
    doubles: new Map(
      linesOf(folder, 'doubles.csv', DOUBLE_COLUMNS).map((line) => {
        const [hip = '', separation, angle, year, brighter, fainter, rank] = line.split(',');
        const orbit = orbits.get(hip);
        return [
          hip,
          {
            separationArcsec: Number(separation),
            positionAngleDeg: Number(angle),
            year: Number(year),
            magnitudes: [Number(brighter), Number(fainter)],
            showpieceRank: Number(rank),
            ...(orbit === undefined ? {} : { orbit }),
          },
        ];
      }),
    ),
    variables: new Map(
      linesOf(folder, 'variables.csv', VARIABLE_COLUMNS).map((line) => {
        const cells = line.split(',');
        return [cells[0] ?? '', readVariable(cells)];
      }),
    ),
  };
};
