/** Watches the clock on the wall by one that never jumps: whether the time may be believed now, and since when. No input or output of its own. */
import { MS_PER_MINUTE } from '../ground/durations.js';
import type { UtcMs } from '../sky/types.js';

export interface ClockSight {
  /** False while the clock has lately jumped: nothing may be said, moved or cleared out by it. */
  readonly isSteady: boolean;
  /** How long it has run without a jump, in milliseconds. */
  readonly steadyForMs: number;
  /** The jump seen at this very look, in milliseconds; null: none. */
  readonly jumpMs: number | null;
}

/** Drift between two looks and what a time service slews is far less. */
const SLACK_MS = 5 * MS_PER_MINUTE;
/** A time that stays for so long is the time: the computer slept, or its clock was put right. */
export const BELIEVED_AFTER_MS = 2 * MS_PER_MINUTE;

/** `elapsedMs` counts from any beginning and never jumps. */
export const createClockWatch = (now: () => UtcMs, elapsedMs: () => number): (() => ClockSight) => {
  let believed = { offsetMs: now() - elapsedMs(), sinceMs: elapsedMs() };
  let doubted: { readonly offsetMs: number; readonly sinceMs: number } | null = null;
  return () => {
    const atMs = elapsedMs();
    const offsetMs = now() - atMs;
    const far = (other: number): boolean => Math.abs(offsetMs - other) > SLACK_MS;
    let jumpMs: number | null = null;
    if (!far(believed.offsetMs)) {
      // Back where it was: a slip of one look. A slow drift is followed.
      if (doubted !== null) believed = { offsetMs, sinceMs: atMs };
      else believed = { ...believed, offsetMs };
      doubted = null;
    } else if (doubted === null || far(doubted.offsetMs)) {
      jumpMs = offsetMs - (doubted ?? believed).offsetMs;
      doubted = { offsetMs, sinceMs: atMs };
    } else if (atMs - doubted.sinceMs >= BELIEVED_AFTER_MS) {
      believed = { offsetMs, sinceMs: atMs };
      doubted = null;
    }
    return { isSteady: doubted === null, steadyForMs: doubted === null ? atMs - believed.sinceMs : 0, jumpMs };
  };
};
