/** What each member observes with. */
import type { Engine } from '../engines/engine.js';
import { storable } from './storable.js';
import type { Gear, Store } from '../store.js';
import type { GearRow } from './tables.js';

export const gearOf = (row: GearRow): Gear => ({
  mount: row.mount as Gear['mount'],
  connection: row.connection,
  system: row.system as Gear['system'],
});

export const gearRows = (engine: Engine): Store['gear'] => ({
  get: (memberId) =>
    engine.run(async (db) => {
      const row = await db
        .selectFrom('gear')
        .selectAll()
        .where('member_id', '=', storable(memberId))
        .executeTakeFirst();
      return row === undefined ? null : gearOf(row);
    }),
  put: (memberId, gear) =>
    engine.run(async (db) => {
      const values = {
        mount: gear.mount,
        connection: gear.connection === null ? null : storable(gear.connection),
        system: gear.system,
      };
      await db
        .insertInto('gear')
        .values({ member_id: storable(memberId), ...values })
        .onConflict((conflict) => conflict.column('member_id').doUpdateSet(values))
        .execute();
    }),
});
