/** Where the Milky Way stands in the dark, and whether its bright middle does. */
import { constellationName } from '../../catalogue/index.js';
import { degrees, listed } from '../../reply/wording.js';
import { constellationAt } from '../../sky/constellation.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import type { FixedBody, Observer, UtcMs } from '../../sky/types.js';
import { formatLocalTime, formatSpan } from '../../times/index.js';

const RAD = Math.PI / 180;
/** The Galaxy's north pole and the position angle of its centre, J2000 (IAU 1958, carried over). */
const POLE_RA_DEG = 192.85948;
const POLE_DEC_DEG = 27.12825;
const NODE_DEG = 122.93192;

/** A point of its middle line, by galactic longitude. */
const onPlane = (longitudeDeg: number): FixedBody => {
  const l = (NODE_DEG - longitudeDeg) * RAD;
  const pole = POLE_DEC_DEG * RAD;
  const decRad = Math.asin(Math.cos(pole) * Math.cos(l));
  const raRad = Math.atan2(Math.sin(l), -Math.sin(pole) * Math.cos(l));
  return {
    kind: 'fixed',
    raHoursJ2000: ((raRad / RAD + POLE_RA_DEG + 720) % 360) / 15,
    decDegJ2000: decRad / RAD,
  };
};

const STEP_DEG = 15;
const PLANE = Array.from({ length: 360 / STEP_DEG }, (_, i) => onPlane(i * STEP_DEG));
const CENTRE = onPlane(0);
/** Lower than this its glow is lost in the air; common practice, no source. */
const LEAST_DEG = 30;
const LEAST_CENTRE_DEG = 10;
const MOST_NAMED = 3;

interface Night {
  readonly observer: Observer;
  readonly zone: string;
  readonly nowUtcMs: UtcMs;
  /** Stretches of the dark without the Moon, in order. */
  readonly moonless: readonly TimeSpan[];
}

/** The highest of its parts at the first dark hour to come, and the hours without the Moon. */
export const milkyWayWords = (
  { observer, zone, nowUtcMs, moonless }: Night,
  { startUtcMs, endUtcMs }: TimeSpan,
): string => {
  const atUtcMs = Math.max(startUtcMs, Math.min(nowUtcMs, endUtcMs));
  const parts = PLANE.map((body) => ({ body, altitudeDeg: horizontalOf(body, observer, atUtcMs).altitudeDeg }))
    .filter(({ altitudeDeg }) => altitudeDeg >= LEAST_DEG)
    .sort((a, b) => b.altitudeDeg - a.altitudeDeg);
  const names = [
    ...new Set(
      parts.map(({ body }) =>
        constellationName(constellationAt({ raHours: body.raHoursJ2000, decDeg: body.decDegJ2000 })),
      ),
    ),
  ].slice(0, MOST_NAMED);
  const [highest] = parts;
  const at = formatLocalTime(atUtcMs, zone);
  const isFree = moonless.some((span) => span.endUtcMs > atUtcMs);
  const yes = isFree ? 'Yes' : 'Up, but moonlight hides most of it';
  const stands =
    highest === undefined
      ? `Not well at ${at}: it lies low all around then`
      : `${yes}: at ${at} it stands through ${listed(names)}, up to ${degrees(highest.altitudeDeg)} high`;
  const centreDeg = horizontalOf(CENTRE, observer, atUtcMs).altitudeDeg;
  const centre =
    centreDeg >= LEAST_CENTRE_DEG
      ? `its bright middle in Sagittarius ${degrees(centreDeg)} high`
      : 'its bright middle in Sagittarius is not up then';
  const free = moonless
    .filter((span) => span.endUtcMs > atUtcMs)
    .map((span) => formatSpan(span.startUtcMs, span.endUtcMs, zone));
  const moon = isFree ? `; without the Moon ${listed(free)}` : '';
  return `${stands}; ${centre}${moon}. It wants a dark place`;
};
