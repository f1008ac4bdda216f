/** Reads the fault model's YAML files into entries that remember where they stand, and lays an overlay over them. */
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { isMap, isNode, isSeq, LineCounter, parseDocument, type Node } from 'yaml';
import type { z } from 'zod';
import {
  evidenceSchema,
  familySchema,
  wordedAnswersSchema,
  sayingSchema,
  translationSchema,
  wordSchema,
  type VocabularyEntries,
} from '../../reading/index.js';
import { entryMisfits } from './entry-words.js';
import type { KnowledgeProblem } from './knowledge-problem.js';
import {
  checkSchema,
  faultSchema,
  linkSchema,
  pathSchema,
  stageSchema,
  type CheckEntry,
  type FaultEntry,
  type LinkEntry,
  type PathEntry,
  type StageEntry,
} from './schema.js';
import { yamlMisfit } from './yaml-words.js';

export type EntryKind = 'paths' | 'links' | 'stages' | 'faults' | 'checks' | keyof VocabularyEntries;

export interface Entries extends VocabularyEntries {
  readonly paths: readonly PathEntry[];
  readonly links: readonly LinkEntry[];
  readonly stages: readonly StageEntry[];
  readonly faults: readonly FaultEntry[];
  readonly checks: readonly CheckEntry[];
}

/** Where a field of an entry stands; the entry itself with an empty path. */
export type Locate = (
  kind: EntryKind,
  id: string,
  path: readonly (string | number)[],
) => { readonly file: string; readonly line: number };

export interface ReadResult {
  readonly entries: Entries;
  readonly problems: readonly KnowledgeProblem[];
  readonly locate: Locate;
  /** Ids that the club's layer took out; entries that still name them are not wrong for it. */
  readonly removed: ReadonlySet<string>;
}

/** Kind → where its files stand in a folder. */
const PLACES: { readonly [K in EntryKind]: readonly string[] } = {
  paths: ['paths'],
  links: ['links'],
  stages: ['stages'],
  faults: ['faults'],
  checks: ['checks'],
  // A club's own folder may hold its evidence without the folder reading/.
  evidence: ['reading/evidence', 'evidence'],
  translations: ['reading/translations'],
  words: ['reading/words'],
  sayings: ['reading/sayings'],
  families: ['reading/families'],
  wordedAnswers: ['reading/answers'],
};
const KINDS = Object.keys(PLACES) as readonly EntryKind[];
const SCHEMAS: { readonly [K in EntryKind]: z.ZodType } = {
  paths: pathSchema,
  links: linkSchema,
  stages: stageSchema,
  faults: faultSchema,
  checks: checkSchema,
  evidence: evidenceSchema,
  translations: translationSchema,
  words: wordSchema,
  sayings: sayingSchema,
  families: familySchema,
  wordedAnswers: wordedAnswersSchema,
};

interface Place {
  readonly file: string;
  readonly node: Node;
  readonly lines: LineCounter;
}
interface RawEntry {
  readonly value: Record<string, unknown>;
  readonly places: readonly Place[];
}

/** `faults.yaml` and every YAML file under `faults/`, in name order. */
const filesOf = (folder: string, kind: EntryKind): string[] => {
  const files: string[] = [];
  const collect = (path: string): void => {
    for (const name of readdirSync(path).sort()) {
      const child = join(path, name);
      if (statSync(child).isDirectory()) collect(child);
      else if (/\.ya?ml$/u.test(name)) files.push(child);
    }
  };
  for (const place of PLACES[kind]) {
    for (const name of [`${place}.yaml`, `${place}.yml`])
      if (existsSync(join(folder, name))) files.push(join(folder, name));
    if (existsSync(join(folder, place))) collect(join(folder, place));
  }
  return files;
};

const lineOf = (place: Place, path: readonly (string | number)[]): number => {
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

interface FileEntry {
  readonly id: string;
  readonly value: Record<string, unknown>;
  readonly place: Place;
}

/** The YAML library throws, rather than reports, where aliases multiply without bound or lists nest by the thousand. */
const readFile = (file: string, shown: string, problems: KnowledgeProblem[]): readonly FileEntry[] => {
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
    return [{ id, value: value as Record<string, unknown>, place }];
  });
};

const isPlainObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * A club's entry over a shipped one: fields given replace, fields made of named parts (`answers`, `remedy`, …)
 * part by part; all else stays. `remove: true` takes the entry out.
 */
const overlaid = (base: Record<string, unknown>, over: Record<string, unknown>): Record<string, unknown> => {
  const merged = { ...base, ...over };
  for (const key of [
    'answers',
    'suggests',
    'verify',
    'remedy',
    'byStage',
    'usual',
    'under',
    'leans',
    'adds',
    'texts',
  ] as const) {
    const [below, above] = [base[key], over[key]];
    if (isPlainObject(below) && isPlainObject(above)) merged[key] = { ...below, ...above };
  }
  return merged;
};

/**
 * Reads the shipped folder and, over it, the club's. Never throws for what the files say: problems are returned, and
 * entries that have one are left out.
 */
export const readEntries = (folder: string, overlayFolder?: string): ReadResult => {
  const problems: KnowledgeProblem[] = [];
  const raw = new Map<EntryKind, Map<string, RawEntry>>(KINDS.map((kind) => [kind, new Map()]));
  const removed = new Set<string>();
  const layers = overlayFolder === undefined ? [folder] : [folder, overlayFolder];
  for (const [layer, root] of layers.entries()) {
    if (!existsSync(root)) {
      problems.push({ file: root, line: 1, entry: null, message: 'there is no such folder' });
      continue;
    }
    for (const kind of KINDS) {
      const found = raw.get(kind) ?? new Map<string, RawEntry>();
      const seen = new Set<string>();
      for (const file of filesOf(root, kind)) {
        const shown = layer === 0 ? file : join(root, relative(root, file));
        for (const { id, value, place } of readFile(file, shown, problems)) {
          if (seen.has(id)) {
            problems.push({
              file: shown,
              line: lineOf(place, []),
              entry: id,
              message: `there is another of the ${kind} with this id in the same folder`,
            });
            continue;
          }
          seen.add(id);
          const base = found.get(id);
          if (value['remove'] === true && layer > 0) {
            if (base === undefined)
              problems.push({
                file: shown,
                line: lineOf(place, []),
                entry: id,
                message: `nothing to remove: none of the ${kind} has this id`,
              });
            found.delete(id);
            removed.add(id);
          } else {
            found.set(
              id,
              base === undefined
                ? { value, places: [place] }
                : { value: overlaid(base.value, value), places: [place, ...base.places] },
            );
          }
        }
      }
    }
  }

  const locate: Locate = (kind, id, path) => {
    const places = raw.get(kind)?.get(id)?.places ?? [];
    // The club's place of a field where it gives it, else the shipped one.
    const head = path[0];
    const place = places.find(({ node }) => head === undefined || (isMap(node) && node.has(head))) ?? places[0];
    return place === undefined ? { file: folder, line: 1 } : { file: place.file, line: lineOf(place, path) };
  };

  const parsed = Object.fromEntries(
    KINDS.map((kind) => [
      kind,
      [...(raw.get(kind) ?? [])].flatMap(([id, entry]) => {
        const result = SCHEMAS[kind].safeParse(entry.value);
        if (result.success) return [result.data];
        for (const { path, message } of entryMisfits(SCHEMAS[kind], entry.value, result.error))
          problems.push({ ...locate(kind, id, path), entry: id, message });
        return [];
      }),
    ]),
  ) as unknown as Entries;
  return { entries: parsed, problems, locate, removed };
};
