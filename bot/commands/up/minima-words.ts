/** The next minima of an eclipsing star that can be seen: with the star up, and the Sun well down. */
import type { Target } from '../../catalogue/index.js';
import { MS_PER_DAY } from '../../ground/durations.js';
import { compassWord, degrees, listed } from '../../reply/wording.js';
import { julianDateOf, utcMsOfJulianDate } from '../../sky/julian-date.js';
import { horizontalOf } from '../../sky/place.js';
import { SUN } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDateTime } from '../../times/index.js';
import type { TargetAtSite } from '../asking/question-parts.js';

/** Lower than this, and with the Sun higher than this, nobody compares stars. Common practice, no source. */
const LEAST_STAR_DEG = 15;
const MOST_SUN_DEG = -9;
const SHOWN = 3;
const LOOKED_AHEAD_DAYS = 60;
/** Told to ten minutes: heliocentric time is taken as the observer's, up to 8 minutes off. */
const TOLD_TO_MS = 600_000;

/** Where its maxima are known instead: the last and the next. */
const maximumWords = (variable: Target['variable'], zone: string, nowUtcMs: UtcMs): string => {
  if (variable?.periodDays == null || variable.epochJd === null || variable.epochIs !== 'maximum') return '';
  const { periodDays, epochJd } = variable;
  const next = Math.ceil((julianDateOf(nowUtcMs) - epochJd) / periodDays);
  const [last, coming] = [next - 1, next].map((cycle) => {
    const utcMs = utcMsOfJulianDate(epochJd + cycle * periodDays);
    return formatLocalDateTime(Math.round(utcMs / TOLD_TO_MS) * TOLD_TO_MS, zone);
  });
  return ` Its maxima: about ${last ?? ''}, and next ${coming ?? ''}.`;
};

/** @param aboveDeg the least height of the star then, where the member said one */
export const minimaWords = ({ target, where }: TargetAtSite, nowUtcMs: UtcMs, aboveDeg: number | undefined): string => {
  const leastDeg = aboveDeg ?? LEAST_STAR_DEG;
  const { variable } = target;
  if (variable?.periodDays == null || variable.epochJd === null || variable.epochIs !== 'minimum')
    return `I have no times of minimum for ${target.name}.${maximumWords(variable, where.site.zone, nowUtcMs)}`;
  const { observer, zone } = where.site;
  const { periodDays, epochJd } = variable;
  const seen: string[] = [];
  let cycle = Math.ceil((julianDateOf(nowUtcMs) - epochJd) / periodDays);
  for (; seen.length < SHOWN; cycle++) {
    const utcMs = utcMsOfJulianDate(epochJd + cycle * periodDays);
    if (utcMs > nowUtcMs + LOOKED_AHEAD_DAYS * MS_PER_DAY) break;
    const { altitudeDeg, azimuthDeg } = horizontalOf(target.body, observer, utcMs);
    if (altitudeDeg < leastDeg || horizontalOf(SUN, observer, utcMs).altitudeDeg > MOST_SUN_DEG) continue;
    const time = formatLocalDateTime(Math.round(utcMs / TOLD_TO_MS) * TOLD_TO_MS, zone);
    seen.push(`${time} (${degrees(altitudeDeg)} in the ${compassWord(azimuthDeg)})`);
  }
  const above = aboveDeg === undefined ? '' : ` above ${aboveDeg}°`;
  return seen.length === 0
    ? `No minimum of ${target.name} falls in the dark here${above} in the next ${LOOKED_AHEAD_DAYS} days.`
    : `Next minima of ${target.name} seen from here${above}: ${listed(seen)}.`;
};
