/** Version 5: how dark the sky of a site is, where its owner has said. */
import type { Migration } from './migration.js';

export const siteSky: Migration = async (db) => {
  await db.schema.alterTable('sites').addColumn('sky', 'text').execute();
};
