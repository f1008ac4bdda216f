/** Several misses as a chart: each star's place, where the tube went, and what the fit of the mount leaves of it. */
import type { Circumstances, Observation } from '../../pointing/miss/astray-types.js';
import type { PolarFit } from '../../pointing/miss/polar-fit.js';
import type { MissChart } from '../../reply/reply.js';
import { cosDeg, wrapDeg180 } from '../../sky/angles.js';
import { horizontalFromOfDate } from '../../sky/place.js';
import type { Equatorial } from '../../sky/types.js';

/** Nearer to the pole right ascension says nothing. */
const LEAST_COS = 0.01;

export const missChart = (
  { observer, utcMs }: Circumstances,
  observations: readonly Observation[],
  { leftDeg, rmsDeg }: PolarFit,
  leftWords: string,
): MissChart => {
  const landings = observations.flatMap((seen) => (seen.kind === 'landed' ? [seen] : []));
  return {
    kind: 'misses',
    title: `Where the tube landed beside ${landings.length} stars`,
    stars: landings.map(({ target, ofDate }, i) => {
      const { raHours, decDeg } = target.ofDate;
      const at = horizontalFromOfDate(target.ofDate, observer, utcMs);
      const offset = (to: Equatorial): readonly [number, number] => {
        const { altitudeDeg, azimuthDeg } = horizontalFromOfDate(to, observer, utcMs);
        return [wrapDeg180(azimuthDeg - at.azimuthDeg) * cosDeg(at.altitudeDeg), altitudeDeg - at.altitudeDeg];
      };
      const { westDeg, northDeg } = leftDeg[i] ?? { westDeg: 0, northDeg: 0 };
      const left = { raHours: raHours - westDeg / 15 / Math.max(LEAST_COS, cosDeg(decDeg)), decDeg: decDeg + northDeg };
      return { name: target.name, ...at, seen: offset(ofDate), left: offset(left) };
    }),
    altText: `Arrows at each star over the sky, thin for the miss and thick for what the fit leaves of it. Left over: ${leftWords} (root mean square ${Math.round(rmsDeg * 60)}′).`,
  };
};
