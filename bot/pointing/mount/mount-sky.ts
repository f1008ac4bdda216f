/** The sky as a mount's frame sees it: where directions of date, the Sun and the zenith stand, second by second. */
import { cosDeg, DEGREES_PER_RADIAN, sinDeg, unitFromEquatorial, type Vector3 } from '../../sky/angles.js';
import { SIDEREAL_DEG_PER_MS } from '../../sky/earth.js';
import { placeOf } from '../../sky/place.js';
import { lastHours } from '../../sky/sidereal-time.js';
import type { Equatorial, Observer, UtcMs } from '../../sky/types.js';
import { directionOf, type AxisAngles, type MountDirection, type MountKind } from './mount.js';

const SIDEREAL_DEG_PER_S = SIDEREAL_DEG_PER_MS * 1000;

/** The frame of a mount at a site, from an instant on. */
export interface MountSky {
  readonly mount: MountKind;
  /** A direction of date in the mount's frame, so many seconds after the instant. */
  readonly directionAt: (ofDate: Equatorial, seconds: number) => MountDirection;
  /** Unit vector towards the Sun in the mount's frame, so many seconds after the instant. */
  readonly sunAt: (seconds: number) => Vector3;
  /** Unit vector towards the zenith in the mount's frame. */
  readonly zenith: Vector3;
}

/** East, north, up (as azimuth frame x north, y east) from hour angle and declination in degrees; latitude in degrees. */
const altazVector = (hourAngleDeg: number, decDeg: number, latitudeDeg: number): Vector3 => {
  const south = cosDeg(decDeg) * cosDeg(hourAngleDeg) * sinDeg(latitudeDeg) - sinDeg(decDeg) * cosDeg(latitudeDeg);
  const west = cosDeg(decDeg) * sinDeg(hourAngleDeg);
  const up = sinDeg(decDeg) * sinDeg(latitudeDeg) + cosDeg(decDeg) * cosDeg(hourAngleDeg) * cosDeg(latitudeDeg);
  return [-south, -west, up];
};

/** +1 where the north celestial pole is the elevated one, −1 in the south; the equator counts as north. */
export const poleSign = (latitudeDeg: number): 1 | -1 => (latitudeDeg >= 0 ? 1 : -1);

/**
 * The mount's sky from an instant on. The Sun's own motion among the stars (under 3″ a minute) is left out; its daily motion
 * is in. Good for the minutes that a slew takes.
 */
export const mountSky = (mount: MountKind, observer: Observer, utcMs: UtcMs): MountSky => {
  const { latitudeDeg } = observer;
  const sign = poleSign(latitudeDeg);
  const lastDeg = lastHours(utcMs, observer.longitudeDeg) * 15;
  const sun = placeOf({ kind: 'solarSystem', body: 'Sun' }, observer, utcMs).ofDate;
  const vectorAt = (ofDate: Equatorial, seconds: number): Vector3 => {
    const hourAngleDeg = lastDeg + SIDEREAL_DEG_PER_S * seconds - ofDate.raHours * 15;
    return mount === 'altaz'
      ? altazVector(hourAngleDeg, ofDate.decDeg, latitudeDeg)
      : unitFromEquatorial({ raHours: hourAngleDeg / 15, decDeg: sign * ofDate.decDeg });
  };
  return {
    mount,
    directionAt: (ofDate, seconds) => {
      const [x, y, z] = vectorAt(ofDate, seconds);
      return {
        longitudeDeg: Math.atan2(y, x) * DEGREES_PER_RADIAN,
        latitudeDeg: Math.atan2(z, Math.hypot(x, y)) * DEGREES_PER_RADIAN,
      };
    },
    sunAt: (seconds) => vectorAt(sun, seconds),
    zenith: mount === 'altaz' ? [0, 0, 1] : [cosDeg(latitudeDeg), 0, sinDeg(Math.abs(latitudeDeg))],
  };
};

/** Altitude and azimuth of a mount's tube, degrees, for waypoints said in words. */
export const horizontalOfAxes = (
  mount: MountKind,
  axes: AxisAngles,
  latitudeDeg: number,
): { altitudeDeg: number; azimuthDeg: number } => {
  const { longitudeDeg, latitudeDeg: frameLatitudeDeg } = directionOf(mount, axes);
  if (mount === 'altaz') return { altitudeDeg: frameLatitudeDeg, azimuthDeg: (longitudeDeg + 360) % 360 };
  const [north, east, up] = altazVector(longitudeDeg, poleSign(latitudeDeg) * frameLatitudeDeg, latitudeDeg);
  return {
    altitudeDeg: Math.atan2(up, Math.hypot(north, east)) * DEGREES_PER_RADIAN,
    azimuthDeg: (Math.atan2(east, north) * DEGREES_PER_RADIAN + 360) % 360,
  };
};
