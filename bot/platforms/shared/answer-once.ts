/** Lets each question be answered once, over repeats, restarts and crashes; a store that fails costs that promise, never the answer. */
import type { PlatformContext } from '../../app/platform.js';
import { remember } from '../../ground/remember.js';
import { within } from '../../ground/within.js';

/** `left-over`: claimed by a process that died before it had answered, so to be answered now. */
export type Claim = 'first' | 'left-over' | 'again';

export interface AnswerOnce {
  /** Whether this process has had the question already; asks nobody. */
  readonly isSeen: (key: string) => boolean;
  readonly claim: (key: string) => Promise<Claim>;
  /** The question is answered, or never will be. */
  readonly settle: (key: string) => Promise<void>;
}

export interface OnceOptions {
  /** Keys claimed by a process that died before it had answered. */
  readonly leftOver?: Set<string>;
  /** A store that dawdles longer leaves it to this process's own memory; without it the store is waited for. */
  readonly patienceMs?: number;
}

const MOST_SEEN = 10_000;

/** Keys begin with the platform's name, as all share the store: "discord:<interaction id>". */
export const createAnswerOnce = (
  { deps, log, now }: Pick<PlatformContext, 'deps' | 'log' | 'now'>,
  { leftOver, patienceMs }: OnceOptions = {},
): AnswerOnce => {
  const { events } = deps.store;
  /** Stands in for the store where it cannot answer. */
  const seen = new Set<string>();

  const isFirstInStore = (key: string): Promise<boolean> => {
    const asked = events.claim(key, now()).catch((error: unknown) => {
      log.warn({ err: error }, 'the store could not say whether this was answered before; answering all the same');
      return true;
    });
    return patienceMs === undefined ? asked : within(asked, patienceMs, true);
  };

  return {
    isSeen: (key) => seen.has(key),
    claim: async (key) => {
      if (seen.has(key)) return 'again';
      remember(seen, key, MOST_SEEN);
      if (leftOver?.delete(key) === true) return 'left-over';
      return (await isFirstInStore(key)) ? 'first' : 'again';
    },
    settle: (key) =>
      events.answered(key).catch((error: unknown) => log.warn({ err: error }, 'the store could not note an answer')),
  };
};
