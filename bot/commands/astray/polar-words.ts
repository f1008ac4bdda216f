/** What several landings say of an equatorial mount's own errors, in the mount's words: screws to turn, zero points, cone, what is left. */
import type { Observation } from '../../pointing/miss/astray-types.js';
import { fitPolarAxis, type PolarFit } from '../../pointing/miss/polar-fit.js';
import type { Fact, Json } from '../../reply/reply.js';
import { degrees, listed, rounded } from '../../reply/wording.js';
import { lastHours } from '../../sky/sidereal-time.js';
import type { Circumstances } from '../../pointing/miss/astray-types.js';

/** The formulas hold for small errors alone. */
const GREATEST_DEG = 10;

const arcminutes = (deg: number): string => {
  const size = Math.abs(deg) * 60;
  return size >= 90 ? degrees(size / 60, 1) : `${Math.round(size)}′`;
};

/** Null where the mount has no polar axis, or landings are too few or too wild. */
export const polarFit = (
  { mount, observer, utcMs }: Circumstances,
  observations: readonly Observation[],
): PolarFit | null => {
  if (mount === 'altaz') return null;
  const misses = observations.flatMap((seen) =>
    seen.kind === 'landed' ? [{ name: seen.target.name, aim: seen.target.ofDate, landed: seen.ofDate }] : [],
  );
  const fit = fitPolarAxis(misses, observer.latitudeDeg, lastHours(utcMs, observer.longitudeDeg));
  const isSmall = fit !== null && Math.max(Math.abs(fit.raisedDeg), Math.abs(fit.turnedDeg)) < GREATEST_DEG;
  return isSmall ? fit : null;
};

/** What is smaller than twice its own uncertainty is no error to turn a screw for. */
const NOISE_SIGMAS = 2;

const screwWords = (errorDeg: number, sigmaDeg: number, [over, under]: readonly [string, string]): string =>
  Math.abs(errorDeg) < NOISE_SIGMAS * sigmaDeg
    ? `${arcminutes(errorDeg)}, within the noise (±${arcminutes(NOISE_SIGMAS * sigmaDeg)}): leave it`
    : `${arcminutes(errorDeg)} ± ${arcminutes(sigmaDeg)} ${errorDeg > 0 ? over : under} by that`;

/** "Vega 2′, Capella 3′ and Deneb 1′". */
export const leftWords = ({ leftDeg }: PolarFit): string =>
  listed(leftDeg.map(({ name, offDeg }) => `${name} ${arcminutes(offDeg)}`));

export const polarFacts = (fit: PolarFit, isSouthern: boolean): Fact[] => {
  const { raisedDeg, turnedDeg, raisedSigmaDeg, turnedSigmaDeg, zeroHourAngleDeg, zeroDecDeg, coneDeg, rmsDeg } = fit;
  const east = 'too far east: turn its upper end west';
  const west = 'too far west: turn its upper end east';
  return [
    {
      label: `Polar axis by ${fit.leftDeg.length} stars`,
      value: `height ${screwWords(raisedDeg, raisedSigmaDeg, ['too high: turn it down', 'too low: turn it up'])}; azimuth ${screwWords(turnedDeg, turnedSigmaDeg, isSouthern ? [west, east] : [east, west])}.`,
    },
    {
      label: 'Beside that',
      value: `zero points ${arcminutes(zeroHourAngleDeg)} in hour angle, ${arcminutes(zeroDecDeg)} in declination${coneDeg === null ? '' : `; cone ${arcminutes(coneDeg)}`}. An alignment on a star takes the zero points away.`,
    },
    {
      label: 'Left over',
      value: `${arcminutes(rmsDeg)} on the mean: ${leftWords(fit)}.`,
    },
  ];
};

export const polarData = (fit: PolarFit): Json => ({
  raisedArcmin: rounded(fit.raisedDeg * 60, 2),
  raisedSigmaArcmin: rounded(fit.raisedSigmaDeg * 60, 2),
  turnedArcmin: rounded(fit.turnedDeg * 60, 2),
  turnedSigmaArcmin: rounded(fit.turnedSigmaDeg * 60, 2),
  zeroHourAngleArcmin: rounded(fit.zeroHourAngleDeg * 60, 2),
  zeroDecArcmin: rounded(fit.zeroDecDeg * 60, 2),
  coneArcmin: fit.coneDeg === null ? null : rounded(fit.coneDeg * 60, 2),
  rmsArcmin: rounded(fit.rmsDeg * 60, 2),
  residuals: fit.leftDeg.map(({ name, offDeg }) => ({ target: name, arcmin: rounded(offDeg * 60, 2) })),
});
