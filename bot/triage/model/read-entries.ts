/** Reads the fault model's YAML files into entries that remember where they stand, and lays an overlay over them. */
import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { isMap } from 'yaml';
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
import { filesOf, lineOf, readFile, type FileEntry, type Place } from './entry-files.js';
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

interface RawEntry {
  readonly value: Record<string, unknown>;
  readonly places: readonly Place[];
}

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

/** Where the entries of both folders come together. */
interface Gathered {
  readonly raw: ReadonlyMap<EntryKind, Map<string, RawEntry>>;
  readonly removed: Set<string>;
  readonly problems: KnowledgeProblem[];
}

/** A folder: the shipped one, or the club's over it. */
interface Layer {
  readonly root: string;
  readonly isClubs: boolean;
}

/** Takes an entry out that the club does not want. */
const remove = (
  { removed, problems }: Gathered,
  found: Map<string, RawEntry>,
  kind: EntryKind,
  entry: FileEntry,
): void => {
  const { id, place } = entry;
  if (!found.has(id))
    problems.push({
      file: place.file,
      line: lineOf(place, []),
      entry: id,
      message: `nothing to remove: none of the ${kind} has this id`,
    });
  found.delete(id);
  removed.add(id);
};

/** Puts an entry in, over the shipped one of its id. */
const put = (found: Map<string, RawEntry>, { id, value, place }: FileEntry): void => {
  const base = found.get(id);
  found.set(
    id,
    base === undefined
      ? { value, places: [place] }
      : { value: overlaid(base.value, value), places: [place, ...base.places] },
  );
};

/** All entries of one kind in one folder. */
const gatherKind = (gathered: Gathered, { root, isClubs }: Layer, kind: EntryKind): void => {
  const { raw, problems } = gathered;
  const found = raw.get(kind) ?? new Map<string, RawEntry>();
  const seen = new Set<string>();
  const take = (entry: FileEntry): void => {
    const { id, value, place } = entry;
    if (seen.has(id)) {
      const message = `there is another of the ${kind} with this id in the same folder`;
      problems.push({ file: place.file, line: lineOf(place, []), entry: id, message });
      return;
    }
    seen.add(id);
    if (isClubs && value['remove'] === true) remove(gathered, found, kind, entry);
    else put(found, entry);
  };
  for (const file of filesOf(root, PLACES[kind]))
    readFile(file, isClubs ? join(root, relative(root, file)) : file, problems).forEach(take);
};

/**
 * Reads the shipped folder and, over it, the club's. Never throws for what the files say: problems are returned, and
 * entries that have one are left out.
 */
export const readEntries = (folder: string, overlayFolder?: string): ReadResult => {
  const problems: KnowledgeProblem[] = [];
  const raw = new Map<EntryKind, Map<string, RawEntry>>(KINDS.map((kind) => [kind, new Map()]));
  const removed = new Set<string>();
  const layers: readonly Layer[] = [
    { root: folder, isClubs: false },
    ...(overlayFolder === undefined ? [] : [{ root: overlayFolder, isClubs: true }]),
  ];
  for (const layer of layers) {
    if (existsSync(layer.root)) for (const kind of KINDS) gatherKind({ raw, removed, problems }, layer, kind);
    else problems.push({ file: layer.root, line: 1, entry: null, message: 'there is no such folder' });
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
