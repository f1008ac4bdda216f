/** How long what is kept for a while is kept, and the clearing out. */
import { MS_PER_DAY } from '../ground/durations.js';
import type { UtcMs } from '../sky/types.js';
import type { Store } from '../store/store.js';

/** Troubleshooting walks, counted from when they were last touched. */
export const WALK_DAYS = 30;
/** The ids of platform events already answered. */
export const EVENT_DAYS = 3;

/** How many rows went. */
export const purgeOld = async (store: Store, nowUtcMs: UtcMs): Promise<number> =>
  (await store.walks.purge(nowUtcMs - WALK_DAYS * MS_PER_DAY)) +
  (await store.outcomes.purgeMarks(nowUtcMs)) +
  (await store.events.purge(nowUtcMs - EVENT_DAYS * MS_PER_DAY));
