/** SIGKILL at any point: nothing acknowledged is lost, nothing half-done stays, nothing is said twice that a chat server would show twice. */
import { DatabaseSync as Database } from '@photostructure/sqlite';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { SCHEMA_VERSION } from '../../bot/store/migrate.js';
import { openStore, SQLITE_FILE } from '../../bot/store/open-store.js';
import { killMany, KILLS } from './kill-many.js';
import { chatServer, startWorker } from './worker-bench.js';

/** Starting takes longest where the schema is brought up to date; a few are enough for that one short act. */
const KILLS_WHILE_MIGRATING = Math.max(4, Math.ceil(KILLS / 20));

describe('SIGKILL at any point over SQLite', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'pierhand-kills-'));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it(`loses nothing acknowledged and says nothing twice in ${KILLS} kills`, async () => {
    await killMany({ dataFolder: folder }, KILLS);
  }, 1_200_000);

  it(`leaves an older file whole, old or new, in ${KILLS_WHILE_MIGRATING} kills while it is brought up to date`, async () => {
    let alreadyNew = 0;
    for (let i = 0; i < KILLS_WHILE_MIGRATING; i++) {
      const dataFolder = join(folder, String(i));
      mkdirSync(dataFolder);
      const old = new Database(join(dataFolder, SQLITE_FILE));
      old.exec(readFileSync(new URL('schemas/version-1.sqlite.sql', import.meta.url), 'utf8'));
      old.close();
      const worker = await startWorker(
        { place: { dataFolder }, firstNumber: 0, writes: false, delivers: false, leaseMs: 1000, serverMs: 0 },
        chatServer(),
        () => undefined,
      );
      // The change of schema comes moments after the journal is there.
      while (!existsSync(join(dataFolder, `${SQLITE_FILE}-wal`))) await sleep(0.5);
      await sleep(Math.random() * 30);
      worker.child.kill('SIGKILL');
      await worker.gone;
      const left = new Database(join(dataFolder, SQLITE_FILE));
      const version = (left.prepare('select version from schema_version').get() as { version: number }).version;
      const columns = (left.prepare('pragma table_info(reminders)').all() as { name: string }[]).map(
        ({ name }) => name,
      );
      left.close();
      expect([1, SCHEMA_VERSION]).toContain(version);
      expect(columns.includes('attempts')).toBe(version === SCHEMA_VERSION);
      if (version === SCHEMA_VERSION) alreadyNew++;
      const store = await openStore({ dataFolder });
      expect(await store.sites.list({ kind: 'member', id: 'matrix:@tamsin:fenwold.example' })).toHaveLength(2);
      await store.close();
    }
    console.log(
      `SQLite: ${KILLS_WHILE_MIGRATING} SIGKILLs around a change of schema, ${KILLS_WHILE_MIGRATING - alreadyNew} left old, ${alreadyNew} left new, 0 half-done`,
    );
  }, 300_000);
});
