/** An engine that may not have opened yet: every call tries again, but not more often than every few seconds. */
import { StartError } from '../../ground/start-error.js';
import type { Engine } from './engine.js';
import { storeError } from '../store-failure.js';
import { StoreError } from '../store.js';

const RETRY_AFTER_MS = 5_000;

/** What the system said, without the members' words around it. */
const causeLine = (error: unknown): string => {
  const cause = error instanceof StoreError && error.cause !== undefined ? error.cause : error;
  // Several addresses were tried: each has an error of its own.
  const first: unknown = cause instanceof AggregateError ? (cause.errors[0] ?? cause) : cause;
  return first instanceof Error ? (first.message.split('\n')[0] ?? first.name) : String(first);
};

export interface OpenOptions {
  /** How long after a failed attempt the next one may be made. */
  readonly retryAfterMs?: number;
  /** Told, as it is opened, that the schema was brought up to date; 0: there was none. */
  readonly onMigrated?: (from: number, to: number) => void;
  /** Told why it could not be opened at first, in the operator's words: one line, the cause first; and whether only a backup helps. */
  readonly onUnopened?: (line: string, isDamaged: boolean) => void;
}

/**
 * Opens now; where that fails for a reason that may pass, gives an engine that rejects until a later attempt succeeds.
 * @throws StartError when the settings are wrong or the schema is from a newer program.
 */
export const openLazily = async (
  dialect: Engine['dialect'],
  open: () => Promise<Engine>,
  { retryAfterMs = RETRY_AFTER_MS, onUnopened }: OpenOptions,
): Promise<Engine> => {
  let engine: Promise<Engine> | null = null;
  let closed = false;
  let failure: { readonly error: StoreError; readonly atMs: number } | null = null;

  // Elapsed time by a clock that never jumps.
  const opened = (): Promise<Engine> => {
    if (closed) return Promise.reject(storeError('store-unavailable', new Error('the store is closed')));
    if (engine !== null) return engine;
    if (failure !== null && performance.now() - failure.atMs < retryAfterMs) return Promise.reject(failure.error);
    const attempt = open().catch((error: unknown) => {
      engine = null;
      const known = error instanceof StoreError ? error : storeError('store-unavailable', error);
      failure = { error: known, atMs: performance.now() };
      throw error instanceof StartError ? error : known;
    });
    engine = attempt;
    return attempt;
  };

  /** After the start there is nobody to stop: a wrong setting then is a store that cannot answer. */
  const later = async (): Promise<Engine> => {
    try {
      return await opened();
    } catch (error) {
      throw error instanceof StoreError ? error : storeError('store-unavailable', error);
    }
  };

  await opened().catch((error: unknown) => {
    if (error instanceof StartError) throw error;
    onUnopened?.(causeLine(error), error instanceof StoreError && error.code === 'store-damaged');
  });
  return {
    dialect,
    run: async (work) => (await later()).run(work),
    execute: async (statement) => (await later()).execute(statement),
    transact: async (lockKey, work) => (await later()).transact(lockKey, work),
    clockAheadMs: async () => (await later()).clockAheadMs(),
    scrub: async () => (await later()).scrub(),
    close: async () => {
      closed = true;
      const toClose = engine;
      engine = null;
      await toClose?.then(
        (open) => open.close(),
        () => undefined,
      );
    },
  };
};
