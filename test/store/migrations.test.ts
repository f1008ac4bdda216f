import { DatabaseSync as Database } from '@photostructure/sqlite';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { StartError } from '../../bot/ground/start-error.js';
import { SCHEMA_VERSION } from '../../bot/store/migrate.js';
import { openStore, SQLITE_FILE } from '../../bot/store/open-store.js';
import type { Gear, Store } from '../../bot/store/store.js';
import { postgresMissing, startCluster, type Cluster } from './postgres-cluster.js';

const EARLIER = Array.from({ length: SCHEMA_VERSION - 1 }, (_, i) => i + 1);
const TAMSIN = 'matrix:@tamsin:fenwold.example';
const CLUB = 'discord:900000000000000001';
/** The file's statements as that version's program and database wrote them, filled with the same few rows for both databases. */
const fixture = (version: number, dialect: string): string =>
  readFileSync(new URL(`schemas/version-${version}.${dialect}.sql`, import.meta.url), 'utf8');

/** Everything that was in the fixture is there, and can be used. */
const expectWhole = async (store: Store): Promise<void> => {
  expect(await store.sites.list({ kind: 'member', id: TAMSIN })).toEqual([
    {
      name: 'Cold Ridge',
      latitudeDeg: -33.2,
      longitudeDeg: 151.2,
      elevationM: 0,
      zone: 'Australia/Sydney',
      horizon: null,
      isDefault: false,
    },
    {
      name: 'Quarry Field',
      latitudeDeg: 52.7,
      longitudeDeg: 0.12,
      elevationM: 31.5,
      zone: 'Europe/London',
      isDefault: true,
      horizon: [
        { azimuthDeg: 90, altitudeDeg: 20.5 },
        { azimuthDeg: 120, altitudeDeg: -1 },
      ],
    },
  ]);
  expect(await store.sites.list({ kind: 'club', id: CLUB })).toMatchObject([
    { name: 'Fenwold Common', isDefault: true },
  ]);
  expect(await store.gear.get(TAMSIN)).toEqual({
    mount: 'german',
    connection: 'hand-serial',
    system: 'linux',
    speeds: null,
    limits: null,
    apertureMm: null,
  });
  const fast: Gear = {
    mount: 'german',
    connection: null,
    system: null,
    speeds: { primaryDegPerS: 4, secondaryDegPerS: 3.5 },
    limits: { eastDeg: 0, westDeg: 7.5 },
    apertureMm: 250,
  };
  await store.gear.put(TAMSIN, fast);
  expect(await store.gear.get(TAMSIN)).toEqual(fast);
  expect(await store.walks.active(CLUB, TAMSIN)).toMatchObject({
    id: 'w1',
    state: { step: 'ask', answers: [1, null, 'no'] },
    updatedUtcMs: 1_764_000_000_000,
  });
  expect(await store.outcomes.counts(CLUB)).toEqual({ cable: 2 });
  expect(await store.notes.get('matrix:sync')).toBe('s1');
  expect(await store.events.claim('discord:1', 1_764_000_000_000)).toBe(false);
  expect(await store.events.unanswered('discord:', 0)).toEqual(['discord:2']);
  expect(await store.reminders.list(TAMSIN)).toMatchObject([
    { kind: 'altitude', dueUtcMs: 1_764_100_000_000, text: 'NGC 7331 is 30° high.' },
  ]);
  // The one under lease is free after it; both can be claimed and settled as new ones can.
  const due = await store.reminders.claimDue(1_764_110_100_000, 1_764_110_160_000, 'p2', 10);
  expect(due).toMatchObject([
    { platform: 'matrix', attempts: 1 },
    { platform: 'discord', repeat: { nights: 'all' } },
  ]);
  for (const { id } of due) expect(await store.reminders.settle(id, 'p2', null)).toBe(true);
};

const startErrorOf = async (work: Promise<unknown>): Promise<string> => {
  const error = await work.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(StartError);
  return (error as StartError).message;
};
const NEWER = `The database has schema version 999, made by a newer Pierhand; this one knows versions up to ${SCHEMA_VERSION}.`;

