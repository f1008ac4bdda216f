/** SQLite in the data folder: opened with settings under which nothing acknowledged is lost, even to a power cut. */
import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import type SqliteConstructor from 'better-sqlite3';
import {
  CompiledQuery, Kysely, SqliteDialect, SqliteDriver, type DatabaseConnection, type Driver,
} from 'kysely';
import type { Engine } from './engine.js';
import { migrate } from './migrate.js';
import { isBusy, sqliteFailure, storeError } from './store-failure.js';
import type { Tables } from './tables.js';
import { StartError } from '../platforms/platform.js';

type Database = SqliteConstructor.Database;

/** SQLite itself waits this long for a lock; short, because it blocks the event loop meanwhile. */
const BUSY_BLOCKING_MS = 10;
/** In between, other work goes on; after this many tries (about two seconds) the member is told. */
const BUSY_TRIES = 60;
const BUSY_PAUSE_MS = 20;

/** Takes the write lock at once (a later upgrade could fail half-way), and survives SQLite having rolled back by itself. */
const immediateDriver = (database: Database): Driver => {
  const driver = new SqliteDriver({ database });
  const execute = async (connection: DatabaseConnection, text: string): Promise<void> => {
    await connection.executeQuery(CompiledQuery.raw(text));
  };
  driver.beginTransaction = (connection) => execute(connection, 'begin immediate');
  driver.rollbackTransaction = async (connection) => {
    if (database.inTransaction) await execute(connection, 'rollback');
  };
  return driver;
};

const immediateDialect = (database: Database): SqliteDialect => {
  const dialect = new SqliteDialect({ database });
  dialect.createDriver = () => immediateDriver(database);
  return dialect;
};

/** The native module is optional: where it cannot be loaded, the rest of the bot must still run. */
const loadSqlite = async (): Promise<typeof SqliteConstructor> => {
  try {
    return (await import('better-sqlite3')).default;
  } catch (error) {
    throw storeError('store-unavailable', error);
  }
};

/**
 * WAL with synchronous=FULL: each commit is flushed to the disk before it is acknowledged. NORMAL would survive a killed
 * process too, but could lose the last commits to a power cut; a bot writes too seldom for the flush to matter.
 */
const openDatabase = (Sqlite: typeof SqliteConstructor, file: string): Database => {
  if (file !== ':memory:') mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
  const database = new Sqlite(file, { timeout: BUSY_BLOCKING_MS });
  try {
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    const [check] = database.pragma('quick_check(1)') as { quick_check: string }[];
    if (check?.quick_check !== 'ok') throw storeError('store-damaged', new Error(check?.quick_check ?? 'quick_check gave nothing'));
    return database;
  } catch (error) {
    database.close();
    throw error;
  }
};

/** Tries again while another process holds the lock. */
const patiently = async <T>(work: () => Promise<T>): Promise<T> => {
  for (let tried = 1; ; tried++) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error) || tried >= BUSY_TRIES) throw error;
      await sleep(BUSY_PAUSE_MS * (0.5 + Math.random()));
    }
  }
};

/**
 * Opens the file, or ":memory:", and brings its schema up to date.
 * @throws StartError when the file comes from a newer program; StoreError for everything else.
 */
export const openSqliteEngine = async (file: string): Promise<Engine> => {
  const folder = dirname(file);
  const Sqlite = await loadSqlite();
  try {
    const db = await patiently(async () => {
      const opened = new Kysely<Tables>({ dialect: immediateDialect(openDatabase(Sqlite, file)) });
      try {
        await migrate(opened, 'sqlite');
        return opened;
      } catch (error) {
        await opened.destroy();
        throw error;
      }
    });
    const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
      try {
        return await patiently(work);
      } catch (error) {
        throw sqliteFailure(error, folder);
      }
    };
    return {
      dialect: 'sqlite',
      run: (work) => guarded(() => work(db)),
      transact: (_lockKey, work) => guarded(() => db.transaction().execute(work)),
      clockAheadMs: async () => 0,
      close: () => db.destroy(),
    };
  } catch (error) {
    throw error instanceof StartError ? error : sqliteFailure(error, folder);
  }
};
