/** Pierhand on Matrix: the same commands as everywhere, in the rooms of one account. */
import { setTimeout as sleep } from 'node:timers/promises';
import { type PlatformContext, type RunningPlatform } from '../../app/platform.js';
import { NotNow } from './connect/not-now.js';
import { followRooms, type Tuning } from './follow-rooms.js';

export interface MatrixTuning extends Partial<Tuning> {
  /** Waits between attempts to reach the homeserver at the start; the last one again and again. */
  readonly connectDelaysMs?: readonly number[];
  /** The start goes on without Matrix after this, while the homeserver still keeps the bot waiting. */
  readonly connectPatienceMs?: number;
}
const CONNECT_DELAYS_MS = [2000, 5000, 15_000, 30_000, 60_000];
const CONNECT_PATIENCE_MS = 20_000;

interface State {
  running: RunningPlatform | null;
  /** Why nothing is followed yet. */
  trouble: string;
}

/**
 * Follows the rooms, or keeps trying to while the homeserver is away, so that other platforms run meanwhile.
 * @throws StartError where an attempt finds that the settings or credentials do not work, before the start has gone on without it
 */
export const startMatrix = async (context: PlatformContext, given: MatrixTuning = {}): Promise<RunningPlatform> => {
  const { log, metrics } = context;
  const { connectDelaysMs = CONNECT_DELAYS_MS, connectPatienceMs = CONNECT_PATIENCE_MS, perMember } = given;
  const stopping = new AbortController();
  const state: State = { running: null, trouble: 'not connected yet' };

  /** Null once it is connected, else how long the homeserver asks to wait. */
  const attempt = async (): Promise<number | null> => {
    try {
      const tuning = perMember === undefined ? undefined : { perMember };
      state.running = await followRooms(context, { stop: stopping.signal, tuning });
      return null;
    } catch (error) {
      if (!(error instanceof NotNow)) throw error;
      if (stopping.signal.aborted) return 0;
      metrics.failed('matrix', 'connect');
      // An outage of hours is one line, and one more where its cause changes.
      const isNews = state.trouble !== error.message;
      state.trouble = error.message;
      log[isNews ? 'warn' : 'debug']({ detail: error.message }, 'not connected to the homeserver; trying again');
      return error.pauseMs;
    }
  };
  const keepTrying = async (firstPauseMs: number | null): Promise<void> => {
    let askedMs = firstPauseMs;
    for (let i = 0; askedMs !== null && !stopping.signal.aborted; i++) {
      const delayMs = connectDelaysMs[Math.min(i, connectDelaysMs.length - 1)] ?? 0;
      await sleep(Math.max(delayMs, askedMs), undefined, { signal: stopping.signal }).catch(() => undefined);
      if (!stopping.signal.aborted) askedMs = await attempt();
    }
  };
  const giveUp = (error: unknown): void => {
    state.trouble = error instanceof Error ? error.message : 'given up';
    log.fatal({ err: error }, 'Matrix is given up');
  };

  const first = attempt();
  const patience = new AbortController();
  const outcome = await Promise.race([first, sleep(connectPatienceMs, 'slow' as const, { signal: patience.signal })]);
  patience.abort();
  if (outcome === 'slow') log.warn('the homeserver is slow to let the bot in; the rest goes on meanwhile');
  const trying = (outcome === 'slow' ? first.then(keepTrying) : keepTrying(outcome)).catch(giveUp);

  return {
    name: 'matrix',
    deliver: (reminder, text) =>
      state.running === null ? Promise.reject(new Error(state.trouble)) : state.running.deliver(reminder, text),
    health: () => state.running?.health() ?? { ok: false, detail: state.trouble },
    stop: async () => {
      stopping.abort();
      await trying;
      await state.running?.stop();
    },
  };
};
