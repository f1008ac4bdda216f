/** Meteor showers: the great ones to come, or one that was asked about. */
import { showersActive, showersHere, type Shower, type ShowerHere } from '../../ahead/showers.js';
import { MS_PER_DAY, MS_PER_YEAR } from '../../ground/durations.js';
import { isoUtc, listed, rounded } from '../../reply/wording.js';
import { formatClock } from '../../times/index.js';
import { isAbout, namedIn, toldFrom, type Question, type Section } from './ahead-question.js';
import { peakWords, radiantWords, showerFact } from './ahead-words.js';

/** Those that one goes out for; common practice, no source. */
const LEAST_RATE = 10;
const MOST_SHOWERS = 5;
/** Of these some are worth a look in other nights than the best; common practice, no source. */
const RICH_RATE = 40;

const lastWord = (name: string): string => name.split(' ').at(-1)?.toLowerCase() ?? '';

/** Its code only in full: "quasars" are no Quadrantids. */
const isAboutShower = (question: Question, { name, code }: Shower): boolean =>
  isAbout(question, name, ...name.split(' ').slice(1)) ||
  (question.about !== null && namedIn(question.about).includes(code.toLowerCase()));

/** A great shower still shows in the nights beside its best; common practice, no source. */
const BESIDE_NIGHTS = 1;

/** Of whose days the night is, though its best night is not near; the richest of several. */
const activeWords = (question: Question, then: string): string | null => {
  const { night = null, observer } = question;
  if (night === null) return null;
  const middleUtcMs = (night.startUtcMs + night.endUtcMs) / 2;
  const [active] = showersActive(observer, middleUtcMs)
    .filter(({ shower }) => isAboutShower(question, shower))
    .filter(({ shower }) => question.about !== null || shower.zenithalHourlyRate >= RICH_RATE);
  if (active === undefined) return null;
  const { shower, maximumUtcMs } = active;
  const nights = Math.max(1, Math.round(Math.abs(maximumUtcMs - middleUtcMs) / MS_PER_DAY));
  const side = maximumUtcMs > middleUtcMs ? 'before' : 'after';
  return `A few ${then}: the ${shower.name} are about, ${nights} ${nights === 1 ? 'night' : 'nights'} ${side} their best, when far more ${side === 'before' ? 'come' : 'came'}.`;
};

/** "Yes, …", "A few, …" or "None to speak of tonight": of the night that was asked about. */
const nightVerdict = (question: Question, great: readonly ShowerHere[]): string | null => {
  const { night = null, nightSaid = null, zone } = question;
  if (night === null) return null;
  const then = nightSaid === null ? 'tonight' : `in the night of ${nightSaid}`;
  const near = great.filter(
    ({ bestUtcMs }) =>
      bestUtcMs > night.startUtcMs - BESIDE_NIGHTS * MS_PER_DAY &&
      bestUtcMs < night.endUtcMs + BESIDE_NIGHTS * MS_PER_DAY,
  );
  const best = near.filter(({ bestUtcMs }) => bestUtcMs >= night.startUtcMs && bestUtcMs < night.endUtcMs);
  const named = (some: readonly ShowerHere[]): string => listed(some.map(({ shower }) => shower.name));
  const [first] = best;
  if (first !== undefined)
    return `Yes, the ${named(best)} have their best ${then}; look about ${formatClock(first.bestUtcMs, zone)}, when up to ${Math.round(first.hourlyRate / 5) * 5} an hour may be seen under a dark sky.`;
  if (near.length > 0) return `Some ${then}: the ${named(near)} have their best the night before or after.`;
  const next = great.find(({ bestUtcMs }) => bestUtcMs >= night.endUtcMs);
  const words = next === undefined ? null : showerFact(next, zone, toldFrom(question));
  const active = activeWords(question, then);
  const none =
    question.about === null || next === undefined
      ? `None to speak of ${then}, but a stray one every ten minutes or so.`
      : `No ${next.shower.name} ${then}.`;
  const said = active ?? none;
  return words === null ? said : `${said} Next: ${words.label}, ${words.value.split(/[;:] /u)[0]}.`;
};

/** Of a rate that one may count, what moonlight leaves; common practice, no source. */
const LOST_TO_FULL_MOON = 0.75;
const worth = ({ hourlyRate, moonAltitudeDeg, moonLitFraction }: ShowerHere): number =>
  moonAltitudeDeg > 0 ? hourlyRate * (1 - LOST_TO_FULL_MOON * moonLitFraction) : hourlyRate;

