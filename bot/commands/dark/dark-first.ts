/** What `dark` says first where a yes or no was asked: whether it is dark, whether before the Moon rises, whether the Moon spoils the night. */
import { coreWords } from './core-words.js';
import { duration, listed } from '../../reply/wording.js';
import { moonAt } from '../../sky/moon.js';
import type { TimeSpan } from '../../sky/night.js';
import type { RiseTransitSet } from '../../sky/rise-set.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { milkyWayWords } from './milky-way.js';
import { formatLocalTime, formatSpan } from '../../times/index.js';
import { SUN_FIRST } from './sun-first.js';

export const DARK_FIRST = [
  'now',
  'before-moonrise',
  'moon-at-dark',
  'moonless',
  'moon-spoils',
  'worth',
  ...SUN_FIRST,
  'milky-way',
  'core',
] as const;
export type DarkFirst = (typeof DARK_FIRST)[number];

export interface DarkNight {
  readonly observer: Observer;
  readonly zone: string;
  readonly nowUtcMs: UtcMs;
  /** Null where the Sun stays too near the horizon; the answer then says why. */
  readonly dark: TimeSpan | null;
  readonly moonTimes: RiseTransitSet;
  /** Stretches of the dark without the Moon, in order. */
  readonly moonless: readonly TimeSpan[];
  readonly moonLitFraction: number;
  /** Only the dark before this instant was asked about; null: all of it. */
  readonly untilUtcMs: UtcMs | null;
}

const length = ({ startUtcMs, endUtcMs }: TimeSpan): number => endUtcMs - startUtcMs;

const isMoonUp = ({ observer }: DarkNight, utcMs: UtcMs): boolean => moonAt(observer, utcMs).place.altitudeDeg > 0;

const darkNow = (night: DarkNight, { startUtcMs, endUtcMs }: TimeSpan): string => {
  const { nowUtcMs, zone } = night;
  if (nowUtcMs < startUtcMs) return `Not yet, in ${duration(startUtcMs - nowUtcMs)}`;
  if (nowUtcMs >= endUtcMs) return 'No longer: day is coming';
  const since = `Yes, fully dark since ${formatLocalTime(startUtcMs, zone)}`;
  return isMoonUp(night, nowUtcMs)
    ? `${since}, but the Moon is up, ${Math.round(night.moonLitFraction * 100)} % lit`
    : since;
};

/** "; the Moon is up from 17:06 on" where it rose before. */
const beforeMoonrise = (night: DarkNight, { startUtcMs, endUtcMs }: TimeSpan): string => {
  const { moonTimes, zone } = night;
  const { riseUtcMs, setUtcMs } = moonTimes;
  const isUp = isMoonUp(night, startUtcMs);
  if (isUp && riseUtcMs !== null && riseUtcMs <= startUtcMs)
    return `No, the Moon ${riseUtcMs < night.nowUtcMs ? 'came' : 'comes'} up first, at ${formatLocalTime(riseUtcMs, zone)}, ${duration(startUtcMs - riseUtcMs)} before the dark`;
  if (isUp)
    return `No, the Moon is up by then${setUtcMs === null ? '' : `; it sets at ${formatLocalTime(setUtcMs, zone)}`}`;
  if (riseUtcMs === null || riseUtcMs > endUtcMs) return 'Yes, no Moon comes up before the dark ends';
  return `Yes, ${duration(riseUtcMs - startUtcMs)} before: the Moon rises at ${formatLocalTime(riseUtcMs, zone)}`;
};

const moonAtDark = (night: DarkNight, { startUtcMs }: TimeSpan): string => {
  const { moonTimes, zone, nowUtcMs } = night;
  const { riseUtcMs, setUtcMs } = moonTimes;
  if (!isMoonUp(night, startUtcMs)) {
    const rises =
      riseUtcMs !== null && riseUtcMs > startUtcMs ? `; it rises at ${formatLocalTime(riseUtcMs, zone)}` : '';
    return `No, the Moon is down when it gets dark${rises}`;
  }
  const risen = riseUtcMs !== null && riseUtcMs <= startUtcMs ? riseUtcMs : null;
  const rose = risen === null ? '' : `; it ${risen < nowUtcMs ? 'rose' : 'rises'} at ${formatLocalTime(risen, zone)}`;
  const sets = setUtcMs !== null && setUtcMs > startUtcMs ? ` until ${formatLocalTime(setUtcMs, zone)}` : '';
  return `Yes, the Moon is up then${sets}${rose}`;
};

