/** When the Sun is so far below the horizon, as `dark` says it first where a depth or a twilight was asked about. */
import { altitudeCrossings } from '../../sky/rise-set.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import { SUN } from '../../sky/twilight.js';
import type { Observer } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';

/** The twilights that end at these depths (the usual convention of almanacs). */
const ENDS: Readonly<Record<number, string>> = { 6: 'civil', 12: 'nautical', 18: 'astronomical' };

/** "The Sun goes below −12° at 17:06 CET, the end of nautical twilight, and comes above it at 07:04." Without its full stop. */
export const sunBelowWords = (
  belowDeg: number,
  { observer, night, zone }: { readonly observer: Observer; readonly night: TimeSpan; readonly zone: string },
): string => {
  const crossings = altitudeCrossings(SUN, observer, -belowDeg, night.startUtcMs, night.endUtcMs);
  const down = crossings.find(({ rising }) => !rising);
  const up = crossings.find(({ rising, utcMs }) => rising && utcMs > (down?.utcMs ?? 0));
  const depth = `−${belowDeg}°`;
  const twilight = ENDS[belowDeg];
  const ends = twilight === undefined ? '' : `, the end of ${twilight} twilight`;
  if (down === undefined && up === undefined)
    return horizontalOf(SUN, observer, (night.startUtcMs + night.endUtcMs) / 2).altitudeDeg < -belowDeg
      ? `The Sun is below ${depth} all that night`
      : `The Sun does not go below ${depth} that night`;
  const sinks = down === undefined ? [] : [`goes below ${depth} at ${formatLocalTime(down.utcMs, zone)}${ends}`];
  const climbs = up === undefined ? [] : [`comes above ${depth} at ${formatLocalTime(up.utcMs, zone)}`];
  return `The Sun ${[...sinks, ...climbs].join(', and ')}`;
};
