import { DatabaseSync as Database } from '@photostructure/sqlite';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe } from 'vitest';
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
