/** `dark`: when the night is dark, and how much of it is free of the Moon. */
import { MS_PER_DAY, MS_PER_HOUR } from '../ground/durations.js';
import { isProblem } from '../ground/problem.js';
import { NOWHERE, reply, type Json, type Level, type Outcome } from '../reply/reply.js';
import { duration, isoUtc, listed, rounded } from '../reply/wording.js';
import { moonAt, moonlessDark } from '../sky/moon.js';
import type { TimeSpan } from '../sky/night.js';
import { twilights, type TwilightTimes, type Twilights } from '../sky/twilight.js';
import { formatClock, formatLocalTime, formatSpan, zoneName } from '../times/index.js';
import { choice, defineCommand, integer, optional, text } from './core/command.js';
import { darkOver } from './dark/dark-over.js';
import { DARK_FIRST, darkFirst } from './dark/dark-first.js';
import { isAgainstSun, isOfNoon, sunFirst } from './dark/sun-first.js';
import { sunBelowWords } from './dark/sun-below.js';
import { darkWords, moonTimesOf, noDarkWords, twilightSpan } from './asking/night-words.js';
import { hourOfNight, siteAtNight, siteNotes } from './asking/question-parts.js';

const spanData = ({ startUtcMs, endUtcMs }: TimeSpan): Json => ({
  startUtc: isoUtc(startUtcMs),
  endUtc: isoUtc(endUtcMs),
});
const orNull = (utcMs: number | null): string | null => (utcMs === null ? null : isoUtc(utcMs));
const twilightData = (times: TwilightTimes | null): Json =>
  times === null ? null : { duskUtc: orNull(times.duskUtcMs), dawnUtc: orNull(times.dawnUtcMs) };
const length = ({ startUtcMs, endUtcMs }: TimeSpan): number => endUtcMs - startUtcMs;

const moonlessWords = (moonless: readonly TimeSpan[], isMoonless: boolean, zone: string): string => {
  if (moonless.length === 0) return 'never, the Moon is up all the dark hours';
  if (isMoonless) return 'all the dark hours';
  return listed(moonless.map(({ startUtcMs, endUtcMs }) => formatSpan(startUtcMs, endUtcMs, zone)));
};

const moonShareWords = (moonlessMs: number, isMoonless: boolean): string => {
  if (moonlessMs === 0) return 'the Moon is up throughout';
  return isMoonless ? 'the Moon stays out of it' : `${duration(moonlessMs)} of it without the Moon`;
};

/** " It begins in 2 h 10 min.": how long to wait where that night is the next; "" else. */
const untilDark = ({ startUtcMs }: TimeSpan, night: TimeSpan, nowUtcMs: number): string =>
  nowUtcMs < startUtcMs && startUtcMs - nowUtcMs < MS_PER_DAY && night.endUtcMs - nowUtcMs < MOST_AHEAD_MS
    ? ` It begins in ${duration(startUtcMs - nowUtcMs)}.`
    : '';
interface DarkSaid {
  /** Why there is no full darkness; null where there is. */
  readonly none: string | null;
  readonly hours: string;
  readonly wait: string;
  readonly moon: string;
}

/** What was said first tells of the Moon. */
const summaryOf = (
  asked: readonly (string | null)[],
  dark: TimeSpan | null,
  { none, hours, wait, moon }: DarkSaid,
): string => {
  const first = asked.find((words) => words !== null) ?? null;
  if (dark === null)
    return [first, none]
      .filter((words) => words !== null)
      .map((words) => `${words}.`)
      .join(' ');
  return first === null ? `Dark ${hours}, ${duration(length(dark))}; ${moon}.${wait}` : `${first}. Dark ${hours}.`;
};

/** From six in the morning the night is the next. */
const MOST_AHEAD_MS = 31 * MS_PER_HOUR;

const sunWords = (twilight: Twilights, inNight: (utcMs: number) => string, zone: string): string => {
  if (twilight.sunAlwaysUp) return 'does not set';
  if (twilight.sunAlwaysDown) return 'does not rise';
  return listed([
    ...(twilight.sunsetUtcMs === null ? [] : [`sets ${inNight(twilight.sunsetUtcMs)}`]),
    ...(twilight.sunriseUtcMs === null ? [] : [`rises ${formatLocalTime(twilight.sunriseUtcMs, zone)}`]),
  ]);
};

/** Beside an hour held against the Sun's; common practice, no source. */
const CAP_FIRST =
  'Cap the tube and the finder, and park, well before the Sun rises; by day leave nothing uncapped or unattended.';

const capNotes = (first: string | undefined): readonly string[] => (isAgainstSun(first) ? [CAP_FIRST] : []);

const levelOf = (first: string | undefined, moonlessMs: number): Level => {
  if (isAgainstSun(first)) return 'caution';
  if (isOfNoon(first)) return 'info';
  return moonlessMs > 0 ? 'good' : 'info';
};

const titleOf = (first: string | undefined, night: string): string =>
  isOfNoon(first) ? 'Noon by the Sun' : `The dark of ${night}`;

