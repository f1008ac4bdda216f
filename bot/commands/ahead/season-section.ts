/** The turns of the year: equinoxes and solstices, called as they are at the place. */
import { MS_PER_DAY } from '../../ground/durations.js';
import { duration, isoUtc } from '../../reply/wording.js';
import { sunDay, yearTurns, type Turn } from '../../sky/sun-days.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalTime, localDateAt, localToUtc } from '../../times/index.js';
import type { Question, Section } from './ahead-question.js';
import { dayWords } from './ahead-words.js';

const NORTH: Readonly<Record<Turn, string>> = {
  'March equinox': 'spring equinox',
  'June solstice': 'summer solstice, the longest day',
  'September equinox': 'autumn equinox',
  'December solstice': 'winter solstice, the shortest day',
};
const SOUTH: Readonly<Record<Turn, string>> = {
  'March equinox': 'autumn equinox',
  'June solstice': 'winter solstice, the shortest day',
  'September equinox': 'spring equinox',
  'December solstice': 'summer solstice, the longest day',
};

const MIDNIGHT = { hour: 0, minute: 0, second: 0 };

/** How long the Sun is up on the date of an instant. */
const dayLength = ({ observer, zone }: Question, utcMs: UtcMs): number => {
  const startUtcMs = localToUtc(localDateAt(utcMs, zone), MIDNIGHT, zone).utcMs;
  return sunDay(observer, { startUtcMs, endUtcMs: startUtcMs + MS_PER_DAY }).lengthMs;
};

const lengthWords = (lengthMs: number): string => {
  if (lengthMs === 0) return 'the Sun does not rise';
  return lengthMs >= MS_PER_DAY - 60_000 ? 'the Sun does not set' : `the Sun is up ${duration(lengthMs)}`;
};

/** "The winter one", "the equinox", "the longest day": what was asked for; all where none was. */
const isAsked = ({ about }: Question, names: readonly string[]): boolean =>
  about === null || about.split(/\s+/u).every((word) => names.some((name) => name.toLowerCase().includes(word)));

export const seasons = (question: Question): Section => {
  const { observer, zone, span, kind } = question;
  if (kind !== 'seasons') return { facts: [], data: [] };
  const here = observer.latitudeDeg < 0 ? SOUTH : NORTH;
  const found = yearTurns(span.startUtcMs).filter(({ turn }) => isAsked(question, [turn, here[turn]]));
  const told = found.map(({ turn, utcMs }) => ({
    label: turn,
    value: `${dayWords(utcMs, zone, span.startUtcMs)}, ${formatLocalTime(utcMs, zone)}: ${here[turn]} here; ${lengthWords(dayLength(question, utcMs))}`,
  }));
  const [next] = told;
  return {
    headline: next === undefined ? null : `${next.label}: ${next.value}.`,
    facts: told,
    times: found.map(({ utcMs }) => utcMs),
    data: found.map(({ turn, utcMs }) => ({ what: turn, utc: isoUtc(utcMs) })),
  };
};
