/** The database server fails in its ways: the store says which, half-does nothing, and goes on when the server does. Done, not simulated. */
import { writeFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import pg from 'pg';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openStore } from '../../bot/store/open-store.js';
import { StoreError, type Store } from '../../bot/store/store.js';
import { postgresMissing, runAs, startCluster, type Cluster } from './postgres-cluster.js';
import { smallDisk, smallDiskMissing } from './small-disk.js';

const tamsin = { kind: 'member', id: 'matrix:@tamsin:fenwold.example' } as const;
const site = (name: string) => ({
  name,
  latitudeDeg: 52.7,
  longitudeDeg: 0.12,
  elevationM: 0,
  zone: 'Europe/London',
  horizon: null,
  isDefault: false,
});
const failure = async (work: Promise<unknown>): Promise<StoreError> => {
  const error = await work.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(StoreError);
  expect((error as StoreError).message).toMatch(/^[^/_]{20,300}$/u);
  return error as StoreError;
};

const missing = postgresMissing();

describe.skipIf(missing !== null)(`bad days of PostgreSQL${missing === null ? '' : ` (skipped: ${missing})`}`, () => {
  let cluster: Cluster;
  let store: Store;
  beforeAll(async () => {
    cluster = await startCluster();
  }, 60_000);
  afterAll(() => cluster.stop(), 60_000);
  afterEach(() => store.close());
  const names = async (): Promise<readonly string[]> => (await store.sites.list(tamsin)).map(({ name }) => name);

  it('a connection lost in the middle of a transaction undoes it, and the next question is answered', async () => {
    const databaseUrl = await cluster.database('lost');
    store = await openStore({ databaseUrl });
    await store.sites.put(tamsin, { ...site('Before'), isDefault: true });
    // Another session holds the row, so that the transaction waits after it has already changed something else.
    const holder = new pg.Client({ connectionString: databaseUrl });
    await holder.connect();
    await holder.query('begin');
    await holder.query('lock table walks in access exclusive mode');
    const forgetting = failure(store.forgetMember(tamsin.id));
    for (;;) {
      const waiting = await cluster.query(
        `select pid from pg_stat_activity where application_name = 'pierhand' and wait_event_type = 'Lock'`,
      );
      if (waiting.length > 0) break;
      await sleep(10);
    }
    await cluster.query(`select pg_terminate_backend(pid) from pg_stat_activity where application_name = 'pierhand'`);
    expect((await forgetting).code).toBe('store-unavailable');
    await holder.query('rollback');
    await holder.end();
    expect(await names()).toEqual(['Before']);
    expect(await store.forgetMember(tamsin.id)).toBe(1);
    expect(await names()).toEqual([]);
  });

  it('a server that is gone is said; once it is back, nothing acknowledged is missing', async () => {
    store = await openStore({ databaseUrl: await cluster.database('gone') });
    const acknowledged: string[] = [];
    const writing = (async () => {
      for (let i = 0; i < 19; i++) {
        await store.sites.put(tamsin, site(`Site ${String(i).padStart(2, '0')}`));
        acknowledged.push(`Site ${String(i).padStart(2, '0')}`);
      }
    })().catch((error: unknown) => error);
    await sleep(15);
    // At once, as a power cut would: the server replays its log when it starts again.
    await cluster.halt('immediate');
    await writing;
    expect((await failure(store.ping())).code).toBe('store-unavailable');
    expect((await failure(store.sites.list(tamsin))).code).toBe('store-unavailable');
    await cluster.resume();
    const kept = await names();
    expect(kept.slice(0, acknowledged.length)).toEqual(acknowledged);
    expect(kept.length - acknowledged.length).toBeLessThanOrEqual(1);
    await store.sites.put(tamsin, site('Site 99'));
  });

  it('a server that is not there at the start does not keep the bot from starting, and is found later', async () => {
    const databaseUrl = await cluster.database('absent');
    await cluster.halt('fast');
    store = await openStore({ databaseUrl }, { retryAfterMs: 50 });
    expect((await failure(store.ping())).code).toBe('store-unavailable');
    await cluster.resume();
    await sleep(60);
    await store.sites.put(tamsin, site('Found'));
    expect(await names()).toEqual(['Found']);
  });

  it('a read-only database, as a standby is, says so and still reads', async () => {
    const databaseUrl = await cluster.database('standby');
    store = await openStore({ databaseUrl });
    await store.sites.put(tamsin, site('Before'));
    await store.close();
    await cluster.query('alter database standby set default_transaction_read_only = on');
    store = await openStore({ databaseUrl });
    expect((await failure(store.sites.put(tamsin, site('x')))).code).toBe('store-read-only');
    expect((await failure(store.forgetMember(tamsin.id))).code).toBe('store-read-only');
    expect(await names()).toEqual(['Before']);
  });

  it('a locked table is waited for, then said to be busy', async () => {
    const databaseUrl = await cluster.database('locked');
    store = await openStore({ databaseUrl });
    const holder = new pg.Client({ connectionString: databaseUrl });
    await holder.connect();
    await holder.query('begin');
    await holder.query('lock table sites in access exclusive mode');
    expect((await failure(store.sites.put(tamsin, site('x')))).code).toBe('store-locked');
    const waiting = store.sites.put(tamsin, site('Waited'));
    await sleep(300);
    await holder.query('rollback');
    await holder.end();
    await waiting;
    expect(await names()).toEqual(['Waited']);
  });

  const noDisk = smallDiskMissing();
  it.skipIf(noDisk !== null)(
    `a full disk says so and keeps what it had${noDisk === null ? '' : ` (skipped: ${noDisk})`}`,
    async () => {
      const disk = smallDisk(24, runAs() ?? undefined);
      try {
        await cluster.query(`create tablespace small location '${disk.folder}'`);
        await cluster.query('create database full_disk tablespace small');
        const databaseUrl = (await cluster.database('elsewhere')).replace('/elsewhere', '/full_disk');
        store = await openStore({ databaseUrl });
        await store.sites.put(tamsin, site('Before'));
        const filler = join(disk.folder, 'filler');
        try {
          writeFileSync(filler, Buffer.alloc(64 * 1024 * 1024));
        } catch (error) {
          expect((error as NodeJS.ErrnoException).code).toBe('ENOSPC');
        }
        const codes: string[] = [];
        for (let i = 0; i < 400 && codes.length === 0; i++) {
          // Text that does not compress, so that pages fill.
          await store.notes
            .set(`n${i}`, Array.from({ length: 200 }, () => Math.random().toString(36)).join(''))
            .catch((error: unknown) => codes.push((error as StoreError).code));
        }
        expect(codes).toEqual(['store-full']);
        expect(await names()).toEqual(['Before']);
        rmSync(filler);
        await store.sites.put(tamsin, site('After'));
        expect(await names()).toEqual(['After', 'Before']);
        await store.close();
        await cluster.query('drop database full_disk');
        await cluster.query('drop tablespace small');
      } finally {
        disk.remove();
      }
    },
  );
});
