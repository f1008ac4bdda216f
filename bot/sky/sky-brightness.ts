/** How bright the sky is where a target stands: the site's own glow, moonlight and twilight, in magnitudes a square arcsecond (V). */
import { sinDeg } from './angles.js';

/** Extinction at the zenith at a low site on a good night, V magnitudes per air mass; common practice, no source. */
export const EXTINCTION_MAG_PER_AIRMASS = 0.25;

/** Magnitude a square arcsecond to nanolamberts and back: R. H. Garstang, PASP 98, 364 (1986), formula 19. */
const LAMBERT_ZERO_MAG = 20.7233;
const LAMBERT_PER_MAG = 0.92104;
export const nanolamberts = (magPerArcsec2: number): number =>
  34.08 * Math.exp(LAMBERT_ZERO_MAG - LAMBERT_PER_MAG * magPerArcsec2);
export const magnitudePerArcsec2 = (nanolambert: number): number =>
  (LAMBERT_ZERO_MAG - Math.log(nanolambert / 34.08)) / LAMBERT_PER_MAG;

const tenTo = (power: number): number => Math.exp(power * Math.LN10);

/** Air masses of scattering air towards a zenith distance; 1 at the zenith, 5 at the horizon (Krisciunas and Schaefer 1991, formula 3). */
export const scatteringAirmass = (altitudeDeg: number): number => {
  const sinZenithDistance = Math.cos((Math.max(0, altitudeDeg) * Math.PI) / 180);
  // Asked for thousands of times a list; a power costs ten times a root.
  return 1 / Math.sqrt(1 - 0.96 * sinZenithDistance * sinZenithDistance);
};

export interface MoonlightAt {
  readonly moonAltitudeDeg: number;
  /** Angle Sun–Moon–Earth, 0 (full) to 180° (new). */
  readonly phaseAngleDeg: number;
}

/** What does not change from one place in the sky to the next: the Moon's light outside the air and through it. */
export const moonlightFactor = (
  { moonAltitudeDeg, phaseAngleDeg }: MoonlightAt,
  extinction = EXTINCTION_MAG_PER_AIRMASS,
): number => {
  if (moonAltitudeDeg <= 0) return 0;
  const alpha = Math.abs(phaseAngleDeg);
  // Formula 8 with 9: illuminance in foot-candles of a Moon of magnitude −12.73 + 0.026 α + 4e−9 α⁴.
  const illuminance = 10 ** (-0.4 * (3.84 + 0.026 * alpha + 4e-9 * alpha ** 4));
  return illuminance * 10 ** (-0.4 * extinction * scatteringAirmass(moonAltitudeDeg));
};

/**
 * Brightness of moonlit air in nanolamberts, V band. K. Krisciunas and B. E. Schaefer, "A model of the brightness of moonlight",
 * PASP 103, 1033 (1991), formulas 15 and 21; good to 8–23 %. Nearer to the Moon than 10° the law of formula 19 takes over.
 */
export const moonlightNanolamberts = (
  factor: number,
  separationDeg: number,
  altitudeDeg: number,
  extinction = EXTINCTION_MAG_PER_AIRMASS,
): number => {
  if (factor === 0) return 0;
  const rho = Math.max(0.25, separationDeg);
  const cosRho = Math.cos((rho * Math.PI) / 180);
  const rayleigh = 10 ** 5.36 * (1.06 + cosRho * cosRho);
  const mie = rho < 10 ? 6.2e7 / (rho * rho) : tenTo(6.15 - rho / 40);
  return (rayleigh + mie) * factor * (1 - tenTo(-0.4 * extinction * scatteringAirmass(altitudeDeg)));
};

/**
 * Twilight at the zenith in nanolamberts by the Sun's altitude. From −5° to −13°: F. Patat, O. S. Ugolnikov and O. V. Postylyakov,
 * A&A 455, 385 (2006), V band, coefficients from memory; beyond, to nothing at −18°, and in brighter twilight: common practice.
 */
export const twilightNanolamberts = (sunAltitudeDeg: number): number => {
  if (sunAltitudeDeg <= -18) return 0;
  const fit = (depthDeg: number): number => 11.84 + 1.518 * (depthDeg - 5) - 0.057 * (depthDeg - 5) ** 2;
  const depthDeg = -sunAltitudeDeg;
  if (depthDeg > 13) return nanolamberts(fit(13) + 0.95 * (depthDeg - 13));
  if (depthDeg >= 5) return nanolamberts(fit(depthDeg));
  return nanolamberts(Math.max(3.5, fit(5) - 1.45 * (5 - depthDeg)));
};

/** The site's own sky away from the zenith, in nanolamberts: brighter as the air thickens (Krisciunas and Schaefer 1991, formula 2). */
export const siteNanolamberts = (zenithMagPerArcsec2: number, altitudeDeg: number): number => {
  const airmass = scatteringAirmass(altitudeDeg);
  return nanolamberts(zenithMagPerArcsec2) * tenTo(-0.4 * EXTINCTION_MAG_PER_AIRMASS * (airmass - 1)) * airmass;
};

/** Magnitudes lost to the air, over the zenith's loss, at an altitude (plane-parallel air, held at 3° above the horizon). */
export const extinctionOverZenith = (altitudeDeg: number): number =>
  EXTINCTION_MAG_PER_AIRMASS * (1 / sinDeg(Math.max(3, altitudeDeg)) - 1);

/**
 * Faintest star seen with the naked eye under a sky of this brightness: N. Bogard's fit to Schaefer's visibility model, as
 * commonly quoted; 6.6 under 21.8, 4.0 under 18.3.
 */
export const nakedEyeLimit = (skyMagPerArcsec2: number): number =>
  7.93 - 5 * Math.log10(10 ** (4.316 - skyMagPerArcsec2 / 5) + 1);
