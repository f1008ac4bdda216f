/** Outcomes computed but not yet sent in full, kept across a crash so that no command's effects happen twice. */
import { MS_PER_DAY } from '../../../ground/durations.js';
import type { Outcome } from '../../../reply/reply.js';
import type { UtcMs } from '../../../sky/types.js';
import type { Store } from '../../../store/store.js';
import { isRecord } from './matrix-event.js';

export interface PendingAnswers {
  /** Reads what an earlier process left. Rejects with StoreError; to be tried until it works, before anything is answered. */
  readonly load: () => Promise<void>;
  readonly get: (key: string) => Outcome | undefined;
  /** `memberId`: whose answer it is; `forget` takes it away with all else of theirs. */
  readonly put: (key: string, outcome: Outcome, memberId: string) => Promise<void>;
  readonly done: (key: string) => Promise<void>;
}

/** So many at a time are kept; more under way at once than this are simply computed again after a crash. */
const MOST = 50;
/** Nobody waits longer for an answer; what is older is left over from a crash and goes unread. */
const KEPT_MS = MS_PER_DAY;

interface Kept {
  readonly noteKey: string;
  readonly outcome: Outcome;
}

/** `key:@tamsin:example.org` ends with the member, as notes about one do. */
const noteKeyOf = (prefix: string, key: string, memberId: string): string =>
  `${prefix}:${key}:${memberId.slice(memberId.indexOf(':') + 1)}`;

const read = (value: string, nowUtcMs: UtcMs): { readonly key: string; readonly outcome: Outcome } | null => {
  const kept: unknown = JSON.parse(value);
  if (!isRecord(kept) || typeof kept['key'] !== 'string' || typeof kept['atUtcMs'] !== 'number') return null;
  return Math.abs(nowUtcMs - kept['atUtcMs']) > KEPT_MS
    ? null
    : { key: kept['key'], outcome: kept['outcome'] as Outcome };
};

/** An outcome is plain data, so it survives as JSON. The store may fail later on: then the answer goes out all the same. */
export const createPendingAnswers = (
  notes: Store['notes'],
  prefix: string,
  now: () => UtcMs,
  onError: (error: unknown) => void,
): PendingAnswers => {
  const pending = new Map<string, Kept>();
  return {
    load: async () => {
      for (const { key: noteKey, value } of await notes.list(prefix)) {
        let kept: ReturnType<typeof read> = null;
        try {
          kept = read(value, now());
        } catch (error) {
          onError(error);
        }
        if (kept === null) await notes.remove(noteKey);
        else pending.set(kept.key, { noteKey, outcome: kept.outcome });
      }
    },
    get: (key) => pending.get(key)?.outcome,
    put: async (key, outcome, memberId) => {
      if (pending.size >= MOST) return;
      const noteKey = noteKeyOf(prefix, key, memberId);
      pending.set(key, { noteKey, outcome });
      await notes.set(noteKey, JSON.stringify({ key, atUtcMs: now(), outcome })).catch(onError);
    },
    done: async (key) => {
      const kept = pending.get(key);
      pending.delete(key);
      if (kept !== undefined) await notes.remove(kept.noteKey).catch(onError);
    },
  };
};
