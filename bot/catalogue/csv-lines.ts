/** The lines of a data file of ours: comma-separated, never quoted, comments at the head marked with "#". */
import { readFileSync } from 'node:fs';

export interface CsvLines {
  readonly lines: readonly string[];
  readonly comments: readonly string[];
}

/** Reads a file, checking that every line has so many columns; throws an Error naming file and line where one has not. */
export const readCsvLines = (path: string, columns: number): CsvLines => {
  const lines: string[] = [];
  const comments: string[] = [];
  readFileSync(path, 'utf8')
    .split('\n')
    .forEach((line, i) => {
      if (line === '') return;
      if (line.startsWith('#')) {
        comments.push(line);
        return;
      }
      let commas = 0;
      for (let at = line.indexOf(','); at >= 0; at = line.indexOf(',', at + 1)) commas += 1;
      if (commas !== columns - 1)
        throw new Error(`${path} line ${i + 1}: ${commas + 1} columns where ${columns} are expected.`);
      lines.push(line);
    });
  return { lines, comments };
};

/** A cell that lists several values, divided by semicolons. */
export const cellList = (cell: string): string[] => {
  return cell === '' ? [] : cell.split(';');
};
