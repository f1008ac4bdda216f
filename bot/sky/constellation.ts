/** In which constellation a direction lies. */
import { Constellation } from 'astronomy-engine';
import type { Equatorial } from './types.js';

/** The IAU's abbreviation ("Leo"), from a J2000 direction; the borders are those of E. Delporte (1930), by N. Roman's table (1987). */
export const constellationAt = ({ raHours, decDeg }: Equatorial): string => Constellation(raHours, decDeg).symbol;
