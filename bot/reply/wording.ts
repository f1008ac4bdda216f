/** Small pieces of member-facing wording, so that every command says directions, angles and lists alike. */
import { MS_PER_MINUTE } from '../ground/durations.js';

const POINTS = [
  'north',
  'north-north-east',
  'north-east',
  'east-north-east',
  'east',
  'east-south-east',
  'south-east',
  'south-south-east',
  'south',
  'south-south-west',
  'south-west',
  'west-south-west',
  'west',
  'west-north-west',
  'north-west',
  'north-north-west',
] as const;

/** The nearest of the sixteen compass points: 112 → "east-south-east". */
export const compassWord = (azimuthDeg: number): string =>
  POINTS[((Math.round(azimuthDeg / 22.5) % 16) + 16) % 16] ?? 'north';

/** "−1.4": a magnitude to a tenth, with a true minus sign and no "−0.0". */
export const magnitudeText = (magnitude: number): string =>
  magnitude.toFixed(1).replace('-0.0', '0.0').replace('-', '−');

/** "62°", or "−4°" with a true minus sign; `digits` decimals. */
export const degrees = (valueDeg: number, digits = 0): string => {
  const rounded = Math.abs(valueDeg).toFixed(digits);
  const isZero = Number(rounded) === 0;
  return `${valueDeg < 0 && !isZero ? '−' : ''}${rounded}°`;
};

/** "east-south-east, 112°". */
export const direction = (azimuthDeg: number): string => `${compassWord(azimuthDeg)}, ${Math.round(azimuthDeg) % 360}°`;

/** Hours as a clock reads them: 5.5125 → "5h 30m 45s". */
export const hoursMinutesSeconds = (hours: number): string => {
  const seconds = Math.round((((hours % 24) + 24) % 24) * 3600) % 86_400;
  return `${String(Math.floor(seconds / 3600)).padStart(2, '0')}h ${String(Math.floor(seconds / 60) % 60).padStart(2, '0')}m ${String(seconds % 60).padStart(2, '0')}s`;
};

/** An hour angle's size, in whole minutes: 125 → "2 h 05 min". */
export const hoursMinutes = (minutes: number): string =>
  `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;

/** A limit as the member gave it: 63.6° stays 63.6°. */
export const degreesAsAsked = (valueDeg: number): string => `${Number(valueDeg.toFixed(2))}°`;

/** Degrees as a declination is written: −5.375 → "−05° 22′ 30″". */
export const degreesMinutesSeconds = (valueDeg: number): string => {
  const total = Math.round(Math.abs(valueDeg) * 3600);
  return `${valueDeg < 0 && total > 0 ? '−' : '+'}${String(Math.floor(total / 3600)).padStart(2, '0')}° ${String(Math.floor(total / 60) % 60).padStart(2, '0')}′ ${String(total % 60).padStart(2, '0')}″`;
};

/** A length of time in words: 5400 s → "1 h 30 min"; under a minute "less than a minute". */
export const duration = (ms: number): string => {
  const minutes = Math.round(ms / MS_PER_MINUTE);
  if (minutes < 1) return 'less than a minute';
  if (minutes < 60) return `${minutes} min`;
  const rest = minutes % 60;
  return rest === 0 ? `${Math.floor(minutes / 60)} h` : `${Math.floor(minutes / 60)} h ${rest} min`;
};

/** "a, b and c". */
export const listed = (items: readonly string[], last = 'and'): string =>
  items.length <= 1 ? items.join('') : `${items.slice(0, -1).join(', ')} ${last} ${items.at(-1)}`;

/** A UTC instant as the contract prints it, whole seconds: "2026-11-25T18:04:05Z". */
export const isoUtc = (utcMs: number): string =>
  new Date(Math.round(utcMs / 1000) * 1000).toISOString().replace('.000Z', 'Z');

/** Rounds for `data`, so that numbers stay readable without losing what is claimed. */
export const rounded = (value: number, digits = 6): number => {
  const factor = 10 ** digits;
  const result = Math.round(value * factor) / factor;
  return result === 0 ? 0 : result;
};

/** With its first letter large. */
export const capital = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;
