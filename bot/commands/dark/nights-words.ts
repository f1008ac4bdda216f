/** Several nights in words: each with its hours, and which are the best of them. */
import type { Target } from '../../catalogue/index.js';
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE } from '../../ground/durations.js';
import { degrees, duration, listed } from '../../reply/wording.js';
import { formatClock, formatSpan, weekdayOf } from '../../times/index.js';
import type { NightWorth } from './nights-worth.js';

/** A night of so many hours without the Moon is a whole one, of less than half as many hardly one; common practice, no source. */
const WHOLE_MS = 4 * MS_PER_HOUR;
const LEAST_MS = 2 * MS_PER_HOUR;
/** So near to the best, a night is as good; common practice, no source. */
const AS_GOOD = 0.9;

/** "Sat 5 Dec". */
export const dayOf = ({ night }: NightWorth): string => night.said.replace(/ \d{4}$/u, '');

const spansText = ({ spans }: NightWorth, zone: string): string =>
  listed(spans.map(({ startUtcMs, endUtcMs }) => formatSpan(startUtcMs, endUtcMs, zone)));

const noneWords = ({ dark, moonLitFraction }: NightWorth, target: Target | null): string => {
  if (dark === null) return 'never fully dark';
  return target === null
    ? `the Moon, ${Math.round(moonLitFraction * 100)} % lit, is up all the dark hours`
    : `${target.name} is not high enough while it is dark without the Moon`;
};

/** "18:01 to 05:43 GMT, 11 h 42 min"; with a target how high it gets then. */
export const hoursText = (worth: NightWorth, target: Target | null, zone: string): string => {
  const { totalMs, best } = worth;
  if (totalMs < MS_PER_MINUTE) return noneWords(worth, target);
  const only = totalMs < LEAST_MS ? 'only ' : '';
  const high = best === null ? '' : `; highest ${degrees(best.altitudeDeg)} at ${formatClock(best.utcMs, zone)}`;
  return `${only}${duration(totalMs)}, ${spansText(worth, zone)}${high}`;
};

const BESIDE_DARK_MS = 2 * MS_PER_HOUR;

/** "Moon 16 % lit, sets 19:45". */
export const moonText = ({ moonLitFraction, moonTimes, night, dark }: NightWorth, zone: string): string => {
  // What it does by day is nobody's trouble.
  const from = (dark?.startUtcMs ?? night.startUtcMs) - BESIDE_DARK_MS;
  const until = (dark?.endUtcMs ?? night.endUtcMs) + BESIDE_DARK_MS;
  const events = (
    [
      ['rises', moonTimes.riseUtcMs],
      ['sets', moonTimes.setUtcMs],
    ] as const
  )
    .flatMap(([word, utcMs]) => (utcMs === null || utcMs < from || utcMs > until ? [] : [{ word, utcMs }]))
    .sort((a, b) => a.utcMs - b.utcMs)
    .map(({ word, utcMs }) => `${word} ${formatClock(utcMs, zone)}`);
  return `Moon ${Math.round(moonLitFraction * 100)} % lit${events.length === 0 ? '' : `, ${listed(events)}`}`;
};

const isNextDay = (one: NightWorth, other: NightWorth | undefined): boolean =>
  other !== undefined && other.night.startUtcMs - one.night.startUtcMs < 1.5 * MS_PER_DAY;

/** Nights on end as "Mon 7 to Sun 13 Dec"; each run by its first and last. */
const runsText = (nights: readonly NightWorth[]): string => {
  const runs: NightWorth[][] = [];
  for (const one of nights) {
    const last = runs.at(-1)?.at(-1);
    if (last !== undefined && isNextDay(last, one)) runs.at(-1)?.push(one);
    else runs.push([one]);
  }
  return listed(
    runs.map((run) => {
      const [first, last] = [run[0], run.at(-1)];
      if (first === undefined || last === undefined) return '';
      if (run.length === 1) return dayOf(first);
      return run.length === 2 ? `${dayOf(first)} and ${dayOf(last)}` : `${dayOf(first)} to ${dayOf(last)}`;
    }),
  );
};

const without = (target: Target | null, isMoonless: boolean): string => {
  const moon = isMoonless ? ' without the Moon' : '';
  return target === null ? `of dark${moon}` : `of dark${moon} with ${target.name} high enough`;
};

export interface NightsSaid {
  readonly target: Target | null;
  readonly isMoonless: boolean;
  readonly zone: string;
}

