/** A reminder that comes again at an hour of some days of the week: when it is next due. Pure but for zones. */
import { DateTime } from 'luxon';
import * as z from 'zod';
import { MS_PER_HOUR } from '../ground/durations.js';
import type { UtcMs } from '../sky/types.js';

/** Kept as the `repeat` of a reminder. */
const weeklySchema = z.object({
  every: z.literal('week'),
  /** ISO weekdays, 1 Monday … 7 Sunday. */
  days: z.array(z.number().int().min(1).max(7)).min(1),
  hour: z.number().int().min(0).max(23),
  minute: z.number().int().min(0).max(59),
  zone: z.string(),
});
export type Weekly = z.infer<typeof weeklySchema>;

export const readWeekly = (repeat: unknown): Weekly | null => {
  const read = weeklySchema.safeParse(repeat);
  return read.success ? read.data : null;
};

/** Later than this it is of no use, and the next one comes. */
export const WEEKLY_LASTS_MS = MS_PER_HOUR;

const DAYS_A_WEEK = 7;

/** The first after an instant; an hour that the clocks leave out comes when they have gone on. */
export const nextWeekly = ({ days, hour, minute, zone }: Weekly, afterUtcMs: UtcMs): UtcMs => {
  const first = DateTime.fromMillis(afterUtcMs, { zone }).startOf('day');
  for (let i = 0; i <= DAYS_A_WEEK; i++) {
    const day = first.plus({ days: i });
    const dueUtcMs = day.set({ hour, minute }).toMillis();
    if (days.includes(day.weekday) && dueUtcMs > afterUtcMs) return dueUtcMs;
  }
  return first.plus({ days: DAYS_A_WEEK }).set({ hour, minute }).toMillis();
};
