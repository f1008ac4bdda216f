/** Reads the fault model's YAML files into entries that remember where they stand, and lays an overlay over them. */
import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { isMap } from 'yaml';
import type * as z from 'zod';
import {
  deedsSchema,
  evidenceSchema,
  familySchema,
  wordedAnswersSchema,
  sayingSchema,
  translationSchema,
  wordSchema,
  type VocabularyEntries,
} from '../../reading/index.js';
import { checkPlaces, countIn } from './club-folder.js';
import { filesOf, lineOf, readFile, type FileEntry, type Place } from './entry-files.js';
import { entryMisfits } from './entry-words.js';
import type { KnowledgeProblem } from './knowledge-problem.js';
import { layOver } from './lay-over.js';
import { familiesOfLikes, familyWithLikes, holdsOnLikes, likePaths } from './like-paths.js';
import { ownWords, type WordsOf } from './own-words.js';
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

/** As it ships, with the club's words in it, or the club's alone. */
export type Origin = 'shipped' | 'changed' | 'club';

export interface ReadResult {
  readonly entries: Entries;
  readonly problems: readonly KnowledgeProblem[];
  readonly locate: Locate;
  /** Ids that the club's layer took out; entries that still name them are not wrong for it. */
  readonly removed: ReadonlySet<string>;
  /** Whether the club's layer, or a folder by itself, has a say in how words are read: then its sayings are to be held to their examples. */
  readonly changesReading: boolean;
  readonly from: (kind: EntryKind, id: string) => Origin;
}

/** Kind → where its files stand in a folder. */
const PLACES: { readonly [K in EntryKind]: readonly string[] } = {
  paths: ['paths'],
  links: ['links'],
  stages: ['stages'],
  faults: ['faults'],
  checks: ['checks'],
  // A club's own folder may hold what is read without the folder reading/.
  evidence: ['reading/evidence', 'evidence'],
  translations: ['reading/translations', 'translations'],
  words: ['reading/words', 'words'],
  sayings: ['reading/sayings', 'sayings'],
  families: ['reading/families', 'families'],
  wordedAnswers: ['reading/answers', 'answers'],
  deeds: ['reading/deeds', 'deeds'],
};
const READ_KINDS = ['evidence', 'translations', 'words', 'sayings', 'families', 'wordedAnswers', 'deeds'] as const;
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
  deeds: deedsSchema,
};

/** How sure a saying of the club's is that says nothing of it: the club knows its gear and its members. */
const OF_THE_CLUB = 0.96;

interface RawEntry {
  readonly value: Readonly<Record<string, unknown>>;
  readonly places: readonly Place[];
  readonly from: Origin;
}

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
const put = (
  { problems }: Gathered,
  { isClubs }: Layer,
  found: Map<string, RawEntry>,
  { id, value, place }: FileEntry,
): void => {
  const base = found.get(id);
  if (base === undefined) {
    found.set(id, { value, places: [place], from: isClubs ? 'club' : 'shipped' });
    return;
  }
  const laid = layOver(base.value, value);
  found.set(id, { value: laid.value, places: [place, ...base.places], from: 'changed' });
  for (const { at, name } of laid.notThere)
    problems.push({
      file: place.file,
      line: lineOf(place, ['without', at]),
      entry: id,
      message: `without: it has no "${name}" to take out`,
    });
};

/** All entries of one kind in one folder. */
const gatherKind = (gathered: Gathered, layer: Layer, kind: EntryKind): void => {
  const { root, isClubs } = layer;
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
    else put(gathered, layer, found, entry);
  };
  for (const file of filesOf(root, PLACES[kind]))
    readFile(file, isClubs ? join(root, relative(root, file)) : file, problems).forEach(take);
};

/** How many entries of each kind a club's folder has; kinds of which it has none are left out. */
export const countEntries = (root: string): Readonly<Record<string, number>> => countIn(root, PLACES);

/** Gives the ways that are like one that ships what that one has. */
const takeOver = ({ raw, problems }: Gathered, locate: Locate): void => {
  const written = raw.get('paths') ?? new Map<string, RawEntry>();
  const made = likePaths(new Map([...written].map(([id, { value }]) => [id, value])));
  for (const { id, message } of made.problems)
    problems.push({ ...locate('paths', id, ['like']), entry: id, message: `like: ${message}` });
  const change = (kind: EntryKind, to: (id: string, value: RawEntry['value']) => RawEntry['value']): void => {
    const entries = raw.get(kind);
    for (const [id, entry] of entries ?? []) entries?.set(id, { ...entry, value: to(id, entry.value) });
  };
  if (made.likes.size === 0) return;
  change('paths', (id, value) => made.paths.get(id) ?? value);
  for (const kind of ['faults', 'checks'] as const) change(kind, (_, value) => holdsOnLikes(value, made.likes));
  change('families', (_, value) => familyWithLikes(value, made.likes));
  for (const family of familiesOfLikes(made)) {
    const { places = [] } = written.get(family.paths[1] ?? '') ?? {};
    raw.get('families')?.set(family.id, { value: { ...family }, places, from: 'club' });
  }
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
    else problems.push({ file: layer.root, line: null, entry: null, message: 'there is no such folder' });
    if (layer.isClubs && existsSync(layer.root)) checkPlaces(layer.root, PLACES, problems);
  }

  const wordsOf = new Map<string, WordsOf>();
  const locate: Locate = (kind, id, path) => {
    // Sayings that stand in no file are made of the words of an entry.
    const owner = kind === 'sayings' ? wordsOf.get(id) : undefined;
    if (owner !== undefined) return locate(owner.kind, owner.id, ['words']);
    const places = raw.get(kind)?.get(id)?.places ?? [];
    // The club's place of a field where it gives it, else the shipped one.
    const head = path[0];
    const place = places.find(({ node }) => head === undefined || (isMap(node) && node.has(head))) ?? places[0];
    return place === undefined ? { file: folder, line: 1 } : { file: place.file, line: lineOf(place, path) };
  };

  takeOver({ raw, removed, problems }, locate);
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
  const own = ownWords(parsed);
  for (const [id, owner] of own.of) wordsOf.set(id, owner);
  const clubs = (saying: Entries['sayings'][number]): Entries['sayings'][number] => ({
    sureness: OF_THE_CLUB,
    ...saying,
  });
  const isShipped = (id: string): boolean => raw.get('sayings')?.get(id)?.from === 'shipped';
  const entries: Entries = {
    ...parsed,
    sayings: [...parsed.sayings.map((one) => (isShipped(one.id) ? one : clubs(one))), ...own.sayings.map(clubs)],
    families: [...parsed.families, ...own.families],
  };
  return {
    entries,
    problems,
    locate,
    removed,
    changesReading:
      own.sayings.length > 0 ||
      overlayFolder === undefined ||
      READ_KINDS.some((kind) => filesOf(overlayFolder, PLACES[kind]).length > 0),
    // Words that stand in an entry that ships are the club's all the same.
    from: (kind, id) => (kind === 'sayings' && wordsOf.has(id) ? 'club' : (raw.get(kind)?.get(id)?.from ?? 'shipped')),
  };
};
