/** What people go out to see: the ranks and groups of showpieces.csv. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { numberKeyOf } from './catalogue-index.js';
import { readCsvLines } from './csv-lines.js';

export interface Showpiece {
  /** 1 (what a beginner is shown) or 2 (repays any small telescope); null where the line only joins it to a group. */
  readonly rank: number | null;
  /** Id of the object it is one stop at the eyepiece with, or null. */
  readonly groupId: string | null;
}

const COLUMNS = 3;

/** Showpieces by id; none where the folder has no such file. */
export const readShowpieces = (folder: string): ReadonlyMap<string, Showpiece> => {
  const path = join(folder, 'showpieces.csv');
  if (!existsSync(path)) return new Map();
  return new Map(
    readCsvLines(path, COLUMNS).lines.map((line) => {
      const [designation = '', rank = '', group = ''] = line.split(',');
      return [
        numberKeyOf(designation),
        { rank: rank === '' ? null : Number(rank), groupId: group === '' ? null : numberKeyOf(group) },
      ];
    }),
  );
};
