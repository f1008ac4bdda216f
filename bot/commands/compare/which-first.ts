/** Which of two targets to begin with at an hour: the one that goes first where one goes soon, else the one that stands better. */
import { MS_PER_HOUR, MS_PER_MINUTE } from '../../ground/durations.js';
import { capital, compassWord, degrees } from '../../reply/wording.js';
import { horizontalOf } from '../../sky/place.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import type { Pair, Stand } from './pair.js';

/** Lower than this the air blurs and roofs hide, and in a few hours one is done with a target. Common practice, no source. */
const LEAST_DEG = 15;
const SOON_MS = 3 * MS_PER_HOUR;
const STEP_MS = 10 * MS_PER_MINUTE;

interface Going {
  readonly stand: Stand;
  readonly altitudeDeg: number;
  readonly isClimbing: boolean;
  /** When it sinks below the least height, within the next hours; null: not so soon. */
  readonly leavesUtcMs: UtcMs | null;
}

const goingOf = (stand: Stand, observer: Observer, utcMs: UtcMs): Going => {
  const at = (ms: UtcMs): number => horizontalOf(stand.target.body, observer, ms).altitudeDeg;
  const altitudeDeg = at(utcMs);
  let leavesUtcMs: UtcMs | null = null;
  for (let ahead = STEP_MS; altitudeDeg >= LEAST_DEG && leavesUtcMs === null && ahead <= SOON_MS; ahead += STEP_MS)
    if (at(utcMs + ahead) < LEAST_DEG) leavesUtcMs = utcMs + ahead;
  return { stand, altitudeDeg, isClimbing: at(utcMs + STEP_MS) > altitudeDeg, leavesUtcMs };
};

const heightOf = ({ stand, altitudeDeg }: Going): string =>
  `${degrees(altitudeDeg)} high in the ${compassWord(stand.place.azimuthDeg)}`;

const nowWords = (going: Going): string => `${heightOf(going)}${going.isClimbing ? ' and climbing' : ' and sinking'}`;

/** When it goes as one says it: now for what is low and sinking, Infinity for what waits. */
const goesAt = ({ stand, altitudeDeg, isClimbing, leavesUtcMs }: Going, utcMs: UtcMs): number => {
  if (leavesUtcMs !== null) return leavesUtcMs;
  return altitudeDeg < LEAST_DEG && !isClimbing && stand.setUtcMs !== null ? utcMs : Infinity;
};

const whyFirst = (one: Going, zone: string): string => {
  if (one.leavesUtcMs !== null)
    return `it sinks below ${LEAST_DEG}° about ${formatLocalTime(one.leavesUtcMs, zone)}, now ${heightOf(one)}`;
  const { setUtcMs } = one.stand;
  return `it is low already, ${nowWords(one)}${setUtcMs === null ? '' : `, and sets at ${formatLocalTime(setUtcMs, zone)}`}`;
};

/** Both are up. */
export const firstOfBoth = ({ first, second, utcMs, zone }: Pair, observer: Observer): string => {
  const both = [goingOf(first, observer, utcMs), goingOf(second, observer, utcMs)] as const;
  const [a, b] = both;
  const [goesA, goesB] = [goesAt(a, utcMs), goesAt(b, utcMs)];
  if (goesA !== goesB) {
    const [one, other] = goesA < goesB ? [a, b] : [b, a];
    return `${capital(one.stand.name)} first: ${whyFirst(one, zone)}. ${capital(other.stand.name)} waits: ${nowWords(other)}.`;
  }
  const [high, low] = a.altitudeDeg >= b.altitudeDeg ? [a, b] : [b, a];
  return `${capital(high.stand.name)} first: ${heightOf(high)} at ${formatLocalTime(utcMs, zone)}; ${low.stand.name} is ${nowWords(low)}.`;
};
