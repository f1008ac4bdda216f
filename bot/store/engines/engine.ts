/** What the tables stand on: runs work against one of the two databases and lets nothing but StoreError out. */
import type { CompiledQuery, Kysely, Transaction } from 'kysely';
import type { Tables } from '../rows/tables.js';

export interface Executed<Row> {
  readonly rows: readonly Row[];
  /** Rows written. */
  readonly changed: number;
}

export interface Engine {
  readonly dialect: 'sqlite' | 'postgres';
  /** Runs statements, each on its own. */
  readonly run: <T>(work: (db: Kysely<Tables>) => Promise<T>) => Promise<T>;
  /** One statement that comes with every question, on its own: at once where nothing stands in its way. */
  readonly execute: <Row>(statement: CompiledQuery<Row>) => Promise<Executed<Row>>;
  /** Runs statements in one transaction; two with the same `lockKey` run one after the other, over all processes. */
  readonly transact: <T>(lockKey: string, work: (trx: Transaction<Tables>) => Promise<T>) => Promise<T>;
  /** How far the database's clock is ahead of this process's, in ms; 0 where both are one machine's. */
  readonly clockAheadMs: () => Promise<number>;
  /** After something was forgotten: clears what the database still holds of it outside its tables, as far as it lets itself be told. */
  readonly scrub: () => Promise<void>;
  readonly close: () => Promise<void>;
}

export const executed = async <Row>(db: Kysely<Tables>, statement: CompiledQuery<Row>): Promise<Executed<Row>> => {
  const { rows, numAffectedRows = 0n } = await db.executeQuery(statement);
  return { rows, changed: Number(numAffectedRows) };
};
