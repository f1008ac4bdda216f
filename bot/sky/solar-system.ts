/** Geocentric vectors of the Sun, the Moon and the planets, from astronomy-engine. */
import { Body, GeoVector } from 'astronomy-engine';
import type { AstroTime } from 'astronomy-engine';
import { createKept, type Kept } from '../ground/kept.js';
import { add, norm, scale } from './angles.js';
import { orbitVector } from './orbit.js';
import type { Vector3 } from './angles.js';
import type { EarthState } from './earth.js';
import type { MovingBody, SolarSystemBody } from './types.js';

type KeptVectors = Kept<number, Vector3>;

const KEPT_OF_EACH = 200;
const kept = new Map<SolarSystemBody, Readonly<Record<'apparent' | 'astrometric', KeptVectors>>>();

const keptOf = (body: SolarSystemBody, aberration: boolean): KeptVectors => {
  const known = kept.get(body) ?? { apparent: createKept(KEPT_OF_EACH), astrometric: createKept(KEPT_OF_EACH) };
  kept.set(body, known);
  return aberration ? known.apparent : known.astrometric;
};

const engineVector = (body: SolarSystemBody, time: AstroTime, aberration: boolean): Vector3 =>
  keptOf(body, aberration)(time.ut, () => {
    const { x, y, z } = GeoVector(Body[body], time, aberration);
    return [x, y, z];
  });

/**
 * Where a body appears from the Earth's centre: light-time and annual aberration in; J2000 axes, astronomical units. The
 * Moon shares the Earth's way round the Sun, so for it the two together are next to nothing; the engine's lunar theory is
 * nearest to JPL DE421 as it stands.
 */
export const apparentVector = (body: SolarSystemBody, time: AstroTime): Vector3 => engineVector(body, time, true);

/** The same without aberration (astrometric). `aberration` is the Earth's velocity over the speed of light. */
export const astrometricVector = (body: SolarSystemBody, time: AstroTime, aberration: Vector3): Vector3 => {
  if (body !== 'Moon') return engineVector(body, time, false);
  const apparent = apparentVector(body, time);
  return add(apparent, scale(aberration, -norm(apparent)));
};

/** {@link apparentVector} for anything that moves. */
export const apparentMovingVector = (body: MovingBody, earth: EarthState): Vector3 => {
  if (body.kind === 'solarSystem') return apparentVector(body.body, earth.time);
  const astrometric = orbitVector(body.elements, earth.time);
  return add(astrometric, scale(earth.aberration, norm(astrometric)));
};

/** {@link astrometricVector} for anything that moves. */
export const astrometricMovingVector = (body: MovingBody, earth: EarthState): Vector3 =>
  body.kind === 'solarSystem'
    ? astrometricVector(body.body, earth.time, earth.aberration)
    : orbitVector(body.elements, earth.time);
