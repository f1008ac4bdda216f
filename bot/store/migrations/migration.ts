/** One step of the schema's history, run inside a transaction; a step that was released is never edited, only followed by another. */
import type { Kysely } from 'kysely';

/** Rows have no type here: a migration speaks of tables as they stood then. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- rows of that day, not of ours
export type Migration = (db: Kysely<any>) => Promise<void>;
