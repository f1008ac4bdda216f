/** What a target is, in one line: kind, constellation, magnitude, size or separation, and when a variable star is next at its extreme. */
import { type DoubleStar, type Target, constellationName } from '../../catalogue/index.js';
import { magnitudeText } from '../../reply/wording.js';
import { julianDateOf, utcMsOfJulianDate } from '../../sky/julian-date.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalDate, formatLocalDateTime } from '../../times/index.js';

/** "3.0° × 1.2°"; null where it is not known. */
export const sizeWords = ({ sizeArcmin, minorSizeArcmin }: Target): string | null => {
  if (sizeArcmin === null) return null;
  const inUnit = (arcmin: number): string =>
    sizeArcmin >= 120 ? `${(arcmin / 60).toFixed(1)}°` : `${arcmin < 10 ? arcmin.toFixed(1) : Math.round(arcmin)}′`;
  return minorSizeArcmin === null || inUnit(minorSizeArcmin) === inUnit(sizeArcmin)
    ? `${inUnit(sizeArcmin)} across`
    : `${inUnit(sizeArcmin)} × ${inUnit(minorSizeArcmin)}`;
};

/** "35″ apart at 54° (2021)": the position angle, and the year of both. */
export const apartWords = ({ separationArcsec, positionAngleDeg, year }: DoubleStar): string => {
  const apart = separationArcsec < 10 ? separationArcsec.toFixed(1) : String(Math.round(separationArcsec));
  return `${apart}″ apart at ${Math.round(positionAngleDeg)}° (${Math.floor(year)})`;
};

const doubleWords = ({ double }: Target): string | null =>
  double === null
    ? null
    : `${magnitudeText(double.magnitudes[0])} and ${magnitudeText(double.magnitudes[1])}, ${apartWords(double)}`;

/** Stars whose period is so long keep it badly: their extremes are told by the week. Common practice, no source. */
const LOOSE_PERIOD_DAYS = 80;
const WEEK_DAYS = 7;

/**
 * The next extreme after an instant: to ten minutes for those that keep time (heliocentric time taken as the observer's, up to 8
 * minutes), the week of it for those that do not.
 */
const nextExtreme = ({ variable }: Target, zone: string, fromUtcMs: UtcMs): string | null => {
  if (variable?.periodDays == null || variable.epochJd === null || variable.epochIs === null) return null;
  const { periodDays, epochJd, epochIs } = variable;
  const isLoose = periodDays > LOOSE_PERIOD_DAYS;
  const cycles = Math.ceil((julianDateOf(fromUtcMs) - (isLoose ? WEEK_DAYS : 0) - epochJd) / periodDays);
  const nextUtcMs = utcMsOfJulianDate(epochJd + cycles * periodDays);
  return isLoose
    ? `next ${epochIs} about ${formatLocalDate(nextUtcMs, zone)}, give or take weeks`
    : `next ${epochIs} about ${formatLocalDateTime(Math.round(nextUtcMs / 600_000) * 600_000, zone)}`;
};

const variableWords = (target: Target, zone: string, fromUtcMs: UtcMs): string | null => {
  const { variable } = target;
  if (variable === null) return null;
  const range = `${variable.type}, mag ${magnitudeText(variable.brightestMagnitude)} to ${magnitudeText(variable.faintestMagnitude)}`;
  const period = variable.periodDays === null ? null : `every ${variable.periodDays.toPrecision(3)} days`;
  return [range, period, nextExtreme(target, zone, fromUtcMs)].filter((part) => part !== null).join(', ');
};

/** "emission nebula in Orion, mag 4.0, 85′ × 60′". */
export const whatItIs = (target: Target, shownMagnitude: number | null, zone: string, fromUtcMs: UtcMs): string => {
  const { kindText, constellation } = target;
  const place = constellation === null ? kindText : `${kindText} in ${constellationName(constellation)}`;
  const double = doubleWords(target);
  return [
    place,
    shownMagnitude === null || double !== null || target.variable !== null
      ? null
      : `mag ${magnitudeText(shownMagnitude)}`,
    double,
    sizeWords(target),
    variableWords(target, zone, fromUtcMs),
  ]
    .filter((part) => part !== null)
    .join(', ');
};
