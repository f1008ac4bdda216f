/** Saved sites of members and clubs. */
import type { Engine } from '../engines/engine.js';
import { compiledOnce } from './compiled-once.js';
import { siteNameKey } from './site-name-key.js';
import { SITES_PER_OWNER } from '../store-limits.js';
import { StoreError, type HorizonPoint, type Owner, type Store, type StoredSite } from '../store.js';
import type { SiteRow } from './tables.js';
import { storable } from './storable.js';

export const siteOf = (row: SiteRow): StoredSite => ({
  name: row.name,
  latitudeDeg: row.latitude_deg,
  longitudeDeg: row.longitude_deg,
  elevationM: row.elevation_m,
  zone: row.zone,
  horizon: row.horizon === null ? null : (JSON.parse(row.horizon) as readonly HorizonPoint[]),
  isDefault: row.is_default === 1,
  ...(row.sky === null ? {} : { sky: row.sky }),
});

const rowOf = (owner: Owner, site: StoredSite): SiteRow => ({
  owner_kind: owner.kind,
  owner_id: storable(owner.id),
  name_key: storable(siteNameKey(site.name)),
  name: storable(site.name),
  latitude_deg: site.latitudeDeg,
  longitude_deg: site.longitudeDeg,
  elevation_m: site.elevationM,
  zone: site.zone,
  horizon: site.horizon === null ? null : JSON.stringify(site.horizon),
  sky: site.sky ?? null,
  is_default: site.isDefault ? 1 : 0,
});

const lockKey = (owner: Owner): string => `sites ${owner.kind} ${owner.id}`;

/** Its values in the order of its marks: the owner's kind and id. */
const listStatement = () =>
  compiledOnce((db) =>
    db
      .selectFrom('sites')
      .selectAll()
      .where('owner_kind', '=', 'member')
      .where('owner_id', '=', '')
      .orderBy('name_key'),
  );

export const siteRows = (engine: Engine, list = listStatement()): Store['sites'] => ({
  list: async (owner) => (await list(engine, [owner.kind, storable(owner.id)])).rows.map(siteOf),

  put: (owner, site) =>
    engine.transact(lockKey(owner), async (trx) => {
      const row = rowOf(owner, site);
      const others = await trx
        .selectFrom('sites')
        .select('name')
        .where('owner_kind', '=', row.owner_kind)
        .where('owner_id', '=', row.owner_id)
        .where('name_key', '!=', row.name_key)
        .execute();
      if (others.length >= SITES_PER_OWNER) {
        throw new StoreError(
          'store-limit',
          `${SITES_PER_OWNER} sites are saved already, which is the most. Remove one first: site remove name:"${others[0]?.name ?? ''}"`,
        );
      }
      if (site.isDefault) {
        await trx
          .updateTable('sites')
          .set({ is_default: 0 })
          .where('owner_kind', '=', row.owner_kind)
          .where('owner_id', '=', row.owner_id)
          .execute();
      }
      const { owner_kind: _kind, owner_id: _id, name_key: _key, ...changed } = row;
      await trx
        .insertInto('sites')
        .values(row)
        .onConflict((conflict) => conflict.columns(['owner_kind', 'owner_id', 'name_key']).doUpdateSet(changed))
        .execute();
    }),

  remove: (owner, name) =>
    engine.run(async (db) => {
      const { numDeletedRows } = await db
        .deleteFrom('sites')
        .where('owner_kind', '=', owner.kind)
        .where('owner_id', '=', storable(owner.id))
        .where('name_key', '=', storable(siteNameKey(name)))
        .executeTakeFirstOrThrow();
      return numDeletedRows > 0n;
    }),

  rename: (owner, name, newName) =>
    engine.transact(lockKey(owner), async (trx) => {
      const own = trx
        .selectFrom('sites')
        .where('owner_kind', '=', owner.kind)
        .where('owner_id', '=', storable(owner.id));
      const [oldKey, newKey] = [storable(siteNameKey(name)), storable(siteNameKey(newName))];
      if (
        oldKey !== newKey &&
        (await own.select('name').where('name_key', '=', newKey).executeTakeFirst()) !== undefined
      )
        return false;
      const { numUpdatedRows } = await trx
        .updateTable('sites')
        .set({ name: storable(newName), name_key: newKey })
        .where('owner_kind', '=', owner.kind)
        .where('owner_id', '=', storable(owner.id))
        .where('name_key', '=', oldKey)
        .executeTakeFirstOrThrow();
      return numUpdatedRows > 0n;
    }),

  setDefault: (owner, name) =>
    engine.transact(lockKey(owner), async (trx) => {
      const key = storable(siteNameKey(name));
      const found = await trx
        .selectFrom('sites')
        .select('name')
        .where('owner_kind', '=', owner.kind)
        .where('owner_id', '=', storable(owner.id))
        .where('name_key', '=', key)
        .executeTakeFirst();
      if (found === undefined) return false;
      const own = trx
        .updateTable('sites')
        .where('owner_kind', '=', owner.kind)
        .where('owner_id', '=', storable(owner.id));
      await own.set({ is_default: 0 }).execute();
      await own.set({ is_default: 1 }).where('name_key', '=', key).execute();
      return true;
    }),
});
