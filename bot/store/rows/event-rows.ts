/** Platform events already answered, and the small notes platforms keep. */
import { sql } from 'kysely';
import type { Engine } from '../engines/engine.js';
import { compiledOnce } from './compiled-once.js';
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

/** Its values in the order of its marks: key, instant, whether it is answered. */
const claimStatement = () =>
  compiledOnce((db) =>
    db
      .insertInto('events')
      .values({ key: '', claimed_utc_ms: 0, answered: 0 })
      .onConflict((conflict) => conflict.column('key').doNothing()),
  );

/** Its values in the order of its marks: whether it is answered, key. */
const answeredStatement = () =>
  compiledOnce((db) => db.updateTable('events').set({ answered: 1 }).where('key', '=', ''));

export const eventRows = (
  engine: Engine,
  claim = claimStatement(),
  answered = answeredStatement(),
): Store['events'] => ({
  claim: async (key, nowUtcMs) => (await claim(engine, [storable(key), wholeMs(nowUtcMs), 0])).changed > 0,
  answered: async (key) => {
    await answered(engine, [1, storable(key)]);
  },
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
