/** How the tube turns from where it stands to the target, at an hour when the Sun is down: which way round, and by how much. */
import { compassWord, degrees, listed } from '../../reply/wording.js';
import { wrapDeg180, wrapDeg360 } from '../../sky/angles.js';
import { placeOf } from '../../sky/place.js';
import type { Place } from '../../sky/types.js';
import type { Question } from './sun-summary.js';

const SIDES = ['north', 'east', 'south', 'west'] as const;

/** The quarters of the compass that are passed on the way, in their order. */
const passed = (fromDeg: number, turnDeg: number): readonly string[] => {
  const step = Math.sign(turnDeg);
  const found: string[] = [];
  for (let k = 1; k < Math.abs(turnDeg); k += 1) {
    const azimuthDeg = wrapDeg360(Math.round(fromDeg) + step * k);
    if (azimuthDeg % 90 === 0) found.push(SIDES[azimuthDeg / 90] ?? 'north');
  }
  return found;
};

const hoursText = (hours: number): string => {
  const minutes = Math.round(Math.abs(hours) * 60);
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
};

/** "From Vega, 39° high in the west-north-west: 144° to the right through north, and 5° up; …". Empty where one is down, or by day. */
export const turnWords = (
  { start, target, observer, utcMs }: Question,
  place: Place,
  isSunUp: boolean,
): readonly string[] => {
  if (isSunUp || start.body === null || target.kind === 'sun' || place.apparentAltitudeDeg <= 0) return [];
  const from = placeOf(start.body, observer, utcMs);
  if (from.apparentAltitudeDeg <= 0) return [];
  const turnDeg = wrapDeg180(place.azimuthDeg - from.azimuthDeg);
  const upDeg = place.apparentAltitudeDeg - from.apparentAltitudeDeg;
  const hours = wrapDeg180((place.ofDate.raHours - from.ofDate.raHours) * 15) / 15;
  const decDeg = place.ofDate.decDeg - from.ofDate.decDeg;
  const sides = passed(from.azimuthDeg, turnDeg);
  const through = sides.length === 0 ? '' : ` through ${listed(sides)}`;
  return [
    `From ${start.said}, ${degrees(from.apparentAltitudeDeg)} high in the ${compassWord(from.azimuthDeg)}: ${degrees(Math.abs(turnDeg))} to the ${turnDeg > 0 ? 'right' : 'left'}${through}, and ${degrees(Math.abs(upDeg))} ${upDeg > 0 ? 'up' : 'down'}; on an equatorial mount ${hoursText(hours)} ${hours > 0 ? 'east' : 'west'} and ${degrees(Math.abs(decDeg))} ${decDeg > 0 ? 'north' : 'south'}.`,
  ];
};