export const dark = defineCommand({
  name: 'dark',
  summary: 'When does it get dark, and when is the Moon out of the way?',
  options: {
    on: optional(text('Which night: tonight, tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
    site: optional(text('Where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    first: optional(choice('Say this first: a yes or no, or when the Sun sets or rises', DARK_FIRST)),
    below: optional(integer('Say first when the Sun is so many degrees down', { min: 1, max: 40 })),
    until: optional(
      text('Only the dark before this hour, with first:moonless; or the hour for first:after-sunrise', {
        complete: 'time',
        maxLength: 40,
      }),
    ),
    over: optional(
      text('Which of several nights: this week, next month, weekends of december, 13 dec or 14 dec', { maxLength: 80 }),
    ),
    for: optional(text('With over: the best of them for this target', { maxLength: 60 })),
  },
  bare: 'on',
  sentence: /^(?:weekends?|nights|saturdays|fridays)\b/iu,
  examples: [
    'dark site:"Tromsø, Norway"',
    'dark on:2027-01-08 site:52.71,0.12',
    'dark first:moonless until:midnight site:52.71,0.12',
    'dark over:"weekends of next month" site:52.71,0.12',
    'dark over:"this week" for:"M 33" site:52.71,0.12',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { over } = request.options;
    if (over !== undefined) return darkOver(deps, request, { ...request.options, over });
    const asked = await siteAtNight(deps, request);
    if (isProblem(asked)) return asked;
    const { where, night } = asked;
    const { nowUtcMs, options } = request;
    const { observer, zone } = where.site;
    const until = options.until === undefined ? null : hourOfNight(options.until, zone, night);
    if (isProblem(until)) return until;
    const twilight = twilights(observer, night.startUtcMs, night.endUtcMs);
    const moonTimes = moonTimesOf(observer, night);
    const moonless = moonlessDark(observer, night.startUtcMs, night.endUtcMs);
    const darkSpan = twilightSpan(twilight.astronomical, night);
    const middleUtcMs =
      darkSpan === null ? (night.startUtcMs + night.endUtcMs) / 2 : (darkSpan.startUtcMs + darkSpan.endUtcMs) / 2;
    const moon = moonAt(observer, middleUtcMs);
    const moonlessMs = moonless.reduce((sum, span) => sum + length(span), 0);
    const isMoonless = darkSpan !== null && moonlessMs >= length(darkSpan) - 60_000;
    // Where the clocks change in the night, each time says which it is of.
    const changes = zoneName(night.startUtcMs, zone) !== zoneName(night.endUtcMs, zone);
    const inNight = (utcMs: number): string => (changes ? formatLocalTime(utcMs, zone) : formatClock(utcMs, zone));
    const moonEvents = (
      [
        ['rises', moonTimes.riseUtcMs],
        ['sets', moonTimes.setUtcMs],
      ] as const
    )
      .flatMap(([word, utcMs]) => (utcMs === null ? [] : [{ word, utcMs }]))
      .sort((a, b) => a.utcMs - b.utcMs)
      .map(({ word, utcMs }) => `${word} ${inNight(utcMs)}`);
    const sun = sunFirst(options, where.site, night, nowUtcMs, until?.utcMs ?? null);
    const first = darkFirst(options.first, {
      observer,
      zone,
      nowUtcMs,
      dark: darkSpan,
      moonTimes,
      moonless,
      moonLitFraction: moon.illuminatedFraction,
      untilUtcMs: until?.utcMs ?? null,
    });
    const sunBelow = options.below === undefined ? '' : `${sunBelowWords(options.below, { observer, night, zone })}. `;
    return reply({
      title: titleOf(options.first, night.said),
      level: levelOf(options.first, moonlessMs),
      summary: `${sunBelow}${summaryOf([sun, first], darkSpan, {
        none: noDarkWords(twilight, night, zone),
        hours: darkWords(twilight, night, zone),
        wait: darkSpan === null || sunBelow !== '' ? '' : untilDark(darkSpan, night, nowUtcMs),
        moon: moonShareWords(moonlessMs, isMoonless),
      })}`,
      facts: [
        { label: 'Sun', value: sunWords(twilight, inNight, zone) },
        { label: 'Moon', value: listed([`${Math.round(moon.illuminatedFraction * 100)} % lit`, ...moonEvents]) },
        ...(darkSpan === null ? [] : [{ label: 'No Moon', value: moonlessWords(moonless, isMoonless, zone) }]),
      ],
      notes: [...capNotes(options.first), ...siteNotes(where)],
      pointsAt: NOWHERE,
      data: {
        sunsetUtc: orNull(twilight.sunsetUtcMs),
        civil: twilightData(twilight.civil),
        nautical: twilightData(twilight.nautical),
        astronomical: twilightData(twilight.astronomical),
        sunriseUtc: orNull(twilight.sunriseUtcMs),
        moon: {
          riseUtc: orNull(moonTimes.riseUtcMs),
          setUtc: orNull(moonTimes.setUtcMs),
          illuminatedFraction: rounded(moon.illuminatedFraction, 4),
        },
        moonlessDark: moonless.map(spanData),
      },
    });
  },
});
