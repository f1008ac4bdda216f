/** Where the tube really goes when a controller with a given belief sends it to a target. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import { asinDeg, cosDeg, equatorialFromVector, sinDeg, wrapDeg180, type Vector3 } from '../../sky/angles.js';
import { SIDEREAL_DEG_PER_MS } from '../../sky/earth.js';
import type { Equatorial } from '../../sky/types.js';
import { axesFor, pierSide, tubeVector, type AxisAngles, type MountDirection, type MountKind } from '../mount/mount.js';
import type { Circumstances, PointedTarget } from './astray-types.js';
import { STANDS_TRUE, aimedAt, horizontalOfHourAngle, type Belief, type Stance } from './controller-belief.js';

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
): MountDirection => {
  if (mount === 'altaz') {
    const { altitudeDeg, azimuthDeg } = horizontalOfHourAngle(hourAngleDeg, decDeg, latitudeDeg);
    return { longitudeDeg: azimuthDeg, latitudeDeg: altitudeDeg };
  }
  return southern
    ? { longitudeDeg: -hourAngleDeg, latitudeDeg: -decDeg }
    : { longitudeDeg: hourAngleDeg, latitudeDeg: decDeg };
};

/** Two components turned: the first towards the second. */
const turned = (a: number, b: number, deg: number): readonly [number, number] => {
  const cosine = cosDeg(deg);
  const sine = sinDeg(deg);
  return [a * cosine - b * sine, b * cosine + a * sine];
};

/** A direction of a true base (north, east, up) as the base that stands so really has it: tilted, raised, then turned. */
const stood = ([n, e, u]: Vector3, { turnDeg, raisedDeg, tiltDeg }: Stance, southern: boolean): Vector3 => {
  const [e1, u1] = turned(e, u, tiltDeg);
  const [n2, u2] = turned(n, u1, southern ? -raisedDeg : raisedDeg);
  const [n3, e3] = turned(n2, e1, turnDeg);
  return [n3, e3, u2];
};
const unstood = ([n, e, u]: Vector3, { turnDeg, raisedDeg, tiltDeg }: Stance, southern: boolean): Vector3 => {
  const [n1, e1] = turned(n, e, -turnDeg);
  const [n2, u2] = turned(n1, u, southern ? raisedDeg : -raisedDeg);
  const [e3, u3] = turned(e1, u2, -tiltDeg);
  return [n2, e3, u3];
};

/** From meridian, west, north pole to north, east, up. */
const toHorizon = ([meridian, west, pole]: Vector3, latitudeDeg: number): Vector3 => {
  const sine = sinDeg(latitudeDeg);
  const cosine = cosDeg(latitudeDeg);
  return [pole * cosine - meridian * sine, -west, pole * sine + meridian * cosine];
};
const fromHorizon = ([n, e, u]: Vector3, latitudeDeg: number): Vector3 => {
  const sine = sinDeg(latitudeDeg);
  const cosine = cosDeg(latitudeDeg);
  return [u * cosine - n * sine, -e, u * sine + n * cosine];
};

/** A vector of the axis frame in the mirrored southern sense, or as it is. */
const sensed = ([x, y, z]: Vector3, southern: boolean): Vector3 => (southern ? [x, -y, -z] : [x, y, z]);

/** From meridian, west, north pole to the equator and equinox of date: right ascension = sidereal time − hour angle. */
const toEquator = ([meridian, west, pole]: Vector3, lstDeg: number): Vector3 => {
  const cosine = cosDeg(lstDeg);
  const sine = sinDeg(lstDeg);
  return [meridian * cosine + west * sine, meridian * sine - west * cosine, pole];
};

/** The mount as its wrong zero is counted: one that keeps it on the sky turns to each direction in one way alone, as a fork does. */
const countedAs = (mount: MountKind, { zeroKeptOn }: Belief): MountKind =>
  mount === 'german' && zeroKeptOn === 'sky' ? 'fork' : mount;

const stoppedDegOf = ({ stoppedMinutes }: Belief): number => stoppedMinutes * MS_PER_MINUTE * SIDEREAL_DEG_PER_MS;

