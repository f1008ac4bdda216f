/** Copies the whole store into one file while the bot runs; the file takes its name only when it is whole. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { StartError } from '../ground/start-error.js';
import { driverAddress } from './database-tls.js';
import { loadSqlite, pragma, type SqliteFile } from './engines/sqlite-file.js';
import { SQLITE_FILE, type StorePlace } from './open-store.js';

export interface BackedUp {
  readonly file: string;
  readonly bytes: number;
}

const reason = (error: unknown): string =>
  error instanceof Error ? (error.message.split('\n')[0] ?? '') : String(error);

const renamed = (part: string, file: string): BackedUp => {
  renameSync(part, file);
  return { file, bytes: statSync(file).size };
};

/** Empty, and for the operator alone: it will hold where members live. */
const created = (part: string): void => {
  rmSync(part, { force: true });
  closeSync(openSync(part, 'wx', 0o600));
};

const flushed = (file: string): void => {
  const handle = openSync(file, 'r+');
  fsyncSync(handle);
  closeSync(handle);
};

/**
 * A copy as of one instant: VACUUM INTO reads in a single transaction, which under WAL keeps no writer waiting. (The online
 * backup interface starts over whenever another process writes, and would never end beside a busy one.)
 */
const backUpSqlite = async (dataFolder: string, file: string): Promise<BackedUp> => {
  const source = join(dataFolder, SQLITE_FILE);
  if (!existsSync(source))
    throw new StartError(`There is nothing to back up: ${source} does not exist. Is PIERHAND_DATA the bot's?`);
  const open = await loadSqlite();
  const part = `${file}.part`;
  const cleared = (): void => {
    for (const rest of ['', '-journal']) rmSync(`${part}${rest}`, { force: true });
  };
  const reading = <T>(of: string, work: (database: SqliteFile) => T): T => {
    const database = open(of, { readOnly: true, timeout: 5000 });
    try {
      return work(database);
    } finally {
      database.close();
    }
  };
  cleared();
  try {
    created(part);
    reading(source, (database) => database.prepare('vacuum into ?').run(part));
    const found = reading(part, (database) => pragma(database, 'integrity_check(1)'));
    if (found !== 'ok') throw new Error(`the copy is damaged: ${String(found)}`);
    flushed(part);
    return renamed(part, file);
  } catch (error) {
    cleared();
    throw new StartError(`The backup failed and left nothing behind: ${reason(error)}.`);
  }
};

/** PostgreSQL's own dump, in its custom format. The password goes through the environment, where no process list shows it. */
const backUpPostgres = async (databaseUrl: string, file: string): Promise<BackedUp> => {
  // The same refusals as the bot's, in the same words.
  driverAddress(databaseUrl);
  const address = new URL(databaseUrl);
  const password = decodeURIComponent(address.password) || (address.searchParams.get('password') ?? '');
  address.password = '';
  address.searchParams.delete('password');
  const part = `${file}.part`;
  try {
    created(part);
  } catch (error) {
    throw new StartError(`The backup failed and left nothing behind: ${reason(error)}.`);
  }
  const dump = spawn(
    'pg_dump',
    ['--format=custom', '--no-owner', '--no-privileges', `--file=${part}`, `--dbname=${address.href}`],
    {
      stdio: ['ignore', 'ignore', 'pipe'],
      env: { ...process.env, ...(password === '' ? {} : { PGPASSWORD: password }) },
    },
  );
  let said = '';
  dump.stderr.on('data', (chunk: Buffer) => {
    said = `${said}${chunk.toString()}`.slice(0, 2000);
  });
  try {
    const [code] = (await once(dump, 'close')) as [number | null];
    if (code !== 0) throw new Error(said.trim() === '' ? `pg_dump ended with ${code}` : said.trim());
    return renamed(part, file);
  } catch (error) {
    rmSync(part, { force: true });
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') {
      throw new StartError(
        "pg_dump is not installed here. Install PostgreSQL's client programs, or back up on the database server: pg_dump --format=custom --file=FILE DATABASE",
      );
    }
    throw new StartError(`The backup failed and left nothing behind: ${reason(error)}.`);
  }
};

/**
 * Replaces `file` only by a whole backup.
 * @throws StartError one line for the operator
 */
export const backUp = (place: Exclude<StorePlace, { memory: true }>, file: string): Promise<BackedUp> =>
  'databaseUrl' in place ? backUpPostgres(place.databaseUrl, file) : backUpSqlite(place.dataFolder, file);
