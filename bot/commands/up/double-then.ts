/** A double star as its orbit has it in the year that is asked about; those without one stay as they were measured. */
import type { Target } from '../../catalogue/index.js';
import { placeInOrbit } from '../../sky/binary-orbit.js';
import { julianDateOf } from '../../sky/julian-date.js';
import type { UtcMs } from '../../sky/types.js';

const J2000_JD = 2_451_545;
const DAYS_A_YEAR = 365.25;

export const doubleThen = (target: Target, utcMs: UtcMs): Target => {
  const { double } = target;
  if (double?.orbit === undefined) return target;
  const year = 2000 + (julianDateOf(utcMs) - J2000_JD) / DAYS_A_YEAR;
  return { ...target, double: { ...double, ...placeInOrbit(double.orbit, year), year } };
};
