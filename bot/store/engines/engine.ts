/** What the tables stand on: runs work against one of the two databases and lets nothing but StoreError out. */
import type { Kysely, Transaction } from 'kysely';
import type { Tables } from '../rows/tables.js';

export interface Engine {
  readonly dialect: 'sqlite' | 'postgres';
  /** Runs statements, each on its own. */
  readonly run: <T>(work: (db: Kysely<Tables>) => Promise<T>) => Promise<T>;
  /** Runs statements in one transaction; two with the same `lockKey` run one after the other, over all processes. */
  readonly transact: <T>(lockKey: string, work: (trx: Transaction<Tables>) => Promise<T>) => Promise<T>;
  /** How far the database's clock is ahead of this process's, in ms; 0 where both are one machine's. */
  readonly clockAheadMs: () => Promise<number>;
  /** After something was forgotten: clears what the database still holds of it outside its tables, as far as it lets itself be told. */
  readonly scrub: () => Promise<void>;
  readonly close: () => Promise<void>;
}