/** Where the controller takes a direction to be, in the sense in which it turns the axes. */
const believedDirection = (mount: MountKind, belief: Belief, direction: Equatorial): MountDirection => {
  const hourAngleDeg = belief.lstHours * 15 - stoppedDegOf(belief) - direction.raHours * 15;
  const seen = inAxisFrame(mount, hourAngleDeg, direction.decDeg, belief.latitudeDeg, belief.southern);
  return belief.poleAlone ? { ...seen, longitudeDeg: -seen.longitudeDeg } : seen;
};

/** Axis angles from home. */
const axesFromHome = (mount: MountKind, belief: Belief, aim: MountDirection): AxisAngles => {
  const wanted = axesFor(countedAs(mount, belief), aim);
  const { axisSigns, axisOffsets } = belief;
  return {
    primaryDeg: axisSigns.primary * wanted.primaryDeg + axisOffsets.primaryDeg,
    secondaryDeg: axisSigns.secondary * wanted.secondaryDeg + axisOffsets.secondaryDeg,
  };
};

/** A true direction as the axes of a base that stands so count it. */
const trueDirection = ({ mount, observer }: Circumstances, belief: Belief, star: Equatorial): MountDirection => {
  const trulySouthern = observer.latitudeDeg < 0;
  const hourAngleDeg = belief.trueLstHours * 15 - stoppedDegOf(belief) - star.raHours * 15;
  const seen = inAxisFrame(mount, hourAngleDeg, star.decDeg, observer.latitudeDeg, trulySouthern);
  if (belief.stance === STANDS_TRUE) return seen;
  const frame = mount === 'altaz' ? 'altaz' : 'fork';
  const tube = tubeVector(frame, axesFor(frame, seen));
  const level = mount === 'altaz' ? tube : toHorizon(sensed(tube, trulySouthern), observer.latitudeDeg);
  const base = unstood(level, belief.stance, trulySouthern && mount !== 'altaz');
  const [x, y, z] = mount === 'altaz' ? base : sensed(fromHorizon(base, observer.latitudeDeg), trulySouthern);
  return { longitudeDeg: (Math.atan2(y, x) * 180) / Math.PI, latitudeDeg: asinDeg(z) };
};

/** Axis angles counted on from the star the mount was aligned on. */
const axesFromStar = (
  circumstances: Circumstances,
  belief: Belief,
  { expected, centred }: NonNullable<Belief['alignment']>,
  aim: MountDirection,
): AxisAngles => {
  const { mount } = circumstances;
  const counted = countedAs(mount, belief);
  const expectedAt = believedDirection(mount, belief, expected.ofDate);
  const side = pierSide(wrapDeg180(expectedAt.longitudeDeg) / 15);
  const wanted = axesFor(counted, aim);
  const from = axesFor(counted, expectedAt, side);
  const stands = axesFor(counted, trueDirection(circumstances, belief, centred.ofDate), side);
  return {
    primaryDeg: stands.primaryDeg + belief.axisSigns.primary * (wanted.primaryDeg - from.primaryDeg),
    secondaryDeg: stands.secondaryDeg + belief.axisSigns.secondary * (wanted.secondaryDeg - from.secondaryDeg),
  };
};

/** Where the tube really points, of date (unit vector), when the controller with this belief has gone to the target. */
export const landedVector = (circumstances: Circumstances, belief: Belief, target: PointedTarget): Vector3 => {
  const { mount, observer } = circumstances;
  const trulySouthern = observer.latitudeDeg < 0;
  const aim = believedDirection(mount, belief, aimedAt(belief, target));
  const { alignment, stance } = belief;
  const tube =
    alignment === null
      ? tubeVector(countedAs(mount, belief), axesFromHome(mount, belief, aim))
      : tubeVector(countedAs(mount, belief), axesFromStar(circumstances, belief, alignment, aim));
  const lstDeg = belief.trueLstHours * 15;
  if (mount === 'altaz') {
    const level = stance === STANDS_TRUE ? tube : stood(tube, stance, false);
    return toEquator(fromHorizon(level, observer.latitudeDeg), lstDeg);
  }
  const equatorial = sensed(tube, trulySouthern);
  if (stance === STANDS_TRUE) return toEquator(equatorial, lstDeg);
  const level = stood(toHorizon(equatorial, observer.latitudeDeg), stance, trulySouthern);
  return toEquator(fromHorizon(level, observer.latitudeDeg), lstDeg);
};

export const landedOfDate = (circumstances: Circumstances, belief: Belief, target: PointedTarget): Equatorial =>
  equatorialFromVector(landedVector(circumstances, belief, target));
