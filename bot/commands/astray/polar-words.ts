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

export const polarFacts = (fit: PolarFit, isSouthern: boolean): Fact[] => {
  const { raisedDeg, turnedDeg, zeroHourAngleDeg, zeroDecDeg, coneDeg, leftDeg, rmsDeg } = fit;
  const isEast = turnedDeg > 0 !== isSouthern;
  return [
    {
      label: `Polar axis by ${leftDeg.length} stars`,
      value: `${arcminutes(raisedDeg)} too ${raisedDeg > 0 ? 'high: turn it down' : 'low: turn it up'} by that; turned ${arcminutes(turnedDeg)} too far ${isEast ? 'east: turn its upper end west' : 'west: turn its upper end east'} by that.`,
    },
    {
      label: 'Beside that',
      value: `zero points ${arcminutes(zeroHourAngleDeg)} in hour angle, ${arcminutes(zeroDecDeg)} in declination${coneDeg === null ? '' : `; cone ${arcminutes(coneDeg)}`}. An alignment on a star takes the zero points away.`,
    },
    {
      label: 'Left over',
      value: `${arcminutes(rmsDeg)} on the mean: ${listed(leftDeg.map(({ name, offDeg }) => `${name} ${arcminutes(offDeg)}`))}.`,
    },
  ];
};

export const polarData = (fit: PolarFit): Json => ({
  raisedArcmin: rounded(fit.raisedDeg * 60, 2),
  turnedArcmin: rounded(fit.turnedDeg * 60, 2),
  zeroHourAngleArcmin: rounded(fit.zeroHourAngleDeg * 60, 2),
  zeroDecArcmin: rounded(fit.zeroDecDeg * 60, 2),
  coneArcmin: fit.coneDeg === null ? null : rounded(fit.coneDeg * 60, 2),
  rmsArcmin: rounded(fit.rmsDeg * 60, 2),
  residuals: fit.leftDeg.map(({ name, offDeg }) => ({ target: name, arcmin: rounded(offDeg * 60, 2) })),
});
