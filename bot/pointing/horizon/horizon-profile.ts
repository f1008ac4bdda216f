/** A horizon profile: how high trees, roofs and hills stand, by azimuth; what it hides and when a body clears it. Pure. */
import { isProblem } from '../../ground/problem.js';
import type { TimeSpan } from '../../sky/night.js';
import type { Horizontal, UtcMs } from '../../sky/types.js';

/** The top of an obstruction: azimuth 0..360° from north through east, altitude −10..90°. */
export interface ProfilePoint {
  readonly azimuthDeg: number;
  readonly altitudeDeg: number;
}

export const PROFILE_POINTS_LIMIT = 360;
/** From a mountain the horizon lies a few degrees below level. */
export const LOWEST_PROFILE_DEG = -10;

export type ProfileFault =
  | { readonly problem: 'empty' }
  | { readonly problem: 'unreadable'; readonly text: string }
  | { readonly problem: 'odd-count'; readonly text: string }
  | { readonly problem: 'azimuth-range' | 'altitude-range'; readonly value: number }
  | { readonly problem: 'azimuth-twice'; readonly value: number }
  | { readonly problem: 'too-many'; readonly value: number };

export type ProfileResolution = { readonly points: readonly ProfilePoint[] } | ProfileFault;

const COMPASS_POINTS = [
  'n',
  'nne',
  'ne',
  'ene',
  'e',
  'ese',
  'se',
  'sse',
  's',
  'ssw',
  'sw',
  'wsw',
  'w',
  'wnw',
  'nw',
  'nnw',
];

/** A number with its sign and an optional degree mark, a compass point, what may stand between, or something else. */
const TOKEN = /([+−-]?\d+(?:\.\d+)?)\s*(?:°|deg(?:rees)?\b)?|([a-z]+)|([\s:=,;/|]+)|(\S)/giu;

/** The numbers of a text in their order, and the last thing read; a compass point may stand for an azimuth. */
const numbersIn = (text: string): { readonly numbers: readonly number[]; readonly last: string } | ProfileFault => {
  const numbers: number[] = [];
  let last = '';
  const uncommented = text.split(/\r\n|\r|\n/u).map((line) => line.replace(/#.*/u, ''));
  for (const [token, digits, letters = '', between] of uncommented.flatMap((line) => [...line.matchAll(TOKEN)])) {
    if (between !== undefined) continue;
    last = token.trim();
    const isFirstOfPair = numbers.length % 2 === 0;
    const compass = isFirstOfPair ? COMPASS_POINTS.indexOf(letters.toLowerCase()) : -1;
    if (digits === undefined && compass < 0) return { problem: 'unreadable', text: last };
    numbers.push(digits === undefined ? compass * 22.5 : Number(digits.replace('−', '-')));
  }
  return { numbers, last };
};

/** One point, its azimuth 360 read as 0. */
const pointOf = (azimuth: number, altitudeDeg: number): ProfilePoint | ProfileFault => {
  if (azimuth < 0 || azimuth > 360) return { problem: 'azimuth-range', value: azimuth };
  if (altitudeDeg < LOWEST_PROFILE_DEG || altitudeDeg > 90) return { problem: 'altitude-range', value: altitudeDeg };
  return { azimuthDeg: azimuth % 360, altitudeDeg };
};

/** North may be given at both ends of a pasted table, if it says the same twice. */
const mayStandBeside = (point: ProfilePoint, before: ProfilePoint | undefined): boolean =>
  before === undefined || (point.azimuthDeg === 0 && before.altitudeDeg === point.altitudeDeg);

/**
 * Reads pairs of azimuth and altitude in degrees: `90:20, 120:15`, or pasted lines `90 20`; an azimuth may be a compass
 * point (`ESE:15`), and what follows `#` on a line is a comment. Gives the points by azimuth, 360 read as 0. Never throws.
 */
export const parseHorizonProfile = (text: string): ProfileResolution => {
  const read = numbersIn(text);
  if (isProblem(read)) return read;
  const { numbers, last } = read;
  if (numbers.length === 0) return { problem: 'empty' };
  if (numbers.length % 2 === 1) return { problem: 'odd-count', text: last };
  if (numbers.length / 2 > PROFILE_POINTS_LIMIT) return { problem: 'too-many', value: numbers.length / 2 };

  const points = new Map<number, ProfilePoint>();
  for (let i = 0; i < numbers.length; i += 2) {
    const [azimuth = 0, altitudeDeg = 0] = numbers.slice(i, i + 2);
    const point = pointOf(azimuth, altitudeDeg);
    if (isProblem(point)) return point;
    if (!mayStandBeside(point, points.get(point.azimuthDeg))) return { problem: 'azimuth-twice', value: azimuth };
    points.set(point.azimuthDeg, point);
  }
  return { points: [...points.values()].sort((a, b) => a.azimuthDeg - b.azimuthDeg) };
};

/**
 * How high the profile stands at an azimuth (any number of degrees): linear between the two points beside it, across north
 * as well; 0° where there is no profile.
 */
export const horizonAltitudeDegAt = (profile: readonly ProfilePoint[] | null, azimuthDeg: number): number => {
  const first = profile?.[0];
  const last = profile?.at(-1);
  if (profile === null || first === undefined || last === undefined) return 0;
  const azimuth = ((azimuthDeg % 360) + 360) % 360;
  // The points beside the azimuth; past either end of the list the neighbour is a turn away.
  const after = profile.findIndex((point) => point.azimuthDeg > azimuth);
  const left = after > 0 ? (profile[after - 1] ?? last) : last;
  const right = after === -1 ? first : (profile[after] ?? first);
  const leftDeg = after === 0 ? left.azimuthDeg - 360 : left.azimuthDeg;
  const rightDeg = after === -1 ? right.azimuthDeg + 360 : right.azimuthDeg;
  const share = rightDeg === leftDeg ? 0 : (azimuth - leftDeg) / (rightDeg - leftDeg);
  return left.altitudeDeg + (right.altitudeDeg - left.altitudeDeg) * share;
};

/** Degrees above the profile; negative: hidden behind it. */
export const clearanceDeg = (
  profile: readonly ProfilePoint[] | null,
  { altitudeDeg, azimuthDeg }: Horizontal,
): number => altitudeDeg - horizonAltitudeDegAt(profile, azimuthDeg);

/** A body's direction at an instant, as along a night's curve. */
export interface CurvePoint extends Horizontal {
  readonly utcMs: UtcMs;
}

/**
 * The stretches of a curve (points in order of time) above the profile; between two points the clearance is taken as
 * linear, so points a few minutes apart give the minute.
 */
export const clearSpans = (curve: readonly CurvePoint[], profile: readonly ProfilePoint[] | null): TimeSpan[] => {
  const spans: TimeSpan[] = [];
  let openUtcMs: UtcMs | null = null;
  let before: { readonly utcMs: UtcMs; readonly clearance: number } | null = null;
  for (const point of curve) {
    const clearance = clearanceDeg(profile, point);
    const crossesAt = (): UtcMs =>
      before === null
        ? point.utcMs
        : before.utcMs + (point.utcMs - before.utcMs) * (before.clearance / (before.clearance - clearance));
    if (clearance > 0 && openUtcMs === null) openUtcMs = crossesAt();
    if (clearance <= 0 && openUtcMs !== null) {
      spans.push({ startUtcMs: openUtcMs, endUtcMs: crossesAt() });
      openUtcMs = null;
    }
    before = { utcMs: point.utcMs, clearance };
  }
  if (openUtcMs !== null && before !== null) spans.push({ startUtcMs: openUtcMs, endUtcMs: before.utcMs });
  return spans;
};
