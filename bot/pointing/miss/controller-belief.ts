/** What a controller believes, and from that: the sidereal time it shows, the place it shows, and where the tube really goes. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import {
  asinDeg,
  cosDeg,
  equatorialFromVector,
  rotatedAbout,
  sinDeg,
  wrapDeg180,
  wrapDeg360,
  wrapHours24,
  type Vector3,
} from '../../sky/angles.js';
import { SIDEREAL_DEG_PER_MS } from '../../sky/earth.js';
import { lastHours } from '../../sky/sidereal-time.js';
import type { Equatorial, Horizontal, UtcMs } from '../../sky/types.js';
import type { AlignmentStar, Circumstances, PointedTarget } from './astray-types.js';
import { axesFor, tubeVector, type AxisAngles, type MountKind } from '../mount/mount.js';

/** The controller's picture of the world, and how the mount that obeys it differs from what it takes for granted. */
export interface Belief {
  readonly utcMs: UtcMs;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** The sidereal time it shows, by its own time and longitude. */
  readonly lstHours: number;
  /** The sidereal time it ought to show. */
  readonly trueLstHours: number;
  /** Drives an equatorial mount as south of the equator. */
  readonly southern: boolean;
  /** With the wrong hemisphere set, takes the other pole for its own but still turns the polar axis in the right sense. */
  readonly poleAlone: boolean;
  /** `none`: right; `j2000-as-date`: catalogue coordinates used unprecessed; `twice`: coordinates of date precessed again. */
  readonly epochSlip: 'none' | 'j2000-as-date' | 'twice';
  /** −1 where an axis runs the wrong way. */
  readonly axisSigns: { readonly primary: 1 | -1; readonly secondary: 1 | -1 };
  /** How far the axes stood from home when the controller took them to be at home. */
  readonly axisOffsets: AxisAngles;
  /** How far the polar (or azimuth) axis leans: towards the meridian's upper side, and towards the west (alt-azimuth: north, east). */
  readonly lean: { readonly alongDeg: number; readonly acrossDeg: number };
  /** Minutes since the mount stopped following the sky. */
  readonly stoppedMinutes: number;
  /** The star the controller was told, and the one that was centred; null: trusts its home position. */
  readonly alignment: { readonly expected: AlignmentStar; readonly centred: AlignmentStar } | null;
}

/** Everything as it should be. */
export const rightBelief = ({ observer, utcMs, alignedOn }: Circumstances): Belief => {
  const lst = lastHours(utcMs, observer.longitudeDeg);
  return {
    utcMs,
    latitudeDeg: observer.latitudeDeg,
    longitudeDeg: observer.longitudeDeg,
    lstHours: lst,
    trueLstHours: lst,
    southern: observer.latitudeDeg < 0,
    poleAlone: false,
    epochSlip: 'none',
    axisSigns: { primary: 1, secondary: 1 },
    axisOffsets: { primaryDeg: 0, secondaryDeg: 0 },
    lean: { alongDeg: 0, acrossDeg: 0 },
    stoppedMinutes: 0,
    alignment: alignedOn === null ? null : { expected: alignedOn, centred: alignedOn },
  };
};

/** The same belief with another time or longitude entered. */
export const withClock = (belief: Belief, utcMs: UtcMs, longitudeDeg = belief.longitudeDeg): Belief => ({
  ...belief,
  utcMs,
  longitudeDeg,
  lstHours: lastHours(utcMs, longitudeDeg),
});

/** The coordinates the controller aims at. */
const aimedAt = (belief: Belief, target: PointedTarget): Equatorial => {
  if (belief.epochSlip === 'j2000-as-date') return target.j2000;
  if (belief.epochSlip === 'twice') {
    // Once more by the same small step as from J2000 to now.
    return {
      raHours: wrapHours24(2 * target.ofDate.raHours - target.j2000.raHours),
      decDeg: Math.max(-90, Math.min(90, 2 * target.ofDate.decDeg - target.j2000.decDeg)),
    };
  }
  return target.ofDateAt?.(belief.utcMs) ?? target.ofDate;
};

const horizontalOfHourAngle = (hourAngleDeg: number, decDeg: number, latitudeDeg: number): Horizontal => {
  const altitudeDeg = asinDeg(
    sinDeg(decDeg) * sinDeg(latitudeDeg) + cosDeg(decDeg) * cosDeg(hourAngleDeg) * cosDeg(latitudeDeg),
  );
  const east = -cosDeg(decDeg) * sinDeg(hourAngleDeg);
  const north = sinDeg(decDeg) * cosDeg(latitudeDeg) - cosDeg(decDeg) * cosDeg(hourAngleDeg) * sinDeg(latitudeDeg);
  return { altitudeDeg, azimuthDeg: wrapDeg360((Math.atan2(east, north) * 180) / Math.PI) };
};

/** The altitude and azimuth the controller shows for a target. */
export const shownHorizontal = (belief: Belief, target: PointedTarget): Horizontal => {
  const aim = aimedAt(belief, target);
  return horizontalOfHourAngle((belief.lstHours - aim.raHours) * 15, aim.decDeg, belief.latitudeDeg);
};

/**
 * The frame in which a mount's axes turn: equatorial, longitude counted round the elevated pole anticlockwise as seen from
 * behind the mount (the hour angle in the north, its negative in the south) and latitude towards that pole; alt-azimuth,
 * azimuth and altitude.
 */
