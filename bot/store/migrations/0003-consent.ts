/** Version 3: a walk begun by another waits for the member, who accepts a helper; a member counts once for a cause and month. */
import type { Migration } from './migration.js';

export const consent: Migration = async (db) => {
  await db.schema
    .alterTable('walks')
    .addColumn('awaits_member', 'integer', (c) => c.notNull().defaultTo(0))
    .execute();
  await db.schema.alterTable('walks').addColumn('asked_helper_id', 'text').execute();
  await db.schema
    .createTable('outcome_marks')
    .addColumn('member_id', 'text', (c) => c.notNull())
    .addColumn('club_id', 'text', (c) => c.notNull())
    .addColumn('fault_id', 'text', (c) => c.notNull())
    .addColumn('month', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('outcome_marks_key', ['member_id', 'club_id', 'fault_id', 'month'])
    .execute();
};