describe('the schema over SQLite', () => {
  let dataFolder: string;
  const file = (): string => join(dataFolder, SQLITE_FILE);
  const inFile = (text: string): void => {
    const database = new Database(file());
    database.exec(text);
    database.close();
  };
  beforeAll(() => {
    dataFolder = mkdtempSync(join(tmpdir(), 'pierhand-schema-'));
  });
  const emptied = (): void => rmSync(dataFolder, { recursive: true, force: true });
  afterAll(emptied);

  it.each(EARLIER)('is brought up to date from version %i with nothing lost', async (version) => {
    emptied();
    const fresh = await openStore({ dataFolder });
    await fresh.close();
    rmSync(file());
    inFile(fixture(version, 'sqlite'));
    const store = await openStore({ dataFolder });
    await expectWhole(store);
    await store.close();
    const again = await openStore({ dataFolder });
    expect(await again.sites.list({ kind: 'member', id: TAMSIN })).toHaveLength(2);
    await again.close();
  });

  it('from a newer program is refused in one clear line, and left as it was', async () => {
    emptied();
    await (await openStore({ dataFolder })).close();
    inFile('update schema_version set version = 999');
    const message = await startErrorOf(openStore({ dataFolder }));
    expect(message).toContain(NEWER);
    expect(message).not.toContain('\n');
    const database = new Database(file());
    expect(database.prepare('select version from schema_version').get()).toEqual({ version: 999 });
    database.close();
  });

  it('stays at the old version, whole, when a step fails half-way', async () => {
    emptied();
    await (await openStore({ dataFolder })).close();
    rmSync(file());
    inFile(fixture(1, 'sqlite'));
    // The second step adds this column after another; that it is there already makes the step fail after its first half.
    inFile('alter table reminders add column not_before_utc_ms bigint');
    const store = await openStore({ dataFolder });
    await expect(store.ping()).rejects.toMatchObject({
      code: 'store-unavailable',
      cause: { message: 'duplicate column name: not_before_utc_ms' },
    });
    await store.close();
    const database = new Database(file());
    expect(database.prepare('select version from schema_version').get()).toEqual({ version: 1 });
    const columns = (database.prepare('pragma table_info(reminders)').all() as { name: string }[]).map(
      ({ name }) => name,
    );
    database.close();
    expect(columns).not.toContain('attempts');
  });
});

const missing = postgresMissing();

describe.skipIf(missing !== null)(
  `the schema over PostgreSQL${missing === null ? '' : ` (skipped: ${missing})`}`,
  () => {
    let cluster: Cluster;
    beforeAll(async () => {
      cluster = await startCluster();
    }, 60_000);
    afterAll(() => cluster.stop(), 60_000);

    it.each(EARLIER)(
      'is brought up to date from version %i with nothing lost, by three processes that start at once',
      async (version) => {
        const databaseUrl = await cluster.database(`from_${version}`);
        await cluster.query(fixture(version, 'postgres'), `from_${version}`);
        const stores = await Promise.all([1, 2, 3].map(() => openStore({ databaseUrl })));
        await Promise.all(stores.map((store) => store.ping()));
        await expectWhole(stores[0]!);
        await Promise.all(stores.map((store) => store.close()));
        expect(await cluster.query('select version from schema_version', `from_${version}`)).toEqual([
          { version: SCHEMA_VERSION },
        ]);
      },
    );

    it('is made once when three processes start at once on an empty database', async () => {
      const databaseUrl = await cluster.database('empty_three');
      const stores = await Promise.all([1, 2, 3].map(() => openStore({ databaseUrl })));
      await Promise.all(stores.map((store) => store.ping()));
      await Promise.all(stores.map((store) => store.close()));
      expect(await cluster.query('select version from schema_version', 'empty_three')).toEqual([
        { version: SCHEMA_VERSION },
      ]);
    });

    it('from a newer program is refused in one clear line', async () => {
      const databaseUrl = await cluster.database('newer');
      await (await openStore({ databaseUrl })).close();
      await cluster.query('update schema_version set version = 999', 'newer');
      expect(await startErrorOf(openStore({ databaseUrl }))).toContain(NEWER);
    });

    it('names a wrong password or database as a setting to correct, without repeating the password', async () => {
      const databaseUrl = await cluster.database('present');
      const wrong = new URL(databaseUrl);
      wrong.password = 'not-the-password';
      const message = await startErrorOf(openStore({ databaseUrl: wrong.href }));
      expect(message).toContain('DATABASE_URL');
      expect(message).not.toContain('not-the-password');
      expect(await startErrorOf(openStore({ databaseUrl: databaseUrl.replace('/present', '/absent') }))).toContain(
        'DATABASE_URL',
      );
      expect(await startErrorOf(openStore({ databaseUrl: 'no address' }))).toContain('DATABASE_URL');
    });
  },
);
