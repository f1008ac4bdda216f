/** Says reminders when they are due, in as many processes as there are, each reminder by one of them; and clears out what is old. */
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type { PlatformContext, RunningPlatform } from '../platforms/platform.js';
import { BATCH, deliverDue, type Round } from './deliver-due.js';
import { purgeOld } from './purge-old.js';

export { deliveryKey } from './delivery-key.js';

export interface RunningReminders {
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

/** While the store does not answer, one line in the log each time it begins and ends, not one every few seconds. */
const quietly = (context: PlatformContext): ((work: () => Promise<number>) => Promise<number>) => {
  let inTrouble = false;
  return async (work) => {
    try {
      const result = await work();
      if (inTrouble) context.log.info('reminders go on: the store answers again');
      inTrouble = false;
      return result;
    } catch (error) {
      if (!inTrouble) context.log.error({ err: error }, 'reminders wait: the store does not answer');
      inTrouble = true;
      return 0;
    }
  };
};

/** Runs until stopped. Elapsed time is counted by a clock that never jumps; due times by the context's. */
export const startReminders = (context: PlatformContext, platforms: readonly RunningPlatform[], times: Partial<ReminderTimes> = {}): RunningReminders => {
  const { lookEveryMs, leaseMs, deliverWithinMs, purgeEveryMs } = { ...TIMES, ...times };
  const stopping = new AbortController();
  const round: Round = {
    store: context.deps.store, platforms, claimant: randomUUID(), now: context.now, log: context.log, metrics: context.metrics,
    leaseMs, deliverWithinMs, unsettled: new Set(),
  };
  const attempt = quietly(context);

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
    stop: async () => {
      stopping.abort();
      await ended;
    },
  };
};
