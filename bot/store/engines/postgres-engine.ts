/** PostgreSQL behind a connection string: pooled, with bounded waits, and safe against connections that break off. */
import { Kysely, PostgresDialect, sql } from 'kysely';
import pg from 'pg';
import { StartError } from '../../ground/start-error.js';
import { executed, type Engine } from './engine.js';
import type { OpenOptions } from './lazy-engine.js';
import { migrate } from '../migrate.js';
import { driverAddress } from '../database-tls.js';
import { postgresFailure } from '../store-failure.js';
import type { Tables } from '../rows/tables.js';

const POOL_SIZE = 10;
/** Short: a chat waits three seconds for an answer, and this one must still be able to say what is wrong. */
const CONNECT_MS = 2_000;
const STATEMENT_MS = 5_000;
const LOCK_MS = 2_000;

/** 8-byte integers come as text by default; ours are milliseconds and stay far below 2^53. */
const INT8 = 20;
const parseInt8 = (value: string): number => Number(value);
const types: pg.CustomTypesConfig = {
  getTypeParser: (oid, format) =>
    oid === (INT8 as typeof oid) && format !== 'binary'
      ? parseInt8
      : (pg.types.getTypeParser(oid, format) as (value: string) => unknown),
};

/** Wrong user or password, no such database, no right to it: the operator's settings are at fault. */
const SETTINGS_AT_FAULT = new Set(['28P01', '28000', '3D000', '42501']);

const openPool = (databaseUrl: string): pg.Pool => {
  const pool = new pg.Pool({
    ...driverAddress(databaseUrl),
    max: POOL_SIZE,
    types,
    application_name: 'pierhand',
    connectionTimeoutMillis: CONNECT_MS,
    statement_timeout: STATEMENT_MS,
    query_timeout: STATEMENT_MS + 2_000,
    lock_timeout: LOCK_MS,
    idle_in_transaction_session_timeout: STATEMENT_MS,
    keepAlive: true,
  });
  // A connection that breaks while idle, or between two statements, reports here; without a listener it would end the process.
  const ignore = (): void => undefined;
  pool.on('error', ignore);
  pool.on('connect', (client) => client.on('error', ignore));
  return pool;
};

/**
 * Connects and brings the schema up to date.
 * @throws StartError when the settings are wrong or the schema is from a newer program; StoreError when the server cannot be reached.
 */
export const openPostgresEngine = async (
  databaseUrl: string,
  onMigrated?: OpenOptions['onMigrated'],
): Promise<Engine> => {
  const db = new Kysely<Tables>({ dialect: new PostgresDialect({ pool: openPool(databaseUrl) }) });
  try {
    await migrate(db, 'postgres', undefined, onMigrated);
  } catch (error) {
    await db.destroy().catch(() => undefined);
    if (error instanceof StartError) throw error;
    if (error instanceof pg.DatabaseError && SETTINGS_AT_FAULT.has(error.code ?? '')) {
      throw new StartError(`DATABASE_URL does not work: the database server says "${error.message}".`);
    }
    throw postgresFailure(error);
  }
  const guarded = async <T>(work: () => Promise<T>): Promise<T> => {
    try {
      return await work();
    } catch (error) {
      throw postgresFailure(error);
    }
  };
  return {
    dialect: 'postgres',
    run: (work) => guarded(() => work(db)),
    execute: (statement) => guarded(() => executed(db, statement)),
    transact: (lockKey, work) =>
      guarded(() =>
        db.transaction().execute(async (trx) => {
          await sql`select pg_advisory_xact_lock(hashtextextended(${lockKey}, 0))`.execute(trx);
          return work(trx);
        }),
      ),
    clockAheadMs: () =>
      guarded(async () => {
        const before = Date.now();
        const { rows } = await sql<{
          ms: number;
        }>`select (extract(epoch from clock_timestamp()) * 1000)::bigint as ms`.execute(db);
        return (rows[0]?.ms ?? before) - (before + Date.now()) / 2;
      }),
    // Dead rows are cleared by the server's own vacuum.
    scrub: async () => undefined,
    close: () => db.destroy(),
  };
};
