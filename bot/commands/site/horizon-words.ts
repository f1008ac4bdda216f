/** A horizon profile in words and as a chart, and what was wrong with one. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import {
  horizonAltitudeDegAt,
  LOWEST_PROFILE_DEG,
  parseHorizonProfile,
  PROFILE_POINTS_LIMIT,
  type ProfileFault,
} from '../../pointing/horizon/horizon-profile.js';
import { type HorizonChart } from '../../reply/reply.js';
import { compassWord, degrees } from '../../reply/wording.js';
import type { HorizonPoint } from '../../store/store.js';

const EXAMPLE = 'Give azimuth:altitude pairs in degrees, such as horizon:"0:5, 90:20, 120:15, 270:8"';

const faultWords = (fault: ProfileFault): string => {
  switch (fault.problem) {
    case 'empty':
      return 'The horizon has no points.';
    case 'unreadable':
      return `"${tidy(fault.text, 20)}" is not a number of degrees.`;
    case 'odd-count':
      return `The horizon has an azimuth without its altitude: "${tidy(fault.text, 20)}" at the end stands alone.`;
    case 'azimuth-range':
      return `Azimuth ${degrees(fault.value, 1)} is not within 0° to 360° (north 0°, east 90°).`;
    case 'altitude-range':
      return `Altitude ${degrees(fault.value, 1)} is not within ${degrees(LOWEST_PROFILE_DEG)} to 90°.`;
    case 'azimuth-twice':
      return `Azimuth ${fault.value}° is given twice; for a wall's edge use two azimuths close together.`;
    case 'too-many':
      return `The horizon has ${fault.value} points; at most ${PROFILE_POINTS_LIMIT} are kept.`;
  }
};

/** Words that take a profile away. */
const NONE = new Set(['none', 'flat', 'clear', 'no', 'off']);

/** `null`: the member wants none. */
export const readHorizon = (text: string): { readonly horizon: readonly HorizonPoint[] | null } | Problem => {
  if (NONE.has(text.trim().toLowerCase())) return { horizon: null };
  const read = parseHorizonProfile(text);
  return isProblem(read) ? problem('bad-horizon', `${faultWords(read)} ${EXAMPLE}`) : { horizon: read.points };
};

/** "4 points, highest 20° in the east (90°)". */
export const horizonWords = (horizon: readonly HorizonPoint[] | null): string => {
  if (horizon === null || horizon.length === 0) return 'none given; the level horizon counts';
  const highest = horizon.reduce((best, point) => (point.altitudeDeg > best.altitudeDeg ? point : best));
  return `${horizon.length === 1 ? '1 point' : `${horizon.length} points`}, highest ${degrees(highest.altitudeDeg, highest.altitudeDeg % 1 === 0 ? 0 : 1)} in the ${compassWord(highest.azimuthDeg)} (${Math.round(highest.azimuthDeg)}°)`;
};

export const horizonChart = (siteName: string, horizon: readonly HorizonPoint[] | null): HorizonChart | undefined => {
  if (horizon === null || horizon.length === 0) return undefined;
  const quarters = [0, 90, 180, 270].map(
    (azimuthDeg) => `${compassWord(azimuthDeg)} ${degrees(horizonAltitudeDegAt(horizon, azimuthDeg))}`,
  );
  return {
    kind: 'horizon',
    title: `Horizon at ${siteName}`,
    points: horizon,
    altText: `Horizon profile of ${siteName}: ${horizonWords(horizon)}; ${quarters.join(', ')}.`,
  };
};
