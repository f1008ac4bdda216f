/** One part of the sky: a direction of the compass, or overhead. */
import type { Target } from '../catalogue/index.js';
import { horizontalOf } from '../sky/place.js';
import type { Horizontal, Observer, UtcMs } from '../sky/types.js';

const AZIMUTH_DEG = {
  north: 0,
  'north-east': 45,
  east: 90,
  'south-east': 135,
  south: 180,
  'south-west': 225,
  west: 270,
  'north-west': 315,
} as const;

export type Towards = keyof typeof AZIMUTH_DEG | 'overhead';
export const TOWARDS = [...(Object.keys(AZIMUTH_DEG) as (keyof typeof AZIMUTH_DEG)[]), 'overhead'] as const;

/** Who looks east sees so far to each side; common practice, no source. */
const SIDE_DEG = 50;
/** Nobody tells directions higher up than this, nor calls it overhead lower down; common practice, no source. */
const OVERHEAD_DEG = 60;

/** How far a direction lies from the middle of a part of the sky, along the horizon, in degrees. */
export const offDeg = (towards: keyof typeof AZIMUTH_DEG, { azimuthDeg }: Horizontal): number =>
  Math.abs(((azimuthDeg - AZIMUTH_DEG[towards] + 540) % 360) - 180);

/** Whether a direction is in that part of the sky. */
export const isTowards = (towards: Towards, at: Horizontal): boolean =>
  towards === 'overhead' ? at.altitudeDeg >= OVERHEAD_DEG : offDeg(towards, at) <= SIDE_DEG;

/** Whether a candidate stands in that part of the sky at its best moment; everything does where none is asked for. */
export const standsTowards =
  (towards: Towards | null, observer: Observer) =>
  ({ target, bestUtcMs }: { readonly target: Target; readonly bestUtcMs: UtcMs }): boolean =>
    towards === null || isTowards(towards, horizontalOf(target.body, observer, bestUtcMs));

export const towardsWords = (towards: Towards): string => (towards === 'overhead' ? 'overhead' : `in the ${towards}`);
