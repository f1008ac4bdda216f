/** Version 2: a reminder that could not be said is tried again, later each time. */
import type { Migration } from './migration.js';

export const reminderRetries: Migration = async (db) => {
  await db.schema
    .alterTable('reminders')
    .addColumn('attempts', 'integer', (c) => c.notNull().defaultTo(0))
    .execute();
  await db.schema.alterTable('reminders').addColumn('not_before_utc_ms', 'bigint').execute();
};
