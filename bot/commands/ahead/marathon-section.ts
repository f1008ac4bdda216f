/** All of Messier's objects in a night: which of the spring's weekends is best for it here, and what is missed. */
import type { Catalogue, Target } from '../../catalogue/index.js';
import { marathonNights, type MarathonNight, type MarathonObject } from '../../ahead/marathon.js';
import { onceOf } from '../../ground/once.js';
import { listed } from '../../reply/wording.js';
import { localDateAt, localToUtc } from '../../times/index.js';
import type { Question, Section } from './ahead-question.js';
import { dayWords } from './ahead-words.js';

const OBJECTS = 110;
const MOST_NIGHTS = 4;
const MOST_NAMED = 12;
const NOON = { hour: 12, minute: 0, second: 0 };
/** After the middle of April it is the next spring's. */
const OVER_MONTH = 4;
const OVER_DAY = 13;

const messierOf = onceOf((catalogue: Catalogue): readonly MarathonObject[] => {
  const found: MarathonObject[] = [];
  for (let index = 0; index < catalogue.sweep.length; index++) {
    const { name, body }: Pick<Target, 'name' | 'body'> = catalogue.targetAt(index);
    if (/^M \d+$/u.test(name) && body.kind === 'fixed') found.push({ name, body });
  }
  return found.slice(0, OBJECTS);
});

const yearOf = ({ span, zone, spanSaid }: Question): number => {
  const { year, month, day } = localDateAt(span.startUtcMs, zone);
  const isOver = month > OVER_MONTH || (month === OVER_MONTH && day >= OVER_DAY);
  // A year that is named is that year's spring.
  return isOver && !(spanSaid ?? '').includes(String(year)) ? year + 1 : year;
};

const missedWords = (missed: readonly string[]): string => {
  if (missed.length === 0) return 'none is missed';
  return missed.length > MOST_NAMED ? `${missed.length} stay too low` : `too low: ${listed(missed)}`;
};

const nightWords = ({ seen, moonLitFraction, missed }: MarathonNight, all: number): string =>
  `${seen} of ${all}, Moon ${Math.round(moonLitFraction * 100)} % lit; ${missedWords(missed)}`;

export const marathon = (question: Question, catalogue: Catalogue): Section => {
  if (question.kind !== 'messier') return { facts: [], data: [] };
  const { observer, zone, span } = question;
  const objects = messierOf(catalogue);
  const nights = marathonNights(observer, yearOf(question), objects).slice(0, MOST_NIGHTS);
  const told = nights.map((night) => {
    const utcMs = localToUtc(night.date, NOON, zone).utcMs;
    return {
      utcMs,
      label: `Night of ${dayWords(utcMs, zone, span.startUtcMs)}`,
      value: nightWords(night, objects.length),
    };
  });
  const [best] = told;
  return {
    facts: told.map(({ label, value }) => ({ label, value })),
    headline:
      best === undefined
        ? null
        : `Best weekend night for all of Messier’s: ${best.label.replace('Night', 'night')}: ${best.value}.`,
    notes: [
      'M 102 is taken for M 101 and not counted. Seen is what stands 5° high or more with the Sun 12° down. Begin with M 77, M 74, M 33 and M 31 in the west at dusk; end with M 72, M 73, M 2 and M 30 in the east at dawn.',
    ],
    data: nights.map(({ date, seen, missed, moonLitFraction }) => ({
      what: 'marathon',
      date: `${date.year}-${String(date.month).padStart(2, '0')}-${String(date.day).padStart(2, '0')}`,
      seen,
      missed: [...missed],
      moonLitFraction: Math.round(moonLitFraction * 1000) / 1000,
    })),
  };
};
