/** How two targets stand at their best in what is left of a night's dark, for who names no hour. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { capital, compassWord, degrees } from '../../reply/wording.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import { twilights } from '../../sky/twilight.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { twilightSpan } from '../asking/night-words.js';
import type { Pair, Stand } from './pair.js';

export interface Best {
  readonly stand: Stand;
  readonly utcMs: UtcMs;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
}

const STEP_MS = 10 * MS_PER_MINUTE;
const ALIKE_DEG = 2;
const LEAST_DEG = 5;

/** What is left of the dark, of twilight where it gets no darker; null where there is none. */
const darkLeft = (observer: Observer, night: TimeSpan, nowUtcMs: UtcMs): TimeSpan | null => {
  const { astronomical, nautical, civil } = twilights(observer, night.startUtcMs, night.endUtcMs);
  const dark = twilightSpan(astronomical, night) ?? twilightSpan(nautical, night) ?? twilightSpan(civil, night);
  const startUtcMs = dark === null ? null : Math.max(dark.startUtcMs, nowUtcMs);
  return dark === null || startUtcMs === null || startUtcMs >= dark.endUtcMs
    ? null
    : { startUtcMs, endUtcMs: dark.endUtcMs };
};

const bestOf = (stand: Stand, observer: Observer, { startUtcMs, endUtcMs }: TimeSpan): Best => {
  let best: Best = { stand, utcMs: startUtcMs, ...horizontalOf(stand.target.body, observer, startUtcMs) };
  for (let utcMs = startUtcMs + STEP_MS; utcMs <= endUtcMs; utcMs += STEP_MS) {
    const there = horizontalOf(stand.target.body, observer, utcMs);
    if (there.altitudeDeg > best.altitudeDeg) best = { stand, utcMs, ...there };
  }
  return best;
};

/** Of both, the higher first; null where nothing of the dark is left, or one of them is the Sun. */
export const bestInNight = (
  { first, second }: Pair,
  observer: Observer,
  night: TimeSpan,
  nowUtcMs: UtcMs,
): readonly [Best, Best] | null => {
  const left = darkLeft(observer, night, nowUtcMs);
  const isOfSun = [first, second].some(({ target }) => target.id === 'sun');
  if (left === null || isOfSun) return null;
  const [one, other] = [bestOf(first, observer, left), bestOf(second, observer, left)];
  return one.altitudeDeg >= other.altitudeDeg ? [one, other] : [other, one];
};

export const bestText = ({ altitudeDeg, azimuthDeg, utcMs }: Best, zone: string): string =>
  altitudeDeg < LEAST_DEG
    ? 'never well up in the dark'
    : `${degrees(altitudeDeg)} high in the ${compassWord(azimuthDeg)} at ${formatLocalTime(utcMs, zone)}`;

/** "M 31 stands higher at its best: 77° high in the south at 20:00 GMT; M 33 68° …". */
export const bestWords = ([high, low]: readonly [Best, Best], zone: string): string => {
  if (high.altitudeDeg < LEAST_DEG) return `Neither ${high.stand.name} nor ${low.stand.name} is well up in the dark.`;
  if (high.altitudeDeg - low.altitudeDeg < ALIKE_DEG)
    return `Alike at their best: ${high.stand.name} ${bestText(high, zone)}; ${low.stand.name} ${bestText(low, zone)}.`;
  return `${capital(high.stand.name)} stands higher at its best: ${bestText(high, zone)}; ${low.stand.name} ${bestText(low, zone)}.`;
};
