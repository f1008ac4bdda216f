/** Which coming weekend nights are dark and free of the Moon. */
import { MS_PER_DAY, MS_PER_HOUR } from '../ground/durations.js';
import { moonlessDark } from '../sky/moon.js';
import { nightOf, type LocalDate, type TimeSpan } from '../sky/night.js';
import type { Observer } from '../sky/types.js';

export interface DarkNight {
  readonly date: LocalDate;
  /** The longest stretch without Moon. */
  readonly span: TimeSpan;
}

/** Shorter than this is no night out; common practice, no source. */
const LEAST_MS = 2 * MS_PER_HOUR;

const weekday = ({ year, month, day }: LocalDate): number => new Date(Date.UTC(year, month - 1, day)).getUTCDay();
const plusDays = ({ year, month, day }: LocalDate, days: number): LocalDate => {
  const date = new Date(Date.UTC(year, month - 1, day) + days * MS_PER_DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
};

export interface DarkNightsQuestion {
  readonly from: LocalDate;
  readonly days: number;
  readonly utcOffsetMinutes: number;
  /** 0 Sunday … 6 Saturday. */
  readonly weekdays: readonly number[];
  /** No more than this many: the rest is not worked out. */
  readonly most: number;
}

/** Nights of the wanted weekdays, in order, with two hours or more of darkness without Moon. */
export const darkNights = (
  observer: Observer,
  { from, days, utcOffsetMinutes, weekdays, most }: DarkNightsQuestion,
): readonly DarkNight[] => {
  const found: DarkNight[] = [];
  for (let i = 0; i < days && found.length < most; i++) {
    const date = plusDays(from, i);
    if (!weekdays.includes(weekday(date))) continue;
    const { startUtcMs, endUtcMs } = nightOf(date, observer.longitudeDeg, utcOffsetMinutes);
    const [longest] = [...moonlessDark(observer, startUtcMs, endUtcMs)].sort(
      (a, b) => b.endUtcMs - b.startUtcMs - (a.endUtcMs - a.startUtcMs),
    );
    if (longest !== undefined && longest.endUtcMs - longest.startUtcMs >= LEAST_MS) found.push({ date, span: longest });
  }
  return found;
};
