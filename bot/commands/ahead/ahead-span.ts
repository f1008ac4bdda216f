/** How far ahead is looked: the weeks that are asked for, a month or a year, else as far as the kind is wont. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import type { UtcMs } from '../../sky/types.js';
import { parsePeriod, type NamedNight, type Period } from '../../times/index.js';
import type { Kind, Question } from './ahead-question.js';

const WEEK_MS = 7 * MS_PER_DAY;
const USUAL_WEEKS = 6;
/** A kind asked for alone is looked for further. */
const USUAL_WEEKS_OF: Readonly<Record<Kind, number>> = {
  all: USUAL_WEEKS,
  phases: 6,
  saturdays: 13,
  eclipses: 156,
  showers: 52,
  planets: 52,
  meetings: 8,
  seasons: 53,
  messier: 53,
};

interface Told {
  readonly kind: Kind;
  readonly about: string | null;
  readonly weeks: number | undefined;
  readonly period: Period | null;
  readonly night: NamedNight | null;
  /** So many come before the one that is asked for. */
  readonly later?: number | undefined;
}

/** The same of a planet or a shower comes again within so many years: Mars at opposition after two, and some weeks. */
const YEARS_TO_THE_SAME: Readonly<Partial<Record<Kind, number>>> = { showers: 1, planets: 2.25 };

/** What is asked for by its kind or its name is looked for as far ahead as it may be, the one after it further still. */
const weeksOf = ({ kind, about, weeks, later = 0 }: Told, one: Kind): number => {
  const usual = about === null ? USUAL_WEEKS_OF[kind] : USUAL_WEEKS_OF[one];
  const more = about === null ? 0 : later * WEEKS_A_YEAR * (YEARS_TO_THE_SAME[one] ?? 0);
  return weeks ?? usual + more;
};
const WEEKS_A_YEAR = 52.2;

/** From the day before the one that is named: there may be a long time to it. */
const fromNight = ({ startUtcMs }: NamedNight, weeks: number): Question['span'] => ({
  startUtcMs: startUtcMs - MS_PER_DAY,
  endUtcMs: startUtcMs + weeks * WEEK_MS,
});

export const spanOf = (told: Told, one: Kind, nowUtcMs: UtcMs): Question['span'] =>
  told.period ??
  (told.kind === 'eclipses' && told.night !== null ? fromNight(told.night, weeksOf(told, one)) : null) ?? {
    startUtcMs: Math.min(nowUtcMs, (told.night?.startUtcMs ?? Infinity) - MS_PER_DAY),
    endUtcMs: nowUtcMs + weeksOf(told, one) * WEEK_MS,
  };

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** "within 6 weeks", "in August 2027". */
export const withinWords = (told: Told): string => {
  if (told.period !== null) return `in ${told.period.said}`;
  const weeks = weeksOf(told, told.kind);
  return `within ${weeks > 60 ? `${Math.round(weeks / 52)} years` : counted(weeks, 'week', 'weeks')}`;
};

/** Null: none was asked for. */
export const periodOf = (text: string | undefined, zone: string, nowUtcMs: UtcMs): Period | null | Problem => {
  if (text === undefined) return null;
  const found = parsePeriod(text, zone, nowUtcMs);
  return isProblem(found) ? problem(found.problem, found.message) : found;
};

/** From its end on, as far as the kind is wont. */
export const afterPeriod = ({ endUtcMs, said }: Period, kind: Kind): Period => ({
  startUtcMs: endUtcMs,
  endUtcMs: endUtcMs + USUAL_WEEKS_OF[kind] * WEEK_MS,
  said,
});
