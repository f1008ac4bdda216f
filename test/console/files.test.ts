import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { fileOnDisk } from '../../bot/platforms/console/file-on-disk.js';

it('a file named on the console is read when it is wanted, and a wrong path says so without more of it than its name', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-file-'));
  writeFileSync(path.join(folder, 'night.log'), 'usb 1-1: USB disconnect');
  const bytes = await fileOnDisk(path.join(folder, 'night.log')).load();
  expect(isProblem(bytes) ? bytes : Buffer.from(bytes).toString()).toBe('usb 1-1: USB disconnect');
  expect(await fileOnDisk(path.join(folder, 'gone.log')).load()).toMatchObject({ problem: 'no-file' });
  expect(await fileOnDisk(folder).load()).toMatchObject({ problem: 'no-file' });
});
