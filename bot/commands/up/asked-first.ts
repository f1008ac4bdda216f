/** The one figure that was asked for, which begins the answer: when it rises, its hour angle, the constellation it is in. */
import { constellationName } from '../../catalogue/index.js';
import type { Equipment } from '../../evening/equipment.js';
import type { Outlook } from '../../evening/outlook.js';
import { MS_PER_DAY, MS_PER_HOUR } from '../../ground/durations.js';
import { degrees, duration } from '../../reply/wording.js';
import { airmass } from '../../sky/airmass.js';
import { constellationAt } from '../../sky/constellation.js';
import { crossingsOf } from '../../sky/crossings.js';
import { parallacticAngleDeg } from '../../sky/parallactic-angle.js';
import type { TimeSpan } from '../../sky/night.js';
import { SUN } from '../../sky/twilight.js';
import { horizontalOf, placeOf } from '../../sky/place.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDateTime, formatLocalTime, localToUtc, type NamedNight } from '../../times/index.js';
import type { TargetAtSite } from '../asking/question-parts.js';
import { byEyeWords } from './by-eye.js';
import { EVENTS, pastEvent, timeOf, TWO_DAYS_MS, whereThen, type Event } from './event-times.js';
import { crossingWords, hourAngleText } from './hour-angle-words.js';
import { minimaWords } from './minima-words.js';
import type { SaidWhether } from './whether-question.js';
import { isOfItself, itselfWords, OF_ITSELF } from './of-itself.js';
import { isWhether, WHETHER, whetherWords } from './whether.js';
import type { OutlookQuestion } from '../../evening/windows.js';
import type { Towards } from '../../evening/towards.js';

export const FIRST = [
  'rise',
  'set',
  'transit',
  'rise-and-set',
  'last-rise',
  'last-set',
  'last-transit',
  'best',
  'find',
  'hour-angle',
  'parallactic-angle',
  'airmass',
  'minimum',
  ...OF_ITSELF,
  ...WHETHER,
] as const;
export type First = (typeof FIRST)[number];

export interface FirstQuestion {
  readonly first: First | undefined;
  /** Between which hours it stands higher than so many degrees. */
  readonly aboveDeg: number | undefined;
  readonly asked: TargetAtSite;
  readonly night: NamedNight;
  /** The hour asked about; null: none. */
  readonly utcMs: UtcMs | null;
  readonly nowUtcMs: UtcMs;
  readonly equipment: Equipment;
  /** Whether it was said, or the usual one is taken. */
  readonly isKitSaid: boolean;
  readonly found: Outlook;
  /** Only that part of the sky is seen. */
  readonly facing: Towards | undefined;
  readonly outlookQuestion: OutlookQuestion;
  /** How to come to it from the stars. */
  readonly hop: () => string;
}

/** What is said, and the instants that it names. */
export interface SaidFirst {
  readonly words: string;
  readonly events: readonly { readonly utcMs: UtcMs; readonly what: string }[];
  /** What follows: the best hour where nothing else is said. */
  readonly then?: SaidWhether['then'];
}

const said = (words: string, ...events: SaidFirst['events']): SaidFirst => ({ words, events });

/** From midnight to midnight on the site's clocks. */
const dayOf = ({ date }: NamedNight, zone: string): TimeSpan => {
  const startUtcMs = localToUtc(date, { hour: 0, minute: 0, second: 0 }, zone).utcMs;
  return { startUtcMs, endUtcMs: startUtcMs + MS_PER_DAY };
};

/** Before it the small hours are of the evening before, as "tonight" has it. */
const NIGHT_TURNS_MS = 6 * MS_PER_HOUR;

/**
 * Of a date to come: the event of that date, as almanacs have it, and the one of the night that follows. What is past stands last, and what
 * sets or is highest in the small hours is asked of the evening's night; one gets up for what rises then.
 */
const onDate = (question: FirstQuestion, event: Event): SaidFirst | null => {
  const { asked, night, nowUtcMs } = question;
  const { target, where } = asked;
  const { zone } = where.site;
  const day = dayOf(night, zone);
  const onDay = timeOf(asked, event, day);
  const within = timeOf(asked, event, night);
  if (onDay === null) return null;
  const what = `${target.name} as it ${EVENTS[event].will}`;
  const told = (utcMs: UtcMs): string =>
    `${target.name} ${utcMs < nowUtcMs ? EVENTS[event].did : EVENTS[event].will} on ${formatLocalDateTime(utcMs, zone)}${whereThen(asked, event, utcMs)}${byDay(asked, event, utcMs)}`;
  if (within === null || Math.abs(within - onDay) < MS_PER_HOUR) return said(`${told(onDay)}.`, { utcMs: onDay, what });
  const isOfEvening = onDay < nowUtcMs || (event !== 'rise' && onDay - day.startUtcMs < NIGHT_TURNS_MS);
  const events = [
    { utcMs: onDay, what },
    { utcMs: within, what },
  ];
  return isOfEvening
    ? said(`${told(within)}; in the night before, ${formatLocalDateTime(onDay, zone)}.`, ...events)
    : said(`${told(onDay)}; in the night after, ${formatLocalDateTime(within, zone)}.`, ...events);
};

