/** What each member observes with. */
import type { Engine } from '../engines/engine.js';
import { compiledOnce } from './compiled-once.js';
import { storable } from './storable.js';
import type { Gear, Store } from '../store.js';
import type { GearRow } from './tables.js';

export const gearOf = ({
  mount,
  connection,
  system,
  primary_deg_per_s: primaryDegPerS,
  secondary_deg_per_s: secondaryDegPerS,
  east_limit_deg: eastDeg,
  west_limit_deg: westDeg,
  aperture_mm: apertureMm,
}: GearRow): Gear => ({
  mount: mount as Gear['mount'],
  connection,
  system: system as Gear['system'],
  speeds: primaryDegPerS === null || secondaryDegPerS === null ? null : { primaryDegPerS, secondaryDegPerS },
  limits: eastDeg === null || westDeg === null ? null : { eastDeg, westDeg },
  apertureMm,
});

const oneStatement = () => compiledOnce((db) => db.selectFrom('gear').selectAll().where('member_id', '=', ''));

export const gearRows = (engine: Engine, one = oneStatement()): Store['gear'] => ({
  get: async (memberId) => {
    const [row] = (await one(engine, [storable(memberId)])).rows;
    return row === undefined ? null : gearOf(row);
  },
  put: (memberId, gear) =>
    engine.run(async (db) => {
      const values = {
        mount: gear.mount,
        connection: gear.connection === null ? null : storable(gear.connection),
        system: gear.system,
        primary_deg_per_s: gear.speeds?.primaryDegPerS ?? null,
        secondary_deg_per_s: gear.speeds?.secondaryDegPerS ?? null,
        east_limit_deg: gear.limits?.eastDeg ?? null,
        west_limit_deg: gear.limits?.westDeg ?? null,
        aperture_mm: gear.apertureMm,
      };
      await db
        .insertInto('gear')
        .values({ member_id: storable(memberId), ...values })
        .onConflict((conflict) => conflict.column('member_id').doUpdateSet(values))
        .execute();
    }),
});
