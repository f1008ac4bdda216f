import { request } from 'node:http';
import { networkInterfaces } from 'node:os';
import { connect } from 'node:net';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startPage } from './start-page.js';

let page: Awaited<ReturnType<typeof startPage>>;
beforeAll(async () => {
  page = await startPage();
});
afterAll(() => page.stop());

interface Sent {
  readonly path: string;
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
}

/** `fetch` sets Host and Origin itself; here they are whatever the test says. */
const send = ({ path, method = 'GET', headers = {}, body }: Sent): Promise<{ status: number; headers: object }> =>
  new Promise((resolve, reject) => {
    const { port } = new URL(page.address);
    const sent = request({ host: '127.0.0.1', port, path, method, headers }, (response) => {
      resolve({ status: response.statusCode ?? 0, headers: response.headers });
      response.resume();
    });
    sent.on('error', reject);
    sent.end(body);
  });

const form = (text: string): { body: Buffer; headers: Record<string, string> } => ({
  body: Buffer.from(`--x\r\ncontent-disposition: form-data; name="text"\r\n\r\n${text}\r\n--x--\r\n`),
  headers: { 'content-type': 'multipart/form-data; boundary=x' },
});

describe('the page on loopback', () => {
  it('is not for a name that another site made point here, and not for another site', async () => {
    const { port, origin } = new URL(page.address);
    expect((await send({ path: '/' })).status).toBe(200);
    expect((await send({ path: '/', headers: { host: `localhost:${port}` } })).status).toBe(200);
    expect((await send({ path: '/', headers: { host: `club.example:${port}` } })).status).toBe(421);
    expect((await send({ path: '/events?member=tamsin', headers: { origin: 'https://club.example' } })).status).toBe(
      403,
    );
    const { body, headers } = form('help');
    const path = '/say?member=wilf';
    for (const from of [undefined, 'null', 'https://club.example'])
      expect(
        (await send({ path, method: 'POST', body, headers: { ...headers, ...(from && { origin: from }) } })).status,
      ).toBe(403);
    expect((await send({ path, method: 'POST', body, headers: { ...headers, origin } })).status).toBe(200);
    expect((await send({ path, method: 'PUT', body, headers: { ...headers, origin } })).status).toBe(405);
  });

  it('lets no other site read, frame or script it (CSP level 3, Fetch)', async () => {
    const { headers } = await send({ path: '/', headers: { origin: new URL(page.address).origin } });
    expect(headers).not.toHaveProperty('access-control-allow-origin');
    expect(headers).toHaveProperty('content-security-policy', expect.stringContaining("default-src 'none'"));
    expect(headers).toHaveProperty('content-security-policy', expect.not.stringContaining('unsafe'));
    expect(headers).toHaveProperty('x-content-type-options', 'nosniff');
  });

  it('takes no more than a file at once, and nothing that is no form', async () => {
    const { origin } = new URL(page.address);
    const path = '/say?member=wilf';
    const { headers } = form('');
    const declared = { ...headers, origin, 'content-length': String(50 * 1024 * 1024) };
    expect((await send({ path, method: 'POST', headers: declared, body: 'x' })).status).toBe(413);
    expect((await send({ path, method: 'POST', headers: { ...headers, origin }, body: 'nonsense' })).status).toBe(400);
    expect(
      (await send({ path, method: 'POST', headers: { origin, 'content-type': 'text/plain' }, body: 'help' })).status,
    ).toBe(415);
    expect(
      (await send({ path: '/say?member=nobody', method: 'POST', ...form('help'), headers: { ...headers, origin } }))
        .status,
    ).toBe(404);
    for (const lost of ['/../package.json', '/page.html', '/__proto__', '/picture/x.png'])
      expect((await send({ path: lost })).status).toBe(404);
  });

  it('does not listen on the machine’s other addresses', async () => {
    const port = Number(new URL(page.address).port);
    const others = Object.values(networkInterfaces())
      .flatMap((found) => found ?? [])
      .filter(({ internal, family }) => !internal && family === 'IPv4');
    for (const { address } of others) {
      const reached = await new Promise<boolean>((resolve) => {
        const socket = connect({ host: address, port, timeout: 3000 }, () => resolve(true));
        socket.on('error', () => resolve(false)).on('timeout', () => resolve(false));
      });
      expect(reached).toBe(false);
    }
  });
});