/** The next of them, or the best where those are asked for, in the order they come in. */
const mostOf = (great: readonly ShowerHere[], isBest: boolean): readonly ShowerHere[] => {
  if (!isBest) return great.slice(0, MOST_SHOWERS);
  const best = [...great].sort((a, b) => worth(b) - worth(a)).slice(0, MOST_SHOWERS);
  return great.filter((here) => best.includes(here));
};

/** "Geminids: night of Mon 14 Dec, …; Leonids night of …". The next of each counts. */
const bestWords = (question: Question, all: readonly ShowerHere[]): string | null => {
  const { zone, spanSaid = null, about } = question;
  const [best, second] = [...all].sort((a, b) => worth(b) - worth(a));
  if (best === undefined) return null;
  const told = (here: ShowerHere): string => showerFact(here, zone, toldFrom(question)).value;
  const after = about === null || second === undefined ? '' : ` The ${second.shower.name}: ${told(second)}.`;
  return `The ${best.shower.name} are ${about === null ? `the best of ${spanSaid ?? 'the next twelve months'}` : 'better'}: ${told(best)}.${after}`;
};

/** One that was asked about: its night, its rate and its Moon. */
const oneWords = (question: Question, [first]: readonly ShowerHere[]): string | null => {
  if (first === undefined) return null;
  const { label, value } = showerFact(first, question.zone, toldFrom(question));
  return `Next: ${label}, ${value}.`;
};

const headlineOf = (question: Question, great: readonly ShowerHere[]): string | null => {
  if (question.kind !== 'showers') return null;
  if (question.wantsBest === true) return bestWords(question, great);
  return nightVerdict(question, great) ?? (question.about === null ? null : oneWords(question, great));
};

/** "Perseids" are not the September ones, where those of that very name come too. */
const calledSo = ({ about }: Question, all: readonly ShowerHere[]): readonly ShowerHere[] => {
  const [named, ...others] = about === null ? [] : namedIn(about);
  if (named === undefined || others.length > 0) return all;
  const whole = all.filter(({ shower }) => inSingular(shower.name.toLowerCase()) === inSingular(named));
  return whole.length > 0 ? whole : all;
};
const inSingular = (name: string): string => name.replace(/s$/u, '');

/** A year's showers, and those of the years after where one after the next is asked for by its name. */
const showersIn = (question: Question): readonly ShowerHere[] => {
  const { observer, span, about, later = 0 } = question;
  if (about === null || later === 0) return showersHere(observer, span);
  return Array.from({ length: later + 1 }, (_, year) => year).flatMap((year) => {
    const startUtcMs = span.startUtcMs + year * MS_PER_YEAR;
    return showersHere(observer, { startUtcMs, endUtcMs: Math.min(span.endUtcMs, startUtcMs + MS_PER_YEAR) });
  });
};

export const showers = (question: Question): Section => {
  const { zone, kind } = question;
  const all = calledSo(
    question,
    showersIn(question).filter(({ shower }) => isAboutShower(question, shower)),
  );
  const isOne = question.about !== null;
  const great = all.filter(({ shower }) => isOne || shower.zenithalHourlyRate >= LEAST_RATE);
  const found = isOne || kind === 'all' ? great : mostOf(great, question.wantsBest === true);
  const others = all.length - found.length;
  return {
    notes: [
      ...(isOne ? found.flatMap((here) => [radiantWords(here), ...peakWords(here, zone, toldFrom(question))]) : []),
      ...(kind === 'showers' && found.length > 0
        ? [
            `Rates are for a dark sky.${others > 0 ? ` ${others} more in that time: name one, such as about:${lastWord(all.find((here) => !found.includes(here))?.shower.name ?? '')}.` : ''}`,
          ]
        : []),
    ],
    headline: headlineOf(question, great),
    facts: found.map((here) => showerFact(here, zone, toldFrom(question))),
    times: found.map(({ bestUtcMs }) => bestUtcMs),
    data: found.map(({ shower, maximumUtcMs, bestUtcMs, radiantAltitudeDeg }) => ({
      what: 'shower',
      code: shower.code,
      name: shower.name,
      maximumUtc: isoUtc(maximumUtcMs),
      bestUtc: isoUtc(bestUtcMs),
      radiantAltitudeDeg: rounded(radiantAltitudeDeg, 1),
    })),
  };
};
