/** What stands in the way of seeing a target in one night, the worst first. */
import type { Target } from '../catalogue/index.js';
import { SHOWS_MAG } from './ease.js';
import { isBody, leastAltitudeDegOf, standsTwilight } from './pick.js';
import type { Point } from './windows.js';

/** `up` when nothing stands in the way. */
export type Verdict =
  | 'up'
  | 'low'
  | 'washed-out'
  | 'too-faint'
  | 'twilight-only'
  | 'lost-in-sun'
  | 'day-only'
  | 'behind-horizon'
  | 'never-up'
  | 'past';

export type SkyName = 'dark' | 'astronomical twilight' | 'nautical twilight' | 'civil twilight' | 'daylight';

export interface Circumstances {
  readonly target: Target;
  readonly neverUp: boolean;
  readonly isPast: boolean;
  readonly isBehind: boolean;
  readonly best: Point;
  readonly sky: SkyName;
  readonly marginMag: number | null;
  readonly lostToMoonMag: number;
  readonly sunSeparationDeg: number;
}

/** Under this a target is lost in the Sun's glare; common practice, no source. */
const LOST_IN_SUN_DEG = 12;
const EDGE_DEG = 0.05;
/** So far below the threshold it is not the murk that hides it: common practice, no source. */
const HOPELESS_MAG = -3;

export const skyName = (sunAltitudeDeg: number): SkyName => {
  if (sunAltitudeDeg > -0.833) return 'daylight';
  // The ends of each are its edges to a hair.
  if (sunAltitudeDeg > -6 + EDGE_DEG) return 'civil twilight';
  if (sunAltitudeDeg > -12 + EDGE_DEG) return 'nautical twilight';
  return sunAltitudeDeg > -18 + EDGE_DEG ? 'astronomical twilight' : 'dark';
};

/** Not above the horizon, or only where the Sun hides it. */
const ofTheSun = ({ target, best, sky, sunSeparationDeg }: Circumstances): Verdict | null => {
  const isMoon = isBody(target, 'Moon');
  if (sunSeparationDeg < LOST_IN_SUN_DEG && !isMoon) return 'lost-in-sun';
  return best.altitudeDeg <= 0 || (sky === 'daylight' && !isMoon) ? 'day-only' : null;
};

const ofTheSky = ({ target, best, sky, marginMag, lostToMoonMag }: Circumstances): Verdict => {
  const isBright = sky === 'civil twilight' || sky === 'nautical twilight';
  if (isBright && !standsTwilight(target, target.magnitude)) return 'twilight-only';
  const isHopeless = marginMag !== null && marginMag + lostToMoonMag < HOPELESS_MAG;
  if (best.altitudeDeg < leastAltitudeDegOf(target.body)) return isHopeless ? 'too-faint' : 'low';
  if (marginMag === null || marginMag >= SHOWS_MAG) return 'up';
  return marginMag + lostToMoonMag >= SHOWS_MAG ? 'washed-out' : 'too-faint';
};

export const verdictOf = (found: Circumstances): Verdict => {
  const { target, neverUp, isPast, isBehind, best } = found;
  if (neverUp) return 'never-up';
  if (isBody(target, 'Sun')) return best.altitudeDeg > 0 ? 'up' : 'day-only';
  if (isPast) return 'past';
  const hidden = ofTheSun(found);
  if (hidden !== null) return hidden;
  return isBehind ? 'behind-horizon' : ofTheSky(found);
};
