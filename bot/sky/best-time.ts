/** When within a window a body stands highest. */
import { MS_PER_DAY } from '../ground/durations.js';
import type { AltitudePoint } from './altitude-curve.js';
import { greatestIn } from './crossings.js';
import { nightFrame } from './night-frame.js';
import type { TimeSpan } from './night.js';
import { skyTrack } from './sky-track.js';
import type { Observer, SkyBody } from './types.js';

/**
 * The instant within the window (the darkness, or the night where there is none) at which the body is highest, and its
 * airless altitude then, which is below the horizon for a body that is down throughout.
 */
export const bestTime = (body: SkyBody, observer: Observer, window: TimeSpan): AltitudePoint => {
  if (body.kind === 'fixed' && window.endUtcMs - window.startUtcMs <= 1.5 * MS_PER_DAY) {
    const frame = nightFrame(observer, window.startUtcMs, window.endUtcMs);
    return frame.highestIn(frame.directionOfBody(body), window);
  }
  const track = skyTrack(body, observer);
  const utcMs = greatestIn(track.altitudeDegAt, window.startUtcMs, window.endUtcMs);
  return { utcMs, altitudeDeg: track.altitudeDegAt(utcMs) };
};
