/** The standing sunrise warning of a channel: which nights it is for, when it is next due, what it says. Pure but for zones. */
import { DateTime } from 'luxon';
import * as z from 'zod';
import { MS_PER_MINUTE } from '../ground/durations.js';
import { nightOf } from '../sky/night.js';
import { twilights } from '../sky/twilight.js';
import type { Observer, UtcMs } from '../sky/types.js';
import { formatLocalTime } from '../times/index.js';

/** Kept as the `repeat` of a reminder. */
const standingSchema = z.object({
  every: z.literal('sunrise'),
  /** The evenings whose following sunrise is warned of, as ISO weekdays (1 Monday … 7 Sunday). */
  evenings: z.array(z.number().int().min(1).max(7)).min(1),
  minutesBefore: z.number().min(0).max(240),
  siteName: z.string(),
  zone: z.string(),
  latitudeDeg: z.number().min(-90).max(90),
  longitudeDeg: z.number().min(-180).max(180),
  elevationM: z.number(),
});
export type StandingWarning = z.infer<typeof standingSchema>;

export const readStandingWarning = (repeat: unknown): StandingWarning | null => {
  const read = standingSchema.safeParse(repeat);
  return read.success ? read.data : null;
};

const observerOf = ({ latitudeDeg, longitudeDeg, elevationM }: StandingWarning): Observer => ({
  latitudeDeg,
  longitudeDeg,
  elevationM,
});

/** Within this many evenings a sunrise comes back everywhere: the polar day at the poles lasts about 190 days. */
const EVENINGS_AHEAD = 400;

/** The first warning due after an instant, and the sunrise it is for; null where the Sun does not rise again (never on Earth). */
export const nextStandingWarning = (
  standing: StandingWarning,
  afterUtcMs: UtcMs,
): { readonly dueUtcMs: UtcMs; readonly sunriseUtcMs: UtcMs } | null => {
  // From two evenings back: the warning for last night's sunrise may still be to come.
  const first = DateTime.fromMillis(afterUtcMs, { zone: standing.zone }).startOf('day').minus({ days: 2 });
  for (let i = 0; i < EVENINGS_AHEAD; i++) {
    const evening = first.plus({ days: i }).set({ hour: 12 });
    if (!standing.evenings.includes(evening.weekday)) continue;
    const night = nightOf(
      { year: evening.year, month: evening.month, day: evening.day },
      standing.longitudeDeg,
      evening.offset,
    );
    const { sunriseUtcMs } = twilights(observerOf(standing), night.startUtcMs, night.endUtcMs);
    if (sunriseUtcMs === null) continue;
    const dueUtcMs = Math.round(sunriseUtcMs - standing.minutesBefore * MS_PER_MINUTE);
    if (dueUtcMs > afterUtcMs) return { dueUtcMs, sunriseUtcMs };
  }
  return null;
};

export const sunriseWarningText = (siteName: string, sunriseUtcMs: UtcMs, zone: string): string =>
  `The Sun rises at ${formatLocalTime(sunriseUtcMs, zone)} at ${siteName}. Before then: cap the tube and the finder, park the mount, and leave nothing uncovered unattended.`;

export const standingText = (standing: StandingWarning, dueUtcMs: UtcMs): string =>
  sunriseWarningText(standing.siteName, dueUtcMs + standing.minutesBefore * MS_PER_MINUTE, standing.zone);
