/** Version 4: how fast a mount's axes turn, and how far past level its counterweight bar may go. */
import type { Migration } from './migration.js';

export const gearSpeeds: Migration = async (db) => {
  for (const column of ['primary_deg_per_s', 'secondary_deg_per_s', 'east_limit_deg', 'west_limit_deg'])
    await db.schema.alterTable('gear').addColumn(column, 'double precision').execute();
};
