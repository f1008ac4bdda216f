/** How a planet looks in a telescope: how much of it is lit, how large it is, how open Saturn's rings are. */
import { Body, Illumination, KM_PER_AU } from 'astronomy-engine';
import { ARCSEC_PER_RADIAN } from './angles.js';
import type { SolarSystemBody, UtcMs } from './types.js';

export interface PlanetLook {
  /** 0..1. */
  readonly litFraction: number;
  /** Apparent equatorial diameter, arcseconds. */
  readonly diameterArcsec: number;
  /** Of Saturn's rings towards us, degrees, never negative; null for the others. */
  readonly ringTiltDeg: number | null;
}

/** Equatorial radii in kilometres: IAU Working Group on Cartographic Coordinates and Rotational Elements, 2015. */
const RADIUS_KM: Readonly<Partial<Record<SolarSystemBody, number>>> = {
  Mercury: 2440.53,
  Venus: 6051.8,
  Mars: 3396.19,
  Jupiter: 71_492,
  Saturn: 60_268,
  Uranus: 25_559,
  Neptune: 24_764,
};

/** Null for what is no planet. */
export const planetLook = (body: SolarSystemBody, utcMs: UtcMs): PlanetLook | null => {
  const radiusKm = RADIUS_KM[body];
  if (radiusKm === undefined) return null;
  const { phase_fraction, geo_dist, ring_tilt } = Illumination(Body[body], new Date(utcMs));
  return {
    litFraction: phase_fraction,
    diameterArcsec: 2 * Math.asin(radiusKm / (geo_dist * KM_PER_AU)) * ARCSEC_PER_RADIAN,
    ringTiltDeg: body === 'Saturn' && ring_tilt !== undefined ? Math.abs(ring_tilt) : null,
  };
};
