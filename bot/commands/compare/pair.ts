/** Two targets as they stand at an instant. */
import type { Target } from '../../catalogue/index.js';
import type { Observer, Place, UtcMs } from '../../sky/types.js';

export interface Stand {
  readonly target: Target;
  /** "the Moon", "Saturn". */
  readonly name: string;
  readonly place: Place;
  readonly isUp: boolean;
  readonly magnitude: number | null;
  /** The next in the day after the instant; null: none. */
  readonly riseUtcMs: UtcMs | null;
  readonly setUtcMs: UtcMs | null;
}

export interface Pair {
  readonly first: Stand;
  readonly second: Stand;
  readonly utcMs: UtcMs;
  readonly zone: string;
  readonly observer: Observer;
  readonly apartDeg: number;
  /** Of the second as seen from the first, 0..360° from north through east, of date. */
  readonly positionAngleDeg: number;
}