const inAxisFrame = (
  mount: MountKind,
  hourAngleDeg: number,
  decDeg: number,
  latitudeDeg: number,
  southern: boolean,
): { longitudeDeg: number; latitudeDeg: number } => {
  if (mount === 'altaz') {
    const { altitudeDeg, azimuthDeg } = horizontalOfHourAngle(hourAngleDeg, decDeg, latitudeDeg);
    return { longitudeDeg: azimuthDeg, latitudeDeg: altitudeDeg };
  }
  return southern
    ? { longitudeDeg: -hourAngleDeg, latitudeDeg: -decDeg }
    : { longitudeDeg: hourAngleDeg, latitudeDeg: decDeg };
};

/** The lean of the axis as two turns: about the frame's y axis (along the meridian), then about its x axis (across). */
const leant = (v: Vector3, { alongDeg, acrossDeg }: Belief['lean']): Vector3 =>
  alongDeg === 0 && acrossDeg === 0 ? v : rotatedAbout(rotatedAbout(v, [0, 1, 0], alongDeg), [1, 0, 0], -acrossDeg);
const unleant = (v: Vector3, { alongDeg, acrossDeg }: Belief['lean']): Vector3 =>
  alongDeg === 0 && acrossDeg === 0 ? v : rotatedAbout(rotatedAbout(v, [1, 0, 0], acrossDeg), [0, 1, 0], -alongDeg);

/** Axis angles as the controller or the mount counts them once aligned on a star: one turn of the tube for each direction. */
const plainAxes = (mount: MountKind, longitudeDeg: number, latitudeDeg: number): AxisAngles =>
  axesFor(mount === 'altaz' ? 'altaz' : 'fork', { longitudeDeg, latitudeDeg });

/** Where the tube really points, of date (unit vector), when the controller with this belief has gone to the target. */
export const landedVector = (circumstances: Circumstances, belief: Belief, target: PointedTarget): Vector3 => {
  const { mount, observer } = circumstances;
  const trulySouthern = observer.latitudeDeg < 0;
  const trueLstDeg = belief.trueLstHours * 15;
  const stoppedDeg = belief.stoppedMinutes * MS_PER_MINUTE * SIDEREAL_DEG_PER_MS;
  const believed = (direction: Equatorial): { longitudeDeg: number; latitudeDeg: number } =>
    inAxisFrame(
      mount,
      belief.lstHours * 15 - stoppedDeg - direction.raHours * 15,
      direction.decDeg,
      belief.latitudeDeg,
      belief.southern,
    );
  const sense = (direction: {
    longitudeDeg: number;
    latitudeDeg: number;
  }): { longitudeDeg: number; latitudeDeg: number } =>
    belief.poleAlone ? { ...direction, longitudeDeg: -direction.longitudeDeg } : direction;
  const aim = sense(believed(aimedAt(belief, target)));
  const { primary, secondary } = belief.axisSigns;
  let kind = mount;
  let axes: AxisAngles;
  if (belief.alignment === null) {
    const wanted = axesFor(mount, aim);
    axes = {
      primaryDeg: primary * wanted.primaryDeg + belief.axisOffsets.primaryDeg,
      secondaryDeg: secondary * wanted.secondaryDeg + belief.axisOffsets.secondaryDeg,
    };
  } else {
    if (kind === 'german') kind = 'fork';
    const wanted = plainAxes(mount, aim.longitudeDeg, aim.latitudeDeg);
    const expected = sense(believed(belief.alignment.expected.ofDate));
    const expectedAxes = plainAxes(mount, expected.longitudeDeg, expected.latitudeDeg);
    const star = belief.alignment.centred.ofDate;
    const seen = inAxisFrame(
      mount,
      trueLstDeg - stoppedDeg - star.raHours * 15,
      star.decDeg,
      observer.latitudeDeg,
      trulySouthern,
    );
    const [x, y, z] = unleant(tubeVector(kind, plainAxes(mount, seen.longitudeDeg, seen.latitudeDeg)), belief.lean);
    const trueAxes = plainAxes(mount, (Math.atan2(y, x) * 180) / Math.PI, asinDeg(z));
    axes = {
      primaryDeg: trueAxes.primaryDeg + primary * (wanted.primaryDeg - expectedAxes.primaryDeg),
      secondaryDeg: trueAxes.secondaryDeg + secondary * (wanted.secondaryDeg - expectedAxes.secondaryDeg),
    };
  }
  const [x, y, z] = leant(tubeVector(kind, axes), belief.lean);
  if (mount === 'altaz') {
    // North, east, up → hour angle and declination.
    const sinLatitude = sinDeg(observer.latitudeDeg);
    const cosLatitude = cosDeg(observer.latitudeDeg);
    const towardsMeridian = z * cosLatitude - x * sinLatitude;
    const towardsPole = z * sinLatitude + x * cosLatitude;
    return turned([towardsMeridian, -y, towardsPole], trueLstDeg);
  }
  return turned(trulySouthern ? [x, -y, -z] : [x, y, z], trueLstDeg);
};

/** From meridian, west, north pole to the equator and equinox of date. */
const turned = ([meridian, west, pole]: Vector3, lstDeg: number): Vector3 => {
  const cosine = cosDeg(lstDeg);
  const sine = sinDeg(lstDeg);
  // Right ascension = sidereal time − hour angle.
  return [meridian * cosine + west * sine, meridian * sine - west * cosine, pole];
};

export const landedOfDate = (circumstances: Circumstances, belief: Belief, target: PointedTarget): Equatorial =>
  equatorialFromVector(landedVector(circumstances, belief, target));

/** Controller's sidereal time minus the true one, −12 h..12 h, in seconds. */
export const lstErrorS = ({ lstHours, trueLstHours }: Belief): number =>
  wrapDeg180((lstHours - trueLstHours) * 15) * 240;
