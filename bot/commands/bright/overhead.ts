/** Which constellation stands overhead. */
import { constellationName } from '../../catalogue/index.js';
import { constellationAt } from '../../sky/constellation.js';
import { lastHours } from '../../sky/sidereal-time.js';
import type { Observer, UtcMs } from '../../sky/types.js';

const J2000_MS = Date.UTC(2000, 0, 1, 12);
const YEAR_MS = 365.25 * 86_400_000;
const RAD = Math.PI / 180;

/** General precession a year: m and n of Meeus, Astronomical Algorithms (2nd ed.), chapter 21, in seconds of time and of arc. */
const M_SECONDS = 3.075;
const N_SECONDS = 1.336;
const N_ARCSEC = 20.04;

/** The zenith's right ascension is the sidereal time, its declination the latitude; carried back to J2000 for the borders. */
export const constellationOverhead = ({ latitudeDeg, longitudeDeg }: Observer, utcMs: UtcMs): string => {
  const years = (utcMs - J2000_MS) / YEAR_MS;
  const raHours = lastHours(utcMs, longitudeDeg);
  const decDeg = Math.max(-89, Math.min(89, latitudeDeg));
  const ra = raHours * 15 * RAD;
  const byRaSeconds = M_SECONDS + N_SECONDS * Math.sin(ra) * Math.tan(decDeg * RAD);
  return constellationName(
    constellationAt({
      raHours: (raHours - (byRaSeconds * years) / 3600 + 24) % 24,
      decDeg: decDeg - (N_ARCSEC * Math.cos(ra) * years) / 3600,
    }),
  );
};
