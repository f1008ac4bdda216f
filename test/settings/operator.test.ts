import { spawn } from 'node:child_process';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { settingNames } from '../../bot/app/settings.js';
import { unknownSettings } from '../../bot/app/unknown-settings.js';
import { loggedError } from '../../bot/app/log.js';
import { lastBackupUtcMs } from '../../bot/app/backup-mark.js';
import { openStore } from '../../bot/store/open-store.js';
import { storeError } from '../../bot/store/store-failure.js';
import { logIn } from '../../bot/platforms/matrix/connect/login.js';
import { startDiscordDouble } from '../doubles/discord/discord-double.js';
import { runProgram } from '../whole-program.js';

// A busy machine may be many times slower; nothing here is about its speed.
vi.setConfig({ testTimeout: 120_000 });
const root = path.resolve(import.meta.dirname, '../..');
const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-operator-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const freePort = async (): Promise<number> => {
  const server = createServer();
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  await new Promise((resolve) => server.close(resolve));
  return port;
};

describe('an operator', () => {
  it('hears of a setting whose name is mistyped, and never its value', () => {
    expect(
      unknownSettings({
        PIERHAND_STIE: 'secret',
        DISCORD_TOKNE: 'secret',
        MATRIX_COLOUR: 'x',
        SUN_KEEP_OFF: '20',
        HOME: '/',
      }),
    ).toEqual([
      'PIERHAND_STIE is no setting of mine and is not read. Is PIERHAND_SITE meant?',
      'DISCORD_TOKNE is no setting of mine and is not read. Is DISCORD_TOKEN meant?',
      'MATRIX_COLOUR is no setting of mine and is not read.',
      'SUN_KEEP_OFF is no setting of mine and is not read.',
    ]);
    expect(unknownSettings({ PIERHAND_SITE: 'x', DATABASE_URL_FILE: 'y', DISCORD_TOKEN_FILE: 'z' })).toEqual([]);
  });

  it.each([
    ['DATABSE_URL', 'DATABASE_URL'],
    ['DATABASE_URI', 'DATABASE_URL'],
    ['SUN_DANGER_DG', 'SUN_DANGER_DEG'],
    ['SUN_CAUTON_DEG', 'SUN_CAUTION_DEG'],
    ['LOG_LEVL', 'LOG_LEVEL'],
    ['LOGLEVEL', 'LOG_LEVEL'],
    ['log_level', 'LOG_LEVEL'],
    ['PEIRHAND_SITE', 'PIERHAND_SITE'],
    ['PIERHANDSITE', 'PIERHAND_SITE'],
    ['MATRX_HOMESERVER_URL', 'MATRIX_HOMESERVER_URL'],
    ['DISCRD_TOKEN_FILE', 'DISCORD_TOKEN_FILE'],
    ['SUN_DANGER', 'SUN_DANGER_DEG'],
    ['PIERHAND_SUN_CAUTION', 'SUN_CAUTION_DEG'],
    ['HTTP_PORT', 'PIERHAND_HTTP_PORT'],
    ['PIERHAND_LOG_LEVEL', 'LOG_LEVEL'],
    ['PIERHAND_DISCORD_TOKEN', 'DISCORD_TOKEN'],
  ])('hears that %s is not read, wherever the slip is', (name, meant) => {
    expect(unknownSettings({ [name]: 'secret' })).toEqual([
      `${name} is no setting of mine and is not read. Is ${meant} meant?`,
    ]);
  });

  it('hears nothing of other programs’ variables', () => {
    // What shells, npm, Node.js, PostgreSQL's clients and systemd set (their manuals; systemd.exec(5), "Environment variables in spawned processes").
    const others =
      'PATH HOME USER LOGNAME SHELL LANG LANGUAGE LC_ALL TERM TMPDIR TZ PWD OLDPWD SHLVL MAIL EDITOR HOSTNAME ' +
      'NODE_ENV NODE_OPTIONS NODE_PATH npm_config_loglevel npm_lifecycle_event npm_package_name INIT_CWD ' +
      'PGHOST PGPORT PGUSER PGDATABASE PGPASSWORD PGPASSFILE DATABASE_HOST DATABASE_NAME DATABASE_PORT LOG_FILE LOG_FORMAT ' +
      'INVOCATION_ID JOURNAL_STREAM NOTIFY_SOCKET STATE_DIRECTORY LOGS_DIRECTORY CREDENTIALS_DIRECTORY SYSTEMD_EXEC_PID ' +
      'PREFIX DATA SITE MALLOC_ARENA_MAX COMPOSE_FILE DOCKER_HOST HTTP_PROXY http_proxy NO_PROXY SSL_CERT_FILE XDG_RUNTIME_DIR';
    expect(unknownSettings(Object.fromEntries(others.split(' ').map((name) => [name, 'x'])))).toEqual([]);
  });

  it('finds what it can set by --help, and where the rest is told', async () => {
    for (const asked of ['--help', '-h']) {
      const { code, stdout, stderr } = await runProgram('main', [asked], folder);
      expect([code, stderr]).toEqual([0, '']);
      for (const name of settingNames) expect(stdout).toContain(name);
      expect(stdout).toContain('deploy/README.md');
    }
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

  it('gets the version by --version, as package.json has it, and the commit that was built where that is known', async () => {
    const { version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')) as { version: string };
    const { code, stdout, stderr } = await runProgram('main', ['--version'], folder);
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    // Build metadata as in Semantic Versioning 2.0.0, item 10.
    expect(stdout).toMatch(/^[^+\s]+(?:\+[\da-f]{8})?\n$/u);
    expect(stdout.trim().split('+')[0]).toBe(version);
  });

  it.each(['--verison', '--port=3', '-v'])('is told that there is no option %s', async (option) => {
    const { code, stdout, stderr } = await runProgram('main', [option], folder);
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(`There is no option ${option}`);
  });

  it('is told of a data folder that can be none, at once', async () => {
    const blocked = path.join(folder, 'a-file');
    writeFileSync(blocked, '');
    // Below /proc a folder made with all its parents at once takes Node for ever.
    for (const nowhere of [path.join(blocked, 'data'), '/proc/nothing/pierhand']) {
      const { code, stderr } = await runProgram('main', ['help'], folder, { env: { PIERHAND_DATA: nowhere } });
      expect(code).toBe(2);
      expect(stderr).toContain('PIERHAND_DATA must name a folder to keep things in');
    }
  });

  it('may stop it while it still waits for a server that says nothing', async () => {
    let asked = (): void => undefined;
    const isAsked = new Promise<void>((resolve) => (asked = resolve));
    const silent = createServer(() => asked());
    await new Promise<void>((resolve) => silent.listen(0, '127.0.0.1', resolve));
    const { port } = silent.address() as AddressInfo;
    const child = spawn(process.execPath, [path.join(root, 'dist/bot/main.js')], {
      cwd: folder,
      stdio: 'ignore',
      env: {
        PATH: process.env['PATH'] ?? '',
        PIERHAND_DATA: path.join(folder, 'data'),
        DISCORD_TOKEN: 'made.up.token',
        DISCORD_API_URL: `http://127.0.0.1:${port}/api`,
      },
    });
    await isAsked;
    const began = Date.now();
    child.kill('SIGTERM');
    const code = await new Promise((resolve) => child.once('exit', resolve));
    silent.closeAllConnections();
    silent.close();
    expect(code).toBe(0);
    // The last resort comes after 10 s, when a container's engine kills as well.
    expect(Date.now() - began).toBeLessThan(9_500);
  });

  it('keeps the rest running while one chat server is away, and reads on the port which', async () => {
    const discord = await startDiscordDouble();
    const [port, nobody] = [await freePort(), await freePort()];
    const child = spawn(process.execPath, [path.join(root, 'dist/bot/main.js')], {
      cwd: folder,
      env: {
        PATH: process.env['PATH'] ?? '',
        PIERHAND_DATA: path.join(folder, 'away'),
        PIERHAND_HTTP_PORT: String(port),
        DISCORD_TOKEN: discord.token,
        DISCORD_API_URL: discord.apiUrl,
        MATRIX_HOMESERVER_URL: `http://127.0.0.1:${nobody}`,
        MATRIX_ACCESS_TOKEN: 'token',
      },
      stdio: ['ignore', 'ignore', 'pipe'],
    });
    let log = '';
    child.stderr.on('data', (chunk: Buffer) => (log += chunk.toString()));
    const get = async (asked: string): Promise<Response | null> =>
      fetch(`http://127.0.0.1:${port}${asked}`).catch(() => null);
    const seen: { ok: boolean; parts: { name: string; ok: boolean }[] }[] = [];
    const states = async (): Promise<Readonly<Record<string, boolean>>> => {
      const response = await get('/health');
      if (response === null) return {};
      const body = (await response.json()) as (typeof seen)[number];
      expect(response.status).toBe(503);
      seen.push(body);
      return Object.fromEntries(body.parts.map(({ name, ok }) => [name, ok]));
    };
    const isRest = async (): Promise<boolean> => {
      const { discord: isDiscord = false, store = false } = await states();
      return isDiscord && store && log.includes('commands registered');
    };
    while (child.exitCode === null && !(await isRest())) await sleep(50);
    expect(child.exitCode, log).toBeNull();
    // From the first answer on, nothing is called well that was not looked at.
    expect(seen[0]?.parts.map(({ name }) => name).sort()).toEqual(['discord', 'matrix', 'store']);
    const metrics = (await (await get('/metrics'))?.text()) ?? '';
    expect(metrics).toContain('pierhand_part_well{part="matrix"} 0');
    expect(metrics).toContain('pierhand_part_well{part="discord"} 1');
    child.kill('SIGTERM');
    expect(await new Promise((resolve) => child.once('exit', resolve))).toBe(0);
    await discord.close();
  });

  it('may look at the first line alone', async () => {
    const child = spawn('sh', ['-c', '"$0" "$@" | head -n 1', process.execPath, path.join(root, 'dist/bot/main.js')], {
      cwd: folder,
      env: { PATH: process.env['PATH'] ?? '', PIERHAND_DATA: path.join(folder, 'data') },
    });
    let stderr = '';
    child.stderr.on('data', (chunk: Buffer) => (stderr += chunk.toString()));
    child.stdin.on('error', () => undefined);
    child.stdin.end('help\n'.repeat(2000));
    await new Promise((resolve) => child.once('close', resolve));
    expect(stderr).toBe('');
  });

  it('keeps yesterday’s backup unless told to replace it', async () => {
    const file = path.join(folder, 'kept.sqlite');
    writeFileSync(file, 'yesterday');
    const { code, stderr } = await runProgram('backup', [file], folder);
    expect(code).toBe(2);
    expect(stderr).toContain('exists already');
    expect(readFileSync(file, 'utf8')).toBe('yesterday');
    expect(lastBackupUtcMs(path.join(folder, 'data'))).toBeNull();
  });

  it('can see when the last backup succeeded', async () => {
    // A backup has no need of the bot's tokens.
    const env = { PIERHAND_DATA: path.join(folder, 'backed-up') };
    const more = { MATRIX_HOMESERVER_URL: 'https://matrix.example.org', DISCORD_GUILD_ID: '123456789012345678' };
    await runProgram('main', ['site', 'add', 'name:Garden', 'position:52.7,0.1'], folder, { env });
    const began = Date.now();
    expect(
      (await runProgram('backup', [path.join(folder, 'new.sqlite')], folder, { env: { ...env, ...more } })).stderr,
    ).toBe('');
    // A file system keeps times a little coarser than the clock.
    expect(lastBackupUtcMs(env.PIERHAND_DATA)).toBeGreaterThan(began - 1000);
  });

  it('reads why the store cannot be opened, the cause first, in no member’s words', async () => {
    const dataFolder = path.join(folder, 'no-file-here');
    mkdirSync(path.join(dataFolder, 'pierhand.sqlite'), { recursive: true });
    const lines: string[] = [];
    const store = await openStore({ dataFolder }, { onUnopened: (line) => void lines.push(line) });
    await store.close();
    expect(lines).toHaveLength(1);
    expect(lines[0]).toMatch(/^EISDIR/u);
    const logged = JSON.stringify(
      loggedError(storeError('store-unavailable', new Error('getaddrinfo ENOTFOUND db')), false),
    );
    expect(logged).toContain('getaddrinfo ENOTFOUND db');
    expect(logged).not.toMatch(/notebook|stack/u);
  });

  it('is told that a store is damaged, at a level that nobody turns off, and what helps', async () => {
    const data = path.join(folder, 'damaged');
    mkdirSync(data);
    writeFileSync(path.join(data, 'pierhand.sqlite'), 'a shopping list, by mistake\n'.repeat(100));
    const { code, stderr } = await runProgram('main', ['help'], folder, {
      env: { PIERHAND_DATA: data, LOG_LEVEL: 'error' },
    });
    expect(code).toBe(0);
    const [line = ''] = stderr.split('\n');
    expect(JSON.parse(line)).toMatchObject({
      level: 'error',
      msg: expect.stringMatching(/^PIERHAND_DATA: the store is damaged \(.+\): put a backup back\./u) as string,
    });
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
