/** Troubleshooting walks under way and lately ended, and the outcomes a club learnt from them. */
import { sql, type Expression, type ExpressionBuilder, type Kysely, type SqlBool } from 'kysely';
import type { Json } from '../../reply/reply.js';
import type { Engine } from '../engines/engine.js';
import { compiledOnce } from './compiled-once.js';
import { storable, wholeMs, wholeMsOrNull } from './storable.js';
import type { Store, StoredWalk } from '../store.js';
import { WALKS_PER_MEMBER } from '../store-limits.js';
import type { Tables, WalkRow } from './tables.js';

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
  ...(row.awaits_member === 0 ? {} : { awaitsMember: true as const }),
  ...(row.asked_helper_id === null ? {} : { askedHelperId: row.asked_helper_id }),
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
  awaits_member: walk.awaitsMember === true ? 1 : 0,
  asked_helper_id: walk.askedHelperId === undefined ? null : storable(walk.askedHelperId),
});

/** Removes the oldest beyond the limit. Who only had a walk begun for them loses none of their own to it. */
const keepNewest = async (db: Kysely<Tables>, walk: WalkRow): Promise<void> => {
  const isWaiting = walk.awaits_member === 1 && walk.helper_id !== null;
  const [column, id] = isWaiting ? (['helper_id', walk.helper_id] as const) : (['member_id', walk.member_id] as const);
  const theirs = db
    .selectFrom('walks')
    .where(column, '=', id)
    .where('awaits_member', '=', isWaiting ? 1 : 0);
  const { kept } = await theirs.select((e) => e.fn.countAll<number>().as('kept')).executeTakeFirstOrThrow();
  if (kept <= WALKS_PER_MEMBER) return;
  const oldest = await theirs
    .select('id')
    .orderBy('updated_utc_ms')
    .orderBy('id')
    .limit(kept - WALKS_PER_MEMBER)
    .execute();
  await db
    .deleteFrom('walks')
    .where(
      'id',
      'in',
      oldest.map((row) => row.id),
    )
    .where('id', '!=', walk.id)
    .execute();
};

/** The walks of a club that have not ended and are theirs, the newest first. */
const openWalks = (
  db: Kysely<Tables>,
  clubId: string,
  isTheirs: (e: ExpressionBuilder<Tables, 'walks'>) => Expression<SqlBool>,
) =>
  db
    .selectFrom('walks')
    .where('club_id', '=', clubId)
    .where('ended_utc_ms', 'is', null)
    .where(isTheirs)
    .orderBy('updated_utc_ms', 'desc')
    .orderBy('id');

const newestOpen = async (...whose: Parameters<typeof openWalks>): Promise<StoredWalk | null> => {
  const row = await openWalks(...whose)
    .selectAll()
    .limit(1)
    .executeTakeFirst();
  return row === undefined ? null : walkOf(row);
};

/**
 * Whether a walk waits for a member's words is asked under every answer. To sort for a first one alone takes SQLite twenty times as long
 * as to sort them all, and there are few: their ids come first. Its values in the order of its marks: club, member, whether it awaits
 * them, the same member as a helper.
 */
const activeStatement = () =>
  compiledOnce((db) =>
    openWalks(db, '', (e) =>
      e.or([e.and([e('member_id', '=', ''), e('awaits_member', '=', 0)]), e('helper_id', '=', '')]),
    ).select('id'),
  );

const oneStatement = () => compiledOnce((db) => db.selectFrom('walks').selectAll().where('id', '=', ''));

/**
 * When a walk was touched, told later than every other walk of its people in that club: of two put within one millisecond, or
 * with a clock set back between them, the last one is the newest.
 */
const touchedLast = ({ id, club_id, member_id, helper_id, updated_utc_ms }: WalkRow) =>
  sql<number>`coalesce((
    select case when max(other.updated_utc_ms) >= ${updated_utc_ms} then max(other.updated_utc_ms) + 1 end
    from walks as other
    where other.id <> ${id} and other.club_id = ${club_id}
      and (other.member_id in (${member_id}, ${helper_id ?? member_id})
        or other.helper_id in (${member_id}, ${helper_id ?? member_id}))
  ), ${updated_utc_ms})`;

