/** Files and pictures that members send: which messages hold one, where it is fetched from, and that a locked one is opened. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createFileReader } from '../../bot/platforms/matrix/answer/member-file.js';
import type { Encryption } from '../../bot/platforms/matrix/connect/encryption.js';
import { event, ODALYS } from './events.js';

let server: Server;
let url: string;
const asked: { path: string; authorization: string | undefined }[] = [];
beforeAll(async () => {
  server = createServer((request, response) => {
    asked.push({ path: request.url ?? '', authorization: request.headers.authorization });
    if (request.url?.endsWith('/gone') === true) response.writeHead(404).end();
    else response.end('the kernel log');
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
});
afterAll(() => {
  server.close();
});

/** An "encryption" that turns the bytes round where the key is the right one. */
const encryption = {
  openFile: (bytes: Uint8Array, file: { key?: string }) => {
    if (file.key !== 'right') throw new Error('no');
    return Uint8Array.from(bytes).reverse();
  },
} as unknown as Encryption;
const waitedFor: string[] = [];
const takeTurn = async (memberId: string): Promise<void> => void waitedFor.push(memberId);
const reader = (has: Encryption | null = encryption) =>
  createFileReader({ homeserverUrl: url, accessToken: 'token', encryption: () => has, takeTurn });
const sent = (content: Record<string, unknown>) =>
  event('m.room.message', { msgtype: 'm.file', body: 'log.txt', ...content });

describe('a file', () => {
  test('is fetched from the homeserver, with the token, and only once it is wanted', async () => {
    asked.length = 0;
    const file = reader()(sent({ url: 'mxc://fenwold.test/AbC_1-2', info: { size: 14 } }));
    expect(file).toMatchObject({ name: 'log.txt', sizeBytes: 14 });
    expect(asked).toEqual([]);
    expect(Buffer.from((await file?.load()) as Uint8Array).toString()).toBe('the kernel log');
    // Matrix specification 1.11, "Content repository": media is behind the client's token.
    expect(asked).toEqual([
      { path: '/_matrix/client/v1/media/download/fenwold.test/AbC_1-2', authorization: 'Bearer token' },
    ]);
  });

  test('that is locked is opened with its key, and said not to open with a wrong one', async () => {
    const locked = (key: string) => sent({ file: { url: 'mxc://fenwold.test/locked', key } });
    expect(Buffer.from((await reader()(locked('right'))?.load()) as Uint8Array).toString()).toBe('gol lenrek eht');
    expect(await reader()(locked('wrong'))?.load()).toMatchObject({ problem: 'file-not-opened' });
    expect(await reader(null)(locked('right'))?.load()).toMatchObject({ problem: 'file-not-opened' });
  });

  test('is read by turns, so that ten of one member keep nobody waiting', async () => {
    waitedFor.length = 0;
    const file = reader()(sent({ url: 'mxc://fenwold.test/AbC_1-2' }));
    expect(waitedFor).toEqual([]);
    await file?.load();
    expect(waitedFor).toEqual([ODALYS]);
  });

  test('that is gone is said so', async () => {
    expect(await reader()(sent({ url: 'mxc://fenwold.test/gone' }))?.load()).toMatchObject({
      problem: 'file-not-fetched',
    });
  });

  test.each([
    ['an address elsewhere', { url: 'https://example.org/x' }],
    ['a path that climbs', { url: 'mxc://fenwold.test/../../admin' }],
    ['no address', {}],
    ['an address that is none', { url: { a: 1 } }],
    ['a text message', { msgtype: 'm.text', url: 'mxc://fenwold.test/x' }],
    ['a video', { msgtype: 'm.video', url: 'mxc://fenwold.test/x' }],
  ])('is not %s', (_name, content) => {
    expect(reader()(sent(content))).toBeNull();
  });

  test('a size that is none is no size', () => {
    for (const size of [-1, Number.NaN, '7', null])
      expect(reader()(sent({ url: 'mxc://fenwold.test/x', info: { size } }))?.sizeBytes).toBeNull();
  });
});
