/** Two targets at an instant, and what is said first of them: the higher, the one to begin with, the brighter, or how far apart. */
import { magnitudeThen } from '../../evening/variable-now.js';
import type { Target } from '../../catalogue/index.js';
import { capital, compassWord, degrees, direction, magnitudeText } from '../../reply/wording.js';
import { positionAngleDeg, separationDeg } from '../../sky/angles.js';
import type { TimeSpan } from '../../sky/night.js';
import { placeOf } from '../../sky/place.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { MS_PER_DAY } from '../../ground/durations.js';
import { formatLocalTime } from '../../times/index.js';
import type { Pair, Stand } from './pair.js';
import { largerWords } from './larger.js';
import { firstOfBoth } from './which-first.js';

export const COMPARED = ['higher', 'higher-now', 'sooner', 'brighter', 'larger', 'apart'] as const;
export type Compared = (typeof COMPARED)[number];

const standOf = (target: Target, observer: Observer, utcMs: UtcMs): Stand => {
  const place = placeOf(target.body, observer, utcMs);
  const day: TimeSpan = { startUtcMs: utcMs, endUtcMs: utcMs + MS_PER_DAY };
  const { riseUtcMs, setUtcMs } = riseTransitSet(target.body, observer, day.startUtcMs, day.endUtcMs);
  return {
    target,
    name: target.id === 'moon' || target.id === 'sun' ? `the ${target.name}` : target.name,
    place,
    isUp: place.apparentAltitudeDeg > 0,
    magnitude: magnitudeThen(target, utcMs),
    riseUtcMs,
    setUtcMs,
  };
};

export const sideBySide = (
  [a, b]: readonly [Target, Target],
  { observer, zone }: { readonly observer: Observer; readonly zone: string },
  utcMs: UtcMs,
): Pair => {
  const first = standOf(a, observer, utcMs);
  const second = standOf(b, observer, utcMs);
  return {
    first,
    second,
    utcMs,
    zone,
    observer,
    apartDeg: separationDeg(first.place.ofDate, second.place.ofDate),
    positionAngleDeg: positionAngleDeg(first.place.ofDate, second.place.ofDate),
  };
};

const ARCMIN_BELOW_DEG = 2;
export const apartText = (apartDeg: number): string =>
  apartDeg < ARCMIN_BELOW_DEG ? `${(apartDeg * 60).toFixed(apartDeg < 0.2 ? 1 : 0)}′` : degrees(apartDeg, 1);

const risesWords = ({ riseUtcMs }: Stand, zone: string): string =>
  riseUtcMs === null ? 'does not rise in the day after' : `rises at ${formatLocalTime(riseUtcMs, zone)}`;

/** "38° high in the south". */
const heightWords = ({ place }: Stand): string =>
  `${degrees(place.apparentAltitudeDeg)} high in the ${compassWord(place.azimuthDeg)}`;

/** Where it stands, in a line of its own. */
export const standText = (stand: Stand, zone: string): string => {
  const { place, magnitude, isUp, setUtcMs } = stand;
  const mag = magnitude === null ? [] : [`mag ${magnitudeText(magnitude)}`];
  if (!isUp)
    return [`down, ${degrees(-place.apparentAltitudeDeg)} below the horizon`, risesWords(stand, zone), ...mag].join(
      '; ',
    );
  return [
    `${degrees(place.apparentAltitudeDeg)} high in the ${direction(place.azimuthDeg)}`,
    ...mag,
    setUtcMs === null ? 'does not set' : `sets ${formatLocalTime(setUtcMs, zone)}`,
  ].join('; ');
};

const neitherWords = ({ first, second, utcMs, zone }: Pair): string =>
  `Neither is up at ${formatLocalTime(utcMs, zone)}: ${first.name} ${risesWords(first, zone)}, ${second.name} ${risesWords(second, zone)}.`;

