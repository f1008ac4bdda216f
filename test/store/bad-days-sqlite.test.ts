/** Disk full, read-only, locked, damaged: the store says which, loses nothing acknowledged, and goes on when it can. Done, not simulated. */
import { DatabaseSync as Database } from '@photostructure/sqlite';
import {
  closeSync,
  existsSync,
  mkdtempSync,
  openSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { openStore, SQLITE_FILE } from '../../bot/store/open-store.js';
import { StoreError, type Store } from '../../bot/store/store.js';
import { smallDisk, smallDiskMissing, type SmallDisk } from './small-disk.js';

const TAMSIN = 'matrix:@tamsin:fenwold.example';
const tamsin = { kind: 'member', id: TAMSIN } as const;
const site = (name: string) => ({
  name,
  latitudeDeg: 52.7,
  longitudeDeg: 0.12,
  elevationM: 0,
  zone: 'Europe/London',
  horizon: null,
  isDefault: false,
});

/** The next attempt to open is made after so long, not after seconds. */
const SOON = { retryAfterMs: 50 };

const failure = async (work: Promise<unknown>): Promise<StoreError> => {
  const error = await work.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(StoreError);
  // Fit for a member: short, no path, no code.
  expect((error as StoreError).message).toMatch(/^[^/_]{20,300}$/u);
  return error as StoreError;
};

let dataFolder: string;
let store: Store | null = null;
const file = (): string => join(dataFolder, SQLITE_FILE);
beforeEach(() => {
  dataFolder = mkdtempSync(join(tmpdir(), 'pierhand-bad-'));
});
afterEach(async () => {
  await store?.close();
  store = null;
  rmSync(dataFolder, { recursive: true, force: true });
});

const noDisk = smallDiskMissing();

describe.skipIf(noDisk !== null)(`a disk of its own${noDisk === null ? '' : ` (skipped: ${noDisk})`}`, () => {
  let disk: SmallDisk;
  beforeEach(() => {
    disk = smallDisk(2);
  });
  afterEach(async () => {
    await store?.close();
    store = null;
    disk.remove();
  });
  /** Fills the disk to the last byte. */
  const fill = (): string => {
    const filler = join(disk.folder, 'filler');
    const handle = openSync(filler, 'w');
    try {
      for (const size of [65_536, 4096, 512]) {
        try {
          for (;;) writeSync(handle, Buffer.alloc(size));
        } catch (error) {
          expect((error as NodeJS.ErrnoException).code).toBe('ENOSPC');
        }
      }
    } finally {
      closeSync(handle);
    }
    return filler;
  };

  it('that is full: says so, still reads, keeps what it had, and writes again once there is room', async () => {
    store = await openStore({ dataFolder: disk.folder });
    await store.sites.put(tamsin, site('Before'));
    const filler = fill();
    const acknowledged: string[] = ['Before'];
    let full: StoreError | null = null;
    // A few more may find room in pages that were there already.
    for (let i = 0; i < 19 && full === null; i++) {
      try {
        await store.sites.put(tamsin, { ...site(`While ${i}`), zone: 'x'.repeat(20_000) });
        acknowledged.push(`While ${i}`);
      } catch (error) {
        full = error as StoreError;
      }
    }
    expect(full).toBeInstanceOf(StoreError);
    expect(full?.code).toBe('store-full');
    expect((await store.sites.list(tamsin)).map(({ name }) => name)).toEqual(acknowledged);
    expect(
      (await failure(store.sites.put({ kind: 'club', id: 'c' }, { ...site('Again'), zone: 'x'.repeat(20_000) }))).code,
    ).toBe('store-full');
    rmSync(filler);
    await store.sites.put(tamsin, site('After'));
    expect((await store.sites.list(tamsin)).map(({ name }) => name).sort()).toEqual([...acknowledged, 'After'].sort());
  });

  it('that is full from the start: the rest of the bot starts, and the store opens once there is room', async () => {
    const filler = fill();
    store = await openStore({ dataFolder: disk.folder }, SOON);
    expect((await failure(store.sites.put(tamsin, site('x')))).code).toBe('store-full');
    rmSync(filler);
    await sleep(60);
    await store.sites.put(tamsin, site('x'));
    expect(await store.sites.list(tamsin)).toHaveLength(1);
  });

  it('that is read-only: says so', async () => {
    const before = await openStore({ dataFolder: disk.folder });
    await before.sites.put(tamsin, site('Before'));
    await before.close();
    store = await openStore({ dataFolder: disk.readOnlyView() });
    expect((await failure(store.sites.put(tamsin, site('x')))).code).toBe('store-read-only');
    await store.close();
    store = await openStore({ dataFolder: disk.folder });
    expect((await store.sites.list(tamsin)).map(({ name }) => name)).toEqual(['Before']);
  });

  it('that is empty and read-only: says so', async () => {
    store = await openStore({ dataFolder: join(disk.readOnlyView(), 'data') });
    expect((await failure(store.ping())).code).toBe('store-read-only');
  });
});

describe('a locked file', () => {
  it('is waited for, then said to be busy; reading goes on, and writing after the lock', async () => {
    store = await openStore({ dataFolder });
    await store.sites.put(tamsin, site('Before'));
    const other = new Database(file());
    other.exec('begin immediate');
    expect((await failure(store.sites.put(tamsin, site('x')))).code).toBe('store-locked');
    expect((await failure(store.forgetMember(TAMSIN))).code).toBe('store-locked');
    expect(await store.sites.list(tamsin)).toHaveLength(1);
    // Let go after half a second: the writer that waits gets through.
    const waiting = store.sites.put(tamsin, site('Waited'));
    await sleep(500);
    other.exec('rollback');
    await waiting;
    expect(await store.sites.list(tamsin)).toHaveLength(2);
    other.close();
  });
});

describe('a damaged file', () => {
  const written = async (): Promise<void> => {
    const before = await openStore({ dataFolder });
    for (let i = 0; i < 15; i++) await before.sites.put(tamsin, { ...site(`Site ${i}`), zone: 'z'.repeat(3000) });
    await before.close();
  };

  it.each([
    ['whose beginning is rubbish', () => writeFileSync(file(), 'this is no database '.repeat(500))],
    [
      'whose pages are overwritten',
      () => {
        const whole = readFileSync(file());
        whole.fill(0xa5, 8192, whole.length - 4096);
        writeFileSync(file(), whole);
      },
    ],
    ['cut off in the middle', () => truncateSync(file(), Math.floor(statSync(file()).size / 2 / 4096) * 4096)],
  ])('%s: says so and is left as it is; a copy put back is used without a restart', async (_what, damage) => {
    await written();
    const whole = readFileSync(file());
    damage();
    const damaged = readFileSync(file());
    store = await openStore({ dataFolder }, SOON);
    expect((await failure(store.sites.list(tamsin))).code).toBe('store-damaged');
    expect((await failure(store.sites.put(tamsin, site('x')))).code).toBe('store-damaged');
    expect(readFileSync(file()).equals(damaged)).toBe(true);
    for (const more of ['-wal', '-shm']) rmSync(`${file()}${more}`, { force: true });
    writeFileSync(file(), whole);
    await sleep(60);
    expect(await store.sites.list(tamsin)).toHaveLength(15);
  });
});

describe('no place for a file', () => {
  it('is a wrong setting: the data folder is a file', async () => {
    const notFolder = join(dataFolder, 'file');
    writeFileSync(notFolder, '');
    await expect(openStore({ dataFolder: notFolder })).rejects.toThrow(/^PIERHAND_DATA must name a folder/u);
    expect(existsSync(notFolder)).toBe(true);
  });
});

describe('a machine on which the native SQLite module cannot be loaded', () => {
  it('has a store that says it cannot be reached, and rejects nothing else', async () => {
    for (const name of ['@photostructure/sqlite', 'node:sqlite']) {
      vi.doMock(name, () => {
        throw new Error('no native module for this machine');
      });
    }
    try {
      store = await openStore({ dataFolder });
      expect((await failure(store.sites.list(tamsin))).code).toBe('store-unavailable');
      expect((await failure(store.events.claim('x', 1))).code).toBe('store-unavailable');
    } finally {
      vi.doUnmock('@photostructure/sqlite');
      vi.doUnmock('node:sqlite');
    }
  });
});
