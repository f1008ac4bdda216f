/** Outcomes computed but not yet sent in full, kept across a crash so that no command's effects happen twice. */
import type { Outcome } from '../../../reply/reply.js';
import type { Store } from '../../../store/store.js';
import { isRecord } from './matrix-event.js';

export interface PendingAnswers {
  /** Reads what an earlier process left. Rejects with StoreError; to be tried until it works, before anything is answered. */
  readonly load: () => Promise<void>;
  readonly get: (key: string) => Outcome | undefined;
  readonly put: (key: string, outcome: Outcome) => Promise<void>;
  readonly done: (key: string) => Promise<void>;
}

/** So many at a time are kept; more under way at once than this are simply computed again after a crash. */
const MOST = 50;

/** An outcome is plain data, so it survives as JSON. The store may fail later on: then the answer goes out all the same. */
export const createPendingAnswers = (
  notes: Store['notes'],
  noteKey: string,
  onError: (error: unknown) => void,
): PendingAnswers => {
  const pending = new Map<string, Outcome>();
  let chain: Promise<void> = Promise.resolve();
  const save = (): Promise<void> => {
    chain = chain.then(() => notes.set(noteKey, JSON.stringify(Object.fromEntries(pending)))).catch(onError);
    return chain;
  };
  return {
    load: async () => {
      const text = await notes.get(noteKey);
      try {
        const kept: unknown = JSON.parse(text ?? '{}');
        if (isRecord(kept)) for (const [key, outcome] of Object.entries(kept)) pending.set(key, outcome as Outcome);
      } catch (error) {
        onError(error);
      }
    },
    get: (key) => pending.get(key),
    put: async (key, outcome) => {
      if (pending.size >= MOST) return;
      pending.set(key, outcome);
      await save();
    },
    done: async (key) => {
      if (pending.delete(key)) await save();
    },
  };
};
