/** Where the Sun stands over the Moon: its colongitude, and how high it stands over a place there. */
import { Body, RotationAxis } from 'astronomy-engine';
import {
  add,
  asinDeg,
  cosDeg,
  DEGREES_PER_RADIAN,
  dot,
  normalized,
  scale,
  sinDeg,
  wrapDeg180,
  wrapDeg360,
  type Vector3,
} from './angles.js';
import { zeroBetween } from './crossings.js';
import { MS_PER_DAY } from '../ground/durations.js';
import { earthAt } from './earth.js';
import { apparentVector } from './solar-system.js';
import type { UtcMs } from './types.js';

export interface MoonPlace {
  /** Selenographic: north positive, and east positive (Mare Crisium's side). */
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

export interface SunOverMoon {
  /** The point with the Sun overhead. */
  readonly overhead: MoonPlace;
  /** Of the morning terminator, counted west: 270° at new Moon, 0° at first quarter, 90° at full Moon, 180° at last quarter. */
  readonly colongitudeDeg: number;
}

/** From the Moon's axis and spin as the IAU has them (astronomy-engine), geometric but for the light of the Moon's own second. */
export const sunOverMoon = (utcMs: UtcMs): SunOverMoon => {
  const { time, positionAu } = earthAt(utcMs);
  const fromSun = normalized(scale(add(positionAu, apparentVector('Moon', time)), -1));
  const { ra, dec, spin } = RotationAxis(Body.Moon, time);
  const [raDeg, decDeg] = [ra * 15, dec];
  const node: Vector3 = [-sinDeg(raDeg), cosDeg(raDeg), 0];
  const pole: Vector3 = [cosDeg(decDeg) * cosDeg(raDeg), cosDeg(decDeg) * sinDeg(raDeg), sinDeg(decDeg)];
  const east: Vector3 = [-sinDeg(decDeg) * cosDeg(raDeg), -sinDeg(decDeg) * sinDeg(raDeg), cosDeg(decDeg)];
  const longitudeDeg = wrapDeg180(Math.atan2(dot(fromSun, east), dot(fromSun, node)) * DEGREES_PER_RADIAN - spin);
  return {
    overhead: { latitudeDeg: asinDeg(dot(fromSun, pole)), longitudeDeg },
    colongitudeDeg: wrapDeg360(90 - longitudeDeg),
  };
};

/** Degrees above the level horizon of a place on the Moon, −90..90. */
export const sunHeightDeg = ({ latitudeDeg, longitudeDeg }: MoonPlace, { overhead }: SunOverMoon): number =>
  asinDeg(
    sinDeg(overhead.latitudeDeg) * sinDeg(latitudeDeg) +
      cosDeg(overhead.latitudeDeg) * cosDeg(latitudeDeg) * cosDeg(longitudeDeg - overhead.longitudeDeg),
  );

/** The Sun climbs 12° a day at most there. */
const STEP_MS = MS_PER_DAY / 2;
const LUNATION_DAYS = 30;

/** The first instant from one on at which the Sun climbs (or sinks) past a height over a place; null at a pole that it does not. */
export const sunPasses = (
  place: MoonPlace,
  { heightDeg, isRising }: { readonly heightDeg: number; readonly isRising: boolean },
  fromUtcMs: UtcMs,
): UtcMs | null => {
  const height = (utcMs: UtcMs): number => (sunHeightDeg(place, sunOverMoon(utcMs)) - heightDeg) * (isRising ? 1 : -1);
  let before = height(fromUtcMs);
  for (let utcMs = fromUtcMs + STEP_MS; utcMs < fromUtcMs + LUNATION_DAYS * MS_PER_DAY; utcMs += STEP_MS) {
    const now = height(utcMs);
    if (before < 0 && now >= 0) return zeroBetween(height, utcMs - STEP_MS, utcMs, before, now);
    before = now;
  }
  return null;
};
