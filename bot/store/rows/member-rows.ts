/** Everything kept about one member: shown by `mydata`, removed by `forget`. */
import type { Kysely } from 'kysely';
import type { Json } from '../../reply/reply.js';
import type { Engine } from '../engines/engine.js';
import { gearOf } from './gear-rows.js';
import { reminderOf } from './reminder-rows.js';
import { siteOf } from './site-rows.js';
import { storable } from './storable.js';
import type { Store } from '../store.js';
import type { Tables } from './tables.js';
import { walkOf } from './walk-rows.js';

/** Notes about a member end with the member's id, with or without its platform. */
const noteKeys = async (db: Kysely<Tables>, memberId: string): Promise<readonly string[]> => {
  const bare = memberId.slice(memberId.indexOf(':') + 1);
  const rows = await db.selectFrom('notes').select('key').execute();
  return rows.map(({ key }) => key).filter((key) => key.endsWith(`:${bare}`));
};

/** Plain JSON of what the row functions give. */
const json = (value: unknown): Json => JSON.parse(JSON.stringify(value)) as Json;

/** A walk's state carries the helper's display name (see triage/walk-state.ts); it goes with the id. */
const withoutHelperName = (state: string): string =>
  JSON.stringify(JSON.parse(state), (key: string, value: unknown) =>
    key === 'names' && typeof value === 'object' && value !== null && 'helper' in value
      ? { ...value, helper: null }
      : value,
  );

/** Of walks, in one export: no question may make an answer without end. */
const MOST_EXPORTED = 60;

export const exportMember =
  (engine: Engine): Store['exportMember'] =>
  (memberId) =>
    engine.transact(`member ${memberId}`, async (db) => {
      const id = storable(memberId);
      const sites = await db
        .selectFrom('sites')
        .selectAll()
        .where('owner_id', '=', id)
        .orderBy('owner_kind')
        .orderBy('name_key')
        .execute();
      const gear = await db.selectFrom('gear').selectAll().where('member_id', '=', id).executeTakeFirst();
      const reminders = await db
        .selectFrom('reminders')
        .selectAll()
        .where((e) => e.or([e('member_id', '=', id), e('club_id', '=', id)]))
        .orderBy('due_utc_ms')
        .orderBy('id')
        .execute();
      const walks = await db
        .selectFrom('walks')
        .selectAll()
        .where((e) => e.or([e('member_id', '=', id), e('club_id', '=', id)]))
        // The member's own are 20 at most; others may have begun any number for them.
        .orderBy('awaits_member')
        .orderBy('updated_utc_ms', 'desc')
        .orderBy('id')
        .limit(MOST_EXPORTED)
        .execute();
      const helped = await db
        .selectFrom('walks')
        .select(['id', 'club_id', 'updated_utc_ms'])
        .where('helper_id', '=', id)
        .where('member_id', '!=', id)
        .where('club_id', '!=', id)
        .orderBy('updated_utc_ms', 'desc')
        .orderBy('id')
        .limit(MOST_EXPORTED)
        .execute();
      const marks = await db
        .selectFrom('outcome_marks')
        .selectAll()
        .where('member_id', '=', id)
        .orderBy('month')
        .orderBy('fault_id')
        .execute();
      return {
        memberId,
        sites: json(sites.map(siteOf)),
        gear: gear === undefined ? null : json(gearOf(gear)),
        reminders: json(reminders.map(reminderOf)),
        walks: json(walks.map(walkOf)),
        walksHelpedWith: helped.map((row) => ({ id: row.id, clubId: row.club_id, updatedUtcMs: row.updated_utc_ms })),
        causesCounted: marks.map((row) => ({ clubId: row.club_id, faultId: row.fault_id, month: row.month })),
        notes: [...(await noteKeys(db, id))],
      };
    });

const removeRows = (engine: Engine, memberId: string): Promise<number> =>
  engine.transact(`member ${memberId}`, async (db) => {
    const id = storable(memberId);
    // In a direct message the club is the member alone, so rows of that "club" are the member's too.
    const results = [
      await db.deleteFrom('sites').where('owner_id', '=', id).executeTakeFirstOrThrow(),
      await db.deleteFrom('gear').where('member_id', '=', id).executeTakeFirstOrThrow(),
      await db
        .deleteFrom('walks')
        .where((e) =>
          e.or([
            e('member_id', '=', id),
            e('club_id', '=', id),
            // Begun by them and never answered: nobody else's.
            e.and([e('helper_id', '=', id), e('awaits_member', '=', 1)]),
          ]),
        )
        .executeTakeFirstOrThrow(),
      await db.deleteFrom('outcome_marks').where('member_id', '=', id).executeTakeFirstOrThrow(),
      await db.deleteFrom('outcomes').where('club_id', '=', id).executeTakeFirstOrThrow(),
      await db
        .deleteFrom('reminders')
        .where((e) =>
          e.or([
            // A channel's warning before sunrise guards others too.
            e.and([
              e('member_id', '=', id),
              e.or([e('said_to', '=', 'member'), e('repeat', 'is', null), e('kind', '!=', 'sunrise')]),
            ]),
            e('club_id', '=', id),
          ]),
        )
        .executeTakeFirstOrThrow(),
    ];
    let removed = results.reduce((sum, { numDeletedRows }) => sum + Number(numDeletedRows), 0);
    for (const key of await noteKeys(db, id)) {
      removed += Number((await db.deleteFrom('notes').where('key', '=', key).executeTakeFirstOrThrow()).numDeletedRows);
    }
    // Others still need these: they stay, without the name.
    for (const helped of await db.selectFrom('walks').select(['id', 'state']).where('helper_id', '=', id).execute()) {
      await db
        .updateTable('walks')
        .set({ helper_id: null, state: withoutHelperName(helped.state) })
        .where('id', '=', helped.id)
        .execute();
    }
    await db.updateTable('walks').set({ asked_helper_id: null }).where('asked_helper_id', '=', id).execute();
    await db.updateTable('reminders').set({ member_id: '' }).where('member_id', '=', id).execute();
    return removed;
  });

export const forgetMember =
  (engine: Engine): Store['forgetMember'] =>
  async (memberId) => {
    const removed = await removeRows(engine, memberId);
    // The rows are gone whatever comes of this.
    await engine.scrub().catch(() => undefined);
    return removed;
  };
