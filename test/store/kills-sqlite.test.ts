/** SIGKILL at any point: nothing acknowledged is lost, nothing half-done stays, nothing is said twice that a chat server would show twice. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, it } from 'vitest';
import { killMany, KILLS } from './kill-many.js';

describe('SIGKILL at any point over SQLite', () => {
  it(`loses nothing acknowledged and says nothing twice in ${KILLS} kills`, async () => {
    const dataFolder = mkdtempSync(join(tmpdir(), 'pierhand-kills-'));
    await killMany({ dataFolder }, KILLS);
    rmSync(dataFolder, { recursive: true, force: true });
  }, 1_200_000);
});
