/** The four bright moons of Jupiter beside its disc. */
import { Body, GeoVector, JupiterMoons, RotationAxis } from 'astronomy-engine';
import type { StateVector } from 'astronomy-engine';
import { MS_PER_DAY } from '../ground/durations.js';
import { norm, normalized } from './angles.js';
import type { Vector3 } from './angles.js';
import { engineTime } from './engine-time.js';
import type { UtcMs } from './types.js';

/** Jupiter's equatorial radius, km (IAU Working Group on Cartographic Coordinates, 2015). */
const JUPITER_RADIUS_KM = 71_492;
const KM_PER_AU = 149_597_870.7;
const LIGHT_AU_PER_DAY = 173.144_632_685;

export interface JupiterMoon {
  readonly name: 'Io' | 'Europa' | 'Ganymede' | 'Callisto';
  /** Along Jupiter's equator on the sky, in its equatorial radii, west (the way the sky drifts) positive. */
  readonly westRadii: number;
  /** Across it, towards Jupiter's north positive. */
  readonly northRadii: number;
  /** Nearer to us than Jupiter, or beyond it. */
  readonly isNearer: boolean;
  /** Before or behind the disc (a ball, though Jupiter is flattened by a fifteenth). */
  readonly state: 'beside' | 'in-front' | 'behind';
}

const dot = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const stateOf = (west: number, north: number, isNearer: boolean): JupiterMoon['state'] => {
  if (Math.hypot(west, north) >= 1) return 'beside';
  return isNearer ? 'in-front' : 'behind';
};

/** Where the four stand as their light reaches the Earth's centre, in the order Io, Europa, Ganymede, Callisto. */
export const jupiterMoons = (utcMs: UtcMs): readonly JupiterMoon[] => {
  const { x, y, z } = GeoVector(Body.Jupiter, engineTime(utcMs), false);
  const away: Vector3 = [x, y, z];
  const left = engineTime(utcMs - (norm(away) / LIGHT_AU_PER_DAY) * MS_PER_DAY);
  const sight = normalized(away);
  const { north } = RotationAxis(Body.Jupiter, left);
  const west = normalized(cross(sight, [north.x, north.y, north.z]));
  const up = cross(west, sight);
  const moons = JupiterMoons(left);
  const placed = (name: JupiterMoon['name'], state: StateVector): JupiterMoon => {
    const at: Vector3 = [state.x, state.y, state.z];
    const radii = KM_PER_AU / JUPITER_RADIUS_KM;
    const westRadii = dot(at, west) * radii;
    const northRadii = dot(at, up) * radii;
    const isNearer = dot(at, sight) < 0;
    return { name, westRadii, northRadii, isNearer, state: stateOf(westRadii, northRadii, isNearer) };
  };
  return [
    placed('Io', moons.io),
    placed('Europa', moons.europa),
    placed('Ganymede', moons.ganymede),
    placed('Callisto', moons.callisto),
  ];
};
