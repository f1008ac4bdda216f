/** A club's folder as it lies on the disk: what of it is read, and what of it nobody would find out that it is not. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { nearestName } from '../../ground/edit-distance.js';
import { filesOf, readFile } from './entry-files.js';
import type { KnowledgeProblem } from './knowledge-problem.js';

/** Kind → where its files stand in a folder. */
type Places = Readonly<Record<string, readonly string[]>>;

const readIn = (root: string, places: Places): readonly string[] =>
  Object.values(places).flatMap((place) => filesOf(root, place));

/** How many entries of each kind there are; kinds of which there are none are left out. */
export const countIn = (root: string, places: Places): Readonly<Record<string, number>> =>
  Object.fromEntries(
    Object.entries(places)
      .map(([kind, place]) => [kind, filesOf(root, place).flatMap((file) => readFile(file, file, [])).length] as const)
      .filter(([, count]) => count > 0),
  );

/** YAML files of the club that stand where nothing is read, so that what they say is not taken. */
export const checkPlaces = (root: string, places: Places, problems: KnowledgeProblem[]): void => {
  const known = new Set(readIn(root, places));
  const tellNothing = (more = ''): void => {
    const message = `nothing in this folder is read: it has no faults/ and no checks/${more}`;
    problems.push({ file: root, line: null, entry: null, message });
  };
  // Copied into a folder that was there already, it lies one deeper.
  const deeper =
    known.size > 0
      ? undefined
      : readdirSync(root, { withFileTypes: true }).find(
          (one) => one.isDirectory() && readIn(join(root, one.name), places).length > 0,
        );
  if (deeper !== undefined) {
    tellNothing(`; is ${join(root, deeper.name)} meant?`);
    return;
  }
  const toldBefore = problems.length;
  const names = Object.values(places).flat();
  for (const name of readdirSync(root, { recursive: true, encoding: 'utf8' }).sort()) {
    const file = join(root, name);
    if (!/\.ya?ml(?:\.\w+)?$/iu.test(name) || /(?:^|[\\/])\./u.test(name) || known.has(file)) continue;
    const near = nearestName(
      name
        .replace(/\.ya?ml.*$/iu, '')
        .split(/[\\/]/u)[0]
        ?.toLowerCase() ?? '',
      names,
    );
    const instead = /\.ya?ml$/iu.test(name)
      ? `${near === undefined ? '' : `did you mean ${near}/? `}faults go into faults/, questions into checks/, ways into paths.yaml, words into words.yaml`
      : 'its name must end in .yaml';
    problems.push({ file, line: 1, entry: null, message: `nothing is read from this file: ${instead}` });
  }
  if (known.size === 0 && problems.length === toldBefore) tellNothing();
};
