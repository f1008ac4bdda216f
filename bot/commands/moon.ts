/** `moon`: its phase by name, how much is lit, the quarters to come and the next dark weekend. */
import { darkNights, type DarkNight } from '../ahead/moonless.js';
import { MS_PER_DAY, MS_PER_HOUR } from '../ground/durations.js';
import { isProblem } from '../ground/problem.js';
import { NOWHERE } from '../reply/points-at.js';
import { reply, type Outcome } from '../reply/reply.js';
import { capital, compassWord, degrees, isoUtc, listed, rounded } from '../reply/wording.js';
import { ANYWHERE } from '../sky/anywhere.js';
import { moonAgeDays, moonLibration, moonPhaseName } from '../sky/moon-details.js';
import { nextMoonPhase } from '../sky/moon-phase.js';
import { MOON, moonAt } from '../sky/moon.js';
import type { UtcMs } from '../sky/types.js';
import {
  formatClock,
  formatDate,
  formatLocalDateTime,
  formatLocalTime,
  localDateAt,
  offsetMinutes,
  zoneName,
  nightAround,
} from '../times/index.js';
import { dayWords, isWholeNight } from './ahead/ahead-words.js';
import { eclipseSoon } from './ahead/eclipse-soon.js';
import { moonTimesOf } from './asking/night-words.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';
import { choice, defineCommand, integer, optional, text } from './core/command.js';
import { FACE, ofFace } from './moon/of-face.js';

const QUARTERS = ['New Moon', 'First quarter', 'Full Moon', 'Last quarter'] as const;
const FRIDAY = 5;
const SATURDAY = 6;
const LOOK_AHEAD_DAYS = 40;
/** Short ones come in the weeks about the full Moon: not so many in a row. */
const MOST_WEEKEND_NIGHTS = 6;

const nextQuarters = (fromUtcMs: UtcMs): readonly { readonly name: string; readonly utcMs: UtcMs }[] =>
  QUARTERS.map((name, quarter) => ({ name, utcMs: nextMoonPhase(quarter * 90, fromUtcMs) })).sort(
    (a, b) => a.utcMs - b.utcMs,
  );

/** "5° of the east limb and 3° of the north": what tips into view. Moon's own east: Mare Crisium's side. */
const librationWords = (latitudeDeg: number, longitudeDeg: number): string =>
  listed([
    `${degrees(Math.abs(longitudeDeg), 1)} more of the ${longitudeDeg >= 0 ? 'east (Mare Crisium)' : 'west (Grimaldi)'} limb`,
    `${degrees(Math.abs(latitudeDeg), 1)} more of the ${latitudeDeg >= 0 ? 'north' : 'south'}`,
  ]);

type Quarter = 'new' | 'first' | 'full' | 'last';
const ORDER: readonly Quarter[] = ['new', 'first', 'full', 'last'];

interface Next {
  readonly next?: Quarter | 'half' | undefined;
  readonly count?: number | undefined;
  readonly later?: number | undefined;
}

/** A month before the next one, to within the day that months differ by. */
const lastPhase = (elongationDeg: number, nextUtcMs: UtcMs): UtcMs =>
  nextMoonPhase(elongationDeg, nextUtcMs - 31 * MS_PER_DAY);

/** It is half at both quarters. */
const nextHalf = (utcMs: UtcMs): Quarter => (nextMoonPhase(90, utcMs) < nextMoonPhase(270, utcMs) ? 'first' : 'last');

/** "Full Moon Thu 24 Dec, 01:29 GMT. ": first where that was asked; "" where it was not. */
const askedFirst = ({ next: asked, later = 0, count = 1 }: Next, utcMs: UtcMs, zone: string): string => {
  if (asked === undefined) return '';
  const next = asked === 'half' ? nextHalf(utcMs) : asked;
  const quarter = QUARTERS[ORDER.indexOf(next)] ?? '';
  const name = asked === 'half' ? `Half, ${quarter.toLowerCase()},` : quarter;
  let at = nextMoonPhase(ORDER.indexOf(next) * 90, utcMs);
  if (later < 0) at = lastPhase(ORDER.indexOf(next) * 90, at);
  for (let i = 0; i < later; i++) at = nextMoonPhase(ORDER.indexOf(next) * 90, at + MS_PER_DAY);
  if (count > 1) {
    const days: string[] = [];
    for (let i = 0; i < count; i++, at = nextMoonPhase(ORDER.indexOf(next) * 90, at + MS_PER_DAY))
      days.push(dayWords(at, zone, utcMs));
    return `${name}: ${listed(days)}. Now: `;
  }
  return `${name} ${dayWords(at, zone, utcMs)}, ${formatLocalTime(at, zone)}. Now: `;
};

