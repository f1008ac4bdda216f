/** Where a body is for an observer at an instant, and the ways between J2000, of-date and horizontal directions. */
import {
  equatorialFromVector,
  horizontalFromVector,
  multiply,
  multiplyTransposed,
  normalized,
  unitFromEquatorial,
  unitFromHorizontal,
  wrapHours12,
} from './angles.js';
import type { Vector3 } from './angles.js';
import {
  aberrated,
  earthAt,
  fixedDirection,
  fromEastNorthUp,
  fromMeridianFrame,
  precessionNutationAt,
  seenFromSite,
  siteOf,
  toEastNorthUp,
  toMeridianFrame,
  unaberrated,
} from './earth.js';
import type { EarthState, Site } from './earth.js';
import { apparentAltitudeDeg } from './refraction.js';
import { gastHours } from './sidereal-time.js';
import { apparentMovingVector, astrometricMovingVector } from './solar-system.js';
import type { Equatorial, Horizontal, Observer, Place, SkyBody, UtcMs } from './types.js';

const withDiurnalAberration = (meridian: Vector3, site: Site): Vector3 => {
  const unit = normalized(meridian);
  return normalized([unit[0], unit[1] + site.diurnalAberration, unit[2]]);
};

/** The apparent topocentric direction in the local meridian frame. */
const apparentMeridianDirection = (body: SkyBody, earth: EarthState, site: Site): Vector3 => {
  const lastDeg = earth.gastDeg + site.longitudeDeg;
  const geocentric =
    body.kind === 'fixed' ? aberrated(fixedDirection(body, earth), earth) : apparentMovingVector(body, earth);
  const meridian = toMeridianFrame(multiply(earth.toDate, geocentric), lastDeg);
  return withDiurnalAberration(body.kind === 'fixed' ? meridian : seenFromSite(meridian, site), site);
};

/** The astrometric topocentric direction, J2000 axes: no aberration. */
const astrometricDirection = (body: SkyBody, earth: EarthState, site: Site): Vector3 => {
  if (body.kind === 'fixed') return fixedDirection(body, earth);
  const lastDeg = earth.gastDeg + site.longitudeDeg;
  const geocentric = multiply(earth.toDate, astrometricMovingVector(body, earth));
  const topocentric = seenFromSite(toMeridianFrame(geocentric, lastDeg), site);
  return multiplyTransposed(earth.toDate, fromMeridianFrame(topocentric, lastDeg));
};

/**
 * Everything about where a body is for an observer at an instant. Fixed bodies carry proper motion, parallax, precession,
 * nutation, annual and diurnal aberration; the Sun, the Moon and the planets light-time, aberration and the observer's
 * parallax. The bending of light by the Sun (1.8″ at its edge) is left out.
 */
export const placeOf = (body: SkyBody, observer: Observer, utcMs: UtcMs): Place => {
  const earth = earthAt(utcMs);
  const site = siteOf(observer);
  const meridian = apparentMeridianDirection(body, earth, site);
  const lastDeg = earth.gastDeg + site.longitudeDeg;
  const ofDate = equatorialFromVector(fromMeridianFrame(meridian, lastDeg));
  const horizontal = horizontalFromVector(toEastNorthUp(meridian, site));
  return {
    j2000: equatorialFromVector(astrometricDirection(body, earth, site)),
    ofDate,
    altitudeDeg: horizontal.altitudeDeg,
    apparentAltitudeDeg: apparentAltitudeDeg(horizontal.altitudeDeg),
    azimuthDeg: horizontal.azimuthDeg,
    hourAngleHours: wrapHours12(lastDeg / 15 - ofDate.raHours),
  };
};

/** Airless altitude and azimuth of a body: {@link placeOf} without the rest. */
export const horizontalOf = (body: SkyBody, observer: Observer, utcMs: UtcMs): Horizontal => {
  const site = siteOf(observer);
  return horizontalFromVector(toEastNorthUp(apparentMeridianDirection(body, earthAt(utcMs), site), site));
};

/** Mean equator and equinox J2000 to true equator and equinox of date: precession and nutation, no aberration. */
export const equatorialOfDateFromJ2000 = (j2000: Equatorial, utcMs: UtcMs): Equatorial =>
  equatorialFromVector(multiply(precessionNutationAt(utcMs), unitFromEquatorial(j2000)));

/** The inverse of {@link equatorialOfDateFromJ2000}. */
export const equatorialJ2000FromOfDate = (ofDate: Equatorial, utcMs: UtcMs): Equatorial =>
  equatorialFromVector(multiplyTransposed(precessionNutationAt(utcMs), unitFromEquatorial(ofDate)));

/** Airless altitude and azimuth of a direction of date (apparent, topocentric): a pure rotation. */
export const horizontalFromOfDate = (ofDate: Equatorial, observer: Observer, utcMs: UtcMs): Horizontal => {
  const lastDeg = gastHours(utcMs) * 15 + observer.longitudeDeg;
  return horizontalFromVector(toEastNorthUp(toMeridianFrame(unitFromEquatorial(ofDate), lastDeg), siteOf(observer)));
};

/** The direction of date at an airless altitude and azimuth: the inverse of {@link horizontalFromOfDate}. */
export const ofDateFromHorizontal = (horizontal: Horizontal, observer: Observer, utcMs: UtcMs): Equatorial => {
  const lastDeg = gastHours(utcMs) * 15 + observer.longitudeDeg;
  return equatorialFromVector(
    fromMeridianFrame(fromEastNorthUp(unitFromHorizontal(horizontal), siteOf(observer)), lastDeg),
  );
};

/**
 * The J2000 direction of a star seen at an airless altitude and azimuth: aberration, nutation and precession undone, so that
 * a fixed body without proper motion put there by {@link horizontalOf} comes back as catalogued.
 */
export const j2000FromHorizontal = (horizontal: Horizontal, observer: Observer, utcMs: UtcMs): Equatorial => {
  const earth = earthAt(utcMs);
  const site = siteOf(observer);
  const seen = fromEastNorthUp(unitFromHorizontal(horizontal), site);
  const meridian: Vector3 = [seen[0], seen[1] - site.diurnalAberration, seen[2]];
  const ofDate = normalized(fromMeridianFrame(meridian, earth.gastDeg + site.longitudeDeg));
  return equatorialFromVector(unaberrated(multiplyTransposed(earth.toDate, ofDate), earth));
};