/** Which of many nights are the best. */
export const bestText = (nights: readonly NightWorth[], { target, isMoonless, zone }: NightsSaid): string => {
  const most = Math.max(0, ...nights.map(({ totalMs }) => totalMs));
  const good = nights.filter(({ totalMs }) => totalMs >= AS_GOOD * most);
  const [first] = good;
  if (most < MS_PER_MINUTE || first === undefined)
    return target === null
      ? 'None of them: the Moon or bright twilight has them all.'
      : `None of them: ${target.name} is not high enough in the dark${isMoonless ? ' without the Moon' : ''}.`;
  const few = most < LEAST_MS ? 'None is good; at most ' : '';
  if (good.length === 1) return `${few === '' ? 'Best: ' : few}${dayOf(first)}, ${hoursText(first, target, zone)}.`;
  const least = Math.min(...good.map(({ totalMs }) => totalMs));
  return `${few === '' ? 'Best: ' : few}${runsText(good)}, each ${duration(least)} or more ${without(target, isMoonless)}.`;
};

const toldOf = (one: NightWorth, { target, zone }: NightsSaid): string => {
  if (target !== null) return `${dayOf(one)}: ${hoursText(one, target, zone)}`;
  const free =
    one.totalMs < MS_PER_MINUTE ? 'never dark without it' : `dark without it ${hoursText(one, target, zone)}`;
  return `${dayOf(one)}: ${moonText(one, zone)}; ${free}`;
};

/** Which of two or three is the better; "" for one alone. */
const betterText = (nights: readonly NightWorth[]): string => {
  const [first, second] = [...nights].sort((a, b) => b.totalMs - a.totalMs);
  if (first === undefined || second === undefined) return '';
  return second.totalMs < AS_GOOD * first.totalMs ? `Better ${dayOf(first)}. ` : 'About alike. ';
};

/** Two or three nights, each told, the best of them first where there is one. */
export const eachText = (nights: readonly NightWorth[], said: NightsSaid): string =>
  `${betterText(nights)}${nights.map((one) => toldOf(one, said)).join('. ')}.`;

const SATURDAY = 6;

/** Nights of one weekend together; each of another weekday by itself. */
export const weekendsOf = (nights: readonly NightWorth[]): readonly (readonly NightWorth[])[] => {
  const weekends: NightWorth[][] = [];
  for (const one of nights) {
    const last = weekends.at(-1);
    const isSame = last !== undefined && weekdayOf(one.night.date) === SATURDAY && isNextDay(last.at(-1) ?? one, one);
    if (isSame) last.push(one);
    else weekends.push([one]);
  }
  return weekends;
};

const totalOf = (weekend: readonly NightWorth[]): number => weekend.reduce((sum, { totalMs }) => sum + totalMs, 0);
export const weekendName = (weekend: readonly NightWorth[]): string => listed(weekend.map(dayOf));
const isDark = (weekend: readonly NightWorth[]): boolean => weekend.some(({ totalMs }) => totalMs >= WHOLE_MS);

const hoursEach = (weekend: readonly NightWorth[]): string =>
  listed(weekend.map(({ totalMs }) => (totalMs < MS_PER_MINUTE ? 'none' : duration(totalMs))));

/** "Darkest: Fri 11 and Sat 12 Dec, 11 h 57 min and 11 h 08 min without the Moon"; those that are only so in part are said to be. */
export const weekendsText = (weekends: readonly (readonly NightWorth[])[], isWhich: boolean): string => {
  const dark = weekends.filter(isDark);
  const partly = weekends.filter((weekend) => !isDark(weekend) && totalOf(weekend) >= LEAST_MS);
  const [best] = [...weekends].sort((a, b) => totalOf(b) - totalOf(a));
  if (best === undefined || totalOf(best) < MS_PER_MINUTE) return 'None: the Moon or bright twilight has them all.';
  if (isWhich) {
    const lead = isDark(best) ? 'Darkest' : 'None is dark for long; the best';
    return `${lead}: ${weekendName(best)}, ${hoursEach(best)} of dark without the Moon.`;
  }
  const told = dark.map(weekendName);
  const few = partly.map((weekend) => `${weekendName(weekend)} (${hoursEach(weekend)})`);
  return [
    told.length === 0 ? 'None is dark for long.' : `Dark without the Moon: ${told.join('; ')}.`,
    ...(few.length === 0 ? [] : [`Only some hours: ${few.join('; ')}.`]),
  ].join(' ');
};

/** What a weekend holds, a night after the other. */
export const weekendText = (weekend: readonly NightWorth[], zone: string): string =>
  weekend.map((one) => hoursText(one, null, zone)).join('; ');