const moonlessWords = (night: DarkNight, { endUtcMs: darkEndUtcMs }: TimeSpan): string => {
  const { untilUtcMs, zone, nowUtcMs } = night;
  // What is past of the night under way is no time for anything.
  const moonless = night.moonless.filter(({ endUtcMs }) => nowUtcMs >= darkEndUtcMs || endUtcMs > nowUtcMs);
  if (moonless.length === 0 && night.moonless.length > 0)
    return 'No, not any more: the Moon is up for the rest of the dark hours';
  const asked = moonless
    .map(({ startUtcMs, endUtcMs }) => ({ startUtcMs, endUtcMs: Math.min(endUtcMs, untilUtcMs ?? endUtcMs) }))
    .filter((span) => length(span) > 0);
  const before = untilUtcMs === null ? '' : ` before ${formatLocalTime(untilUtcMs, zone)}`;
  if (asked.length > 0)
    return `Yes, no Moon ${listed(asked.map(({ startUtcMs, endUtcMs }) => formatSpan(startUtcMs, endUtcMs, zone)))}`;
  const [later] = moonless;
  return later === undefined
    ? `No, none${before}: the Moon is up all the dark hours`
    : `No, none${before}; only ${formatSpan(later.startUtcMs, later.endUtcMs, zone)}`;
};

/** Below this the Moon is a crescent that dims little; common practice, no source. */
const THIN_FRACTION = 0.2;
const UNHURT = 'the Moon itself, planets, doubles and bright clusters do not mind';

const moonSpoils = ({ moonless: all, moonLitFraction, zone, nowUtcMs }: DarkNight, dark: TimeSpan): string => {
  // What is past of the night is no time for anything.
  const moonless = all.filter(({ endUtcMs }) => nowUtcMs >= dark.endUtcMs || endUtcMs > nowUtcMs);
  const freeMs = moonless.reduce((sum, span) => sum + length(span), 0);
  const lit = `${Math.round(moonLitFraction * 100)} % lit`;
  if (freeMs >= length(dark) - 60_000) return 'No, the Moon is down all the dark hours';
  if (moonLitFraction < THIN_FRACTION) return `Hardly, the Moon is a thin crescent, ${lit}`;
  if (freeMs === 0)
    return `Yes for galaxies and nebulae: the Moon is ${lit} and up all the dark hours${all.length > 0 ? ' to come' : ''}; ${UNHURT}`;
  const free = listed(moonless.map(({ startUtcMs, endUtcMs }) => formatSpan(startUtcMs, endUtcMs, zone)));
  return `In part: the Moon is ${lit}, but down ${free}, the time for galaxies and nebulae`;
};

/** Whether to set up at all, for whom the Moon gives pause. */
const worthIt = (night: DarkNight, dark: TimeSpan): string => {
  const spoils = moonSpoils(night, dark);
  if (!/^(?:Yes|In part)/u.test(spoils)) return `Yes: ${spoils.replace(/^(?:No|Hardly), /u, '')}`;
  const isInPart = spoils.startsWith('In part');
  return `Yes, for the Moon itself, planets, doubles and bright clusters; for galaxies and nebulae ${isInPart ? 'only in part' : 'another night'}: ${spoils.replace(/^[^:]*: /u, '').replace(`; ${UNHURT}`, '')}`;
};

/** Without its full stop; null where the night has no full darkness to speak of. */
export const darkFirst = (first: DarkFirst | undefined, night: DarkNight): string | null => {
  const { dark } = night;
  if (first === 'core') return coreWords(night.observer, night.zone, night.nowUtcMs);
  if (first === undefined || dark === null) return null;
  switch (first) {
    case 'milky-way':
      return milkyWayWords(night, dark);
    case 'now':
      return darkNow(night, dark);
    case 'before-moonrise':
      return beforeMoonrise(night, dark);
    case 'moon-at-dark':
      return moonAtDark(night, dark);
    case 'moonless':
      return moonlessWords(night, dark);
    case 'moon-spoils':
      return moonSpoils(night, dark);
    case 'worth':
      return worthIt(night, dark);
    default:
      // The Sun's own are said by {@link SUN_FIRST}'s room.
      return null;
  }
};
