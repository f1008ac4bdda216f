/** Makes sure that one interaction is answered once, though Discord may say it twice, to this process or to another. */
import type { Logger } from 'pino';
import type { Store } from '../../../store/store.js';
import type { UtcMs } from '../../../sky/types.js';
import { remember } from '../../../ground/remember.js';
import { within } from '../../../ground/within.js';

export interface AnswerOnce {
  /** True the first time. A store that fails or dawdles leaves it to this process's own memory. */
  readonly claim: (interactionId: string, nowUtcMs: UtcMs) => Promise<boolean>;
  readonly answered: (interactionId: string) => Promise<void>;
}

const REMEMBERED = 10_000;
const CLAIM_WITHIN_MS = 600;

export const createAnswerOnce = (events: Store['events'], log: Logger): AnswerOnce => {
  const seen = new Set<string>();
  const keyOf = (interactionId: string): string => `discord:${interactionId}`;
  return {
    claim: async (interactionId, nowUtcMs) => {
      if (seen.has(interactionId)) return false;
      remember(seen, interactionId, REMEMBERED);
      const claimed = events.claim(keyOf(interactionId), nowUtcMs).catch((error: unknown) => {
        log.warn({ err: error }, 'the store could not say whether this was answered before');
        return true;
      });
      return await within(claimed, CLAIM_WITHIN_MS, true);
    },
    answered: async (interactionId) => {
      await events
        .answered(keyOf(interactionId))
        .catch((error: unknown) => log.warn({ err: error }, 'the store could not note an answer'));
    },
  };
};
