/** Comets and minor planets by two-body motion: where they are, and how bright they should be. */
import { Body, HelioVector } from 'astronomy-engine';
import type { AstroTime } from 'astronomy-engine';
import { cosDeg, norm, sinDeg } from './angles.js';
import type { Vector3 } from './angles.js';
import { engineTime } from './engine-time.js';
import type { MagnitudeLaw, OrbitalElements, UtcMs } from './types.js';

/** Square root of the Sun's GM in au^1.5 a day: Gauss's constant (IAU 1938, kept by IAU 2012 Resolution B2 to 1e-9). */
const GAUSS = 0.017_202_098_95;
/** Obliquity of the ecliptic J2000 that orbital elements are given with (IAU 1976): 84381.448 arcseconds. */
const OBLIQUITY_DEG = 84_381.448 / 3600;
const LIGHT_AU_PER_DAY = 173.144_632_685;

/** Stumpff's functions C and S (J. M. A. Danby, Fundamentals of Celestial Mechanics, 2nd ed., sec. 6.9: c₂ and c₃). */
const stumpff = (z: number): { readonly c: number; readonly s: number } => {
  if (Math.abs(z) < 1e-4) return { c: 1 / 2 - z / 24 + (z * z) / 720, s: 1 / 6 - z / 120 + (z * z) / 5040 };
  const root = Math.sqrt(Math.abs(z));
  return z > 0
    ? { c: (1 - Math.cos(root)) / z, s: (root - Math.sin(root)) / (root * z) }
    : { c: (1 - Math.cosh(root)) / z, s: (Math.sinh(root) - root) / (root * -z) };
};

/** Days since perihelion, brought within half a turn of it where the orbit closes. */
const sincePerihelion = ({ perihelionTtDays, perihelionDistanceAu, eccentricity }: OrbitalElements, ttDays: number) => {
  const days = ttDays - perihelionTtDays;
  if (eccentricity >= 1) return days;
  const periodDays = (2 * Math.PI * (perihelionDistanceAu / (1 - eccentricity)) ** 1.5) / GAUSS;
  return days - periodDays * Math.round(days / periodDays);
};

/**
 * Kepler's equation in universal variables, from perihelion: e χ³ S(αχ²) + q χ = k Δt (Danby, eq. 6.9.29 with r·v = 0), which
 * is one equation for ellipse, parabola and hyperbola and rises steadily with χ; Newton's steps, kept inside a bracket.
 */
const universalAnomaly = (q: number, e: number, kDt: number): number => {
  const goal = Math.abs(kDt);
  const alpha = (1 - e) / q;
  let low = 0;
  let high = Math.min(goal / q, alpha > 0 ? (1.001 * Math.PI) / Math.sqrt(alpha) : Math.cbrt((6 * goal) / e));
  let chi = high;
  for (let i = 0; i < 100; i++) {
    const { c, s } = stumpff(alpha * chi * chi);
    const miss = e * chi ** 3 * s + q * chi - goal;
    if (miss > 0) high = chi;
    else low = chi;
    const next = chi - miss / (q + e * chi * chi * c);
    const inside = next > low && next < high ? next : (low + high) / 2;
    if (Math.abs(inside - chi) <= 1e-15 * Math.max(1, chi)) return Math.sign(kDt) * inside;
    chi = inside;
  }
  return Math.sign(kDt) * chi;
};

/** Heliocentric vector, J2000 equator axes, astronomical units. */
export const heliocentricOrbitAu = (elements: OrbitalElements, ttDays: number): Vector3 => {
  const { perihelionDistanceAu: q, eccentricity: e } = elements;
  const kDt = GAUSS * sincePerihelion(elements, ttDays);
  const chi = universalAnomaly(q, e, kDt);
  const { c, s } = stumpff(((1 - e) / q) * chi * chi);
  const x = q - chi * chi * c;
  const y = (kDt - chi ** 3 * s) * Math.sqrt((1 + e) / q);
  const [cosW, sinW] = [cosDeg(elements.perihelionArgumentDeg), sinDeg(elements.perihelionArgumentDeg)];
  const [cosN, sinN] = [cosDeg(elements.ascendingNodeDeg), sinDeg(elements.ascendingNodeDeg)];
  const [cosI, sinI] = [cosDeg(elements.inclinationDeg), sinDeg(elements.inclinationDeg)];
  const along = x * cosW - y * sinW;
  const across = x * sinW + y * cosW;
  const ecliptic: Vector3 = [along * cosN - across * sinN * cosI, along * sinN + across * cosN * cosI, across * sinI];
  const [cosE, sinE] = [cosDeg(OBLIQUITY_DEG), sinDeg(OBLIQUITY_DEG)];
  return [ecliptic[0], ecliptic[1] * cosE - ecliptic[2] * sinE, ecliptic[1] * sinE + ecliptic[2] * cosE];
};

const earthAu = (time: AstroTime): Vector3 => {
  const { x, y, z } = HelioVector(Body.Earth, time);
  return [x, y, z];
};

/** Where the body was when its light left, from the Earth's centre now: astrometric, J2000 axes, astronomical units. */
export const orbitVector = (elements: OrbitalElements, time: AstroTime): Vector3 => {
  const earth = earthAu(time);
  let vector: Vector3 = [0, 0, 0];
  let lightDays = 0;
  for (let i = 0; i < 4; i++) {
    const [x, y, z] = heliocentricOrbitAu(elements, time.tt - lightDays);
    vector = [x - earth[0], y - earth[1], z - earth[2]];
    lightDays = norm(vector) / LIGHT_AU_PER_DAY;
  }
  return vector;
};

const magnitudeBy = (
  { law, absolute, slope }: MagnitudeLaw,
  sunAu: number,
  earthAuAway: number,
  sunToEarthAu: number,
) => {
  if (law === 'comet') return absolute + 5 * Math.log10(earthAuAway) + 2.5 * slope * Math.log10(sunAu);
  const cosPhase = (sunAu ** 2 + earthAuAway ** 2 - sunToEarthAu ** 2) / (2 * sunAu * earthAuAway);
  const tanHalf = Math.tan(Math.acos(Math.max(-1, Math.min(1, cosPhase))) / 2);
  const phi1 = Math.exp(-3.33 * tanHalf ** 0.63);
  const phi2 = Math.exp(-1.87 * tanHalf ** 1.22);
  return absolute + 5 * Math.log10(sunAu * earthAuAway) - 2.5 * Math.log10((1 - slope) * phi1 + slope * phi2);
};

/** Predicted total visual magnitude from the Earth's centre, or null where the list gives none. */
export const orbitMagnitude = (elements: OrbitalElements, utcMs: UtcMs): number | null => {
  if (elements.magnitude === null) return null;
  const time = engineTime(utcMs);
  return magnitudeBy(
    elements.magnitude,
    norm(heliocentricOrbitAu(elements, time.tt)),
    norm(orbitVector(elements, time)),
    norm(earthAu(time)),
  );
};
