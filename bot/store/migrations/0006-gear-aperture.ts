/** Version 6: the aperture of a member's telescope. */
import type { Migration } from './migration.js';

export const gearAperture: Migration = async (db) => {
  await db.schema.alterTable('gear').addColumn('aperture_mm', 'double precision').execute();
};
