/** When the Sun crosses the meridian, and how far a sundial is off the clock. Nobody looks at it: the shadow tells. */
import { MS_PER_SECOND } from '../../ground/durations.js';
import { degrees } from '../../reply/wording.js';
import { equationOfTimeMs } from '../../sky/equation-of-time.js';
import { horizontalOf } from '../../sky/place.js';
import { sunDay } from '../../sky/sun-days.js';
import type { TimeSpan } from '../../sky/night.js';
import { SUN } from '../../sky/twilight.js';
import { formatLocalDate, formatLocalSecond, localDateAt, localToUtc } from '../../times/index.js';
import type { ResolvedSite } from '../asking/resolve-site.js';

type Site = ResolvedSite['site'];

/** "6 min 18 s". */
const minutesAndSeconds = (ms: number): string => {
  const seconds = Math.round(Math.abs(ms) / MS_PER_SECOND);
  const minutes = Math.floor(seconds / 60);
  return minutes === 0 ? `${seconds} s` : `${minutes} min ${seconds % 60} s`;
};

const sundialWords = (ms: number, than: string): string =>
  Math.abs(ms) < MS_PER_SECOND
    ? `a sundial agrees with ${than}`
    : `a sundial is ${minutesAndSeconds(ms)} ${ms > 0 ? 'ahead of' : 'behind'} ${than}`;

/** "12:02:06 GMT": the date stands beside it. */
const clockOf = (utcMs: number, zone: string): string => formatLocalSecond(utcMs, zone).split(', ').at(-1) ?? '';

/** "True noon of Sat 12 Dec 2026 is at 12:02:06 GMT: the Sun due south, 11.9° high". */
export const noonWords = ({ observer, zone }: Site, day: TimeSpan): string => {
  const { noonUtcMs, noonAltitudeDeg } = sunDay(observer, day);
  const { azimuthDeg } = horizontalOf(SUN, observer, noonUtcMs);
  const side = Math.cos((azimuthDeg * Math.PI) / 180) > 0 ? 'north' : 'south';
  const high = `${degrees(Math.abs(noonAltitudeDeg), 1)} ${noonAltitudeDeg < 0 ? 'below the horizon' : 'high'}`;
  const ofDial = sundialWords(equationOfTimeMs(observer, noonUtcMs), 'mean time');
  return `True noon of ${formatLocalDate(noonUtcMs, zone)} is at ${clockOf(noonUtcMs, zone)}: the Sun due ${side}, ${high}; ${ofDial}`;
};

/** "Equation of time on Sat 12 Dec 2026: +6 min 18 s, so far a sundial is ahead of mean time". */
export const equationWords = ({ observer, zone }: Site, day: TimeSpan): string => {
  const { noonUtcMs } = sunDay(observer, day);
  const equationMs = equationOfTimeMs(observer, noonUtcMs);
  const clockNoon = localToUtc(localDateAt(noonUtcMs, zone), { hour: 12, minute: 0, second: 0 }, zone).utcMs;
  const isAhead = equationMs >= 0;
  const figure = `${isAhead ? '+' : '−'}${minutesAndSeconds(equationMs)}`;
  const ofClock = sundialWords(clockNoon - noonUtcMs, 'the clock');
  return `Equation of time on ${formatLocalDate(noonUtcMs, zone)}: ${figure}, so far a sundial is ${isAhead ? 'ahead of' : 'behind'} mean time. With longitude and zone, here ${ofClock}: true noon ${clockOf(noonUtcMs, zone)}`;
};
