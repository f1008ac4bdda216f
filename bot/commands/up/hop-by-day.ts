/** How one comes to a target from the stars, where the hour that is asked for is one of day: then by none. */
import type { Catalogue } from '../../catalogue/index.js';
import type { Verdict } from '../../evening/verdict.js';
import { compassWord, degrees } from '../../reply/wording.js';
import { horizontalOf, placeOf } from '../../sky/place.js';
import { sunSeparationDeg, sunUpAltitudeDeg } from '../../sky/sun-safety.js';
import { SUN } from '../../sky/twilight.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { hopWords, type FindQuestion } from './hop-words.js';

export interface HopQuestion extends Omit<FindQuestion, 'utcMs'> {
  /** The hour asked about; null: none. */
  readonly hourUtcMs: UtcMs | null;
  /** The night asked about is the one in progress or to come, as far as was said. */
  readonly isTonight: boolean;
  readonly nowUtcMs: UtcMs;
}

/** It stands in a sky of the night, well or not. */
const OF_NIGHT: readonly Verdict[] = ['up', 'low', 'washed-out', 'too-faint'];

const isDay = (observer: Observer, utcMs: UtcMs): boolean =>
  horizontalOf(SUN, observer, utcMs).altitudeDeg > sunUpAltitudeDeg(observer);

/** Lower than this little shows whatever one does; common practice, no source. */
const LOW_DEG = 10;

/** "At 22:42 GMT it is 61° high in the west. From …": of an hour that was named; what is down is not looked for. */
const standing = ({ target, observer, zone }: HopQuestion, utcMs: UtcMs, hop: (utcMs: UtcMs) => string): string => {
  const { apparentAltitudeDeg, azimuthDeg } = placeOf(target.body, observer, utcMs);
  const at = `At ${formatLocalTime(utcMs, zone)} it is`;
  if (apparentAltitudeDeg <= 0) return `${at} below the horizon.`;
  const low = apparentAltitudeDeg < LOW_DEG ? ', so low that air, roofs and trees hide most of it' : '';
  return `${at} ${degrees(apparentAltitudeDeg)} high in the ${compassWord(azimuthDeg)}${low}. ${hop(utcMs)}`;
};

/** No way by hand where the Sun is up, and then the way at its best hour, where that is of the night. */
export const hopByNight = (catalogue: Catalogue, question: HopQuestion): string => {
  const { target, observer, zone, hourUtcMs, isTonight, nowUtcMs, found } = question;
  const hop = (utcMs: UtcMs): string => hopWords(catalogue, { ...question, utcMs });
  const dayUtcMs = hourUtcMs ?? (isTonight ? nowUtcMs : null);
  if (target.kind === 'sun' || dayUtcMs === null || !isDay(observer, dayUtcMs))
    return hourUtcMs === null ? hop(found.best.utcMs) : standing(question, hourUtcMs, hop);
  const apart = degrees(sunSeparationDeg(target.body, observer, dayUtcMs));
  const when = Math.abs(dayUtcMs - nowUtcMs) < 60_000 ? 'now' : 'then';
  const no = `No, not by day: the Sun is up ${when}, ${apart} from it, and no star shows to go by. Never sweep for it: one pass over the Sun blinds.`;
  const { best, verdict } = found;
  const isForNight = OF_NIGHT.includes(verdict) && best.altitudeDeg > 0 && !isDay(observer, best.utcMs);
  return isForNight ? `${no} In the dark, ${formatLocalTime(best.utcMs, zone)}: ${hop(best.utcMs)}` : no;
};
