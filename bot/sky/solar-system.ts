/** Geocentric vectors of the Sun, the Moon and the planets, from astronomy-engine. */
import { Body, GeoVector } from 'astronomy-engine';
import type { AstroTime } from 'astronomy-engine';
import type { Vector3 } from './angles.js';
import type { SolarSystemBody } from './types.js';

/** J2000 axes, astronomical units, light-time applied; with annual aberration where `apparent`. (The engine gives the Moon without either: 0.7″.) */
export const geocentricVector = (body: SolarSystemBody, time: AstroTime, apparent: boolean): Vector3 => {
  const { x, y, z } = GeoVector(Body[body], time, apparent);
  return [x, y, z];
};
