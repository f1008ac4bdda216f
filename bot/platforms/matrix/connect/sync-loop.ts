/** Follows the homeserver's event stream: through outages, over gaps, and without ever moving past a question not yet answered. */
import { setTimeout as sleep } from 'node:timers/promises';
import type { UtcMs } from '../../../sky/types.js';
import type { PierhandMatrixClient } from './client.js';
import { backOffMs, isLimit, LONGEST_LIMIT_MS, Unreachable, type Homeserver } from './homeserver-call.js';
import { isRecord, textAt } from '../answer/matrix-event.js';
import { MatrixError } from './sdk.js';
import { createSyncReader, type SyncBatch } from './sync-reader.js';

export interface SyncOptions {
  readonly client: PierhandMatrixClient;
  /** For the polls alone, which end as soon as the bot stops. */
  readonly poller: Homeserver;
  readonly botId: string;
  readonly readToken: () => Promise<string | null>;
  readonly saveToken: (token: string) => Promise<void>;
  /** The work a batch makes; each resolves to false where it was left undone. Must not reject. */
  readonly onBatch: (batch: SyncBatch) => readonly Promise<boolean>[];
  /** After each answer to a poll. */
  readonly onSynced: () => void;
  readonly onState: (state: 'ready' | 'lost' | 'resumed' | 'refused', detail: string) => void;
  readonly onError: (error: unknown, what: string) => void;
  readonly now: () => UtcMs;
  /** How far back gaps are filled. */
  readonly oldestMs: number;
  readonly stop: AbortSignal;
}

/** Short, as a server may miss waking a poll when something happens just as it comes in; then the next poll brings it. */
const POLL_MS = 10_000;
const LONGEST_SYNC_PAUSE_MS = 5000;
/** After a token was refused: only an operator can mend that. */
const REFUSED_PAUSE_MS = 60_000;
/** Work under way beyond this holds the next poll back; high, so that one room's backlog holds up no other. */
const MOST_UNDER_WAY = 2000;

/** @param isFirst brings every room's state, of which the members are not needed */
const filter = (isFirst: boolean): string =>
  JSON.stringify({
    presence: { not_types: ['*'] },
    room: {
      ephemeral: { not_types: ['*'] },
      timeline: { limit: isFirst ? 1 : 50 },
      state: { lazy_load_members: isFirst },
    },
  });

/** The homeserver no longer knows the token (it was restored, or replaced): begin anew, as on a first sync. */
const isUnknownPosition = (error: unknown): boolean =>
  error instanceof MatrixError &&
  (error.errcode === 'M_UNKNOWN_POS' || (error.statusCode === 400 && error.errcode !== 'M_LIMIT_EXCEEDED'));

/** Runs until `stop`; resolves when the work under way has ended. Never rejects. */
export const runSync = async (options: SyncOptions): Promise<void> => {
  const { client, poller, botId, readToken, saveToken, onBatch, onSynced, onState, onError, now, oldestMs, stop } =
    options;

  const read = createSyncReader({ client, botId, now, oldestMs });
  let token: string | null = null;
  let underWay = 0;
  let saved: Promise<void> = Promise.resolve();
  let leftUndone = false;
  /** Tokens are saved in order, each after all the work before it. */
  const saveAfter = (work: readonly Promise<boolean>[], next: string): void => {
    underWay += work.length;
    saved = saved.then(async () => {
      const done = await Promise.all(work);
      underWay -= work.length;
      if (done.includes(false)) leftUndone = true;
      if (!leftUndone)
        await saveToken(next).catch((error: unknown) => {
          onError(error, 'the place in the event stream was not saved');
        });
    });
  };

  let attempt = 0;
  let wasReady = false;
  const poll = async (): Promise<void> => {
    if (token === null && !wasReady) token = await readToken();
    const isFirst = token === null;
    const answer = await poller.call({
      method: 'GET',
      path: '/_matrix/client/v3/sync',
      patienceMs: 0,
      // After trouble the first answer should come at once: it says that all is well again.
      timeoutMs: isFirst ? 600_000 : POLL_MS + 15_000,
      query: {
        since: token,
        timeout: isFirst || attempt > 0 || !wasReady ? 0 : POLL_MS,
        filter: filter(isFirst),
      },
    });
    const next = isRecord(answer) ? textAt(answer, 'next_batch') : null;
    if (!isRecord(answer) || next === null) throw new Unreachable('the sync answer has no token', true);
    const batch = await read(answer, isFirst);
    saveAfter(onBatch(batch), next);
    token = next;
    onSynced();
  };

  /** Says what a failed poll means; how long to wait before the next. */
  const pauseAfterMs = (error: unknown): number => {
    const pauseMs = Math.min(LONGEST_SYNC_PAUSE_MS, backOffMs(attempt));
    if (error instanceof MatrixError && error.statusCode === 401) {
      onState('refused', 'the homeserver no longer accepts the access token');
      return REFUSED_PAUSE_MS;
    }
    if (isLimit(error)) {
      const { retryAfterMs = 0 } = error;
      return Math.max(pauseMs, Number.isFinite(retryAfterMs) ? Math.min(LONGEST_LIMIT_MS, retryAfterMs) : 0);
    }
    if (token !== null && isUnknownPosition(error)) {
      onError(error, 'the homeserver does not know the place in its event stream; beginning anew');
      token = null;
      wasReady = true;
      return pauseMs;
    }
    onState('lost', error instanceof Unreachable ? error.message : 'the sync failed');
    if (!(error instanceof Unreachable)) onError(error, 'reading the event stream failed');
    return pauseMs;
  };

  while (!stop.aborted) {
    try {
      await poll();
      if (!wasReady || attempt > 0) onState(wasReady ? 'resumed' : 'ready', '');
      wasReady = true;
      attempt = 0;
      while (underWay > MOST_UNDER_WAY && !stop.aborted) await sleep(200);
    } catch (error) {
      if (stop.aborted) break;
      attempt++;
      await sleep(pauseAfterMs(error), undefined, { signal: stop }).catch(() => undefined);
    }
  }
  await saved;
};
