/**
 * Outcomes computed but not yet sent in full, kept across a crash so that no command's effects happen twice. What is kept holds nothing
 * that the room does not read in the answer itself, and of an answer for one member alone nothing at all.
 */
import { MS_PER_DAY } from '../../../ground/durations.js';
import { isProblem, problem } from '../../../ground/problem.js';
import { NOWHERE, type Outcome } from '../../../reply/reply.js';
import type { UtcMs } from '../../../sky/types.js';
import type { Store } from '../../../store/store.js';
import { isRecord } from './matrix-event.js';

export interface PendingAnswers {
  /** Reads what an earlier process left. Rejects with StoreError; to be tried until it works, before anything is answered. */
  readonly load: () => Promise<void>;
  readonly get: (key: string) => Outcome | undefined;
  /** `forget` takes it away with all else of the member's. */
  readonly put: (key: string, answer: KeptAnswer) => Promise<void>;
  readonly done: (key: string) => Promise<void>;
}

export interface KeptAnswer {
  readonly outcome: Outcome;
  /** Whose it is. */
  readonly memberId: string;
  /** For the member's eyes alone, by the outcome or by the room. */
  readonly isPrivate: boolean;
}

/** Stands in for what only the member was to read. */
const INTERRUPTED: Outcome = {
  ...problem(
    'interrupted',
    'I was restarted before I could say that answer. If it was to save or change something, that is done: site, remind and triage show how things stand. Else please ask again.',
  ),
  audience: 'asker',
};

/** Without where it points and for whom: the Sun was judged before, and the words are whole. */
const bare = (outcome: Outcome): Outcome =>
  isProblem(outcome) ? outcome : { ...outcome, pointsAt: NOWHERE, data: {} };

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
    put: async (key, { outcome, memberId, isPrivate }) => {
      if (pending.size >= MOST) return;
      const noteKey = noteKeyOf(prefix, key, memberId);
      pending.set(key, { noteKey, outcome });
      await notes
        .set(noteKey, JSON.stringify({ key, atUtcMs: now(), outcome: isPrivate ? INTERRUPTED : bare(outcome) }))
        .catch(onError);
    },
    done: async (key) => {
      const kept = pending.get(key);
      pending.delete(key);
      if (kept !== undefined) await notes.remove(kept.noteKey).catch(onError);
    },
  };
};
