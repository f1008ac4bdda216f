/** The nights on which most of Messier's objects can be seen between dusk and dawn: a few weeks of March and April, about the new Moon. */
import { MS_PER_DAY } from '../ground/durations.js';
import { moonLightAt } from '../sky/moon.js';
import { nightFrame } from '../sky/night-frame.js';
import { nightOf, type LocalDate, type TimeSpan } from '../sky/night.js';
import { twilights } from '../sky/twilight.js';
import type { FixedBody, Observer } from '../sky/types.js';

export interface MarathonNight {
  readonly date: LocalDate;
  readonly moonLitFraction: number;
  readonly seen: number;
  /** Names of those that stay too low, or in the light of dusk or dawn. */
  readonly missed: readonly string[];
}

export interface MarathonObject {
  readonly name: string;
  readonly body: FixedBody;
}

/** From 5 March to 12 April, days of the year; common practice, no source. */
const FIRST = { month: 3, day: 5 };
const DAYS = 39;
/** A thin Moon near sunrise or sunset hides little; common practice, no source. */
const MOST_LIT = 0.2;
/** So low, in a sky dark enough for the bright ones: common practice, no source. */
const LEAST_DEG = 5;
const FRIDAY_AND_SATURDAY = [5, 6];

const dateIn = (year: number, days: number): LocalDate => {
  const date = new Date(Date.UTC(year, FIRST.month - 1, FIRST.day) + days * MS_PER_DAY);
  return { year, month: date.getUTCMonth() + 1, day: date.getUTCDate() };
};

/** With the Sun 12° down. */
const darkOf = (observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): TimeSpan | null => {
  const { nautical } = twilights(observer, startUtcMs, endUtcMs);
  return nautical === null
    ? null
    : { startUtcMs: nautical.duskUtcMs ?? startUtcMs, endUtcMs: nautical.dawnUtcMs ?? endUtcMs };
};

const nightOfMarathon = (
  observer: Observer,
  date: LocalDate,
  objects: readonly MarathonObject[],
): MarathonNight | null => {
  const night = nightOf(date, observer.longitudeDeg);
  const dark = darkOf(observer, night);
  if (dark === null) return null;
  const { illuminatedFraction: moonLitFraction } = moonLightAt(observer, (night.startUtcMs + night.endUtcMs) / 2);
  if (moonLitFraction > MOST_LIT) return null;
  const frame = nightFrame(observer, night.startUtcMs, night.endUtcMs);
  const missed = objects.filter(
    ({ body }) => frame.highestIn(frame.directionOfBody(body), dark).altitudeDeg < LEAST_DEG,
  );
  return { date, moonLitFraction, seen: objects.length - missed.length, missed: missed.map(({ name }) => name) };
};

/** Fridays and Saturdays of one spring, those with most objects first, then the darker. */
export const marathonNights = (
  observer: Observer,
  year: number,
  objects: readonly MarathonObject[],
): readonly MarathonNight[] =>
  Array.from({ length: DAYS }, (_, days) => dateIn(year, days))
    .filter(({ month, day }) => FRIDAY_AND_SATURDAY.includes(new Date(Date.UTC(year, month - 1, day)).getUTCDay()))
    .flatMap((date) => nightOfMarathon(observer, date, objects) ?? [])
    .sort((a, b) => b.seen - a.seen || a.moonLitFraction - b.moonLitFraction);
