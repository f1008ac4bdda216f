/** `npm run matrix:encryption`, as an operator meets it: a library that works, or one line that says why not and nothing left behind. */
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { nativeLibrary } from '../homeserver/native-library.js';

const SCRIPT = path.resolve('scripts/matrix/add-encryption.mjs');
const PACKAGE = 'node_modules/@matrix-org/matrix-sdk-crypto-nodejs';
const library = nativeLibrary();

describe('adding encryption', () => {
  let folder: string;
  const run = (args: readonly string[] = [], env: NodeJS.ProcessEnv = {}) => {
    const { status, stdout, stderr } = spawnSync(process.execPath, [SCRIPT, ...args], {
      cwd: folder,
      encoding: 'utf8',
      env: { PATH: process.env['PATH'], ...env },
    });
    return { status, lines: `${stdout}${stderr}`.trim().split('\n') };
  };
  const libraries = (): readonly string[] =>
    readdirSync(path.join(folder, PACKAGE)).filter((name) => name.includes('.node') && name !== '.node-version');
  const downloader = (code: string): void => {
    writeFileSync(path.join(folder, PACKAGE, 'download-lib.js'), code);
  };

  // A checkout after npm ci, as far as this matters: the two packages, no library.
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'pierhand-add-encryption-'));
    writeFileSync(path.join(folder, 'package.json'), '{}');
    mkdirSync(path.join(folder, 'node_modules/matrix-bot-sdk'), { recursive: true });
    writeFileSync(path.join(folder, 'node_modules/matrix-bot-sdk/index.js'), '');
    cpSync(PACKAGE, path.join(folder, PACKAGE), {
      recursive: true,
      filter: (file) => !file.endsWith('.node'),
    });
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });

  test('says in a line that npm ci comes first', () => {
    rmSync(path.join(folder, 'node_modules'), { recursive: true });
    expect(run()).toEqual({ status: 1, lines: [expect.stringMatching(/^No encryption: .*npm ci/u)] });
  });

  test('says in a line that the download failed, and how to give a file', () => {
    // The maker's downloader reports a failure and still ends with 0.
    downloader("console.info('Download Failed', Object.assign(new Error('connect ECONNREFUSED'), {}))");
    const { status, lines } = run();
    expect(status).toBe(1);
    expect(lines).toEqual([expect.stringMatching(/^No encryption: .*\(ECONNREFUSED\).* -- FILE/u)]);
    expect(libraries()).toEqual([]);
  });

  test('says in a line that a file is not there, or is no such library, and leaves nothing behind', () => {
    expect(run(['nowhere.node'])).toEqual({
      status: 1,
      lines: [expect.stringMatching(/cannot be copied \(ENOENT\)/u)],
    });
    writeFileSync(path.join(folder, 'rubbish'), 'not a library');
    expect(run([], { MATRIX_ENCRYPTION_LIBRARY: 'rubbish' })).toEqual({
      status: 1,
      lines: [expect.stringMatching(/does not work on this machine/u)],
    });
    expect(libraries()).toEqual([]);
  });

  test.skipIf(library === null)('takes a file that works, once, and mends one that was cut short', () => {
    const first = run([library ?? '']);
    expect(first).toEqual({
      status: 0,
      lines: [expect.stringMatching(/^Encryption is there \(library 0\.4\.0, sha256 [0-9a-f]{64}\)/u)],
    });
    expect(libraries()).toHaveLength(1);
    downloader('process.exit(9)');
    expect(run()).toEqual({ status: 0, lines: [expect.stringMatching(/already/u)] });
    const [name = ''] = libraries();
    writeFileSync(path.join(folder, PACKAGE, name), 'cut short');
    expect(run([library ?? '']).status).toBe(0);
    expect(existsSync(path.join(folder, PACKAGE, `${name}.new`))).toBe(false);
  });

  test.skipIf(library === null)('checks what was downloaded as well', () => {
    downloader(`require('node:fs').copyFileSync(${JSON.stringify(library)}, 'matrix-sdk-crypto.linux-x64-gnu.node')`);
    expect(run().status).toBe(0);
  });
});
