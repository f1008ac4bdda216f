/** Keeps the operator's list of orbital elements: read at start and daily, the last good one kept when that fails. */
import { MS_PER_DAY, MS_PER_HOUR } from '../ground/durations.js';
import { existsSync, mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { MovingTargets } from '../catalogue/index.js';
import { readElements } from './read-elements.js';
import { smallBodies, type ElementsList } from './small-bodies.js';

/** After a failure it is tried again sooner. */
const RETRY_MS = MS_PER_HOUR;
const FETCH_WITHIN_MS = 30_000;
const MOST_BYTES = 16 * 1024 * 1024;

export interface ElementsKeeper {
  readonly moving: MovingTargets;
  readonly close: () => void;
}

interface KeeperOptions {
  /** A file, or an http(s) address; null: none. */
  readonly source: string | null;
  /** Where the last good copy of a fetched list is kept. */
  readonly dataFolder: string;
  readonly now: () => number;
  readonly onProblem: (message: string) => void;
}

const isAddress = (source: string): boolean => /^https?:\/\//i.test(source);

const fetched = async (address: string): Promise<string> => {
  const response = await fetch(address, { signal: AbortSignal.timeout(FETCH_WITHIN_MS) });
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  const parts: Buffer[] = [];
  let bytes = 0;
  for await (const part of response.body ?? []) {
    parts.push(Buffer.from(part as Uint8Array));
    bytes += parts.at(-1)?.length ?? 0;
    if (bytes > MOST_BYTES) throw new Error('the list is larger than 16 MB');
  }
  return Buffer.concat(parts).toString('utf8');
};

const fromFile = (file: string): { readonly text: string; readonly writtenUtcMs: number } => {
  const { size, mtimeMs } = statSync(file);
  if (size > MOST_BYTES) throw new Error('the list is larger than 16 MB');
  return { text: readFileSync(file, 'utf8'), writtenUtcMs: mtimeMs };
};

const listOf = (text: string, readUtcMs: number): ElementsList => {
  const { bodies } = readElements(text);
  if (bodies.length === 0) throw new Error('no line of it is in the Minor Planet Center’s formats');
  return { bodies, readUtcMs };
};

const FILE_TROUBLES: ReadonlyMap<unknown, string> = new Map([
  ['ENOENT', 'is not there'],
  ['ENOTDIR', 'is not there'],
  ['EACCES', 'may not be read by the bot’s user'],
  ['EISDIR', 'is a folder'],
]);

const whyNot = (error: unknown, source: string): string => {
  if (!(error instanceof Error)) return String(error);
  const said = 'code' in error ? FILE_TROUBLES.get(error.code) : undefined;
  return said === undefined ? error.message : `the file ${source} ${said}`;
};

/** Starts keeping the list. Nothing here throws: what went wrong goes to `onProblem`, and the last good list stays. */
export const keepElements = ({ source, dataFolder, now, onProblem }: KeeperOptions): ElementsKeeper => {
  let list: ElementsList | null = null;
  let timer: NodeJS.Timeout | undefined;
  let closed = false;
  const copy = path.join(dataFolder, 'elements.txt');
  const problem = (error: unknown): void =>
    onProblem(
      `PIERHAND_ELEMENTS: ${whyNot(error, source ?? '')}${list === null ? '' : '; the last good list is kept'}.`,
    );

  const readNow = async (from: string): Promise<void> => {
    if (!isAddress(from)) {
      list = listOf(fromFile(from).text, now());
      return;
    }
    const text = await fetched(from);
    list = listOf(text, now());
    mkdirSync(dataFolder, { recursive: true });
    writeFileSync(`${copy}.new`, text);
    renameSync(`${copy}.new`, copy);
  };
  const again = (from: string, inMs: number): void => {
    if (closed) return;
    timer = setTimeout(() => void turn(from), inMs);
    timer.unref();
  };
  const turn = async (from: string): Promise<void> => {
    try {
      await readNow(from);
      again(from, MS_PER_DAY);
    } catch (error) {
      problem(error);
      again(from, RETRY_MS);
    }
  };

  if (source !== null) {
    if (isAddress(source) && existsSync(copy)) {
      try {
        const kept = fromFile(copy);
        list = listOf(kept.text, kept.writtenUtcMs);
      } catch (error) {
        problem(error);
      }
    }
    void turn(source);
  }
  return {
    moving: smallBodies(() => list, source !== null, now),
    close: () => {
      closed = true;
      clearTimeout(timer);
    },
  };
};
