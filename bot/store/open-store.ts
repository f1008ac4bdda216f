/** Opens the bot's memory: SQLite in the data folder, PostgreSQL by a connection string, or memory alone for tests and one-shot use. */
import { join } from 'node:path';
import { sql } from 'kysely';
import type { Engine } from './engines/engine.js';
import { eventRows, noteRows } from './rows/event-rows.js';
import { gearRows } from './rows/gear-rows.js';
import { openLazily, type OpenOptions } from './engines/lazy-engine.js';
import { exportMember, forgetMember } from './rows/member-rows.js';
import { reminderRows } from './rows/reminder-rows.js';
import { siteRows } from './rows/site-rows.js';
import { openSqliteEngine } from './engines/sqlite-engine.js';
import type { Store } from './store.js';
import { outcomeRows, walkRows } from './rows/walk-rows.js';

export type StorePlace = { readonly dataFolder: string } | { readonly databaseUrl: string } | { readonly memory: true };

export const SQLITE_FILE = 'pierhand.sqlite';

const openEngine = (place: StorePlace, options: OpenOptions): Promise<Engine> => {
  if ('databaseUrl' in place)
    return openLazily(
      'postgres',
      // Its client is loaded only where it is asked for.
      async () =>
        (await import('./engines/postgres-engine.js')).openPostgresEngine(place.databaseUrl, options.onMigrated),
      options,
    );
  const file = 'memory' in place ? ':memory:' : join(place.dataFolder, SQLITE_FILE);
  return openLazily('sqlite', () => openSqliteEngine(file, options.onMigrated), options);
};

const storeOver = (engine: Engine): Store => ({
  sites: siteRows(engine),
  gear: gearRows(engine),
  walks: walkRows(engine),
  outcomes: outcomeRows(engine),
  reminders: reminderRows(engine),
  notes: noteRows(engine),
  events: eventRows(engine),
  exportMember: exportMember(engine),
  forgetMember: forgetMember(engine),
  ping: () =>
    engine.run(async (db) => {
      await sql`select 1`.execute(db);
    }),
  close: () => engine.close(),
});

/**
 * A store that opens now, or later: where the database cannot be reached, every call rejects with StoreError and the
 * next one, a few seconds on, tries again, so that the rest of the bot keeps answering.
 * @throws StartError one line for the operator: wrong settings, or a schema from a newer program.
 */
export const openStore = async (place: StorePlace, options: OpenOptions = {}): Promise<Store> =>
  storeOver(await openEngine(place, options));