export const walkRows = (engine: Engine, one = oneStatement(), active = activeStatement()): Store['walks'] => {
  const get = async (id: string): Promise<StoredWalk | null> => {
    const [row] = (await one(engine, [storable(id)])).rows;
    return row === undefined ? null : walkOf(row);
  };
  return {
    put: (walk) =>
      engine.run(async (db) => {
        const row = rowOf(walk);
        const { id, ...rest } = { ...row, updated_utc_ms: touchedLast(row) };
        await db
          .insertInto('walks')
          .values({ id, ...rest })
          .onConflict((conflict) => conflict.column('id').doUpdateSet(rest))
          .execute();
        await keepNewest(db, row);
      }),
    get,
    active: async (clubId, memberId, helperId) => {
      const [club, member] = [storable(clubId), storable(memberId)];
      if (helperId !== undefined)
        return engine.run((db) =>
          newestOpen(db, club, (e) => e.and([e('member_id', '=', member), e('helper_id', '=', storable(helperId))])),
        );
      const [newest] = (await active(engine, [club, member, 0, member])).rows;
      const walk = newest === undefined ? null : await get(newest.id);
      // It may have ended since.
      return walk?.endedUtcMs === null ? walk : null;
    },
    waiting: (clubId, memberId) =>
      engine.run((db) =>
        newestOpen(db, storable(clubId), (e) =>
          e.and([e('member_id', '=', storable(memberId)), e('awaits_member', '=', 1)]),
        ),
      ),
    purge: (beforeUtcMs) =>
      engine.run(async (db) => {
        const { numDeletedRows } = await db
          .deleteFrom('walks')
          .where('updated_utc_ms', '<', wholeMs(beforeUtcMs))
          .executeTakeFirstOrThrow();
        return Number(numDeletedRows);
      }),
  };
};

/** "2026-11", by UTC. */
const monthOf = (utcMs: number): string => new Date(utcMs).toISOString().slice(0, 7);

/** Asked for at every step of a walk. */
const countsStatement = () =>
  compiledOnce((db) => db.selectFrom('outcomes').select(['fault_id', 'times']).where('club_id', '=', ''));

export const outcomeRows = (engine: Engine, counts = countsStatement()): Store['outcomes'] => ({
  add: (clubId, faultId, memberId, nowUtcMs) =>
    engine.transact(`outcomes ${memberId}`, async (db) => {
      const { numInsertedOrUpdatedRows } = await db
        .insertInto('outcome_marks')
        .values({
          member_id: storable(memberId),
          club_id: storable(clubId),
          fault_id: storable(faultId),
          month: monthOf(nowUtcMs),
        })
        .onConflict((conflict) => conflict.columns(['member_id', 'club_id', 'fault_id', 'month']).doNothing())
        .executeTakeFirstOrThrow();
      if ((numInsertedOrUpdatedRows ?? 0n) === 0n) return false;
      await db
        .insertInto('outcomes')
        .values({ club_id: storable(clubId), fault_id: storable(faultId), times: 1 })
        .onConflict((conflict) =>
          conflict.columns(['club_id', 'fault_id']).doUpdateSet({ times: sql`outcomes.times + 1` }),
        )
        .execute();
      return true;
    }),
  reset: (clubId) =>
    engine.run(async (db) => {
      const { numDeletedRows } = await db
        .deleteFrom('outcomes')
        .where('club_id', '=', storable(clubId))
        .executeTakeFirstOrThrow();
      return Number(numDeletedRows);
    }),
  purgeMarks: (nowUtcMs) =>
    engine.run(async (db) => {
      const { numDeletedRows } = await db
        .deleteFrom('outcome_marks')
        .where('month', '<', monthOf(nowUtcMs))
        .executeTakeFirstOrThrow();
      return Number(numDeletedRows);
    }),
  counts: async (clubId) =>
    Object.fromEntries((await counts(engine, [storable(clubId)])).rows.map(({ fault_id, times }) => [fault_id, times])),
});
