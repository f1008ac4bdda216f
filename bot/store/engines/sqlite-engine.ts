/** SQLite in the data folder: opened with settings under which nothing acknowledged is lost, even to a power cut. */
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { CompiledQuery, Kysely, sql, SqliteDialect, SqliteDriver, type DatabaseConnection, type Driver } from 'kysely';
import { StartError } from '../../ground/start-error.js';
import { makeDatabaseFile } from './data-folder.js';
import type { Engine } from './engine.js';
import type { OpenOptions } from './lazy-engine.js';
import { forKysely, loadSqlite, pragma, type OpenSqliteFile, type SqliteFile } from './sqlite-file.js';
import { migrate } from '../migrate.js';
import { isBusy, sqliteFailure, storeError } from '../store-failure.js';
import type { Tables } from '../rows/tables.js';

/** SQLite itself waits this long for a lock; short, because it blocks the event loop meanwhile. */
const BUSY_BLOCKING_MS = 10;
/** In between, other work goes on; after this many tries (about two seconds) the member is told. */
const BUSY_TRIES = 60;
const BUSY_PAUSE_MS = 20;

/**
 * Marks on events, two to every answer, are not flushed by themselves: a power cut may lose the last of them, a killed
 * process none. Such an event has then expired, or is sent under the same key again.
 */
const UNFLUSHED = /^(?:insert into|update) "events"/u;

const withUnflushedMarks = (
  connection: DatabaseConnection,
  database: SqliteFile,
  { unflushed, flushed }: Readonly<Record<'unflushed' | 'flushed', () => void>>,
): DatabaseConnection => ({
  executeQuery: async (query) => {
    if (!UNFLUSHED.test(query.sql) || database.isTransaction) return connection.executeQuery(query);
    unflushed();
    try {
      // It runs before the first await: nothing else comes between the two settings.
      return connection.executeQuery(query);
    } finally {
      flushed();
    }
  },
  streamQuery: (query, chunkSize) => connection.streamQuery(query, chunkSize),
});

/** Takes the write lock at once (a later upgrade could fail half-way), and survives SQLite having rolled back by itself. */
const immediateDriver = (database: SqliteFile): Driver => {
  const driver = new SqliteDriver({ database: forKysely(database) });
  const acquire = driver.acquireConnection.bind(driver);
  const setting = (text: string): (() => void) => {
    const statement = database.prepare(`pragma ${text}`);
    return () => void statement.get();
  };
  const settings = { unflushed: setting('synchronous = NORMAL'), flushed: setting('synchronous = FULL') };
  driver.acquireConnection = async () => withUnflushedMarks(await acquire(), database, settings);
  const execute = async (connection: DatabaseConnection, text: string): Promise<void> => {
    await connection.executeQuery(CompiledQuery.raw(text));
  };
  driver.beginTransaction = (connection) => execute(connection, 'begin immediate');
  driver.rollbackTransaction = async (connection) => {
    if (database.isTransaction) await execute(connection, 'rollback');
  };
  return driver;
};

const immediateDialect = (database: SqliteFile): SqliteDialect => {
  const dialect = new SqliteDialect({ database: forKysely(database) });
  dialect.createDriver = () => immediateDriver(database);
  return dialect;
};

/**
 * WAL with synchronous=FULL: each commit but the marks on events is flushed to the disk before it is acknowledged. NORMAL
 * would survive a killed process too, but could lose the last commits to a power cut.
 */
const openDatabase = (open: OpenSqliteFile, file: string): SqliteFile => {
  if (file !== ':memory:') makeDatabaseFile(file);
  const database = open(file, { timeout: BUSY_BLOCKING_MS });
  try {
    // Before anything that writes: a damaged file is left as it is.
    const check = pragma(database, 'quick_check(1)');
    if (check !== 'ok') throw storeError('store-damaged', new Error(`quick_check: ${JSON.stringify(check)}`));
    pragma(database, 'journal_mode = WAL');
    pragma(database, 'synchronous = FULL');
    // What is forgotten is overwritten with zeros, not left in free pages.
    pragma(database, 'secure_delete = ON');
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
 * @throws StartError when the file comes from a newer program, or no folder can be where it should lie; StoreError for everything else.
 */
export const openSqliteEngine = async (file: string, onMigrated?: OpenOptions['onMigrated']): Promise<Engine> => {
  const folder = dirname(file);
  const open = await loadSqlite();
  try {
    const db = await patiently(async () => {
      const opened = new Kysely<Tables>({ dialect: immediateDialect(openDatabase(open, file)) });
      try {
        await migrate(opened, 'sqlite', undefined, onMigrated);
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
      // Older page images wait in the write-ahead log until it is emptied; a reader elsewhere may put that off until the next time.
      scrub: () =>
        guarded(async () => {
          await sql`pragma wal_checkpoint(truncate)`.execute(db);
        }),
      close: () => db.destroy(),
    };
  } catch (error) {
    throw error instanceof StartError ? error : sqliteFailure(error, folder);
  }
};
