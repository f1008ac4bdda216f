/** How the Earth stands and moves at an instant, and where on it an observer stands: what turns star places into sky places. */
import { Body, HelioState, Rotation_EQJ_EQD, SiderealTime } from 'astronomy-engine';
import type { AstroTime } from 'astronomy-engine';
import { MS_PER_DAY } from '../ground/durations.js';
import { createKept } from '../ground/kept.js';
import { add, cosDeg, normalized, scale, sinDeg } from './angles.js';
import type { Matrix3, Vector3 } from './angles.js';
import { engineTime } from './engine-time.js';
import type { FixedBody, Observer, UtcMs } from './types.js';

/** The speed of light in astronomical units a day (IAU 2012 B2 and the SI definition: 299 792 458 × 86 400 / 149 597 870 700). */
const LIGHT_AU_PER_DAY = 173.144_632_674_24;
const METRES_PER_AU = 149_597_870_700;
const DAYS_PER_JULIAN_YEAR = 365.25;
const RADIANS_PER_MAS = Math.PI / 648_000_000;

/** World Geodetic System 1984 (NGA.STND.0036, table 3.1). */
const WGS84_RADIUS_M = 6_378_137;
const WGS84_FLATTENING = 1 / 298.257_223_563;
/** Nominal mean angular velocity of the Earth in radians a second (WGS 84, same table). */
const EARTH_SPIN_RAD_PER_S = 7.292_115e-5;
const LIGHT_M_PER_S = 299_792_458;

/** The Earth at an instant, for any observer. */
export interface EarthState {
  readonly time: AstroTime;
  /** Greenwich apparent sidereal time in degrees, 0..360. */
  readonly gastDeg: number;
  /** Rotation from mean equator and equinox J2000 to true equator and equinox of date (precession and nutation). */
  readonly toDate: Matrix3;
  /** The Earth's position seen from the Sun, J2000 axes, astronomical units. */
  readonly positionAu: Vector3;
  /** The Earth's velocity over the speed of light, J2000 axes: what annual aberration adds to a unit vector. */
  readonly aberration: Vector3;
}

const rotationToDate = (time: AstroTime): Matrix3 => {
  const [a, b, c] = Rotation_EQJ_EQD(time).rot as [number[], number[], number[]];
  return [
    [a[0]!, b[0]!, c[0]!],
    [a[1]!, b[1]!, c[1]!],
    [a[2]!, b[2]!, c[2]!],
  ];
};

/** An answer asks for the same instants again and again, and every track for the nodes of the same days. */
const kept = createKept<UtcMs, EarthState>(500);

/**
 * The Earth's stance at an instant. The frame bias of ICRS against J2000 (0.02″) and the Sun's own motion about the
 * barycentre (0.01″ of aberration) are left out.
 */
export const earthAt = (utcMs: UtcMs): EarthState =>
  kept(utcMs, () => {
    const time = engineTime(utcMs);
    const state = HelioState(Body.Earth, time);
    return {
      time,
      gastDeg: SiderealTime(time) * 15,
      toDate: rotationToDate(time),
      positionAu: [state.x, state.y, state.z],
      aberration: [state.vx / LIGHT_AU_PER_DAY, state.vy / LIGHT_AU_PER_DAY, state.vz / LIGHT_AU_PER_DAY],
    };
  });

/** Precession and nutation alone, J2000 to date. */
export const precessionNutationAt = (utcMs: UtcMs): Matrix3 => rotationToDate(engineTime(utcMs));

/**
 * An observer's place as the rotations need it. The local meridian frame used with it has x to the equator's crossing of
 * the upper meridian, y to the east point and z to the north celestial pole.
 */
export interface Site {
  readonly longitudeDeg: number;
  readonly sinLatitude: number;
  readonly cosLatitude: number;
  /** Distance from the Earth's axis, astronomical units. */
  readonly axisDistanceAu: number;
  /** Height above the plane of the equator, astronomical units. */
  readonly equatorHeightAu: number;
  /** The observer's eastward speed by the Earth's spin over the speed of light: diurnal aberration. */
  readonly diurnalAberration: number;
}