const NEAR_HOURS = 36;

/** ", 16 h after full Moon": whether it is full is asked of a night, and it is so for an instant. "" where that is far. */
const besideFull = (utcMs: UtcMs): string => {
  const nearMs = NEAR_HOURS * MS_PER_HOUR;
  const full = nextMoonPhase(180, utcMs - nearMs);
  const hours = Math.round((utcMs - full) / MS_PER_HOUR);
  if (Math.abs(utcMs - full) > nearMs) return '';
  return hours === 0 ? ', full now' : `, ${Math.abs(hours)} h ${hours > 0 ? 'after' : 'before'} full Moon`;
};

/** "Sat 5 Dec, no Moon 17:58 to 05:35; before it Sat 28 Nov, only 18:01 to 20:12". */
const darkWeekendText = (first: DarkNight | undefined, dark: DarkNight | undefined, zone: string): string => {
  if (first === undefined || dark === undefined) return `none within ${LOOK_AHEAD_DAYS} days`;
  const told = ({ date, span }: DarkNight, word: string): string =>
    `${formatDate(date).replace(/ \d{4}$/, '')}, ${word} ${formatClock(span.startUtcMs, zone)} to ${formatClock(span.endUtcMs, zone)}`;
  if (!isWholeNight(dark)) return told(dark, 'no Moon only');
  return `${told(dark, 'no Moon')}${first === dark ? '' : `; before it ${told(first, 'only')}`}`;
};

/** What of the Moon is the same everywhere, for one who has not said where they are; times in UTC. */
const anywhere = (utcMs: UtcMs, options: Next): Outcome => {
  const { next } = options;
  const { illuminatedFraction, elongationDeg } = moonAt(ANYWHERE, utcMs);
  const quarters = nextQuarters(utcMs);
  const name = moonPhaseName(elongationDeg);
  return reply({
    title: `The Moon, ${formatLocalDateTime(utcMs, 'UTC')}`,
    summary: `${askedFirst(options, utcMs, 'UTC')}${next === undefined ? capital(name) : name}, ${Math.round(illuminatedFraction * 100)} % lit, ${moonAgeDays(utcMs).toFixed(1)} days old.`,
    facts: quarters.map((quarter) => ({
      label: quarter.name,
      value: `${dayWords(quarter.utcMs, 'UTC', utcMs)}, ${formatClock(quarter.utcMs, 'UTC')}`,
    })),
    notes: ['Times in UTC. Name a place to hear when it rises and sets: moon site:"Ely, England".'],
    pointsAt: NOWHERE,
    data: {
      utc: isoUtc(utcMs),
      phase: name,
      illuminatedFraction: rounded(illuminatedFraction, 3),
      quarters: quarters.map((quarter) => ({ name: quarter.name, utc: isoUtc(quarter.utcMs) })),
    },
  });
};

