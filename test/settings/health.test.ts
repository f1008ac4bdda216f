import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it } from 'vitest';
import { StartError } from '../../bot/ground/start-error.js';
import { startHealthServer, type HealthServer } from '../../bot/app/health.js';
import { createMetrics } from '../../bot/app/metrics.js';

const { version: VERSION } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };

let server: HealthServer | undefined;
afterEach(async () => {
  await server?.stop();
  server = undefined;
});
const begin = async (ok: boolean, metrics = createMetrics()) => {
  server = await startHealthServer(
    { host: '127.0.0.1', port: 0 },
    () => [{ name: 'discord', health: () => ({ ok, detail: ok ? '1 servers' : 'reconnecting' }) }],
    metrics,
  );
  const { port } = server;
  return (path: string, init?: RequestInit) => fetch(`http://127.0.0.1:${port}${path}`, init);
};

describe("the operator's port", () => {
  it('says 200 while all is well, 503 with the reason when it is not', async () => {
    const well = await (await begin(true))('/health');
    expect([well.status, await well.json()]).toEqual([
      200,
      { ok: true, version: VERSION, parts: [{ name: 'discord', ok: true, detail: '1 servers' }] },
    ]);
    await server?.stop();
    const unwell = await (await begin(false))('/health');
    expect([unwell.status, await unwell.json()]).toEqual([
      503,
      { ok: false, version: VERSION, parts: [{ name: 'discord', ok: false, detail: 'reconnecting' }] },
    ]);
  });

  it('shows metrics in the Prometheus text format', async () => {
    const metrics = createMetrics(true);
    metrics.answered({ platform: 'discord', command: 'up', outcome: 'good', seconds: 0.02 });
    metrics.reminder('discord', 'sent');
    const response = await (await begin(true, metrics))('/metrics');
    expect(response.headers.get('content-type')).toContain('text/plain; version=0.0.4');
    const body = await response.text();
    expect(body).toContain('pierhand_answers_total{platform="discord",command="up",outcome="good"} 1');
    expect(body).toContain('pierhand_answer_seconds_bucket{le="0.025",platform="discord",command="up"} 1');
    expect(body).toContain('pierhand_reminders_total{platform="discord",result="sent"} 1');
    expect(body).toContain('process_resident_memory_bytes');
  });

  it('has nothing else, and takes nothing', async () => {
    const get = await begin(true);
    expect((await get('/')).status).toBe(404);
    expect((await get('/health', { method: 'POST' })).status).toBe(405);
    const head = await get('/health', { method: 'HEAD' });
    expect([head.status, await head.text()]).toEqual([200, '']);
  });

  it('that another program has taken is one clear line', async () => {
    await begin(true);
    const taken = startHealthServer({ host: '127.0.0.1', port: server?.port ?? 0 }, () => [], createMetrics());
    await expect(taken).rejects.toBeInstanceOf(StartError);
    await expect(taken).rejects.toThrow(
      /^PIERHAND_HTTP_PORT \d+ on 127\.0\.0\.1 cannot be listened on \(EADDRINUSE\)\.$/u,
    );
  });
});
