/** Reminders, and the leases by which one process alone delivers each. */
import type { SelectQueryBuilder } from 'kysely';
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { typableId } from '../../ground/ids.js';
import type { Json } from '../../reply/reply.js';
import type { Engine } from '../engines/engine.js';
import { storable, wholeMs, wholeMsOrNull } from './storable.js';
import { REMINDERS_PER_MEMBER } from '../store-limits.js';
import { StoreError, type NewReminder, type Reminder, type Store } from '../store.js';
import type { ReminderRow, Tables } from './tables.js';

/** A pause between tries is at most this; see LONGEST_LEASE_MS. */
export const LONGEST_PAUSE_MS = 15 * MS_PER_MINUTE;
/** A lease further ahead than this was written by a clock that has since been set back: it counts as run out. */
const LONGEST_LEASE_MS = 15 * MS_PER_MINUTE;

export const reminderOf = (row: ReminderRow): Reminder => ({
  id: row.id,
  memberId: row.member_id,
  clubId: row.club_id,
  platform: row.platform,
  channelId: row.channel_id,
  to: row.said_to,
  kind: row.kind as Reminder['kind'],
  dueUtcMs: row.due_utc_ms,
  staleUtcMs: row.stale_utc_ms,
  repeat: row.repeat === null ? null : (JSON.parse(row.repeat) as Json),
  text: row.text,
});

const ID_LENGTH = 7;

const rowOf = (reminder: NewReminder): ReminderRow => ({
  id: typableId(ID_LENGTH),
  member_id: storable(reminder.memberId),
  club_id: storable(reminder.clubId),
  platform: storable(reminder.platform),
  channel_id: storable(reminder.channelId),
  said_to: reminder.to,
  kind: reminder.kind,
  due_utc_ms: wholeMs(reminder.dueUtcMs),
  stale_utc_ms: wholeMsOrNull(reminder.staleUtcMs),
  repeat: reminder.repeat === null ? null : JSON.stringify(reminder.repeat),
  text: storable(reminder.text),
  claimant: null,
  lease_utc_ms: null,
  attempts: 0,
  not_before_utc_ms: null,
});

const byDue = <T>(query: SelectQueryBuilder<Tables, 'reminders', T>) => query.orderBy('due_utc_ms').orderBy('id');

