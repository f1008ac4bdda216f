/** The sky core's door: everything the rest of Pierhand may use of it. */
export * from './types.js';
export {
  add,
  angleBetween,
  equatorialFromVector,
  horizontalFromVector,
  horizontalSeparationDeg,
  multiply,
  normalized,
  positionAngleDeg,
  rotatedAbout,
  scale,
  separationDeg,
  unitFromEquatorial,
  unitFromHorizontal,
  wrapDeg180,
  wrapDeg360,
  wrapHours12,
  wrapHours24,
} from './angles.js';
export type { Vector3 } from './angles.js';
export { airmass } from './airmass.js';
export { altitudeCurve } from './altitude-curve.js';
export { bestTime } from './best-time.js';
export { apparentMagnitude } from './brightness.js';
export { lunarEclipses, solarEclipses, type Eclipse } from './eclipses.js';
export { jupiterMoons, type JupiterMoon } from './jupiter-moons.js';
export { moonAgeDays, moonLibration, moonPhaseName } from './moon-details.js';
export { planetLook, type PlanetLook } from './planet-look.js';
export { planetEvents, type PlanetEvent } from './planet-events.js';
export { sunAtLongitude } from './sun-longitude.js';
export { orbitMagnitude } from './orbit.js';
export { isWithinEphemeris } from './ephemeris-range.js';
export { horizonFrame } from './horizon-frame.js';
export { MOON, moonAt, moonSeparationDeg, moonlessDark } from './moon.js';
export type { MoonState } from './moon.js';
export { nextMoonPhase } from './moon-phase.js';
export { localDateOfNight, nightOf, type LocalDate } from './night.js';
export type { TimeSpan } from './night.js';
export { nightFrame } from './night-frame.js';
export {
  equatorialJ2000FromOfDate,
  equatorialOfDateFromJ2000,
  horizontalFromOfDate,
  horizontalOf,
  j2000FromHorizontal,
  ofDateFromHorizontal,
  placeOf,
} from './place.js';
export { airlessAltitudeDeg, apparentAltitudeDeg, refractionDeg } from './refraction.js';
export {
  HORIZON_ALTITUDE_DEG,
  SUN_HORIZON_ALTITUDE_DEG,
  altitudeCrossings,
  fixedRiseTransitSet,
  riseTransitSet,
} from './rise-set.js';
export type { RiseTransitSet } from './rise-set.js';
export { siderealTimes } from './sidereal-time.js';
export {
  extinctionOverZenith,
  magnitudePerArcsec2,
  moonlightFactor,
  moonlightNanolamberts,
  nakedEyeLimit,
  nanolamberts,
  siteNanolamberts,
  twilightNanolamberts,
} from './sky-brightness.js';
export { sunLevel, sunLimits, sunSafety } from './sun-safety.js';
export type { SunCircumstances, SunLevel, SunSafety } from './sun-safety.js';
export { sunAtWorst } from './sun-span.js';
export type { SunAtWorst } from './sun-span.js';
export { SUN, darkness, twilights } from './twilight.js';
export type { TwilightTimes, Twilights } from './twilight.js';
