/** Says reminders when they are due, in as many processes as there are, each reminder by one of them; and clears out what is old. */
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type { PlatformContext, RunningPlatform } from '../app/platform.js';
import { StoreError } from '../store/store.js';
import { BATCH, deliverDue, type Round } from './deliver-due.js';
import { purgeOld } from './purge-old.js';

export { deliveryKey } from './delivery-key.js';

export interface RunningReminders {
  readonly name: 'store';
  /** Whether the store answered when it was last looked into, a few seconds ago. */
  readonly health: () => { readonly ok: boolean; readonly detail: string };
  /** Lets the deliveries under way finish. */
  readonly stop: () => Promise<void>;
}

export interface ReminderTimes {
  readonly lookEveryMs: number;
  readonly leaseMs: number;
  readonly deliverWithinMs: number;
  readonly purgeEveryMs: number;
}

const TIMES: ReminderTimes = { lookEveryMs: 5_000, leaseMs: 90_000, deliverWithinMs: 45_000, purgeEveryMs: 3_600_000 };

interface StoreWatch {
  readonly attempt: (work: () => Promise<number>) => Promise<number>;
  readonly health: RunningReminders['health'];
}

/** While the store does not answer, one line in the log when that begins and one when it ends, not one every few seconds. */
const storeWatch = ({ log }: PlatformContext): StoreWatch => {
  let trouble: string | null = null;
  return {
    attempt: async (work) => {
      try {
        const result = await work();
        if (trouble !== null) log.info('reminders go on: the store answers again');
        trouble = null;
        return result;
      } catch (error) {
        if (trouble === null) log.error({ err: error }, 'reminders wait: the store does not answer');
        trouble = error instanceof StoreError ? error.code : 'failed';
        return 0;
      }
    },
    health: () => ({ ok: trouble === null, detail: trouble ?? 'answers' }),
  };
};

/** Runs until stopped. Elapsed time is counted by a clock that never jumps; due times by the context's. */
export const startReminders = (
  context: PlatformContext,
  platforms: readonly RunningPlatform[],
  times: Partial<ReminderTimes> = {},
): RunningReminders => {
  const { lookEveryMs, leaseMs, deliverWithinMs, purgeEveryMs } = { ...TIMES, ...times };
  const stopping = new AbortController();
  const round: Round = {
    store: context.deps.store,
    platforms,
    claimant: randomUUID(),
    now: context.now,
    log: context.log,
    metrics: context.metrics,
    leaseMs,
    deliverWithinMs,
    unsettled: new Set(),
  };
  const { attempt, health } = storeWatch(context);

  const run = async (): Promise<void> => {
    let purgedAtMs = -Infinity;
    while (!stopping.signal.aborted) {
      if (performance.now() - purgedAtMs >= purgeEveryMs) {
        purgedAtMs = performance.now();
        await attempt(async () => purgeOld(context.deps.store, context.now()));
      }
      const claimed = await attempt(() => deliverDue(round));
      if (claimed < BATCH) await sleep(lookEveryMs, undefined, { signal: stopping.signal }).catch(() => undefined);
    }
  };
  const ended = run();
  return {
    name: 'store',
    health,
    stop: async () => {
      stopping.abort();
      await ended;
    },
  };
};
