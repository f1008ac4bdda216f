/** Degrees as hand controllers want them typed: degrees and minutes, or degrees, minutes and seconds, with the hemisphere as a letter. */

export type AngleOnEarth = 'latitude' | 'longitude';

export interface DegreesAndMinutes {
  readonly degrees: number;
  readonly minutes: number;
}
export interface DegreesMinutesSeconds extends DegreesAndMinutes {
  readonly seconds: number;
}

const LETTERS: Readonly<Record<AngleOnEarth, readonly [string, string]>> = {
  latitude: ['N', 'S'],
  longitude: ['E', 'W'],
};

/** N, S, E or W; 0 counts as north and east. */
export const hemisphereLetter = (axis: AngleOnEarth, deg: number): string => LETTERS[axis][deg < 0 ? 1 : 0];

/** Size of the angle to the nearest whole minute, carried into the degrees at 60. */
export const toDegreesAndMinutes = (deg: number): DegreesAndMinutes => {
  const minutes = Math.round(Math.abs(deg) * 60);
  return { degrees: Math.floor(minutes / 60), minutes: minutes % 60 };
};

/** Size of the angle to the nearest whole second, carried at 60. */
export const toDegreesMinutesSeconds = (deg: number): DegreesMinutesSeconds => {
  const seconds = Math.round(Math.abs(deg) * 3600);
  return { degrees: Math.floor(seconds / 3600), minutes: Math.floor(seconds / 60) % 60, seconds: seconds % 60 };
};

const padded = (n: number, width: number): string => String(n).padStart(width, '0');
const width = (axis: AngleOnEarth): number => (axis === 'latitude' ? 2 : 3);

/** "52° 43′ N", "000° 07′ E". */
export const degreesAndMinutesText = (axis: AngleOnEarth, deg: number): string => {
  const { degrees, minutes } = toDegreesAndMinutes(deg);
  return `${padded(degrees, width(axis))}° ${padded(minutes, 2)}′ ${hemisphereLetter(axis, deg)}`;
};

/** "52° 42′ 36″ N". */
export const degreesMinutesSecondsText = (axis: AngleOnEarth, deg: number): string => {
  const { degrees, minutes, seconds } = toDegreesMinutesSeconds(deg);
  return `${padded(degrees, width(axis))}° ${padded(minutes, 2)}′ ${padded(seconds, 2)}″ ${hemisphereLetter(axis, deg)}`;
};