export const reminderRows = (engine: Engine): Store['reminders'] => ({
  add: (reminder) =>
    engine.transact(`reminders ${reminder.memberId}`, async (trx) => {
      const row = rowOf(reminder);
      const { kept } = await trx
        .selectFrom('reminders')
        .select((e) => e.fn.countAll<number>().as('kept'))
        .where('member_id', '=', row.member_id)
        .executeTakeFirstOrThrow();
      if (kept >= REMINDERS_PER_MEMBER) {
        throw new StoreError(
          'store-limit',
          `${REMINDERS_PER_MEMBER} reminders are waiting already, which is the most for one member. See them with remind list, and cancel one with remind cancel id:…`,
        );
      }
      await trx.insertInto('reminders').values(row).execute();
      return reminderOf(row);
    }),

  list: (memberId) =>
    engine.run(async (db) =>
      (await byDue(db.selectFrom('reminders').selectAll().where('member_id', '=', storable(memberId))).execute()).map(
        reminderOf,
      ),
    ),

  cancel: (memberId, id) =>
    engine.run(async (db) => {
      const { numDeletedRows } = await db
        .deleteFrom('reminders')
        .where('id', '=', storable(id))
        .where('member_id', '=', storable(memberId))
        .executeTakeFirstOrThrow();
      return numDeletedRows > 0n;
    }),

  listChannel: (platform, channelId) =>
    engine.run(async (db) =>
      (
        await byDue(
          db
            .selectFrom('reminders')
            .selectAll()
            .where('said_to', '=', 'channel')
            .where('platform', '=', storable(platform))
            .where('channel_id', '=', storable(channelId)),
        ).execute()
      ).map(reminderOf),
    ),

  cancelChannel: (platform, channelId, id) =>
    engine.run(async (db) => {
      const { numDeletedRows } = await db
        .deleteFrom('reminders')
        .where('id', '=', storable(id))
        .where('said_to', '=', 'channel')
        .where('platform', '=', storable(platform))
        .where('channel_id', '=', storable(channelId))
        .executeTakeFirstOrThrow();
      return numDeletedRows > 0n;
    }),

  listStanding: (platforms) =>
    platforms.length === 0
      ? Promise.resolve([])
      : engine.run(async (db) =>
          (
            await byDue(
              db
                .selectFrom('reminders')
                .selectAll()
                .where('repeat', 'is not', null)
                .where('platform', 'in', platforms.map(storable)),
            ).execute()
          ).map(reminderOf),
        ),

  reschedule: (id, fromUtcMs, dueUtcMs) =>
    engine.run(async (db) => {
      const { numUpdatedRows } = await db
        .updateTable('reminders')
        .set({ due_utc_ms: wholeMs(dueUtcMs), attempts: 0, not_before_utc_ms: null })
        .where('id', '=', storable(id))
        .where('due_utc_ms', '=', wholeMs(fromUtcMs))
        .where('claimant', 'is', null)
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    }),

  claimDue: async (nowUtcMs, leaseUtcMs, claimant, limit, platforms) => {
    if (platforms?.length === 0) return [];
    // Several machines may disagree about the time: leases and due times go by the database's clock.
    const aheadMs = await engine.clockAheadMs();
    const now = wholeMs(nowUtcMs + aheadMs);
    const lease = wholeMs(leaseUtcMs + aheadMs);
    return engine.run(async (db) => {
      let due = byDue(
        db
          .selectFrom('reminders')
          .select('id')
          .where('due_utc_ms', '<=', now)
          .where((e) =>
            e.or([
              e('lease_utc_ms', 'is', null),
              e('lease_utc_ms', '<=', now),
              e('lease_utc_ms', '>', now + LONGEST_LEASE_MS),
            ]),
          )
          .where((e) =>
            e.or([
              e('not_before_utc_ms', 'is', null),
              e('not_before_utc_ms', '<=', now),
              e('not_before_utc_ms', '>', now + LONGEST_PAUSE_MS),
            ]),
          ),
      ).limit(limit);
      if (platforms !== undefined) due = due.where('platform', 'in', [...platforms]);
      if (engine.dialect === 'postgres') due = due.forUpdate().skipLocked();
      const rows = await db
        .updateTable('reminders')
        .set((e) => ({ claimant: storable(claimant), lease_utc_ms: lease, attempts: e('attempts', '+', 1) }))
        .where('id', 'in', due)
        .returningAll()
        .execute();
      return rows
        .map((row) => ({ ...reminderOf(row), attempts: row.attempts }))
        .sort((a, b) => a.dueUtcMs - b.dueUtcMs || (a.id < b.id ? -1 : 1));
    });
  },

  retryLater: (id, claimant, notBeforeUtcMs) =>
    engine.run(async (db) => {
      const { numUpdatedRows } = await db
        .updateTable('reminders')
        .set({ claimant: null, lease_utc_ms: null, not_before_utc_ms: wholeMs(notBeforeUtcMs) })
        .where('id', '=', storable(id))
        .where('claimant', '=', storable(claimant))
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    }),

  settle: (id, claimant, nextDueUtcMs) =>
    engine.run(async (db) => {
      if (nextDueUtcMs === null) {
        const { numDeletedRows } = await db
          .deleteFrom('reminders')
          .where('id', '=', storable(id))
          .where('claimant', '=', storable(claimant))
          .executeTakeFirstOrThrow();
        return numDeletedRows > 0n;
      }
      const { numUpdatedRows } = await db
        .updateTable('reminders')
        .set({
          due_utc_ms: wholeMs(nextDueUtcMs),
          claimant: null,
          lease_utc_ms: null,
          attempts: 0,
          not_before_utc_ms: null,
        })
        .where('id', '=', storable(id))
        .where('claimant', '=', storable(claimant))
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    }),
});
