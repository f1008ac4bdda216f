/** SQLite in the data folder: opened with settings under which nothing acknowledged is lost, even to a power cut. */
import { dirname } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import {
  CompiledQuery,
  Kysely,
  sql,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type Driver,
  type SqliteDatabase,
} from 'kysely';
import { StartError } from '../../ground/start-error.js';
import { makeDatabaseFile } from './data-folder.js';
import { executed, type Engine, type Executed } from './engine.js';
import { makeFlush, type LogFlush } from './flush-log.js';
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
/** At a start nobody waits for an answer, and another process may be bringing the schema up to date: a quarter of a minute. */
const OPENING_TRIES = 500;

/**
 * What needs no flush: what writes nothing, and marks on events, two to every answer. A power cut may lose the last of those, a killed
 * process none. Such an event has then expired, or is sent under the same key again.
 */
const UNFLUSHED = /^(?:select|pragma|begin|commit|rollback)\b|^(?:insert into|update) "events"/u;

const withWritesTold = (connection: DatabaseConnection, wrote: () => void): DatabaseConnection => ({
  executeQuery: (query) => {
    if (!UNFLUSHED.test(query.sql)) wrote();
    return connection.executeQuery(query);
  },
  streamQuery: (query, chunkSize) => connection.streamQuery(query, chunkSize),
});

/** Takes the write lock at once (a later upgrade could fail half-way), and survives SQLite having rolled back by itself. */
const immediateDriver = (database: SqliteFile, statements: SqliteDatabase, wrote: () => void): Driver => {
  const driver = new SqliteDriver({ database: statements });
  const acquire = driver.acquireConnection.bind(driver);
  driver.acquireConnection = async () => withWritesTold(await acquire(), wrote);
  const execute = async (connection: DatabaseConnection, text: string): Promise<void> => {
    await connection.executeQuery(CompiledQuery.raw(text));
  };
  driver.beginTransaction = (connection) => execute(connection, 'begin immediate');
  driver.rollbackTransaction = async (connection) => {
    if (database.isTransaction) await execute(connection, 'rollback');
  };
  return driver;
};

const immediateDialect = (database: SqliteFile, statements: SqliteDatabase, wrote: () => void): SqliteDialect => {
  const dialect = new SqliteDialect({ database: statements });
  dialect.createDriver = () => immediateDriver(database, statements, wrote);
  return dialect;
};

/**
 * Runs a statement without waiting for a turn on the connection, which costs as much again as the statement.
 * Null where that may not be: in the midst of another's transaction, while another process has the lock, or where a flush must follow.
 */
const runAtOnce = <Row>(
  database: SqliteFile,
  statements: SqliteDatabase,
  { sql: text, parameters }: CompiledQuery<Row>,
): Executed<Row> | null => {
  if (database.isTransaction !== false || !UNFLUSHED.test(text)) return null;
  try {
    const statement = statements.prepare(text);
    return statement.reader
      ? { rows: statement.all(parameters) as Row[], changed: 0 }
      : { rows: [], changed: Number(statement.run(parameters).changes) };
  } catch (error) {
    if (isBusy(error)) return null;
    throw error;
  }
};

interface Opened {
  readonly database: SqliteFile;
  /** Brings what was committed to the disk; null: SQLite does with each commit. */
  readonly log: LogFlush | null;
}

/** A log that has no name (taken away beneath the bot) cannot be flushed: SQLite then moves all of it into the database, and that to the disk. */
const flushOrMove = (database: SqliteFile, log: LogFlush): LogFlush => ({
  ...log,
  flush: async () => {
    try {
      await log.flush();
    } catch (error) {
      const isMissing = (error as NodeJS.ErrnoException).code === 'ENOENT';
      // 0: nothing kept it from moving all.
      if (!isMissing || pragma(database, 'wal_checkpoint(FULL)') !== 0) throw error;
    }
  },
});

/**
 * WAL with synchronous=NORMAL leaves the log to the system: it survives a killed process, but not a power cut. So the log is flushed
 * before anything is acknowledged. Where there can be no log (in memory, some network folders) SQLite flushes by itself.
 */
const openDatabase = (open: OpenSqliteFile, file: string): Opened => {
  if (file !== ':memory:') makeDatabaseFile(file);
  const database = open(file, { timeout: BUSY_BLOCKING_MS });
  try {
    // Before anything that writes: a damaged file is left as it is.
    const check = pragma(database, 'quick_check(1)');
    if (check !== 'ok') throw storeError('store-damaged', new Error(`quick_check: ${JSON.stringify(check)}`));
    const hasLog = pragma(database, 'journal_mode = WAL') === 'wal';
    pragma(database, `synchronous = ${hasLog ? 'NORMAL' : 'FULL'}`);
    // What is forgotten is overwritten with zeros, not left in free pages.
    pragma(database, 'secure_delete = ON');
    return { database, log: hasLog ? flushOrMove(database, makeFlush(`${file}-wal`)) : null };
  } catch (error) {
    database.close();
    throw error;
  }
};

/** Tries again while another process holds the lock. */
const patiently = async <T>(work: () => Promise<T>, tries = BUSY_TRIES): Promise<T> => {
  for (let tried = 1; ; tried++) {
    try {
      return await work();
    } catch (error) {
      if (!isBusy(error) || tried >= tries) throw error;
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
    let writes = 0;
    const wrote = (): void => void writes++;
    const { db, atOnce, log } = await patiently(async () => {
      const { database, log } = openDatabase(open, file);
      const statements = forKysely(database);
      const opened = new Kysely<Tables>({ dialect: immediateDialect(database, statements, wrote) });
      try {
        await migrate(opened, 'sqlite', undefined, onMigrated);
        if (writes > 0) await log?.flush();
        const atOnce = <Row>(statement: CompiledQuery<Row>): Executed<Row> | null =>
          runAtOnce(database, statements, statement);
        return { db: opened, atOnce, log };
      } catch (error) {
        await log?.close();
        await opened.destroy();
        throw error;
      }
    }, OPENING_TRIES);
    const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
      try {
        const before = writes;
        const made = await patiently(work);
        if (writes !== before) await log?.flush();
        return made;
      } catch (error) {
        throw sqliteFailure(error, folder);
      }
    };
    return {
      dialect: 'sqlite',
      run: (work) => guarded(() => work(db)),
      execute: (statement) => guarded(async () => atOnce(statement) ?? (await executed(db, statement))),
      transact: (_lockKey, work) => guarded(() => db.transaction().execute(work)),
      clockAheadMs: async () => 0,
      // Older page images wait in the write-ahead log until it is emptied; a reader elsewhere may put that off until the next time.
      scrub: () =>
        guarded(async () => {
          await sql`pragma wal_checkpoint(truncate)`.execute(db);
        }),
      close: async () => {
        await log?.close();
        await db.destroy();
      },
    };
  } catch (error) {
    throw error instanceof StartError ? error : sqliteFailure(error, folder);
  }
};
