/** Version 1: sites, gear, walks, outcomes, reminders, notes and events. */
import { sql } from 'kysely';
import type { Migration } from './migration.js';

export const firstTables: Migration = async (db) => {
  await db.schema
    .createTable('sites')
    .addColumn('owner_kind', 'text', (c) => c.notNull())
    .addColumn('owner_id', 'text', (c) => c.notNull())
    .addColumn('name_key', 'text', (c) => c.notNull())
    .addColumn('name', 'text', (c) => c.notNull())
    .addColumn('latitude_deg', 'double precision', (c) => c.notNull())
    .addColumn('longitude_deg', 'double precision', (c) => c.notNull())
    .addColumn('elevation_m', 'double precision', (c) => c.notNull())
    .addColumn('zone', 'text', (c) => c.notNull())
    .addColumn('horizon', 'text')
    .addColumn('is_default', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('sites_key', ['owner_kind', 'owner_id', 'name_key'])
    .execute();
  await db.schema
    .createIndex('sites_one_default')
    .on('sites')
    .columns(['owner_kind', 'owner_id'])
    .unique()
    .where(sql.ref('is_default'), '=', sql.lit(1))
    .execute();

  await db.schema
    .createTable('gear')
    .addColumn('member_id', 'text', (c) => c.primaryKey())
    .addColumn('mount', 'text')
    .addColumn('connection', 'text')
    .addColumn('system', 'text')
    .execute();

  await db.schema
    .createTable('walks')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('club_id', 'text', (c) => c.notNull())
    .addColumn('member_id', 'text', (c) => c.notNull())
    .addColumn('helper_id', 'text')
    .addColumn('platform', 'text', (c) => c.notNull())
    .addColumn('channel_id', 'text', (c) => c.notNull())
    .addColumn('state', 'text', (c) => c.notNull())
    .addColumn('updated_utc_ms', 'bigint', (c) => c.notNull())
    .addColumn('ended_utc_ms', 'bigint')
    .execute();
  await db.schema.createIndex('walks_by_member').on('walks').columns(['member_id', 'club_id']).execute();
  await db.schema.createIndex('walks_by_helper').on('walks').columns(['helper_id', 'club_id']).execute();
  await db.schema.createIndex('walks_by_age').on('walks').column('updated_utc_ms').execute();

  await db.schema
    .createTable('outcomes')
    .addColumn('club_id', 'text', (c) => c.notNull())
    .addColumn('fault_id', 'text', (c) => c.notNull())
    .addColumn('times', 'integer', (c) => c.notNull())
    .addPrimaryKeyConstraint('outcomes_key', ['club_id', 'fault_id'])
    .execute();

  await db.schema
    .createTable('reminders')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('member_id', 'text', (c) => c.notNull())
    .addColumn('club_id', 'text', (c) => c.notNull())
    .addColumn('platform', 'text', (c) => c.notNull())
    .addColumn('channel_id', 'text', (c) => c.notNull())
    .addColumn('said_to', 'text', (c) => c.notNull())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('due_utc_ms', 'bigint', (c) => c.notNull())
    .addColumn('stale_utc_ms', 'bigint')
    .addColumn('repeat', 'text')
    .addColumn('text', 'text', (c) => c.notNull())
    .addColumn('claimant', 'text')
    .addColumn('lease_utc_ms', 'bigint')
    .execute();
  await db.schema.createIndex('reminders_by_due').on('reminders').column('due_utc_ms').execute();
  await db.schema.createIndex('reminders_by_member').on('reminders').column('member_id').execute();

  await db.schema
    .createTable('notes')
    .addColumn('key', 'text', (c) => c.primaryKey())
    .addColumn('value', 'text', (c) => c.notNull())
    .execute();

  await db.schema
    .createTable('events')
    .addColumn('key', 'text', (c) => c.primaryKey())
    .addColumn('claimed_utc_ms', 'bigint', (c) => c.notNull())
    .addColumn('answered', 'integer', (c) => c.notNull())
    .execute();
  await db.schema.createIndex('events_by_age').on('events').column('claimed_utc_ms').execute();
};
