/** Lines of JSON in the files of a folder. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Of all files whose names begin so, in the order of their names. */
export const linesIn = <Line>(folder: string, begins = ''): readonly Line[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith('.jsonl') && name.startsWith(begins))
    .flatMap((name) => readFileSync(join(folder, name), 'utf8').split('\n'))
    .filter((line) => line !== '')
    .map((line) => JSON.parse(line) as Line);
