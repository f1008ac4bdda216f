/** What comes again, whichever way: the standing warning before sunrise, or an hour of the week. */
import { MS_PER_MINUTE } from '../ground/durations.js';
import type { UtcMs } from '../sky/types.js';
import type { Reminder } from '../store/store.js';
import { nextStandingWarning, readStandingWarning, standingText } from './standing-warning.js';
import { nextWeekly, readWeekly, WEEKLY_LASTS_MS } from './weekly.js';

type Repeating = Pick<Reminder, 'repeat' | 'dueUtcMs' | 'staleUtcMs' | 'text'>;

/** The first after an instant; null where it does not come again. */
export const nextDueAfter = (repeat: Reminder['repeat'], afterUtcMs: UtcMs): UtcMs | null => {
  const standing = readStandingWarning(repeat);
  if (standing !== null) return nextStandingWarning(standing, afterUtcMs)?.dueUtcMs ?? null;
  const weekly = readWeekly(repeat);
  return weekly === null ? null : nextWeekly(weekly, afterUtcMs);
};

/** A standing warning speaks of its own next sunrise; every other reminder says what it was made with. */
export const textOf = ({ repeat, dueUtcMs, text }: Repeating): string => {
  const standing = readStandingWarning(repeat);
  return standing === null ? text : standingText(standing, dueUtcMs);
};

/** When it has lost its sense; null: never. */
export const staleUtcMsOf = ({ repeat, dueUtcMs, staleUtcMs }: Repeating): UtcMs | null => {
  const standing = readStandingWarning(repeat);
  if (standing !== null) return dueUtcMs + standing.minutesBefore * MS_PER_MINUTE;
  return readWeekly(repeat) === null ? staleUtcMs : dueUtcMs + WEEKLY_LASTS_MS;
};