export const siteOf = (observer: Observer): Site => {
  const sinLatitude = sinDeg(observer.latitudeDeg);
  const cosLatitude = cosDeg(observer.latitudeDeg);
  const shrink = (1 - WGS84_FLATTENING) ** 2;
  const normalM = WGS84_RADIUS_M / Math.sqrt(cosLatitude ** 2 + shrink * sinLatitude ** 2);
  const axisDistanceM = (normalM + observer.elevationM) * cosLatitude;
  return {
    longitudeDeg: observer.longitudeDeg,
    sinLatitude,
    cosLatitude,
    axisDistanceAu: axisDistanceM / METRES_PER_AU,
    equatorHeightAu: ((normalM * shrink + observer.elevationM) * sinLatitude) / METRES_PER_AU,
    diurnalAberration: (EARTH_SPIN_RAD_PER_S * axisDistanceM) / LIGHT_M_PER_S,
  };
};

/** A direction of date into the local meridian frame; `lastDeg` is the local apparent sidereal time in degrees. */
export const toMeridianFrame = (ofDate: Vector3, lastDeg: number): Vector3 => {
  const cosine = cosDeg(lastDeg);
  const sine = sinDeg(lastDeg);
  return [ofDate[0] * cosine + ofDate[1] * sine, ofDate[1] * cosine - ofDate[0] * sine, ofDate[2]];
};

export const fromMeridianFrame = (meridian: Vector3, lastDeg: number): Vector3 => toMeridianFrame(meridian, -lastDeg);

/** A body's geocentric vector in the meridian frame (astronomical units) as seen from the site instead. */
export const seenFromSite = (meridian: Vector3, site: Site): Vector3 => [
  meridian[0] - site.axisDistanceAu,
  meridian[1],
  meridian[2] - site.equatorHeightAu,
];

/** The meridian frame into east, north, zenith. */
export const toEastNorthUp = (meridian: Vector3, site: Site): Vector3 => [
  meridian[1],
  meridian[2] * site.cosLatitude - meridian[0] * site.sinLatitude,
  meridian[0] * site.cosLatitude + meridian[2] * site.sinLatitude,
];

export const fromEastNorthUp = (enu: Vector3, site: Site): Vector3 => [
  enu[2] * site.cosLatitude - enu[1] * site.sinLatitude,
  enu[0],
  enu[1] * site.cosLatitude + enu[2] * site.sinLatitude,
];

/** Degrees by which Greenwich apparent sidereal time runs on in a millisecond of UT1 (S. Aoki et al., A&A 105, 359 (1982)). */
export const SIDEREAL_DEG_PER_MS = 360.985_647_366_29 / MS_PER_DAY;

/**
 * The unit vector, J2000 axes, in which a fixed body stands at the instant, before aberration: proper motion in a straight
 * line from J2000.0 and annual parallax (J. Kovalevsky and P. K. Seidelmann, Fundamentals of Astrometry, ch. 6, without
 * radial velocity).
 */
export const fixedDirection = (body: FixedBody, earth: EarthState): Vector3 => {
  const raDeg = body.raHoursJ2000 * 15;
  const sinRa = sinDeg(raDeg);
  const cosRa = cosDeg(raDeg);
  const sinDec = sinDeg(body.decDegJ2000);
  const cosDec = cosDeg(body.decDegJ2000);
  const catalogued: Vector3 = [cosDec * cosRa, cosDec * sinRa, sinDec];
  const pmRa = body.pmRaCosDecMasPerYear ?? 0;
  const pmDec = body.pmDecMasPerYear ?? 0;
  const parallax = (body.parallaxMas ?? 0) * RADIANS_PER_MAS;
  if (pmRa === 0 && pmDec === 0 && parallax === 0) return catalogued;
  const years = earth.time.tt / DAYS_PER_JULIAN_YEAR;
  const east = pmRa * RADIANS_PER_MAS * years;
  const north = pmDec * RADIANS_PER_MAS * years;
  return normalized([
    catalogued[0] - sinRa * east - cosRa * sinDec * north - parallax * earth.positionAu[0],
    catalogued[1] + cosRa * east - sinRa * sinDec * north - parallax * earth.positionAu[1],
    catalogued[2] + cosDec * north - parallax * earth.positionAu[2],
  ]);
};

/** A direction with annual aberration, to first order in v/c (the second order is 0.001″). */
export const aberrated = (direction: Vector3, earth: EarthState): Vector3 =>
  normalized(add(direction, earth.aberration));

/** {@link aberrated} undone. */
export const unaberrated = (apparent: Vector3, earth: EarthState): Vector3 => {
  // |direction + v/c| is 1 + direction · v/c to first order; the apparent direction is near enough to take that with.
  const stretch =
    1 + apparent[0] * earth.aberration[0] + apparent[1] * earth.aberration[1] + apparent[2] * earth.aberration[2];
  return normalized(add(scale(apparent, stretch), scale(earth.aberration, -1)));
};