/** In daylight nothing but the Moon and the brightest is seen to stand highest. */
const byDay = ({ target, where }: TargetAtSite, event: Event, utcMs: UtcMs): string =>
  event === 'transit' &&
  target.id !== 'sun' &&
  target.id !== 'moon' &&
  horizontalOf(SUN, where.site.observer, utcMs).altitudeDeg > 0
    ? ', by day'
    : '';

/** So near a transit is the one that is meant; common practice, no source. */
const NEAR_MS = 6 * MS_PER_HOUR;

/** One that is past is asked for as well: the last transit, where the next is not near. */
const lastWords = ({ asked, nowUtcMs }: FirstQuestion, event: Event, nextUtcMs: UtcMs): string => {
  if (event !== 'transit' || nextUtcMs - nowUtcMs < NEAR_MS) return '';
  const { zone } = asked.where.site;
  const last = timeOf(asked, event, { startUtcMs: nowUtcMs - MS_PER_DAY, endUtcMs: nowUtcMs });
  return last === null ? '' : `; last at ${formatLocalDateTime(last, zone)}`;
};

/** One that has only just been is told beside the next; common practice, no source. */
const JUST_PAST_MS = 3 * MS_PER_HOUR;

/** ", in 8 min," where it is near. */
const soonWords = (event: Event, utcMs: UtcMs, nowUtcMs: UtcMs): string =>
  utcMs - nowUtcMs < SOON_MS ? `, in ${duration(utcMs - nowUtcMs)}${event === 'transit' ? '' : ','}` : '';
const SOON_MS = 2 * MS_PER_HOUR;

const eventWords = (question: FirstQuestion, event: Event): SaidFirst => {
  const { asked, night, nowUtcMs } = question;
  const { target, where } = asked;
  const { zone } = where.site;
  const { will, did } = EVENTS[event];
  const dated = night.startUtcMs > nowUtcMs ? onDate(question, event) : null;
  if (dated !== null) return dated;
  const within = timeOf(asked, event, night);
  const startUtcMs = Math.max(nowUtcMs, night.startUtcMs);
  const next = timeOf(asked, event, { startUtcMs, endUtcMs: startUtcMs + TWO_DAYS_MS });
  const named = (utcMs: UtcMs) => ({ utcMs, what: `${target.name} as it ${will}` });
  if (within !== null && within >= nowUtcMs)
    return said(
      `${target.name} ${will} at ${formatLocalTime(within, zone)}${isOfNight(within, night, zone)}${soonWords(event, within, nowUtcMs)}${whereThen(asked, event, within)}${byDay(asked, event, within)}${lastWords(question, event, within)}.`,
      named(within),
    );
  const again =
    next === null
      ? ''
      : ` ${formatLocalDateTime(next, zone)}${whereThen(asked, event, next)}${byDay(asked, event, next)}`;
  const events = next === null ? [] : [named(next)];
  const justPast =
    within !== null && nowUtcMs - within < JUST_PAST_MS ? `; it ${did} at ${formatLocalTime(within, zone)}` : '';
  if (within !== null)
    return said(
      again === ''
        ? `${target.name} ${did} at ${formatLocalTime(within, zone)}.`
        : `${target.name} ${will} next on${again}${justPast}.`,
      ...events,
    );
  return again === ''
    ? said(`${target.name} does not ${BARE[event]} here in these days.`)
    : said(`${target.name} ${will} next on${again}.`, ...events);
};

const pastWords = (question: FirstQuestion, event: Event): SaidFirst => {
  const past = pastEvent(question.asked, event, question.nowUtcMs);
  if (past === null) return eventWords(question, event);
  const what = `${question.asked.target.name} as it ${EVENTS[event].will}`;
  return said(past.words, ...(past.nextUtcMs === null ? [] : [{ utcMs: past.nextUtcMs, what }]));
};

const LAST: Readonly<Partial<Record<First, Event>>> = {
  'last-rise': 'rise',
  'last-set': 'set',
  'last-transit': 'transit',
};
const BARE = { rise: 'rise', set: 'set', transit: 'cross the meridian' } as const;

/** Both, the one that comes sooner first. */
const bothWords = (question: FirstQuestion): SaidFirst => {
  const both = [eventWords(question, 'rise'), eventWords(question, 'set')].sort(
    (a, b) => (a.events[0]?.utcMs ?? Infinity) - (b.events[0]?.utcMs ?? Infinity),
  );
  return said(both.map(({ words }) => words).join(' '), ...both.flatMap(({ events }) => events));
};

