/** Brings what comes again back that a clock running ahead had put too late: each is due at its next computed moment. */
import type { UtcMs } from '../sky/types.js';
import { deliveryKey } from './delivery-key.js';
import type { Round } from './deliver-due.js';
import { nextDueAfter } from './repeats.js';

/** One said already is not said again, though the clock was set back over it. Returns how many were moved. */
export const bringBack = async (round: Round, nowUtcMs: UtcMs): Promise<number> => {
  let moved = 0;
  for (const reminder of await round.store.reminders.listStanding(round.platforms.map(({ name }) => name))) {
    const dueUtcMs = nextDueAfter(reminder.repeat, nowUtcMs);
    if (dueUtcMs === null || dueUtcMs >= reminder.dueUtcMs) continue;
    if (round.said.has(deliveryKey({ id: reminder.id, dueUtcMs }))) continue;
    if (await round.store.reminders.reschedule(reminder.id, reminder.dueUtcMs, dueUtcMs)) moved++;
  }
  return moved;
};
