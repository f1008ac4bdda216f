/** The four bright moons of Jupiter beside its disc, and their passages before and behind it, through its shadow and with their own. */
import { Body, GeoVector, HelioVector, JupiterMoons, RotationAxis } from 'astronomy-engine';
import type { StateVector } from 'astronomy-engine';
import { MS_PER_DAY } from '../ground/durations.js';
import { norm, normalized } from './angles.js';
import type { Vector3 } from './angles.js';
import { engineTime } from './engine-time.js';
import type { TimeSpan } from './night.js';
import type { UtcMs } from './types.js';

/** Jupiter's radii, km (IAU Working Group on Cartographic Coordinates, 2015). */
const JUPITER_RADIUS_KM = 71_492;
const POLAR_OVER_EQUATORIAL = 66_854 / JUPITER_RADIUS_KM;
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
  /** Before or behind the disc. */
  readonly state: 'beside' | 'in-front' | 'behind';
  /** As the Sun has it: its shadow is on the disc, or it is dark in Jupiter's. */
  readonly shadow: 'none' | 'on-disc' | 'eclipsed';
}

const dot = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

interface Placed {
  readonly westRadii: number;
  readonly northRadii: number;
  readonly isNearer: boolean;
  readonly isBeforeOrBehind: boolean;
}

/** How a moon stands to the disc along a line of sight, the disc flattened as Jupiter is. */
const placedAlong = (sight: Vector3, axis: Vector3): ((state: StateVector) => Placed) => {
  const west = normalized(cross(sight, axis));
  const up = cross(west, sight);
  const radii = KM_PER_AU / JUPITER_RADIUS_KM;
  return (state) => {
    const at: Vector3 = [state.x, state.y, state.z];
    const westRadii = dot(at, west) * radii;
    const northRadii = dot(at, up) * radii;
    return {
      westRadii,
      northRadii,
      isNearer: dot(at, sight) < 0,
      isBeforeOrBehind: Math.hypot(westRadii, northRadii / POLAR_OVER_EQUATORIAL) < 1,
    };
  };
};

const vectorOf = ({ x, y, z }: { readonly x: number; readonly y: number; readonly z: number }): Vector3 => [x, y, z];

/** Where the four stand as their light reaches the Earth's centre, in the order Io, Europa, Ganymede, Callisto. */
export const jupiterMoons = (utcMs: UtcMs): readonly JupiterMoon[] => {
  const away = vectorOf(GeoVector(Body.Jupiter, engineTime(utcMs), false));
  const left = engineTime(utcMs - (norm(away) / LIGHT_AU_PER_DAY) * MS_PER_DAY);
  const axis = vectorOf(RotationAxis(Body.Jupiter, left).north);
  const fromEarth = placedAlong(normalized(away), axis);
  const fromSun = placedAlong(normalized(vectorOf(HelioVector(Body.Jupiter, left))), axis);
  const { io, europa, ganymede, callisto } = JupiterMoons(left);
  const placed = (name: JupiterMoon['name'], state: StateVector): JupiterMoon => {
    const { westRadii, northRadii, isNearer, isBeforeOrBehind } = fromEarth(state);
    const lit = fromSun(state);
    const behindOrNot = isNearer ? 'in-front' : 'behind';
    const ofShadow = lit.isNearer ? 'on-disc' : 'eclipsed';
    return {
      name,
      westRadii,
      northRadii,
      isNearer,
      state: isBeforeOrBehind ? behindOrNot : 'beside',
      shadow: lit.isBeforeOrBehind ? ofShadow : 'none',
    };
  };
  return [placed('Io', io), placed('Europa', europa), placed('Ganymede', ganymede), placed('Callisto', callisto)];
};

export interface MoonEvent {
  readonly name: JupiterMoon['name'];
  /** Across the disc, its shadow across the disc, behind the disc, dark in Jupiter's shadow. */
  readonly kind: 'transit' | 'shadow-transit' | 'occultation' | 'eclipse';
  readonly isBeginning: boolean;
  readonly utcMs: UtcMs;
}

/** The shortest passages but for grazes last longer than this. */
const STEP_MS = 600_000;
const EXACT_MS = 2000;

const IS_UNDER_WAY: Readonly<Record<MoonEvent['kind'], (moon: JupiterMoon) => boolean>> = {
  transit: ({ state }) => state === 'in-front',
  'shadow-transit': ({ shadow }) => shadow === 'on-disc',
  occultation: ({ state }) => state === 'behind',
  eclipse: ({ shadow }) => shadow === 'eclipsed',
};
const EVENT_KINDS = Object.keys(IS_UNDER_WAY) as readonly MoonEvent['kind'][];

/** What goes on unseen: behind the disc while dark, in the shadow while behind the disc. */
const isUnseen = (kind: MoonEvent['kind'], moon: JupiterMoon): boolean =>
  (kind === 'occultation' && moon.shadow === 'eclipsed') || (kind === 'eclipse' && moon.state === 'behind');

/** Begins and ends in order, by the middle of the moon or of its shadow, to some seconds; those that nobody can see are left out. */
export const jupiterMoonEvents = ({ startUtcMs, endUtcMs }: TimeSpan): readonly MoonEvent[] => {
  const found: MoonEvent[] = [];
  const between = (kind: MoonEvent['kind'], index: number, fromUtcMs: UtcMs, untilUtcMs: UtcMs): UtcMs => {
    const isAt = (utcMs: UtcMs): boolean => IS_UNDER_WAY[kind](jupiterMoons(utcMs)[index]!);
    let [low, high] = [fromUtcMs, untilUtcMs];
    const before = isAt(low);
    while (high - low > EXACT_MS) {
      const middle = (low + high) / 2;
      if (isAt(middle) === before) low = middle;
      else high = middle;
    }
    return Math.round(high / 1000) * 1000;
  };
  let last = jupiterMoons(startUtcMs);
  for (let fromUtcMs = startUtcMs; fromUtcMs < endUtcMs; fromUtcMs += STEP_MS) {
    const untilUtcMs = Math.min(endUtcMs, fromUtcMs + STEP_MS);
    const next = jupiterMoons(untilUtcMs);
    for (const [index, moon] of next.entries())
      for (const kind of EVENT_KINDS) {
        const isBeginning = IS_UNDER_WAY[kind](moon);
        if (isBeginning === IS_UNDER_WAY[kind](last[index]!)) continue;
        const utcMs = between(kind, index, fromUtcMs, untilUtcMs);
        if (!isUnseen(kind, jupiterMoons(utcMs)[index]!)) found.push({ name: moon.name, kind, isBeginning, utcMs });
      }
    last = next;
  }
  return found.sort((a, b) => a.utcMs - b.utcMs);
};