/** The date where it is not the one that the night begins on. */
const isOfNight = (utcMs: UtcMs, { said }: NamedNight, zone: string): string => {
  const day = formatLocalDateTime(utcMs, zone).split(',')[0] ?? '';
  return said.startsWith(day) ? '' : ` on ${day}`;
};

const instantWords = ({ first, asked, utcMs, nowUtcMs }: FirstQuestion): string => {
  const { target, where } = asked;
  const { observer, zone } = where.site;
  const atMs = utcMs ?? nowUtcMs;
  const place = placeOf(target.body, observer, atMs);
  const at = `at ${formatLocalTime(atMs, zone)}`;
  const low = place.apparentAltitudeDeg < 0 ? ' (below the horizon)' : '';
  switch (first) {
    case 'hour-angle':
      return `Hour angle ${at}: ${hourAngleText(place.hourAngleHours)}${low}${crossingWords(asked, atMs)}.`;
    case 'parallactic-angle': {
      const angleDeg = parallacticAngleDeg(place.hourAngleHours, place.ofDate.decDeg, observer);
      return `Parallactic angle ${at}: ${degrees(angleDeg, 1)}${low}.`;
    }
    default: {
      const mass = airmass(place.apparentAltitudeDeg);
      return mass === null
        ? `No airmass ${at}: it is below the horizon.`
        : `Airmass ${at}: ${mass.toFixed(2)}, at ${degrees(place.apparentAltitudeDeg, 1)}.`;
    }
  }
};

const constellationWords = ({ asked: { target, where }, utcMs, nowUtcMs }: FirstQuestion): string => {
  const abbreviation =
    target.constellation ?? constellationAt(placeOf(target.body, where.site.observer, utcMs ?? nowUtcMs).j2000);
  return `${target.name} is in ${constellationName(abbreviation)}.`;
};

const aboveWords = (aboveDeg: number, { asked, night, nowUtcMs }: FirstQuestion): string => {
  const { target, where } = asked;
  const { observer, zone } = where.site;
  const height = (utcMs: UtcMs): number => placeOf(target.body, observer, utcMs).apparentAltitudeDeg - aboveDeg;
  const startUtcMs = Math.max(night.startUtcMs, Math.min(nowUtcMs, night.endUtcMs));
  const crossings = crossingsOf(height, startUtcMs, night.endUtcMs);
  const up = crossings.find(({ rising }) => rising);
  const down = crossings.find(({ rising }) => !rising);
  const time = (utcMs: UtcMs): string => formatLocalTime(utcMs, zone);
  const isUp = height(startUtcMs) > 0;
  if (up === undefined && down === undefined)
    return `${isUp ? 'Above' : 'Never above'} ${aboveDeg}° ${isUp ? 'all' : 'in the rest of'} this night.`;
  if (isUp && down !== undefined)
    return `Above ${aboveDeg}° until ${time(down.utcMs)}${up === undefined ? '' : `, and again from ${time(up.utcMs)}`}.`;
  if (up === undefined) return `Above ${aboveDeg}° all this night.`;
  return `Above ${aboveDeg}° from ${time(up.utcMs)}${down === undefined || down.utcMs < up.utcMs ? '' : ` to ${time(down.utcMs)}`}.`;
};

/** What stands before all else; null where nothing of the kind was asked. */
export const askedFirst = (question: FirstQuestion): SaidFirst | null => {
  const { first } = question;
  // The best hour is what the answer tells anyhow: it opens with that.
  if (first === 'best') return said('');
  if (first === 'find') return said(question.hop());
  if (first === 'rise-and-set') return bothWords(question);
  if (first === 'rise' || first === 'set' || first === 'transit') return eventWords(question, first);
  const past = first === undefined ? undefined : LAST[first];
  if (past !== undefined) return pastWords(question, past);
  if (isWhether(first)) {
    const whether = whetherWords(first, question, (aboveDeg) => aboveWords(aboveDeg, question));
    return { ...whether, events: [] };
  }
  const words = figureWords(question);
  return words === null ? null : said(words);
};

const figureWords = (question: FirstQuestion): string | null => {
  const { first, aboveDeg, asked, night, isKitSaid, equipment, utcMs, nowUtcMs } = question;
  if (first === 'constellation') return constellationWords(question);
  if (isOfItself(first))
    return itselfWords({
      first,
      target: asked.target,
      equipment: isKitSaid ? equipment : null,
      utcMs: utcMs ?? Math.max(nowUtcMs, night.startUtcMs),
    });
  switch (first) {
    case undefined:
      return aboveDeg === undefined ? byEyeWords(question) : aboveWords(aboveDeg, question);
    case 'minimum':
      return minimaWords(question.asked, question.nowUtcMs, aboveDeg);
    default:
      return instantWords(question);
  }
};
