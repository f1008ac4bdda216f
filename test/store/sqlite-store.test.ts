import { DatabaseSync as Database } from '@photostructure/sqlite';
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeFlush } from '../../bot/store/engines/flush-log.js';
import { openSqliteEngine } from '../../bot/store/engines/sqlite-engine.js';
import { openStore, SQLITE_FILE } from '../../bot/store/open-store.js';
import { storeSuite } from './store-suite.js';

const dumpSqlite = (file: string): string => {
  const database = new Database(file, { readOnly: true });
  try {
    const tables = database.prepare(`select name from sqlite_master where type = 'table'`).all() as { name: string }[];
    return JSON.stringify(tables.map(({ name }) => [name, database.prepare(`select * from "${name}"`).all()]));
  } finally {
    database.close();
  }
};

describe('the store over SQLite', () => {
  storeSuite(async () => {
    const dataFolder = mkdtempSync(join(tmpdir(), 'pierhand-store-'));
    return {
      store: await openStore({ dataFolder }),
      bench: {
        another: () => openStore({ dataFolder }),
        dump: async () => dumpSqlite(join(dataFolder, SQLITE_FILE)),
        done: async () => rmSync(dataFolder, { recursive: true, force: true }),
      },
    };
  });
});

describe('what is acknowledged', () => {
  const inFolder = async (work: (folder: string) => Promise<void>): Promise<void> => {
    const folder = mkdtempSync(join(tmpdir(), 'pierhand-store-'));
    try {
      await work(folder);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  };

  it('is on the disk: where the log has no name any more, in the database itself', () =>
    inFolder(async (folder) => {
      const file = join(folder, SQLITE_FILE);
      const engine = await openSqliteEngine(file);
      const note = (value: string): Promise<unknown> =>
        engine.run((db) => db.insertInto('notes').values({ key: value, value }).execute());
      await note('first');
      // What is written goes on into the file that has no name any more: it is moved into the database before it is acknowledged.
      rmSync(`${file}-wal`);
      await note('second');
      await engine.transact('notes', (trx) => trx.insertInto('notes').values({ key: 'third', value: '' }).execute());
      const copy = join(folder, 'as-after-a-power-cut.sqlite');
      copyFileSync(file, copy);
      const later = await openSqliteEngine(copy);
      const kept = await later.run((db) => db.selectFrom('notes').select('key').execute());
      expect(kept.map(({ key }) => key)).toEqual(expect.arrayContaining(['first', 'second', 'third']));
      await later.close();
      const mark = { key: 'event', claimed_utc_ms: 0, answered: 0 };
      await engine.run((db) => db.insertInto('events').values(mark).execute());
      expect(await engine.run((db) => db.selectFrom('notes').select('key').execute())).toContainEqual({ key: 'first' });
      await engine.close();
    }));

  it('shares a flush with whatever asks for one at the same time', () =>
    inFolder(async (folder) => {
      const file = join(folder, 'log');
      writeFileSync(file, 'x');
      const { flush, close } = makeFlush(file);
      const [first, second, third] = [flush(), flush(), flush()];
      expect(second).toBe(third);
      expect(first).not.toBe(second);
      await Promise.all([first, second, third]);
      rmSync(file);
      await expect(flush()).rejects.toMatchObject({ code: 'ENOENT' });
      writeFileSync(file, 'x');
      await flush();
      await close();
    }));
});
