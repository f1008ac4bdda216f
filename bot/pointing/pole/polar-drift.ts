/** How good a polar alignment must be: the drift that a misaligned polar axis brings into an exposure. */

/** The sky's turn in radians a minute of time: 2π over the 1436.07 min of a sidereal day. */
export const TURN_PER_MINUTE = (2 * Math.PI) / 1436.068;

/**
 * Greatest drift in declination, arcseconds, for a polar axis off by `errorArcmin` during `minutes` of tracking: the star runs
 * on a circle whose centre is that far from the pole (M. A. Covington, Astrophotography for the Amateur, appendix B;
 * F. Barrett, Measuring Polar Axis Alignment Error, 2016).
 */
export const greatestDeclinationDriftArcsec = (errorArcmin: number, minutes: number): number =>
  errorArcmin * 60 * TURN_PER_MINUTE * minutes;

/** Drift that hardly shows in a picture; common practice, no source. */
export const HARDLY_SHOWS_ARCSEC = 2;

/** The inverse: how far the axis may be off, arcminutes, for at most so much drift in declination. */
export const allowedPolarErrorArcmin = (driftArcsec: number, minutes: number): number =>
  driftArcsec / greatestDeclinationDriftArcsec(1, minutes);
