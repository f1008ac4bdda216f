/** When the store was last backed up: the age of an empty file in the data folder, for the alert on a backup that stays out. */
import { statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { UtcMs } from '../sky/types.js';

const MARK = 'last-backup';

/** Where the folder cannot be written nothing is marked: the backup itself is good. */
export const markBackedUp = (dataFolder: string, nowUtcMs: UtcMs): void => {
  const file = join(dataFolder, MARK);
  try {
    writeFileSync(file, '', { flag: 'a', mode: 0o600 });
    utimesSync(file, nowUtcMs / 1000, nowUtcMs / 1000);
  } catch {
    // Such as a database elsewhere, backed up by somebody who has no data folder.
  }
};

/** Null where no backup was marked. */
export const lastBackupUtcMs = (dataFolder: string): UtcMs | null =>
  statSync(join(dataFolder, MARK), { throwIfNoEntry: false })?.mtimeMs ?? null;
