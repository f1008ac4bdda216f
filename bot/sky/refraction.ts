/** Atmospheric refraction of a standard atmosphere: 1010 hPa and 10 °C, visible light. */
import { cosDeg, sinDeg } from './angles.js';

/** Below this airless altitude the formula is no longer used; the lift is faded out instead. */
const FORMULA_FLOOR_DEG = -1;
const FADED_OUT_DEG = -15;

/** Formula 16.4 gives −0.0019′ at the zenith; adding this makes it exactly 0 there (Meeus, ch. 16). */
const ZENITH_CORRECTION_ARCMIN = 0.001_927_9;

const liftDeg = (altitudeDeg: number): number => {
  const argumentDeg = altitudeDeg + 10.3 / (altitudeDeg + 5.11);
  return Math.max(0, (1.02 * cosDeg(argumentDeg)) / sinDeg(argumentDeg) + ZENITH_CORRECTION_ARCMIN) / 60;
};

/**
 * How far refraction lifts a body of this airless altitude, in degrees (≥ 0).
 * Th. Sæmundsson, Sky and Telescope 72, 70 (1986), as J. Meeus, Astronomical Algorithms (2nd ed.), formula 16.4.
 * Below −1°, where nothing is seen and the formula soon fails, the lift fades linearly to nothing at −15°, so that apparent
 * altitude stays continuous and rising with airless altitude.
 */
export const refractionDeg = (airlessAltitudeDeg: number): number => {
  if (airlessAltitudeDeg >= FORMULA_FLOOR_DEG) return liftDeg(Math.min(90, airlessAltitudeDeg));
  if (airlessAltitudeDeg <= FADED_OUT_DEG) return 0;
  return (liftDeg(FORMULA_FLOOR_DEG) * (airlessAltitudeDeg - FADED_OUT_DEG)) / (FORMULA_FLOOR_DEG - FADED_OUT_DEG);
};

/**
 * How far a body that is seen at this altitude (0..90°) has been lifted, in degrees: G. G. Bennett, Journal of Navigation 35, 255 (1982),
 * as Meeus, formula 16.3.
 */
export const refractionAtApparentDeg = (apparentDeg: number): number => {
  const argumentDeg = apparentDeg + 7.31 / (apparentDeg + 4.4);
  return Math.max(0, cosDeg(argumentDeg) / sinDeg(argumentDeg)) / 60;
};

/**
 * By how much the lift of other air differs from that of the standard one: Meeus, ch. 16, P/1010 × 283/(273 + T).
 * @param pressureHPa at the observer, not brought to sea level
 */
export const airFactor = (pressureHPa: number, temperatureC: number): number =>
  (pressureHPa / 1010) * (283 / (273 + temperatureC));

/** Refracted altitude in degrees from the airless altitude. */
export const apparentAltitudeDeg = (airlessAltitudeDeg: number): number =>
  airlessAltitudeDeg + refractionDeg(airlessAltitudeDeg);

/** Airless altitude in degrees from the refracted one: the inverse of {@link apparentAltitudeDeg}. */
export const airlessAltitudeDeg = (apparentDeg: number): number => {
  let airless = apparentDeg;
  // The lift changes by less than a fifth of the change in altitude, so each turn gains a digit or more.
  for (let turn = 0; turn < 16; turn++) airless = apparentDeg - refractionDeg(airless);
  return airless;
};
