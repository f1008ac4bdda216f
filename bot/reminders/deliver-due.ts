/** One round: takes what is due, says each reminder once, and writes down what became of it. */
import type { Logger } from 'pino';
import { MS_PER_MINUTE } from '../ground/durations.js';
import type { Metrics } from '../app/metrics.js';
import type { RunningPlatform } from '../app/platform.js';
import type { UtcMs } from '../sky/types.js';
import { StoreError, type ClaimedReminder, type Store } from '../store/store.js';
import { deliveryKey } from './delivery-key.js';
import { nextDueAfter } from './repeats.js';
import { GIVE_UP_AFTER_MS, whatToSay } from './what-to-say.js';
import { remember } from '../ground/remember.js';

export interface Round {
  readonly store: Store;
  readonly platforms: readonly RunningPlatform[];
  readonly claimant: string;
  readonly now: () => UtcMs;
  readonly log: Logger;
  readonly metrics: Metrics;
  /** How long a claim holds; longer than a delivery may take, so that no other process sends meanwhile. */
  readonly leaseMs: number;
  readonly deliverWithinMs: number;
  /** Said, but the store could not be told yet: must not be said again by this process. */
  readonly unsettled: Set<string>;
  /** What comes again and was said in time by this process, by delivery key, the newest few thousand. */
  readonly said: Set<string>;
}

const MOST_SAID = 2_000;
const rememberSaid = ({ said }: Round, key: string): void => remember(said, key, MOST_SAID);

/** Few at a time: that many could have been sent, and not written down, when the process is killed. */
export const BATCH = 5;
const FIRST_PAUSE_MS = 30_000;
const LONGEST_PAUSE_MS = 10 * MS_PER_MINUTE;

/** 30 s, 1 min, 2 min … 10 min. */
export const pauseMs = (attempts: number): number =>
  Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** Math.min(attempts - 1, 10));

const within = async <T>(work: Promise<T>, ms: number): Promise<T> => {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(`not delivered within ${ms} ms`)), ms);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
};

/** The next one is after both this one and now, so that a clock set back does not bring the same one again. */
const nextDue = (reminder: ClaimedReminder, nowUtcMs: UtcMs): UtcMs | null =>
  nextDueAfter(reminder.repeat, Math.max(nowUtcMs, reminder.dueUtcMs));

const settle = async (round: Round, reminder: ClaimedReminder): Promise<void> => {
  const key = deliveryKey(reminder);
  round.unsettled.add(key);
  const settled = await round.store.reminders.settle(reminder.id, round.claimant, nextDue(reminder, round.now()));
  round.unsettled.delete(key);
  // Cancelled meanwhile, or its lease ran out: another process has it, and sends under the same key.
  if (!settled)
    round.log.warn({ reminder: reminder.id }, "a reminder was no longer this process's own when it was done");
};

const handle = async (round: Round, reminder: ClaimedReminder): Promise<void> => {
  const { log, metrics } = round;
  const platform = round.platforms.find(({ name }) => name === reminder.platform);
  if (platform === undefined) return;
  if (round.unsettled.has(deliveryKey(reminder))) return settle(round, reminder);

  const nowUtcMs = round.now();
  const about = {
    reminder: reminder.id,
    platform: reminder.platform,
    kind: reminder.kind,
    lateMs: Math.round(nowUtcMs - reminder.dueUtcMs),
  };
  const saying = whatToSay(reminder, nowUtcMs);
  if (saying.say === null) {
    log.info(about, 'a reminder had lost its sense and was dropped');
    return settle(round, reminder);
  }
  try {
    // What was missed goes under a key of its own: should the clock have been wrong, the warning itself is still to come.
    const told = saying.isMissed ? { ...reminder, id: `${reminder.id}m` } : reminder;
    const result = await within(platform.deliver(told, saying.say), round.deliverWithinMs);
    metrics.reminder(platform.name, result);
    if (reminder.repeat !== null && !saying.isMissed) rememberSaid(round, deliveryKey(reminder));
    if (result === 'gone') log.info(about, "a reminder's member or channel is gone");
    if (saying.isMissed) log.warn(about, 'a sunrise warning was missed, and that was said');
    // A channel that is gone needs no next warning.
    if (result === 'gone') {
      await round.store.reminders.settle(reminder.id, round.claimant, null);
      return;
    }
  } catch (error) {
    if (error instanceof StoreError) throw error;
    metrics.reminder(platform.name, 'failed');
    if (nowUtcMs - reminder.dueUtcMs > GIVE_UP_AFTER_MS) {
      log.error({ ...about, err: error }, 'a reminder could not be said for a day and is given up');
      return settle(round, reminder);
    }
    log.warn({ ...about, attempts: reminder.attempts, err: error }, 'a reminder could not be said and is tried again');
    await round.store.reminders.retryLater(reminder.id, round.claimant, round.now() + pauseMs(reminder.attempts));
    return;
  }
  await settle(round, reminder);
};

/**
 * Resolves to the number claimed. A reminder is said once, but for one case that no bot can avoid: the process is killed
 * after the chat server took it and before the store knew. It is then sent once more under the same delivery key, which
 * Matrix always, and Discord for a few minutes, shows once.
 */
export const deliverDue = async (round: Round): Promise<number> => {
  const nowUtcMs = round.now();
  const claimed = await round.store.reminders.claimDue(
    nowUtcMs,
    nowUtcMs + round.leaseMs,
    round.claimant,
    BATCH,
    round.platforms.map(({ name }) => name),
  );
  const results = await Promise.allSettled(claimed.map((reminder) => handle(round, reminder)));
  for (const result of results) {
    // Left under its lease: it is taken up again when that runs out.
    if (result.status === 'rejected')
      round.log.error({ err: result.reason as unknown }, 'what became of a reminder could not be written down');
  }
  return claimed.length;
};
