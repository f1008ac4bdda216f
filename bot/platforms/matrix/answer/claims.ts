/** Takes each event once, over restarts and crashes; a store that fails costs that promise across restarts, never the answer. */
import type { Logger } from 'pino';
import { remember } from '../../../ground/remember.js';
import type { UtcMs } from '../../../sky/types.js';
import type { Store } from '../../../store/store.js';
import type { PendingAnswers } from './pending-answers.js';

export interface Claims {
  /** Whether this process has had the event already; asks nobody. */
  readonly isSeen: (key: string) => boolean;
  readonly claim: (key: string) => Promise<'fresh' | 'left-over' | 'done'>;
  /** The event is answered, or never will be. */
  readonly settle: (key: string) => Promise<void>;
}

export interface ClaimsParts {
  readonly events: Store['events'];
  readonly pending: PendingAnswers;
  /** Keys claimed by a process that died before it had answered. */
  readonly leftOver: Set<string>;
  readonly log: Logger;
  readonly now: () => UtcMs;
}

const MOST_SEEN = 10_000;

export const createClaims = ({ events, pending, leftOver, log, now }: ClaimsParts): Claims => {
  /** Stands in for the store where it cannot answer. */
  const seen = new Set<string>();
  return {
    isSeen: (key) => seen.has(key),
    claim: async (key) => {
      if (seen.has(key)) return 'done';
      remember(seen, key, MOST_SEEN);
      if (leftOver.delete(key)) return 'left-over';
      try {
        return (await events.claim(key, now())) ? 'fresh' : 'done';
      } catch (error) {
        log.warn({ err: error }, 'cannot claim a Matrix event in the store; answering all the same');
        return 'fresh';
      }
    },
    settle: async (key) => {
      try {
        await events.answered(key);
      } catch (error) {
        log.warn({ err: error }, 'cannot mark a Matrix event as answered');
      }
      await pending.done(key);
    },
  };
};
