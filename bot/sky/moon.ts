/** The Moon as it troubles an observer: where it is, how full, how near a target, and when the dark is free of it. */
import { AngleBetween, DEG2RAD, RotateVector, Rotation_EQJ_ECT, Vector } from 'astronomy-engine';
import type { AstroTime } from 'astronomy-engine';
import { add, ARCSEC_PER_RADIAN, wrapDeg360 } from './angles.js';
import { intervalsBelow } from './crossings.js';
import { earthAt } from './earth.js';
import { engineTime } from './engine-time.js';
import type { TimeSpan } from './night.js';
import { placeOf } from './place.js';
import { aboveHorizon } from './rise-set.js';
import { bodySeparationDeg } from './separation.js';
import { skyTrack } from './sky-track.js';
import { apparentVector } from './solar-system.js';
import { darkness } from './twilight.js';
import type { Observer, Place, SkyBody, UtcMs } from './types.js';

export const MOON: SkyBody = { kind: 'solarSystem', body: 'Moon' };

export interface MoonState {
  readonly place: Place;
  /** Illuminated fraction of the disc seen from the Earth's centre, 0..1. */
  readonly illuminatedFraction: number;
  /** Angle Sun–Moon–Earth, 0 (full) to 180° (new). */
  readonly phaseAngleDeg: number;
  /** Ecliptic longitude of the Moon less the Sun's, 0..360°: 0 new, 90 first quarter, 180 full, 270 last quarter. */
  readonly elongationDeg: number;
  readonly waxing: boolean;
}

/** Apparent geocentric longitude on the true ecliptic of date, in degrees. */
const eclipticLongitudeDeg = (body: 'Sun' | 'Moon', time: AstroTime): number => {
  const [x, y, z] = apparentVector(body, time);
  const ecliptic = RotateVector(Rotation_EQJ_ECT(time), new Vector(x, y, z, time));
  return (Math.atan2(ecliptic.y, ecliptic.x) * 180) / Math.PI;
};

/** What the engine's `Illumination` gives, from vectors that its place needs as well: the lunar theory is the dearest part of both. */
const moonPhaseAngleDeg = (utcMs: UtcMs): number => {
  const { time, positionAu } = earthAt(utcMs);
  const fromEarth = apparentVector('Moon', time);
  const [x, y, z] = add(positionAu, fromEarth);
  return AngleBetween(new Vector(...fromEarth, time), new Vector(x, y, z, time));
};

const KM_PER_AU = 149_597_870.7;

/** From the Earth's centre, in kilometres. */
export const moonDistanceKm = (utcMs: UtcMs): number =>
  Math.hypot(...apparentVector('Moon', earthAt(utcMs).time)) * KM_PER_AU;

/** Mean radius (IAU Working Group on Cartographic Coordinates, 2015). */
const RADIUS_KM = 1737.4;
/** As it looks from so far away, in arcseconds. */
export const moonDiameterArcsec = (distanceKm: number): number =>
  2 * Math.asin(RADIUS_KM / distanceKm) * ARCSEC_PER_RADIAN;

/** Where it is and how bright, without what tells waxing from waning, which costs as much again. */
export const moonLightAt = (
  observer: Observer,
  utcMs: UtcMs,
): Pick<MoonState, 'place' | 'illuminatedFraction' | 'phaseAngleDeg'> => {
  const phaseAngleDeg = moonPhaseAngleDeg(utcMs);
  return {
    place: placeOf(MOON, observer, utcMs),
    illuminatedFraction: (1 + Math.cos(DEG2RAD * phaseAngleDeg)) / 2,
    phaseAngleDeg,
  };
};

export const moonAt = (observer: Observer, utcMs: UtcMs): MoonState => {
  const time = engineTime(utcMs);
  const elongationDeg = wrapDeg360(eclipticLongitudeDeg('Moon', time) - eclipticLongitudeDeg('Sun', time));
  return { ...moonLightAt(observer, utcMs), elongationDeg, waxing: elongationDeg < 180 };
};

/** The angle between a body and the Moon's centre in the observer's sky, 0..180°. */
export const moonSeparationDeg = (body: SkyBody, observer: Observer, utcMs: UtcMs): number =>
  bodySeparationDeg(MOON, body, observer, utcMs);

/** The stretches of astronomical darkness within the span in which the Moon is not up, in order; empty when there are none. */
export const moonlessDark = (observer: Observer, startUtcMs: UtcMs, endUtcMs: UtcMs): TimeSpan[] => {
  const dark = darkness(observer, startUtcMs, endUtcMs);
  if (dark === null) return [];
  return intervalsBelow(aboveHorizon(MOON, skyTrack(MOON, observer)), dark.startUtcMs, dark.endUtcMs).map(
    (interval) => ({ startUtcMs: interval.startUtcMs, endUtcMs: interval.endUtcMs }),
  );
};
