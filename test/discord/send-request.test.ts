/** Requests to Discord as a server of Node's own sees them: on few connections, whole, and given up when told so. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Client } from 'discord.js';
import { Events, REST } from 'discord.js';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createClient } from '../../bot/platforms/discord/connect/client.js';
import { sendRequest } from '../../bot/platforms/discord/connect/send-request.js';

interface Got {
  readonly type: string;
  readonly text: string;
}

/** Long enough for a busy machine. */
const TIMEOUT_MS = 3000;

describe('a request to Discord', () => {
  let server: Server;
  let connections = 0;
  let got: Got[] = [];
  let rest: REST;
  /** What the server does with the next request, instead of answering it. */
  let fault: 'breaks off' | 'keeps silent' | null = null;

  beforeEach(async () => {
    connections = 0;
    got = [];
    fault = null;
    server = createServer((request, response) => {
      const parts: Buffer[] = [];
      request.on('data', (part: Buffer) => parts.push(part));
      request.on('end', () => {
        got.push({ type: request.headers['content-type'] ?? '', text: Buffer.concat(parts).toString() });
        if (fault === 'keeps silent') return;
        response.writeHead(200, { 'content-type': 'application/json', 'content-length': '11' });
        response.write('{"id":');
        if (fault === 'breaks off') response.destroy();
        else response.end('"42"}');
      });
    });
    server.on('connection', () => connections++);
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as AddressInfo;
    rest = new REST({
      api: `http://127.0.0.1:${port}`,
      version: '10',
      retries: 0,
      timeout: TIMEOUT_MS,
      makeRequest: sendRequest,
    });
  });
  afterEach(() => {
    server.closeAllConnections();
    server.close();
    rest.clearHandlerSweeper();
    rest.clearHashSweeper();
  });

  it('goes out on the connection that is open already', async () => {
    for (let i = 0; i < 10; i++) await rest.post('/interactions/1/token/callback', { body: { i }, auth: false });
    expect(connections).toBe(1);
    expect(got.map(({ text }) => text)).toEqual(Array.from({ length: 10 }, (_, i) => `{"i":${i}}`));
    expect(got[0]?.type).toBe('application/json');
  });

  it('carries a file beside its text', async () => {
    const answer = await rest.patch('/webhooks/1/token/messages/2', {
      body: { content: 'Polaris' },
      files: [{ name: 'chart.png', data: Buffer.from('pixels'), contentType: 'image/png' }],
      auth: false,
    });
    expect(got[0]?.type).toMatch(/^multipart\/form-data; boundary=/u);
    expect(got[0]?.text).toMatch(/filename="chart\.png"\r\nContent-Type: image\/png\r\n\r\npixels\r\n/u);
    expect(got[0]?.text).toContain('{"content":"Polaris"}');
    expect(answer).toEqual({ id: '42' });
  });

  it.each(['breaks off', 'keeps silent'] as const)('fails where the server %s', async (how) => {
    fault = how;
    await expect(rest.post('/interactions/1/token/callback', { body: {}, auth: false })).rejects.toThrow();
  });
});

it('makes no objects of the interactions that the gateway brings', async () => {
  const client: Client = createClient({
    apiUrl: 'http://127.0.0.1:9',
    token: 'none',
    shardCount: 1,
    shardIds: null,
    guildId: null,
  });
  let made = 0;
  client.on(Events.InteractionCreate, () => made++);
  const { actions } = client as unknown as { actions: { InteractionCreate: { handle: (data: unknown) => void } } };
  actions.InteractionCreate.handle({
    id: '1',
    type: 2,
    token: 'token',
    application_id: '2',
    data: { id: '3', name: 'up', type: 1 },
    user: { id: '4', username: 'tamsin' },
    app_permissions: '0',
    entitlements: [],
    authorizing_integration_owners: {},
  });
  await client.destroy();
  expect(made).toBe(0);
});
