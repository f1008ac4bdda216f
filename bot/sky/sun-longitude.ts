/** When the Sun reaches an ecliptic longitude: the clock that meteor showers keep. */
import { MS_PER_DAY } from '../ground/durations.js';
import { wrapDeg180 } from './angles.js';
import { engineTime } from './engine-time.js';
import { apparentVector } from './solar-system.js';
import type { UtcMs } from './types.js';

const OBLIQUITY_J2000 = (84_381.448 / 3600) * (Math.PI / 180);
const DEG_PER_DAY = 0.985_647_36;

/** The Sun's longitude in degrees, ecliptic and equinox J2000 (as the International Meteor Organization counts it). */
const sunLongitudeDeg = (utcMs: UtcMs): number => {
  const [x, y, z] = apparentVector('Sun', engineTime(utcMs));
  return (Math.atan2(y * Math.cos(OBLIQUITY_J2000) + z * Math.sin(OBLIQUITY_J2000), x) * 180) / Math.PI;
};

/** The instant nearest to `nearUtcMs` at which the Sun's longitude (J2000) is the given one. */
export const sunAtLongitude = (longitudeDeg: number, nearUtcMs: UtcMs): UtcMs => {
  let utcMs = nearUtcMs;
  for (let i = 0; i < 6; i++) utcMs += (wrapDeg180(longitudeDeg - sunLongitudeDeg(utcMs)) / DEG_PER_DAY) * MS_PER_DAY;
  return utcMs;
};
