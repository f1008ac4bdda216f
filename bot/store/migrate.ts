/** Brings a database to this program's schema version, in one transaction, and refuses one from a newer program. */
import { sql, type Kysely, type Transaction } from 'kysely';
import { StartError } from '../ground/start-error.js';
import { MIGRATIONS } from './migrations/index.js';
import type { Tables } from './rows/tables.js';

export const SCHEMA_VERSION = MIGRATIONS.length;

type Dialect = 'sqlite' | 'postgres';

/** Any number that only this program would lock: several processes that start at once migrate one after the other. */
const MIGRATION_LOCK = 7_243_018;

const versionTableExists = async (db: Kysely<Tables>, dialect: Dialect): Promise<boolean> => {
  const found =
    dialect === 'sqlite'
      ? await sql`select 1 from sqlite_master where type = 'table' and name = 'schema_version'`.execute(db)
      : await sql`select 1 from information_schema.tables where table_schema = current_schema() and table_name = 'schema_version'`.execute(
          db,
        );
  return found.rows.length > 0;
};

/** 0 for a database without tables of ours. */
export const schemaVersion = async (db: Kysely<Tables>, dialect: Dialect): Promise<number> => {
  if (!(await versionTableExists(db, dialect))) return 0;
  const { rows } = await sql<{ version: number }>`select version from schema_version`.execute(db);
  return Number(rows[0]?.version ?? 0);
};

/**
 * Runs the steps that are missing. All or nothing: a kill half-way leaves the version there was.
 * @throws StartError when the database comes from a newer program.
 */
export const migrate = async (
  db: Kysely<Tables>,
  dialect: Dialect,
  target = SCHEMA_VERSION,
  onMigrated: (from: number, to: number) => void = () => undefined,
): Promise<void> => {
  // A current schema is found by reading alone, so that nothing has to be written at an ordinary start.
  if ((await schemaVersion(db, dialect)) === target) return;
  let from: number | null = null;
  await db.transaction().execute(async (trx: Transaction<Tables>) => {
    if (dialect === 'postgres') await sql`select pg_advisory_xact_lock(${sql.lit(MIGRATION_LOCK)})`.execute(trx);
    const version = await schemaVersion(trx, dialect);
    if (version > SCHEMA_VERSION) {
      throw new StartError(
        `The database has schema version ${version}, made by a newer Pierhand; this one knows versions up to ${SCHEMA_VERSION}. Install the newer Pierhand, or restore a backup made with this one.`,
      );
    }
    if (version >= target) return;
    if (version === 0) {
      await sql`create table if not exists schema_version (version integer not null)`.execute(trx);
      await sql`delete from schema_version`.execute(trx);
      await sql`insert into schema_version (version) values (0)`.execute(trx);
    }
    for (const step of MIGRATIONS.slice(version, target)) await step(trx);
    await sql`update schema_version set version = ${target}`.execute(trx);
    from = version;
  });
  if (from !== null) onMigrated(from, target);
};
