/** The way of a tube past the Sun, leg by leg, in words a member can carry out at the mount, and as data. */
import type { MountKind } from '../../pointing/mount/mount.js';
import type { Way, WayLeg } from '../../pointing/way/way-past-sun.js';
import type { Json } from '../../reply/reply.js';
import { degrees, direction, rounded } from '../../reply/wording.js';

const AXIS_WORDS: Readonly<Record<MountKind, Readonly<Record<'primary' | 'secondary', string>>>> = {
  german: { primary: 'right-ascension axis', secondary: 'declination axis' },
  fork: { primary: 'right-ascension axis', secondary: 'declination axis' },
  altaz: { primary: 'azimuth axis', secondary: 'altitude axis' },
};

const standing = ({ altitudeDeg, azimuthDeg }: WayLeg): string =>
  altitudeDeg > 88
    ? 'straight up'
    : `${direction(azimuthDeg)}, ${altitudeDeg < 0 ? `${degrees(-altitudeDeg)} below level` : `${degrees(altitudeDeg)} high`}`;

const legWords = (mount: MountKind, leg: WayLeg, isLast: boolean, targetName: string): string => {
  const nearest = `stays ${degrees(leg.minimumSeparationDeg)} from the Sun`;
  if (leg.axes === 'both') {
    if (isLast) return `Go to ${targetName}; ${nearest}.`;
    return leg.endsAtHome
      ? `Send it home first; ${nearest}.`
      : `Go to where the tube points ${standing(leg)}; ${nearest}.`;
  }
  const alone = `With the keys of the ${AXIS_WORDS[mount][leg.axes]} alone`;
  if (isLast) return `${alone}, on to ${targetName}; ${nearest}.`;
  if (leg.endsAtPole) {
    return leg.axes === 'secondary'
      ? `${alone}, bring the tube ${mount === 'altaz' ? 'straight up' : 'to the pole'}; ${nearest}.`
      : `${alone}, turn ${mount === 'altaz' ? `to azimuth ${Math.round(leg.azimuthDeg) % 360}°` : turnedWords(mount, leg)}; the tube stays at the ${mount === 'altaz' ? 'zenith' : 'pole'}.`;
  }
  return `${alone}, until the tube points ${standing(leg)}; ${nearest}.`;
};

/** How far the polar axis has turned from home, seen by the counterweight bar or the fork's arms. */
const turnedWords = (mount: MountKind, { to }: WayLeg): string => {
  const turnedDeg = Math.round(Math.abs(to.primaryDeg));
  if (mount === 'fork')
    return turnedDeg < 3
      ? 'until the fork stands as at home'
      : `until the fork is ${turnedDeg}° from home, turned to the ${to.primaryDeg > 0 ? 'west' : 'east'}`;
  // The bar's weight swings to the side the tube leaves.
  return turnedDeg < 3
    ? 'until the counterweight hangs straight down'
    : `until the counterweight is ${turnedDeg}° from straight down, to the ${to.primaryDeg > 0 ? 'east' : 'west'}`;
};

export const wayWords = (mount: MountKind, way: Way, targetName: string): string[] =>
  way.legs.map((leg, i) => `${i + 1}. ${legWords(mount, leg, i === way.legs.length - 1, targetName)}`);

export const wayData = (way: Way): Json[] =>
  way.legs.map((leg) => ({
    axes: leg.axes,
    primaryAxisDeg: rounded(leg.to.primaryDeg, 3),
    secondaryAxisDeg: rounded(leg.to.secondaryDeg, 3),
    altitudeDeg: rounded(leg.altitudeDeg, 2),
    azimuthDeg: rounded(leg.azimuthDeg, 2),
    minimumSeparationDeg: rounded(leg.minimumSeparationDeg, 2),
    endsAfterS: rounded(leg.endsAtS, 1),
  }));
