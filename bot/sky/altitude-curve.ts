/** A body's altitude through a span of time, as points for a chart. */
import { skyTrack } from './sky-track.js';
import type { Observer, SkyBody, UtcMs } from './types.js';

export interface AltitudePoint {
  readonly utcMs: UtcMs;
  /** Airless. */
  readonly altitudeDeg: number;
}

/** `count` points (at least 2) evenly from start to end, both included. */
export const altitudeCurve = (
  body: SkyBody,
  observer: Observer,
  startUtcMs: UtcMs,
  endUtcMs: UtcMs,
  count: number,
): AltitudePoint[] => {
  const track = skyTrack(body, observer);
  const steps = Math.max(1, Math.floor(count) - 1);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const utcMs = startUtcMs + ((endUtcMs - startUtcMs) * i) / steps;
    return { utcMs, altitudeDeg: track.altitudeDegAt(utcMs) };
  });
};
