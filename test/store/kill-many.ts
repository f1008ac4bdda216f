/** Starts and kills processes over one database, and holds it to what they acknowledged. */
import { setTimeout as sleep } from 'node:timers/promises';
import { expect } from 'vitest';
import { BATCH } from '../../bot/reminders/deliver-due.js';
import type { StorePlace } from '../../bot/store/open-store.js';
import { chatServer, enter, ledger, losses, startWorker, untilAllSaid } from './worker-bench.js';
import { LANES, NUMBERS_A_RUN, type WorkerTask } from './worker-task.js';

/** A few in an ordinary run; 500 in `npm run test:badday`. */
export const KILLS = Number(process.env.PIERHAND_KILLS ?? 12);
/** Longer than a delivery to the test's chat server takes; short, so that what a killed process held is soon taken up. */
const LEASE_MS = 2_000;
/** Lines told: the opening, then two a write. */
const ACTS = 30;

export const killMany = async (place: StorePlace, kills: number): Promise<void> => {
  const server = chatServer();
  const book = ledger();
  const task = (run: number, writes: boolean): WorkerTask => ({
    place,
    firstNumber: run * NUMBERS_A_RUN,
    writes,
    delivers: true,
    leaseMs: LEASE_MS,
    serverMs: run % 3,
  });
  let beforeOpen = 0;
  const killOne = async (run: number): Promise<void> => {
    let told = 0;
    // The others die a moment after one of their first acts, whichever: before, while or after it is written down.
    const actsToLive = Math.floor(Math.random() * ACTS);
    let enough: () => void = () => undefined;
    const lived = new Promise<void>((resolve) => {
      enough = resolve;
    });
    const worker = await startWorker(task(run, true), server, (line) => {
      enter(book, line);
      if (++told > actsToLive) enough();
    });
    // One in eight dies while it starts.
    if (run % 16 < LANES) await sleep(Math.random() * 400);
    else {
      await worker.open;
      await lived;
      await sleep(Math.random() * 8);
    }
    if (told === 0) beforeOpen++;
    worker.child.kill('SIGKILL');
    await worker.gone;
  };
  await Promise.all(
    Array.from({ length: LANES }, async (_, lane) => {
      for (let run = LANES + lane; run < LANES + kills; run += LANES) await killOne(run);
    }),
  );
  const found = await losses(place, book);

  // The last process is let live until all is said.
  const last = await startWorker(task(kills + LANES, false), server, (told) => enter(book, told));
  const stillWaiting = await untilAllSaid(place, book);
  last.child.kill('SIGKILL');
  await last.gone;
  const keys = [...book.done.values()].flatMap((write) =>
    write.kind === 'reminder' && write.key !== undefined ? [write.key] : [],
  );
  const neverSaid = keys.filter((key) => !server.takenByKey.has(key));
  const taken = [...server.takenByKey.values()];
  const repeats = taken.reduce((sum, times) => sum + times - 1, 0);
  console.log(
    `${'databaseUrl' in place ? 'PostgreSQL' : 'SQLite'}: ${kills} SIGKILLs (${beforeOpen} while starting), ${book.done.size} writes acknowledged, ` +
      `${book.begun.size - book.done.size} cut off, ${found.length} lost or half done; ${keys.length} reminders acknowledged, ${neverSaid.length} never said, ` +
      `${taken.length} shown, each once; ${repeats} sends repeated under the same key, for kills between sending and writing down`,
  );
  expect(found).toEqual([]);
  expect(neverSaid).toEqual([]);
  expect(stillWaiting).toEqual([]);
  expect(book.done.size).toBeGreaterThan(kills);
  // A kill can cut off no more than what the process had under way.
  expect(repeats).toBeLessThanOrEqual(BATCH * kills);
};
