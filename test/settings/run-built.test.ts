/** What npm's scripts say in a folder where nothing was built. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'pierhand-built-'));
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const run = () =>
  spawnSync(process.execPath, [path.join(projectRoot(), 'scripts/build/run-built.mjs'), 'bot/main.js', 'one', 'two'], {
    cwd: folder,
    encoding: 'utf8',
  });

it('says what to run, and ends with 2', () => {
  const { status, stdout, stderr } = run();
  expect([status, stdout]).toEqual([2, '']);
  expect(stderr).toMatch(/Run "npm ci" in .+\n$/u);
  mkdirSync(path.join(folder, 'node_modules/esbuild'), { recursive: true });
  expect(run().stderr).toMatch(/^Nothing is built here yet\. Run "npm run build" in /u);
});

it('runs what is there with its arguments', () => {
  mkdirSync(path.join(folder, 'dist/bot'), { recursive: true });
  writeFileSync(path.join(folder, 'dist/bot/main.js'), 'console.log(process.argv.slice(2).join());');
  expect(run()).toMatchObject({ status: 0, stdout: 'one,two\n' });
});

it('says which source is newer than what it runs, and runs it all the same', () => {
  mkdirSync(path.join(folder, 'dist/bot'), { recursive: true });
  mkdirSync(path.join(folder, 'bot/commands'), { recursive: true });
  const built = path.join(folder, 'dist/bot/main.js');
  const source = path.join(folder, 'bot/commands/eyepiece.ts');
  for (const file of [built, source]) writeFileSync(file, '');
  utimesSync(source, 1000, 1000);
  expect(run()).toMatchObject({ status: 0, stderr: '' });
  utimesSync(built, 900, 900);
  expect(run()).toMatchObject({ status: 0 });
  expect(run().stderr).toContain('commands/eyepiece.ts is newer than what was built; to run it too: npm run build');
});