const oneUp = ({ first, second, utcMs, zone }: Pair, more = ''): string | null => {
  if (first.isUp === second.isUp) return null;
  const [up, down] = first.isUp ? [first, second] : [second, first];
  return `${capital(up.name)}${more}: ${heightWords(up)} at ${formatLocalTime(utcMs, zone)}; ${down.name} is down and ${risesWords(down, zone)}.`;
};

const ALIKE_DEG = 0.5;
const higherWords = (pair: Pair): string => {
  const { first, second, utcMs, zone } = pair;
  const alone = oneUp(pair);
  if (alone !== null) return alone;
  if (!first.isUp) return neitherWords(pair);
  const [high, low] =
    first.place.apparentAltitudeDeg >= second.place.apparentAltitudeDeg ? [first, second] : [second, first];
  const differenceDeg = high.place.apparentAltitudeDeg - low.place.apparentAltitudeDeg;
  const at = `at ${formatLocalTime(utcMs, zone)}`;
  return differenceDeg < ALIKE_DEG
    ? `Alike ${at}: ${first.name} and ${second.name} both ${degrees(high.place.apparentAltitudeDeg)} high.`
    : `${capital(high.name)}, the higher ${at}: ${heightWords(high)}; ${low.name} ${heightWords(low)}.`;
};

/** The one that goes first is looked at first, or comes first where neither is up. */
const soonerWords = (pair: Pair): string => {
  const { first, second, zone } = pair;
  const alone = oneUp(pair, ' first');
  if (alone !== null) return alone;
  if (first.isUp) return firstOfBoth(pair, pair.observer);
  const time = ({ riseUtcMs }: Stand): number => riseUtcMs ?? Infinity;
  if (time(first) === time(second)) return higherWords(pair);
  const [one, other] = time(first) < time(second) ? [first, second] : [second, first];
  const otherTime = Number.isFinite(time(other))
    ? `${other.name} at ${formatLocalTime(time(other), zone)}`
    : `${other.name} does not`;
  return `${capital(one.name)} first: it rises at ${formatLocalTime(time(one), zone)}, ${otherTime}.`;
};

const ALIKE_MAG = 0.05;
const brighterWords = (pair: Pair): string => {
  const { first, second } = pair;
  if (first.magnitude === null || second.magnitude === null)
    return `The brightness of ${first.magnitude === null ? first.name : second.name} is not listed. ${higherWords(pair)}`;
  const [bright, faint] = first.magnitude <= second.magnitude ? [first, second] : [second, first];
  const figures = `mag ${magnitudeText(bright.magnitude ?? 0)} against ${magnitudeText(faint.magnitude ?? 0)}`;
  return Math.abs(first.magnitude - second.magnitude) < ALIKE_MAG
    ? `Alike, both mag ${magnitudeText(first.magnitude)}.`
    : `${capital(bright.name)}, the brighter: ${figures}.`;
};

const apartWords = ({ first, second, utcMs, zone, ...pair }: Pair): string => {
  const down = [first, second].filter(({ isUp }) => !isUp).map(({ name }) => name);
  const below =
    down.length === 0
      ? ''
      : ` ${down.length === 2 ? 'Both are' : `${capital(down[0] ?? '')} is`} below the horizon then.`;
  return `At ${formatLocalTime(utcMs, zone)} ${apartText(pair.apartDeg)} apart; ${second.name} at position angle ${Math.round(pair.positionAngleDeg) % 360}° from ${first.name}, counted from north through east.${below}`;
};

/** Whether they stand nearer than so many degrees, and what was asked first of them. */
export const pairWords = (pair: Pair, compared: Compared, withinDeg: number | undefined): string => {
  if (withinDeg !== undefined) return `${pair.apartDeg <= withinDeg ? 'Yes' : 'No'}. ${apartWords(pair)}`;
  switch (compared) {
    case 'higher':
    case 'higher-now':
      return higherWords(pair);
    case 'sooner':
      return soonerWords(pair);
    case 'brighter':
      return brighterWords(pair);
    case 'larger':
      return largerWords(pair);
    case 'apart':
      return apartWords(pair);
  }
};
