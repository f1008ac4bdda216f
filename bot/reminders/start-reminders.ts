/** Says reminders when they are due, in as many processes as there are, each reminder by one of them; and clears out what is old. */
import { MS_PER_HOUR } from '../ground/durations.js';
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import type { PlatformContext, RunningPlatform } from '../app/platform.js';
import { storeTrouble } from '../store/store-failure.js';
import { StoreError } from '../store/store.js';
import { bringBack } from './bring-back.js';
import { createClockWatch } from './clock-watch.js';
import { BATCH, deliverDue, type Round } from './deliver-due.js';
import { purgeOld } from './purge-old.js';

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
  readonly bringBackEveryMs: number;
  /** Milliseconds by a clock that never jumps. */
  readonly elapsedMs: () => number;
}

const TIMES: ReminderTimes = {
  lookEveryMs: 5_000,
  leaseMs: 90_000,
  deliverWithinMs: 45_000,
  purgeEveryMs: MS_PER_HOUR,
  bringBackEveryMs: MS_PER_HOUR,
  elapsedMs: () => performance.now(),
};

interface StoreWatch {
  readonly attempt: (work: () => Promise<number>) => Promise<number>;
  readonly health: RunningReminders['health'];
}

/** While the store does not answer, one line in the log when that begins and one when it ends, not one every few seconds. */
const storeWatch = ({ log }: PlatformContext): StoreWatch => {
  let trouble: string | null = null;
  let isLookedInto = false;
  return {
    attempt: async (work) => {
      try {
        const result = await work();
        isLookedInto = true;
        if (trouble !== null) log.info('reminders go on: the store answers again');
        trouble = null;
        return result;
      } catch (error) {
        if (trouble === null) log.error({ err: error }, 'reminders wait: the store does not answer');
        trouble = error instanceof StoreError ? storeTrouble(error) : 'failed: see the log';
        return 0;
      }
    },
    health: () => ({
      ok: isLookedInto && trouble === null,
      detail: trouble ?? (isLookedInto ? 'answers' : 'not looked into yet'),
    }),
  };
};

export interface Rounds {
  /** One look at what is due, and at times the clearing out. Never rejects. Resolves to the number claimed. */
  readonly look: () => Promise<number>;
  readonly health: RunningReminders['health'];
}

/**
 * Elapsed time is counted by a clock that never jumps; due times by the context's. Where the two fall apart, nothing is said,
 * moved or cleared out until the new time has stayed for a while.
 */
export const createRounds = (
  context: PlatformContext,
  platforms: readonly RunningPlatform[],
  times: Partial<ReminderTimes> = {},
): Rounds => {
  const { leaseMs, deliverWithinMs, purgeEveryMs, bringBackEveryMs, elapsedMs } = { ...TIMES, ...times };
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
    said: new Set(),
  };
  const { attempt, health } = storeWatch(context);
  const sightOf = createClockWatch(context.now, elapsedMs);
  let purgedAtMs = elapsedMs();
  let broughtBackAtMs = -Infinity;

  const look = async (): Promise<number> => {
    const { isSteady, steadyForMs, jumpMs } = sightOf();
    if (jumpMs !== null) {
      context.log.warn({ jumpMs }, 'the clock jumped: reminders wait until it has kept its new time for two minutes');
      broughtBackAtMs = -Infinity;
    }
    if (!isSteady) return 0;
    const atMs = elapsedMs();
    if (atMs - broughtBackAtMs >= bringBackEveryMs) {
      broughtBackAtMs = atMs;
      const moved = await attempt(() => bringBack(round, context.now()));
      if (moved > 0) context.log.warn({ moved }, 'standing warnings put too late by a wrong clock were brought back');
    }
    // Not at the start either: a computer may wake with a wrong clock, and nothing old is in a hurry to go.
    if (steadyForMs >= purgeEveryMs && atMs - purgedAtMs >= purgeEveryMs) {
      purgedAtMs = atMs;
      await attempt(async () => purgeOld(context.deps.store, context.now()));
    }
    return attempt(() => deliverDue(round));
  };
  return { look, health };
};

/** Runs until stopped. */
export const startReminders = (
  context: PlatformContext,
  platforms: readonly RunningPlatform[],
  times: Partial<ReminderTimes> = {},
): RunningReminders => {
  const { lookEveryMs } = { ...TIMES, ...times };
  const stopping = new AbortController();
  const { look, health } = createRounds(context, platforms, times);

  const run = async (): Promise<void> => {
    while (!stopping.signal.aborted) {
      const claimed = await look();
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
