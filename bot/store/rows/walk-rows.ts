/** Troubleshooting walks under way and lately ended, and the outcomes a club learnt from them. */
import { sql } from 'kysely';
import type { Json } from '../../reply/reply.js';
import type { Engine } from '../engines/engine.js';
import { storable, wholeMs, wholeMsOrNull } from './storable.js';
import type { Store, StoredWalk } from '../store.js';
import type { WalkRow } from './tables.js';

export const walkOf = (row: WalkRow): StoredWalk => ({
  id: row.id,
  clubId: row.club_id,
  memberId: row.member_id,
  helperId: row.helper_id,
  platform: row.platform,
  channelId: row.channel_id,
  state: JSON.parse(row.state) as Json,
  updatedUtcMs: row.updated_utc_ms,
  endedUtcMs: row.ended_utc_ms,
});

const rowOf = (walk: StoredWalk): WalkRow => ({
  id: storable(walk.id),
  club_id: storable(walk.clubId),
  member_id: storable(walk.memberId),
  helper_id: walk.helperId === null ? null : storable(walk.helperId),
  platform: storable(walk.platform),
  channel_id: storable(walk.channelId),
  state: JSON.stringify(walk.state),
  updated_utc_ms: wholeMs(walk.updatedUtcMs),
  ended_utc_ms: wholeMsOrNull(walk.endedUtcMs),
});

export const walkRows = (engine: Engine): Store['walks'] => ({
  put: (walk) =>
    engine.run(async (db) => {
      const { id, ...rest } = rowOf(walk);
      await db
        .insertInto('walks')
        .values({ id, ...rest })
        .onConflict((conflict) => conflict.column('id').doUpdateSet(rest))
        .execute();
    }),
  get: (id) =>
    engine.run(async (db) => {
      const row = await db.selectFrom('walks').selectAll().where('id', '=', storable(id)).executeTakeFirst();
      return row === undefined ? null : walkOf(row);
    }),
  active: (clubId, memberId) =>
    engine.run(async (db) => {
      const row = await db
        .selectFrom('walks')
        .selectAll()
        .where('club_id', '=', storable(clubId))
        .where('ended_utc_ms', 'is', null)
        .where((e) => e.or([e('member_id', '=', storable(memberId)), e('helper_id', '=', storable(memberId))]))
        .orderBy('updated_utc_ms', 'desc')
        .orderBy('id')
        .limit(1)
        .executeTakeFirst();
      return row === undefined ? null : walkOf(row);
    }),
  purge: (beforeUtcMs) =>
    engine.run(async (db) => {
      const { numDeletedRows } = await db
        .deleteFrom('walks')
        .where('updated_utc_ms', '<', wholeMs(beforeUtcMs))
        .executeTakeFirstOrThrow();
      return Number(numDeletedRows);
    }),
});

export const outcomeRows = (engine: Engine): Store['outcomes'] => ({
  add: (clubId, faultId) =>
    engine.run(async (db) => {
      await db
        .insertInto('outcomes')
        .values({ club_id: storable(clubId), fault_id: storable(faultId), times: 1 })
        .onConflict((conflict) =>
          conflict.columns(['club_id', 'fault_id']).doUpdateSet({ times: sql`outcomes.times + 1` }),
        )
        .execute();
    }),
  counts: (clubId) =>
    engine.run(async (db) => {
      const rows = await db
        .selectFrom('outcomes')
        .select(['fault_id', 'times'])
        .where('club_id', '=', storable(clubId))
        .execute();
      return Object.fromEntries(rows.map(({ fault_id, times }) => [fault_id, times]));
    }),
});