export const moon = defineCommand({
  name: 'moon',
  summary: 'The Moon: phase, the quarters to come, the next dark weekend',
  options: {
    at: atOption,
    next: optional(
      choice('When next: new, first quarter, full, last quarter, or half', ['new', 'first', 'full', 'last', 'half'], {
        'half-moon': 'half',
        'new-moon': 'new',
        'first-quarter': 'first',
        'full-moon': 'full',
        'last-quarter': 'last',
        'third-quarter': 'last',
      }),
    ),
    count: optional(integer('With next: so many of them, by their dates', { min: 1, max: 26 })),
    later: optional(integer('With next: the one after it (1), and so on; −1 the last one', { min: -1, max: 60 })),
    feature: optional(text('A crater or the like: is the Sun up on it, and when is it seen best', { maxLength: 40 })),
    first: optional(choice('Say this: what stands on the terminator, or when the earthshine shows', FACE)),
    site: siteOption,
  },
  bare: 'at',
  sentence:
    /^(?:(?:is|will|and|with|in|near\w*|by|beside|next to|close\w*|above|below|meets?|meeting|pass(?:es|ing)?|occult\w*|approach\w*|conjunction\w*|sets?|setting|rises?|rising|goes|go|going|down|crat\w*|feature\w*|terminator|earth ?shine|spoil\w*|bother\w*|too)\b|(?:set|rise) ?time)/iu,
  examples: ['moon site:52.71,0.12', 'moon at:"2026-12-24 18:00"', 'moon next:full later:1', 'moon feature:copernicus'],
  run: async (deps, request): Promise<Outcome> => {
    const face = await ofFace(deps, request);
    if (face !== null) return face;
    const asked = await siteAtTime(deps, request);
    if (isProblem(asked)) return asked.problem === 'no-site' ? anywhere(request.nowUtcMs, request.options) : asked;
    const { where, utcMs, notes } = asked;
    const { observer, zone } = where.site;
    const { illuminatedFraction, elongationDeg, place } = moonAt(observer, utcMs);
    const name = moonPhaseName(elongationDeg);
    const ageDays = moonAgeDays(utcMs);
    const libration = moonLibration(utcMs);
    const quarters = nextQuarters(utcMs);
    const times = moonTimesOf(observer, nightAround(utcMs, where.site));
    const weekends = darkNights(observer, {
      from: localDateAt(utcMs, zone),
      days: LOOK_AHEAD_DAYS,
      utcOffsetMinutes: offsetMinutes(zone, utcMs),
      weekdays: [FRIDAY, SATURDAY],
      most: MOST_WEEKEND_NIGHTS,
    });
    const [first] = weekends;
    const dark = weekends.find(isWholeNight) ?? first;
    const eclipse = eclipseSoon(observer, utcMs, zone);
    const lit = Math.round(illuminatedFraction * 100);
    const events = (
      [
        ['rises', times.riseUtcMs],
        ['sets', times.setUtcMs],
      ] as const
    )
      .flatMap(([word, at]) => (at === null ? [] : [{ word, at }]))
      .sort((a, b) => a.at - b.at)
      .map(({ word, at }) => `${word} ${formatClock(at, zone)}`);
    return reply({
      title: `The Moon, ${formatLocalDateTime(utcMs, zone)}`,
      summary: `${askedFirst(request.options, utcMs, zone)}${request.options.next === undefined ? capital(name) : name}, ${lit} % lit, ${ageDays.toFixed(1)} days old${besideFull(utcMs)}; ${place.altitudeDeg > 0 ? `${degrees(place.altitudeDeg)} high in the ${compassWord(place.azimuthDeg)}` : 'below the horizon'}.`,
      facts: [
        ...eclipse.facts,
        ...(events.length === 0 ? [] : [{ label: 'This night', value: listed(events) }]),
        ...quarters.map((quarter) => ({
          label: quarter.name,
          value: `${dayWords(quarter.utcMs, zone, utcMs)}, ${formatClock(quarter.utcMs, zone)}`,
        })),
        {
          label: 'Dark weekend',
          value: darkWeekendText(first, dark, zone),
        },
        { label: 'Tipped to us', value: librationWords(libration.latitudeDeg, libration.longitudeDeg) },
      ],
      notes: [...notes, `Times in ${zoneName(utcMs, zone)}, or as the clocks go then.`],
      pointsAt: [
        ...(place.altitudeDeg > 0 ? [{ what: 'the Moon', when: { utcMs }, observer, zone, direction: MOON }] : NOWHERE),
        ...eclipse.pointsAt,
      ],
      data: {
        utc: isoUtc(utcMs),
        phase: name,
        illuminatedFraction: rounded(illuminatedFraction, 4),
        ageDays: rounded(ageDays, 3),
        distanceKm: Math.round(libration.distanceKm),
        librationLatitudeDeg: rounded(libration.latitudeDeg, 2),
        librationLongitudeDeg: rounded(libration.longitudeDeg, 2),
        quarters: quarters.map((quarter) => ({ name: quarter.name, utc: isoUtc(quarter.utcMs) })),
        darkWeekend:
          dark === undefined ? null : { startUtc: isoUtc(dark.span.startUtcMs), endUtc: isoUtc(dark.span.endUtcMs) },
      },
    });
  },
});
