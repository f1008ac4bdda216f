import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { unknownSettings } from '../../bot/app/settings.js';
import { loggedError } from '../../bot/app/log.js';
import { openStore } from '../../bot/store/open-store.js';
import { storeError } from '../../bot/store/store-failure.js';
import { logIn } from '../../bot/platforms/matrix/connect/login.js';
import { runProgram } from '../whole-program.js';

// A busy machine may be many times slower; nothing here is about its speed.
vi.setConfig({ testTimeout: 120_000 });
const root = path.resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-operator-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('an operator', () => {
  it('hears of a setting whose name is mistyped, and never its value', () => {
    expect(
      unknownSettings({ PIERHAND_STIE: 'secret', DISCORD_TOKNE: 'secret', MATRIX_COLOUR: 'x', HOME: '/' }),
    ).toEqual([
      'PIERHAND_STIE is no setting of mine and is not read. Is PIERHAND_SITE meant?',
      'DISCORD_TOKNE is no setting of mine and is not read. Is DISCORD_TOKEN meant?',
      'MATRIX_COLOUR is no setting of mine and is not read.',
    ]);
    expect(unknownSettings({ PIERHAND_SITE: 'x', DATABASE_URL_FILE: 'y', DISCORD_TOKEN_FILE: 'z' })).toEqual([]);
  });

  it('sees a service that was given no platform end as a failure, with the reason and the mistyped name', async () => {
    const { code, stderr } = await runProgram('main', [], folder, { env: { PIERHAND_STIE: '52.71,0.12' } });
    expect(code).toBe(2);
    expect(stderr).toContain('DISCORD_TOKEN');
    expect(stderr).toContain('PIERHAND_STIE');
  });

  it('is told at start of a club site that cannot be read', async () => {
    const { code, stderr } = await runProgram('main', [], folder, { env: { PIERHAND_SITE: '99,400' } });
    expect(code).toBe(2);
    expect(stderr).toMatch(/PIERHAND_SITE \("99,400"\) cannot be read: /u);
  });

  it('gets the version by --version, as package.json has it', async () => {
    const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string };
    expect(await runProgram('main', ['--version'], folder)).toEqual({ code: 0, stdout: `${version}\n`, stderr: '' });
  });

  it('keeps yesterday’s backup unless told to replace it', async () => {
    const file = path.join(folder, 'kept.sqlite');
    writeFileSync(file, 'yesterday');
    const { code, stderr } = await runProgram('backup', [file], folder);
    expect(code).toBe(2);
    expect(stderr).toContain('exists already');
    expect(readFileSync(file, 'utf8')).toBe('yesterday');
  });

  it('reads why the store cannot be opened, the cause first, in no member’s words', async () => {
    const blocked = path.join(folder, 'a-file');
    writeFileSync(blocked, '');
    const lines: string[] = [];
    const store = await openStore(
      { dataFolder: path.join(blocked, 'data') },
      { onUnopened: (line) => void lines.push(line) },
    );
    await store.close();
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^E(?:NOTDIR|EXIST)/u);
    const logged = JSON.stringify(
      loggedError(storeError('store-unavailable', new Error('getaddrinfo ENOTFOUND db')), false),
    );
    expect(logged).toContain('getaddrinfo ENOTFOUND db');
    expect(logged).not.toMatch(/notebook|stack/u);
  });

  it('hears that the address is wrong, not the token, where no homeserver is', async () => {
    const server = createServer((_, response) => void response.writeHead(403).end('{"errcode":"M_FORBIDDEN"}'));
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const homeserverUrl = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
    const settings = { homeserverUrl, login: { accessToken: 'right' }, allowed: [] };
    await expect(logIn(settings, folder, new AbortController().signal)).rejects.toThrow(/^MATRIX_HOMESERVER_URL: /u);
    server.closeAllConnections();
    server.close();
  });
});
