/** SIGKILL at any point, over PostgreSQL; and three processes that share its reminders. */
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openStore } from '../../bot/store/open-store.js';
import { killMany, KILLS } from './kill-many.js';
import { postgresMissing, startCluster, type Cluster } from './postgres-cluster.js';
import { chatServer, startWorker } from './worker-bench.js';
import { remindedMember } from './worker-task.js';

const missing = postgresMissing();
const skipped = missing === null ? '' : ` (skipped: ${missing})`;

describe.skipIf(missing !== null)(`several processes over PostgreSQL${skipped}`, () => {
  let cluster: Cluster;
  beforeAll(async () => {
    cluster = await startCluster();
  }, 60_000);
  afterAll(() => cluster.stop(), 60_000);

  it(`lose nothing acknowledged and say nothing twice in ${KILLS} SIGKILLs at any point`, async () => {
    await killMany({ databaseUrl: await cluster.database('kills') }, KILLS);
  }, 1_200_000);

  it('three of them say 1,000 reminders, each once', async () => {
    const COUNT = 1000;
    const place = { databaseUrl: await cluster.database('thousand') };
    const store = await openStore(place);
    const dueUtcMs = Date.now();
    for (let i = 0; i < COUNT; i++) {
      await store.reminders.add({
        memberId: remindedMember(i),
        clubId: 'c',
        platform: 'console',
        channelId: 'c',
        to: 'member',
        kind: 'dark',
        dueUtcMs: dueUtcMs + (i % 4) * 500,
        staleUtcMs: null,
        repeat: null,
        text: `reminder ${i}`,
      });
    }
    const server = chatServer();
    const workers = await Promise.all(
      [1, 2, 3].map(() =>
        startWorker(
          { place, firstNumber: 0, writes: false, delivers: true, leaseMs: 30_000, serverMs: 3 },
          server,
          () => undefined,
        ),
      ),
    );
    const left = async () => Number((await cluster.query('select count(*) as n from reminders', 'thousand'))[0]?.n);
    for (let waited = 0; waited < 600 && (await left()) > 0; waited++) await sleep(100);
    for (const { child, gone } of workers) {
      child.kill('SIGKILL');
      await gone;
    }
    await store.close();
    const shares = workers.map(({ child }) => server.takenByWorker.get(child.pid ?? 0) ?? 0);
    const total = shares.reduce((sum, share) => sum + share, 0);
    console.log(
      `Three processes on one PostgreSQL: ${server.takenByKey.size} reminders said, ${total} sends, by process ${shares.join(' + ')}`,
    );
    expect(await left()).toBe(0);
    expect(server.takenByKey.size).toBe(COUNT);
    expect(total).toBe(COUNT);
    expect(Math.min(...shares)).toBeGreaterThan(0);
  }, 120_000);
});
