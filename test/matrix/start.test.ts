/** A homeserver that is away when the bot starts: the bot waits for it. A refused token is told at once. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { createLog } from '../../bot/app/log.js';
import { createMetrics } from '../../bot/app/metrics.js';
import type { RunningPlatform } from '../../bot/app/platform.js';
import { loadSettings } from '../../bot/app/settings.js';
import { StartError } from '../../bot/ground/start-error.js';
import { startMatrix } from '../../bot/platforms/matrix/index.js';
import { openStore } from '../../bot/store/open-store.js';
import { smallDisk, smallDiskMissing } from '../store/small-disk.js';

vi.setConfig({ testTimeout: 60_000 });

type Answer = readonly [status: number, body: unknown];
/** Answers by the end of the path (Matrix specification, client-server API: versions, whoami, sync); others get an empty object. */
const WELL: Readonly<Record<string, Answer>> = {
  '/versions': [200, { versions: ['v1.11'] }],
  '/whoami': [200, { user_id: '@pier:fenwold.test' }],
  '/sync': [200, { next_batch: 's1' }],
  '/joined_rooms': [200, { joined_rooms: [] }],
};

let server: Server | null = null;
let platform: RunningPlatform | null = null;
const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-matrix-start-'));
afterEach(async () => {
  await platform?.stop();
  platform = null;
  server?.closeAllConnections();
  server?.close();
  server = null;
  rmSync(folder, { recursive: true, force: true });
});

const listen = (answers: Record<string, Answer>, port = 0): Promise<number> =>
  new Promise((resolve) => {
    server = createServer((request, response) => {
      request.resume();
      const asked = request.url?.split('?')[0] ?? '';
      const [, [status, body] = [200, {}]] = Object.entries(answers).find(([end]) => asked.endsWith(end)) ?? [];
      const answer = (): void =>
        void response.writeHead(status, { 'Content-Type': 'application/json' }).end(JSON.stringify(body));
      // A poll without news is held a while, as a real one is.
      if (asked.endsWith('/sync')) setTimeout(answer, 50);
      else answer();
    });
    server.listen(port, '127.0.0.1', () => resolve((server?.address() as AddressInfo).port));
  });
const freePort = async (): Promise<number> => {
  const port = await listen({});
  await new Promise((resolve) => server?.close(resolve));
  return port;
};

const begin = async (port: number, more: Record<string, string> = { MATRIX_ACCESS_TOKEN: 'token' }) => {
  const settings = loadSettings({
    MATRIX_HOMESERVER_URL: `http://127.0.0.1:${port}`,
    PIERHAND_DATA: folder,
    ...more,
  });
  const lines: { msg: string; detail?: string; level: string }[] = [];
  const sink = new PassThrough();
  sink.on('data', (chunk: Buffer) =>
    lines.push(
      ...chunk
        .toString()
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line) as (typeof lines)[number]),
    ),
  );
  const metrics = createMetrics(false, ['matrix']);
  const context = {
    deps: { store: await openStore({ memory: true }), commands: [], readers: [] } as unknown as Deps,
    settings,
    log: createLog('info', [], sink),
    metrics,
    now: () => Date.now(),
  };
  platform = await startMatrix(context, { connectDelaysMs: [20] });
  return { platform, lines, metrics };
};
const wait = async (what: () => boolean): Promise<void> => {
  while (!what()) await new Promise((resolve) => setTimeout(resolve, 20));
};

describe('a homeserver that is away at the start', () => {
  test('is waited for: one line meanwhile, and it is followed once it is there', async () => {
    const port = await freePort();
    const { platform: started, lines, metrics } = await begin(port);
    expect(started.health()).toMatchObject({ ok: false, detail: expect.stringContaining('ECONNREFUSED') as string });
    await expect(started.deliver({} as never, 'Dark now.')).rejects.toThrow('ECONNREFUSED');
    expect(lines.map(({ msg }) => msg)).toEqual(['not connected to the homeserver; trying again']);
    expect((await metrics.expose()).body).toMatch(/pierhand_failures_total\{platform="matrix",kind="connect"\} [1-9]/u);
    await listen(WELL, port);
    await wait(() => started.health().ok);
    expect(lines.at(-1)?.msg).toBe('following the Matrix rooms');
  });

  test.each<[string, Answer]>([
    ['a server in front of it that has nobody behind', [502, 'Bad Gateway']],
    ['a limit', [429, { errcode: 'M_LIMIT_EXCEEDED', error: 'Too many', retry_after_ms: 60_000 }]],
  ])('is waited for with %s as well, whether by token or by password', async (_name, answer) => {
    for (const login of [{ MATRIX_ACCESS_TOKEN: 'token' }, { MATRIX_USER: 'pier', MATRIX_PASSWORD: 'opensesame' }]) {
      const port = await listen({ '/versions': answer });
      const { platform: started, lines } = await begin(port, login);
      expect(started.health().ok).toBe(false);
      expect(lines).toMatchObject([{ level: 'warn', msg: 'not connected to the homeserver; trying again' }]);
      await started.stop();
      server?.closeAllConnections();
      server?.close();
    }
  });

  test('may be stopped while it is waited for', async () => {
    const { platform: started } = await begin(await freePort());
    const began = performance.now();
    await started.stop();
    expect(performance.now() - began).toBeLessThan(5000);
  });

  test('a token that it refuses once it is there is told, and not tried again', async () => {
    const port = await freePort();
    const { platform: started, lines } = await begin(port);
    await listen({ ...WELL, '/whoami': [401, { errcode: 'M_UNKNOWN_TOKEN', error: 'Unknown' }] }, port);
    await wait(() => lines.some(({ level }) => level === 'fatal'));
    expect(started.health()).toMatchObject({
      ok: false,
      detail: expect.stringMatching(/^MATRIX_ACCESS_TOKEN: /u) as string,
    });
  });
});

const noDisk = smallDiskMissing();

test.skipIf(noDisk !== null)('a full disk is waited for, and no login is made that could not be kept', async () => {
  const disk = smallDisk(1);
  try {
    const paths: string[] = [];
    const port = await listen({ ...WELL, '/login': [200, { access_token: 'new', user_id: '@pier:fenwold.test' }] });
    server?.on('request', ({ url }: { url?: string }) => paths.push(url ?? ''));
    const filler = path.join(disk.folder, 'filler');
    writeFileSync(filler, Buffer.alloc(1_000_000));
    const { platform: started, lines } = await begin(port, {
      MATRIX_USER: 'pier',
      MATRIX_PASSWORD: 'opensesame',
      PIERHAND_DATA: disk.folder,
    });
    expect(lines).toMatchObject([{ detail: `PIERHAND_DATA: the disk of ${disk.folder} has no room left` }]);
    expect(paths.filter((asked) => asked.endsWith('/login'))).toEqual([]);
    rmSync(filler);
    await wait(() => started.health().ok);
    expect(paths.filter((asked) => asked.endsWith('/login'))).toHaveLength(1);
  } finally {
    disk.remove();
  }
});

test('a homeserver that refuses the token at the start ends it', async () => {
  const port = await listen({ ...WELL, '/whoami': [401, { errcode: 'M_UNKNOWN_TOKEN', error: 'Unknown' }] });
  await expect(begin(port)).rejects.toBeInstanceOf(StartError);
});
