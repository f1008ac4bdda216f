/** Where the bot fetches members' files from: the platform's own media, and nothing a member can name beside it. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { hostname, networkInterfaces } from 'node:os';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { MOST_FILE_BYTES } from '../../bot/ground/member-file.js';
import { memberFile } from '../../bot/platforms/discord/answer/attachment.js';
import { createFileReader } from '../../bot/platforms/matrix/answer/member-file.js';
import { fetchFile } from '../../bot/platforms/shared/fetch-file.js';
import { event } from '../matrix/events.js';

/** A server of the operator's that members must not reach through the bot, and the one that keeps files. */
let inside: Server;
let media: Server;
let insideOrigin = '';
let mediaPort = 0;
let reached: string[] = [];
const portOf = (server: Server): number => (server.address() as AddressInfo).port;
const listen = (server: Server, host: string): Promise<void> =>
  new Promise((resolve) => void server.listen(0, host, resolve));

beforeAll(async () => {
  inside = createServer((request, response) => {
    reached.push(request.url ?? '');
    response.end('secrets');
  });
  media = createServer((request, response) => {
    const path = request.url ?? '';
    if (path.endsWith('/leads-inside')) response.writeHead(302, { location: `${insideOrigin}/from-redirect` }).end();
    else if (path.endsWith('/says-huge')) response.writeHead(200, { 'content-length': MOST_FILE_BYTES + 1 }).end();
    else if (path.endsWith('/is-huge')) {
      const send = (): void => {
        while (response.write(Buffer.alloc(1 << 20)));
        response.once('drain', send);
      };
      send();
    } else response.end('the kernel log');
  });
  await listen(inside, '127.0.0.1');
  // On all addresses: a homeserver in a container has a name of its own and no TLS.
  await listen(media, '0.0.0.0');
  insideOrigin = `http://127.0.0.1:${portOf(inside)}`;
  mediaPort = portOf(media);
});
afterAll(() => {
  inside.close();
  media.closeAllConnections();
  media.close();
});
beforeEach(() => {
  reached = [];
});

const ownAddress = (): string =>
  Object.values(networkInterfaces())
    .flatMap((addresses) => addresses ?? [])
    .find(({ family, internal }) => family === 'IPv4' && !internal)?.address ?? hostname();

const matrixFile = (homeserverUrl: string, id = 'AbC_1-2') =>
  createFileReader({ homeserverUrl, accessToken: 'token', encryption: () => null, takeTurn: async () => undefined })(
    event('m.room.message', { msgtype: 'm.file', body: 'log.txt', url: `mxc://fenwold.test/${id}` }),
  );

describe('a file on Matrix', () => {
  test('comes from the configured homeserver though it has no TLS, as between containers', async () => {
    const bytes = await matrixFile(`http://${ownAddress()}:${mediaPort}`)?.load();
    expect(Buffer.from(bytes as Uint8Array).toString()).toBe('the kernel log');
  });

  test.each(['leads-inside', 'says-huge', 'is-huge'])('that %s is refused and reaches nothing else', async (id) => {
    const problem = id === 'leads-inside' ? 'file-not-fetched' : 'file-too-large';
    expect(await matrixFile(`http://127.0.0.1:${mediaPort}`, id)?.load()).toMatchObject({ problem });
    expect(reached).toEqual([]);
  });
});

describe('an attachment on Discord', () => {
  const at = (url: string, apiUrl?: string) => memberFile({ filename: 'log.txt', size: 1, url }, apiUrl).load();
  test.each([
    ['inside the operator’s network', () => insideOrigin],
    ['with the media host as a user name', () => `http://cdn.discordapp.com@127.0.0.1:${portOf(inside)}/x`],
    ['with the media host in the path', () => `${insideOrigin}/cdn.discordapp.com`],
    ['in a metadata service', () => 'http://169.254.169.254/latest'],
    ['on the media host without TLS', () => 'http://cdn.discordapp.com/attachments/1/2/log.txt'],
    ['on another port of the media host', () => 'https://cdn.discordapp.com:8443/log.txt'],
    ['in a file', () => 'file:///etc/passwd'],
    ['in itself', () => 'data:text/plain,hello'],
    ['nowhere', () => 'not an address'],
  ])('%s is not fetched', async (_where, url) => {
    expect(await at(url())).toMatchObject({ problem: 'file-not-fetched' });
    expect(await at(url(), 'https://discord.example.org/api')).toMatchObject({ problem: 'file-not-fetched' });
    expect(reached).toEqual([]);
  });
});

test('an origin is matched whole: scheme, name and port', async () => {
  for (const origin of [
    `https://127.0.0.1:${portOf(inside)}`,
    'http://127.0.0.1',
    `http://localhost:${portOf(inside)}`,
    '',
  ])
    expect(await fetchFile({ url: `${insideOrigin}/x`, origins: [origin] })).toMatchObject({
      problem: 'file-not-fetched',
    });
  expect(reached).toEqual([]);
});
