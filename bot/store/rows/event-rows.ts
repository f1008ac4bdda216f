/** Platform events already answered, and the small notes platforms keep. */
import { sql } from 'kysely';
import type { Engine } from '../engines/engine.js';
import { beginsWith, storable, wholeMs } from './storable.js';
import type { Store } from '../store.js';

export const noteRows = (engine: Engine): Store['notes'] => ({
  get: (key) =>
    engine.run(
      async (db) =>
        (await db.selectFrom('notes').select('value').where('key', '=', storable(key)).executeTakeFirst())?.value ??
        null,
    ),
  set: (key, value) =>
    engine.run(async (db) => {
      await db
        .insertInto('notes')
        .values({ key: storable(key), value: storable(value) })
        .onConflict((conflict) => conflict.column('key').doUpdateSet({ value: storable(value) }))
        .execute();
    }),
  list: (prefix) =>
    engine.run((db) =>
      db
        .selectFrom('notes')
        .select(['key', 'value'])
        .where(sql<boolean>`key like ${beginsWith(prefix)} escape '\\'`)
        .orderBy('key')
        .execute(),
    ),
  remove: (key) =>
    engine.run(async (db) => {
      await db.deleteFrom('notes').where('key', '=', storable(key)).execute();
    }),
});

export const eventRows = (engine: Engine): Store['events'] => ({
  claim: (key, nowUtcMs) =>
    engine.run(async (db) => {
      const { numInsertedOrUpdatedRows } = await db
        .insertInto('events')
        .values({ key: storable(key), claimed_utc_ms: wholeMs(nowUtcMs), answered: 0 })
        .onConflict((conflict) => conflict.column('key').doNothing())
        .executeTakeFirstOrThrow();
      return (numInsertedOrUpdatedRows ?? 0n) > 0n;
    }),
  answered: (key) =>
    engine.run(async (db) => {
      await db.updateTable('events').set({ answered: 1 }).where('key', '=', storable(key)).execute();
    }),
  unanswered: (prefix, sinceUtcMs) =>
    engine.run(async (db) => {
      const rows = await db
        .selectFrom('events')
        .select('key')
        .where('answered', '=', 0)
        .where('claimed_utc_ms', '>=', wholeMs(sinceUtcMs))
        .where(sql<boolean>`key like ${beginsWith(prefix)} escape '\\'`)
        .orderBy('claimed_utc_ms')
        .orderBy('key')
        .execute();
      return rows.map(({ key }) => key);
    }),
  purge: (beforeUtcMs) =>
    engine.run(async (db) => {
      const { numDeletedRows } = await db
        .deleteFrom('events')
        .where('claimed_utc_ms', '<', wholeMs(beforeUtcMs))
        .executeTakeFirstOrThrow();
      return Number(numDeletedRows);
    }),
});
