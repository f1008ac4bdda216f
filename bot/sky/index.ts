/** The sky core's door: everything the rest of Pierhand may use of it. */
export * from './types.js';
export {
  add, angleBetween, cross, dot, equatorialFromVector, horizontalFromVector, horizontalSeparationDeg, multiply,
  multiplyTransposed, norm, normalized, positionAngleDeg, rotatedAbout, scale, separationDeg, sphericalOf,
  unitFromEquatorial, unitFromHorizontal, unitVector, wrapDeg180, wrapDeg360, wrapHours12, wrapHours24,
} from './angles.js';
export type { Matrix3, Vector3 } from './angles.js';
export { airmass } from './airmass.js';
export { altitudeCurve } from './altitude-curve.js';
export type { AltitudePoint } from './altitude-curve.js';
export { bestTime } from './best-time.js';
export { apparentMagnitude } from './brightness.js';
export type { Crossing } from './crossings.js';
export {
  EPHEMERIS_END_UTC_MS, EPHEMERIS_FIRST_YEAR, EPHEMERIS_LAST_YEAR, EPHEMERIS_START_UTC_MS, isWithinEphemeris,
} from './ephemeris-range.js';
export { horizonFrame } from './horizon-frame.js';
export type { HorizonFrame } from './horizon-frame.js';
export { MOON, moonAt, moonSeparationDeg, moonlessDark } from './moon.js';
export type { MoonState } from './moon.js';
export { localDateOfNight, nightOf } from './night.js';
export type { LocalDate, TimeSpan } from './night.js';
export { nightFrame } from './night-frame.js';
export type { NightDirection, NightFrame } from './night-frame.js';
export {
  equatorialJ2000FromOfDate, equatorialOfDateFromJ2000, horizontalFromOfDate, horizontalOf, j2000FromHorizontal,
  ofDateFromHorizontal, placeOf,
} from './place.js';
export { airlessAltitudeDeg, apparentAltitudeDeg, refractionDeg } from './refraction.js';
export {
  HORIZON_ALTITUDE_DEG, SUN_HORIZON_ALTITUDE_DEG, altitudeCrossings, fixedRiseTransitSet, riseTransitSet,
} from './rise-set.js';
export type { RiseTransitSet } from './rise-set.js';
export { bodySeparationDeg } from './separation.js';
export { lastHours, siderealTimes } from './sidereal-time.js';
export type { SiderealTimes } from './sidereal-time.js';
export { SUN_CAUTION_DEG, SUN_DANGER_DEG, sunLevel, sunLimits, sunSafety, sunSeparationDeg } from './sun-safety.js';
export type { SunCircumstances, SunLevel, SunLimits, SunSafety } from './sun-safety.js';
export { SUN, darkness, twilights } from './twilight.js';
export type { TwilightTimes, Twilights } from './twilight.js';
