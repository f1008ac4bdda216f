/** What a reply says about where a tube is, or is sent: the directions and instants that the Sun is judged for. */
import type { Horizontal, Observer, SkyBody, UtcMs } from '../sky/types.js';

/** One instant, or a stretch of time that is judged by its worst instant. */
export type PointsAtWhen = { readonly utcMs: UtcMs } | { readonly fromUtcMs: UtcMs; readonly untilUtcMs: UtcMs };

/**
 * A direction that someone is sent to, or that the tube is said to be at, and when. Every one that a reply names in any way
 * (as its subject, in a list, on the way) belongs here; dispatch does the rest.
 */
export interface PointsAt {
  /** As a warning names it: "Vega", "where the tube landed". */
  readonly what: string;
  readonly when: PointsAtWhen;
  readonly observer: Observer;
  /** IANA zone in which a warning tells the time. */
  readonly zone: string;
  /** A body of the sky, which moves with it; or altitude and azimuth, fixed to the ground as a tube that does not track is. */
  readonly direction: SkyBody | Horizontal;
}

/** For a reply that sends nobody anywhere and says of no tube where it points. */
export const NOWHERE: readonly PointsAt[] = [];
