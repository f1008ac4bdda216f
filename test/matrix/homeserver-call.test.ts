/** HTTP with a server that limits, fails, hangs and comes back. Shapes: Matrix specification, "Standard error response", "Rate limiting". */
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { homeserverAt, Unreachable } from '../../bot/platforms/matrix/connect/homeserver-call.js';
import { MatrixError } from '../../bot/platforms/matrix/connect/sdk.js';

type Handler = (request: IncomingMessage, response: ServerResponse) => void;
const json =
  (status: number, body: unknown, headers = {}): Handler =>
  (_request, response) => {
    response.writeHead(status, { 'Content-Type': 'application/json', ...headers }).end(JSON.stringify(body));
  };
const good = json(200, { ok: true });
const cut: Handler = (request) => {
  request.socket.destroy();
};
const limited = (retry_after_ms?: number, headers = {}): Handler =>
  json(
    429,
    { errcode: 'M_LIMIT_EXCEEDED', error: 'Too many', ...(retry_after_ms === undefined ? {} : { retry_after_ms }) },
    headers,
  );

let server: Server;
let url: string;
let script: Handler[];
let stop: AbortController;
const seen: IncomingMessage[] = [];

beforeEach(async () => {
  seen.length = 0;
  stop = new AbortController();
  server = createServer((request, response) => {
    seen.push(request);
    request.resume();
    (script.shift() ?? good)(request, response);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  url = `http://127.0.0.1:${(server.address() as { port: number }).port}`;
});
afterEach(async () => {
  stop.abort();
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
});

const call = (more: object = {}, waits: [string, number][] = []): Promise<unknown> =>
  homeserverAt(url, 'a-token', stop.signal, (reason, ms) => waits.push([reason, ms])).call({
    method: 'GET',
    path: '/_matrix/client/v3/joined_rooms',
    ...more,
  });
const send = { method: 'PUT', path: '/_matrix/client/v3/rooms/!r:x/send/m.room.message/txn', body: { a: 1 } };

describe('limits', () => {
  test('are waited out as long as the server says, also for sends', async () => {
    for (const more of [{}, send]) {
      script = [limited(120), limited(60), good];
      const waits: [string, number][] = [];
      expect(await call(more, waits)).toEqual({ ok: true });
      expect(waits.map(([reason]) => reason)).toEqual(['rate limit', 'rate limit']);
      expect(waits[0]?.[1]).toBeGreaterThanOrEqual(120);
      expect(waits[1]?.[1]).toBeGreaterThanOrEqual(60);
    }
    expect(seen).toHaveLength(6);
  });
  test('in a header count as well', async () => {
    script = [limited(undefined, { 'Retry-After': '0.2' }), good];
    const waits: [string, number][] = [];
    await call({}, waits);
    expect(waits[0]?.[1]).toBeGreaterThanOrEqual(200);
  });
  test('longer than there is patience are passed on', async () => {
    script = [limited(60_000)];
    await expect(call({ patienceMs: 1000 })).rejects.toMatchObject({ errcode: 'M_LIMIT_EXCEEDED' });
    expect(seen).toHaveLength(1);
  });
});

describe('outages', () => {
  test('are tried through where repeating does no harm', async () => {
    script = [
      cut,
      json(502, 'bad gateway'),
      (_request, response) => {
        response.writeHead(200).end("<html>a proxy's page</html>");
      },
      good,
    ];
    expect(await call()).toEqual({ ok: true });
    expect(seen).toHaveLength(4);
  });
  test('during a send are passed on, as it may have arrived', async () => {
    for (const trouble of [cut, json(503, {})]) {
      script = [trouble, good];
      await expect(call(send)).rejects.toMatchObject({ mayHaveArrived: true });
    }
    script = [cut, good];
    await expect(call({ method: 'POST', path: '/_matrix/client/v3/createRoom', body: {} })).rejects.toBeInstanceOf(
      Unreachable,
    );
    expect(seen).toHaveLength(3);
  });
  test('before a send has reached anyone are tried through', async () => {
    const port = (server.address() as { port: number }).port;
    await new Promise((resolve) => server.close(resolve));
    const waiting = call(send);
    await new Promise((resolve) => setTimeout(resolve, 150));
    script = [];
    await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
    expect(await waiting).toEqual({ ok: true });
    expect(seen).toHaveLength(1);
  });
  test('no answer in time is one', async () => {
    script = [() => undefined];
    await expect(call({ timeoutMs: 100, patienceMs: 0 })).rejects.toMatchObject({
      message: 'no answer in time',
      mayHaveArrived: true,
    });
  });
  test('end with the bot', async () => {
    script = [() => undefined];
    const waiting = call();
    setTimeout(() => {
      stop.abort();
    }, 100);
    await expect(waiting).rejects.toBeInstanceOf(Unreachable);
    await expect(call()).rejects.toBeInstanceOf(Unreachable);
    expect(seen).toHaveLength(1);
  });
});

test('what the server refuses is passed on at once, with its code', async () => {
  script = [json(403, { errcode: 'M_FORBIDDEN', error: 'No' }), json(404, 'no json object'), good];
  await expect(call()).rejects.toMatchObject({ errcode: 'M_FORBIDDEN', statusCode: 403 });
  const plain: unknown = await call().catch((error: unknown) => error);
  expect(plain).toBeInstanceOf(MatrixError);
  expect(plain).toMatchObject({ statusCode: 404 });
  expect(seen).toHaveLength(2);
  expect(seen[0]?.headers.authorization).toBe('Bearer a-token');
});
