/** Where the fainter star of a pair stands beside the brighter in a year, by the elements of its orbit. */
import { wrapDeg360 } from './angles.js';

/** As catalogues of visual binaries list them. */
export interface BinaryOrbit {
  readonly periodYears: number;
  readonly periastronYear: number;
  /** 0..1, exclusive. */
  readonly eccentricity: number;
  readonly semiMajorArcsec: number;
  readonly inclinationDeg: number;
  readonly nodeDeg: number;
  readonly periastronDeg: number;
}

const RADIANS_A_DEGREE = Math.PI / 180;
const STEPS = 60;

/** Kepler's equation by Newton's steps. */
const eccentricAnomaly = (mean: number, eccentricity: number): number => {
  let found = eccentricity > 0.8 ? Math.PI : mean;
  for (let i = 0; i < STEPS; i++)
    found -= (found - eccentricity * Math.sin(found) - mean) / (1 - eccentricity * Math.cos(found));
  return found;
};

/** Separation and position angle (0..360° from north through east). J. Meeus, Astronomical Algorithms (2nd ed.), chapter 57. */
export const placeInOrbit = (
  orbit: BinaryOrbit,
  year: number,
): { readonly separationArcsec: number; readonly positionAngleDeg: number } => {
  const { eccentricity: e, semiMajorArcsec, periodYears, periastronYear } = orbit;
  const cycles = (year - periastronYear) / periodYears;
  const anomaly = eccentricAnomaly(2 * Math.PI * (cycles - Math.floor(cycles)), e);
  const radius = semiMajorArcsec * (1 - e * Math.cos(anomaly));
  const trueAnomaly =
    2 * Math.atan2(Math.sqrt(1 + e) * Math.sin(anomaly / 2), Math.sqrt(1 - e) * Math.cos(anomaly / 2));
  const along = trueAnomaly + orbit.periastronDeg * RADIANS_A_DEGREE;
  const x = radius * Math.cos(along);
  const y = radius * Math.sin(along) * Math.cos(orbit.inclinationDeg * RADIANS_A_DEGREE);
  return {
    separationArcsec: Math.hypot(x, y),
    positionAngleDeg: wrapDeg360(Math.atan2(y, x) / RADIANS_A_DEGREE + orbit.nodeDeg),
  };
};
