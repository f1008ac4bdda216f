/** What `sun` says first: how near the Sun the target stands and the tube comes on the way, or that the Sun is down. */
import type { Target } from '../../catalogue/index.js';
import type { MountKind } from '../../pointing/mount/mount.js';
import type { Motion } from '../../pointing/way/slew.js';
import type { Way, WayRequest } from '../../pointing/way/way-past-sun.js';
import { degrees } from '../../reply/wording.js';
import { wrapDeg180 } from '../../sky/angles.js';
import { placeOf } from '../../sky/place.js';
import type { SunSafety } from '../../sky/sun-safety.js';
import { SUN } from '../../sky/twilight.js';
import type { Observer, SkyBody, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { sunEdgeWords } from '../asking/sun-edge-words.js';
import type { Judged } from './judge-way.js';

/** Down to here the Sun has only just set: refraction at the limb comes and goes by that much. Common practice, no source. */
const JUST_SET_DEG = -2;
export interface Start {
  readonly from: WayRequest['from'];
  readonly said: string;
  /** What the tube stands at, where that is not home. */
  readonly body: SkyBody | null;
}

export const afterWords = (way: Way, utcMs: UtcMs, zone: string): string =>
  `${Math.round((way.closestUtcMs - utcMs) / 1000)} s after setting off, at ${formatLocalTime(way.closestUtcMs, zone)}`;

const downWords = (sun: SunSafety, utcMs: UtcMs, observer: Observer, zone: string): string => {
  if (sun.level !== 'clear') {
    const rises = sun.nextSunriseUtcMs ?? utcMs;
    return `The Sun is down, but rises soon${sun.nextSunriseUtcMs === null ? '' : `, at ${sunEdgeWords(observer, rises, 'rise', zone)}`}.`;
  }
  const justSet = sun.sunAltitudeDeg > JUST_SET_DEG && sun.separationDeg < 45;
  if (justSet)
    return `The Sun has only just set, ${degrees(sun.separationDeg, 1)} from there. Wait until it is well down: from higher ground its edge may still show.`;
  const { nextSunriseUtcMs: rises } = sun;
  return `The Sun is down${rises === null ? '' : ` until ${sunEdgeWords(observer, rises, 'rise', zone)}`}.`;
};

export const summaryFor = (
  { target, observer, utcMs, zone, motion }: Question,
  sun: SunSafety,
  { straight, level, safer }: Judged,
  dangerDeg: number,
): string => {
  if (target.kind === 'sun' && !sun.isSunUp)
    return `The Sun is down${sun.nextSunriseUtcMs === null ? '' : ` until ${sunEdgeWords(observer, sun.nextSunriseUtcMs, 'rise', zone)}`}. That is the Sun itself: only with a proper solar filter, fitted before you point.`;
  if (target.kind === 'sun') return 'That is the Sun itself. Only with a proper solar filter, fitted before you point.';
  if (!sun.isSunUp) return downWords(sun, utcMs, observer, zone);
  const least = straight.minimumSeparationDeg;
  if (sun.level === 'danger')
    return `${target.name} is only ${degrees(sun.separationDeg, 1)} from the Sun. Not by day.`;
  if (level === 'danger') {
    const rest = safer === null ? `Not by day: no way tried keeps ${degrees(dangerDeg)} clear.` : 'Go round as below.';
    const passes = motion === null ? 'can pass' : 'passes';
    return `Going straight there the tube ${passes} ${degrees(least, 1)} from the Sun, ${afterWords(straight, utcMs, zone)}. ${rest}`;
  }
  return `${target.name} is ${degrees(sun.separationDeg)} from the Sun, and the tube stays ${degrees(least)} from it or more on the way.`;
};

export interface KnownMotion {
  readonly motion: Motion | null;
  /** The speeds are the member's own, as saved. */
  readonly isSaved: boolean;
}

export interface Question extends KnownMotion {
  readonly target: Target;
  readonly observer: Observer;
  readonly zone: string;
  readonly utcMs: UtcMs;
  /** Whether that is when it was asked; another instant is named in the answer. */
  readonly isNow: boolean;
  readonly mount: MountKind;
  readonly start: Start;
}

/** "Venus is 39.6° from the Sun, to its west: it rises before it." */
export const apartWords = ({ target, observer, utcMs }: Question, { separationDeg }: SunSafety): string => {
  const [raHours, sunHours] = [target.body, SUN].map((body) => placeOf(body, observer, utcMs).ofDate.raHours);
  const isEast = wrapDeg180(((raHours ?? 0) - (sunHours ?? 0)) * 15) > 0;
  return `${target.name} is ${degrees(separationDeg, 1)} from the Sun, to its ${isEast ? 'east, in the evening sky' : 'west, in the morning sky'}. Before you point by day, ask for the way: sun ${target.name}.`;
};
