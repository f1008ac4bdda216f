/**
 * Opens SQLite files by the interface that Node documents as node:sqlite. It comes from a package whose binaries lie in the
 * package itself, for the systems it knows; elsewhere from Node, where that has it (22.13 and later). Nothing is compiled.
 */
import type * as SqlitePackage from '@photostructure/sqlite';
import type { SqliteDatabase } from 'kysely';
import { storeError } from '../store-failure.js';

export type SqliteFile = SqlitePackage.DatabaseSyncInstance;

export interface SqliteFileOptions {
  readonly readOnly?: boolean;
  /** Milliseconds that SQLite itself waits for a lock. */
  readonly timeout?: number;
}

export type OpenSqliteFile = (file: string, options: SqliteFileOptions) => SqliteFile;

/** Throws a StoreError where this machine has neither. */
export const loadSqlite = async (): Promise<OpenSqliteFile> => {
  try {
    const { DatabaseSync } = await import('@photostructure/sqlite');
    // The binary is looked up at the first use.
    new DatabaseSync(':memory:').close();
    return (file, options) => new DatabaseSync(file, options);
  } catch (error) {
    return await loadFromNode(error);
  }
};

const loadFromNode = async (packageError: unknown): Promise<OpenSqliteFile> => {
  try {
    // Asked for by name at run time: Node 20 has no such module.
    const name = 'node:sqlite';
    const { DatabaseSync } = (await import(name)) as Pick<typeof SqlitePackage, 'DatabaseSync'>;
    return (file, options) => new DatabaseSync(file, options);
  } catch {
    throw storeError('store-unavailable', packageError);
  }
};

/** What `pragma NAME` gives first, or undefined when it gives nothing. */
export const pragma = (database: SqliteFile, text: string): unknown => {
  const row = database.prepare(`pragma ${text}`).get() as Record<string, unknown> | undefined;
  return row === undefined ? undefined : Object.values(row)[0];
};

const KEPT_STATEMENTS = 200;

type KyselyStatement = ReturnType<SqliteDatabase['prepare']>;

const statementOf = (database: SqliteFile, text: string): KyselyStatement => {
  // The package types values loosely; Kysely passes what was bound, and takes rows as they come.
  const statement: {
    readonly columns: () => readonly unknown[];
    readonly all: (...values: readonly unknown[]) => unknown[];
    readonly run: (...values: readonly unknown[]) => { changes: number | bigint; lastInsertRowid: number | bigint };
    readonly iterate: (...values: readonly unknown[]) => IterableIterator<unknown>;
  } = database.prepare(text);
  return {
    reader: statement.columns().length > 0,
    all: (values) => statement.all(...values),
    run: (values) => statement.run(...values),
    iterate: (values) => statement.iterate(...values),
  };
};

/**
 * Closes so that the file is whole by itself. Compiled statements keep SQLite's own close from ending before they are
 * collected as garbage, so the journal is folded in first; where another process has the file open, that is left to it.
 */
const closeFile = (database: SqliteFile): void => {
  try {
    pragma(database, 'journal_mode = delete');
  } catch {
    // Damaged, or in use elsewhere: nothing is lost, the journal lies beside it.
  }
  database.close();
};

/** The file as Kysely wants it. The same few statements come again and again: each is compiled once. */
export const forKysely = (database: SqliteFile): SqliteDatabase => {
  const kept = new Map<string, KyselyStatement>();
  return {
    close: () => closeFile(database),
    prepare: (text) => {
      const known = kept.get(text);
      if (known !== undefined) return known;
      const made = statementOf(database, text);
      if (kept.size < KEPT_STATEMENTS) kept.set(text, made);
      return made;
    },
  };
};
