/** How long ago an interaction was made, whatever the difference between Discord's clock and ours: what comes too late is not worked on. */
import { MS_PER_MINUTE } from '../../../ground/durations.js';

/** The id's upper bits are milliseconds since 2015 (Discord's developer documentation, "Snowflakes"). */
const DISCORD_EPOCH_MS = 1_420_070_400_000;
const madeAtMs = (id: string): number => Number(BigInt(id) >> 22n) + DISCORD_EPOCH_MS;

/** Discord gives up an interaction that has had no response by then. */
export const ANSWER_WITHIN_MS = 3000;

/** Our clock drifts against Discord's: what was the quickest way here is forgotten after twice this. */
const QUICKEST_KEPT_MS = 10 * MS_PER_MINUTE;

/**
 * The quickest of the last minutes counts as new; the others by how much longer they were on their way. One that comes alone
 * counts as new, so that a wrong clock silences nobody.
 * @param ticksMs milliseconds by a clock that never jumps
 */
export const createAge = (ticksMs: () => number): ((id: string) => number) => {
  let quickestMs = Number.POSITIVE_INFINITY;
  let quickestBeforeMs = Number.POSITIVE_INFINITY;
  let sinceMs = Number.NEGATIVE_INFINITY;
  return (id) => {
    const nowMs = ticksMs();
    if (nowMs - sinceMs > QUICKEST_KEPT_MS) {
      quickestBeforeMs = nowMs - sinceMs > 2 * QUICKEST_KEPT_MS ? Number.POSITIVE_INFINITY : quickestMs;
      quickestMs = Number.POSITIVE_INFINITY;
      sinceMs = nowMs;
    }
    const onItsWayMs = nowMs - madeAtMs(id);
    quickestMs = Math.min(quickestMs, onItsWayMs);
    return onItsWayMs - Math.min(quickestMs, quickestBeforeMs);
  };
};
