/** One YAML file of the fault model: its entries as they stand, and the line of each of their fields. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { isMap, isNode, isSeq, LineCounter, parseDocument, type Node } from 'yaml';
import type { KnowledgeProblem } from './knowledge-problem.js';
import { partedSteps, yamlMisfit } from './yaml-words.js';

/** Where an entry stands. */
export interface Place {
  readonly file: string;
  readonly node: Node;
  readonly lines: LineCounter;
}
/** `faults.yaml` and every YAML file under `faults/` for the place `faults`, in name order. */
export const filesOf = (folder: string, places: readonly string[]): string[] => {
  const files: string[] = [];
  const collect = (path: string): void => {
    for (const name of readdirSync(path).sort()) {
      const child = join(path, name);
      if (statSync(child).isDirectory()) collect(child);
      else if (/\.ya?ml$/u.test(name)) files.push(child);
    }
  };
  for (const place of places) {
    for (const name of [`${place}.yaml`, `${place}.yml`])
      if (existsSync(join(folder, name))) files.push(join(folder, name));
    if (existsSync(join(folder, place))) collect(join(folder, place));
  }
  return files;
};

/** The line of a field of an entry; of the entry itself with an empty path. */
export const lineOf = (place: Place, path: readonly (string | number)[]): number => {
  let found: Node = place.node;
  let current: unknown = place.node;
  for (const key of path) {
    if (isMap(current)) {
      const pair = current.items.find((item) => String(item.key) === String(key));
      if (pair === undefined) break;
      if (isNode(pair.key)) found = pair.key;
      current = pair.value;
    } else if (isSeq(current)) {
      current = current.items[Number(key)];
      if (isNode(current)) found = current;
    } else break;
  }
  return place.lines.linePos(found.range?.[0] ?? 0).line;
};

export interface FileEntry {
  readonly id: string;
  readonly value: Record<string, unknown>;
  readonly place: Place;
}

/** The YAML library throws, rather than reports, where aliases multiply without bound or lists nest by the thousand. */
export const readFile = (file: string, shown: string, problems: KnowledgeProblem[]): readonly FileEntry[] => {
  try {
    return readYaml(file, shown, problems);
  } catch (error) {
    if (!(error instanceof ReferenceError || error instanceof RangeError)) throw error;
    problems.push({
      file: shown,
      line: 1,
      entry: null,
      message:
        'the file cannot be read: its aliases grow without bound or go round in a circle, or it nests too deeply',
    });
    return [];
  }
};

const readYaml = (file: string, shown: string, problems: KnowledgeProblem[]): readonly FileEntry[] => {
  const lines = new LineCounter();
  const text = readFileSync(file, 'utf8');
  const document = parseDocument(text, { lineCounter: lines, version: '1.2', schema: 'core' });
  const [error] = [...document.errors, ...document.warnings];
  if (error !== undefined) problems.push({ file: shown, entry: null, ...yamlMisfit(text, error, lines) });
  if (document.errors.length > 0 || document.contents === null) return [];
  if (!isSeq(document.contents)) {
    problems.push({
      file: shown,
      line: 1,
      entry: null,
      message: 'the file must be a list of entries, each starting with "- id:"',
    });
    return [];
  }
  return document.contents.items.flatMap((node) => {
    if (!isNode(node)) return [];
    const place: Place = { file: shown, node, lines };
    const value: unknown = node.toJS(document, { maxAliasCount: 50 });
    const id = isMap(node) ? (value as Record<string, unknown>)['id'] : undefined;
    if (typeof id !== 'string') {
      problems.push({
        file: shown,
        line: lineOf(place, []),
        entry: null,
        message: 'an entry needs an id of lower-case words joined by hyphens',
      });
      return [];
    }
    for (const { at, message } of partedSteps(node))
      problems.push({ file: shown, line: lines.linePos(at.range?.[0] ?? 0).line, entry: id, message });
    return [{ id, value: value as Record<string, unknown>, place }];
  });
};
