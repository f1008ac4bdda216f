/**
 * The shipped entries as one JSON file, made when the program is built: reading and checking the YAML takes a second and a half of
 * computing, reading this a tenth of it. It counts only while the YAML files are, to the byte, those it was made of.
 */
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { checkReferences } from './check-references.js';
import { readEntries, type Entries } from './read-entries.js';

interface Compiled {
  readonly stamp: string;
  readonly entries: Entries;
}

const stampOf = (folder: string): string => {
  const hash = createHash('sha256');
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.ya?ml$/u.test(name))
    .sort();
  for (const name of names)
    hash
      .update(name.split(path.sep).join('/'))
      .update('\0')
      .update(readFileSync(path.join(folder, name)))
      .update('\0');
  return hash.digest('hex');
};

/** @returns false, and writes nothing, where the folder has a problem: whoever loads it then hears which. */
export const compileEntries = (folder: string, file: string): boolean => {
  const result = readEntries(folder);
  if (result.problems.length > 0 || checkReferences(result).length > 0) return false;
  const compiled: Compiled = { stamp: stampOf(folder), entries: result.entries };
  mkdirSync(path.dirname(file), { recursive: true });
  // Whole or not at all, for a program that starts meanwhile.
  writeFileSync(`${file}.new`, JSON.stringify(compiled));
  renameSync(`${file}.new`, file);
  return true;
};

/** @returns null where there is no such file, it cannot be read, or the folder has changed since */
export const readCompiled = (folder: string, file: string): Entries | null => {
  if (!existsSync(file)) return null;
  try {
    const { stamp, entries } = JSON.parse(readFileSync(file, 'utf8')) as Compiled;
    return stamp === stampOf(folder) ? entries : null;
  } catch {
    return null;
  }
};
