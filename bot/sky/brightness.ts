/** How bright Sun, Moon and planets are at an instant. */
import { Body, Illumination } from 'astronomy-engine';
import { engineTime } from './engine-time.js';
import type { SolarSystemBody, UtcMs } from './types.js';

/** Apparent visual magnitude, seen from the Earth's centre (astronomy-engine's model, after the Astronomical Almanac's phase laws). */
export const apparentMagnitude = (body: SolarSystemBody, utcMs: UtcMs): number =>
  Illumination(Body[body], engineTime(utcMs)).mag;
