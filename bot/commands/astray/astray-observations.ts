/** Reads what a member saw of a miss: where the tube landed, what the display showed, which sidereal time stood on it. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { resolveTarget } from '../../catalogue/index.js';
import { LST_SIGMA_S, POSITION_SIGMA_DEG, type PointedTarget } from '../../pointing/miss/astray-types.js';
import {
  equatorialFromVector,
  rotatedAbout,
  unitFromEquatorial,
  wrapDeg360,
  wrapHours24,
  type Vector3,
} from '../../sky/angles.js';
import { horizontalFromOfDate, horizontalOf, ofDateFromHorizontal, placeOf } from '../../sky/place.js';
import type { Equatorial, Horizontal, Observer, SkyBody, UtcMs } from '../../sky/types.js';
import type { Deps } from '../core/command.js';
import { tableOf } from '../../ground/table-of.js';

/** Where and when something was seen. */
export interface SkyThen {
  readonly deps: Deps;
  readonly observer: Observer;
  readonly utcMs: UtcMs;
}

export const pointedAt = (
  { observer, utcMs }: SkyThen,
  { name, body }: { readonly name: string; readonly body: SkyBody },
): PointedTarget => {
  const { ofDate, j2000 } = placeOf(body, observer, utcMs);
  if (body.kind === 'fixed') return { name, ofDate, j2000 };
  // A planet's place is dear, and the same few instants are asked for thousands of times.
  const places = new Map<UtcMs, Equatorial>([[utcMs, ofDate]]);
  const ofDateAt = (instant: UtcMs): Equatorial => {
    const known = places.get(instant) ?? placeOf(body, observer, instant).ofDate;
    places.set(instant, known);
    return known;
  };
  return { name, ofDate, j2000, ofDateAt };
};

const NUMBER = String.raw`[+\-−]?\d{1,3}(?:\.\d+)?`;
const PAIR = new RegExp(
  String.raw`^(?:alt(?:itude)?\.?\s*:?=?\s*)?(${NUMBER})\s*°?\s*[,;\s]\s*(?:az(?:imuth)?\.?\s*:?=?\s*)?(${NUMBER})\s*°?$`,
  'iu',
);
const toNumber = (text: string): number => Number(text.replace('−', '-'));

/** `alt,az` in degrees; null when the text is no such pair. */
export const readAltAz = (optionName: string, text: string): Horizontal | Problem | null => {
  const match = PAIR.exec(text.trim());
  if (match === null) return null;
  const altitudeDeg = toNumber(match[1]!);
  const azimuthDeg = toNumber(match[2]!);
  if (Math.abs(altitudeDeg) > 90)
    return problem(
      'bad-altitude',
      `${optionName}: altitude ${altitudeDeg}° is beyond ±90°. Give altitude first, then azimuth: ${optionName}:41,135`,
    );
  if (azimuthDeg < -180 || azimuthDeg > 360)
    return problem(
      'bad-azimuth',
      `${optionName}: azimuth ${azimuthDeg}° is not within 0° to 360°. Give altitude first, then azimuth: ${optionName}:41,135`,
    );
  return { altitudeDeg, azimuthDeg: wrapDeg360(azimuthDeg) };
};

export interface ReadLst {
  readonly hours: number;
  readonly sigmaS: number;
}

/** "05:12:33", "5h 12m 33s", "5 12", "5.21". */
export const readLst = (text: string): ReadLst | Problem => {
  const bad = problem(
    'bad-sidereal-time',
    `lst: "${tidy(text, 30)}" is not a sidereal time. Write it as the controller shows it, 0 to 24 hours: lst:05:12:33 or lst:"5h 12m"`,
  );
  const sexagesimal =
    /^(\d{1,2})\s*(?:h|:|\s)\s*(\d{1,2}(?:\.\d+)?)\s*(?:m|′|'|:|\s|$)\s*(?:(\d{1,2}(?:\.\d+)?)\s*(?:s|″|")?)?$/iu.exec(
      text.trim(),
    );
  const decimal = /^(\d{1,2}(?:\.\d+)?)\s*h?$/iu.exec(text.trim());
  if (sexagesimal !== null) {
    const [hours, minutes, seconds] = [Number(sexagesimal[1]), Number(sexagesimal[2]), Number(sexagesimal[3] ?? 0)];
    if (hours >= 24 || minutes >= 60 || seconds >= 60) return bad;
    // Read to the minute, it may be half a minute out by that alone.
    return {
      hours: hours + minutes / 60 + seconds / 3600,
      sigmaS: sexagesimal[3] === undefined ? 2 * LST_SIGMA_S : LST_SIGMA_S,
    };
  }
  if (decimal !== null && Number(decimal[1]) < 24)
    return { hours: Number(decimal[1]), sigmaS: decimal[1]!.includes('.') ? 2 * LST_SIGMA_S : 1200 };
  return bad;
};

/** Position angles from north through east on the sky; up and its like are turned in the horizon's frame instead. */
const SKY_DIRECTIONS = tableOf({
  north: 0,
  n: 0,
  'north-east': 45,
  northeast: 45,
  ne: 45,
  east: 90,
  e: 90,
  'south-east': 135,
  southeast: 135,
  se: 135,
  south: 180,
  s: 180,
  'south-west': 225,
  southwest: 225,
  sw: 225,
  west: 270,
  w: 270,
  'north-west': 315,
  northwest: 315,
  nw: 315,
});
const HORIZON_DIRECTIONS = tableOf({
  above: 0,
  up: 0,
  higher: 0,
  right: 90,
  below: 180,
  down: 180,
  lower: 180,
  high: 0,
  low: 180,
  left: 270,
});

const UNIT_DEGREES = tableOf({
  '°': 1,
  deg: 1,
  degree: 1,
  degrees: 1,
  '′': 1 / 60,
  "'": 1 / 60,
  arcmin: 1 / 60,
  arcminutes: 1 / 60,
});
const OFFSET =
  /^(?:(?:about|around|roughly|some|approximately|~)\s*)?(\d{1,3}(?:\.\d+)?)\s*(°|degrees?|deg|′|'|arcmin(?:utes)?)?\s*(?:(?:to|too far|too)\s+)?(?:the\s+)?([a-z-]+)(?:\s+(?:of|from|than)?\s*(?:it|the target|target))?\.?$/iu;
const ON_TARGET = /^(?:spot on|on it|on target|right on(?: it)?|there|the same|it)$/iu;

/** A point so many degrees away from another, towards a position angle from the pole of its frame (through the direction of rising longitude). */
const moved = (from: Vector3, pole: Vector3, angleDeg: number, distanceDeg: number): Vector3 => {
  const dot = from[0] * pole[0] + from[1] * pole[1] + from[2] * pole[2];
  const towards: Vector3 = [pole[0] - dot * from[0], pole[1] - dot * from[1], pole[2] - dot * from[2]];
  const length = Math.hypot(...towards);
  const north: Vector3 = length < 1e-9 ? [1, 0, 0] : [towards[0] / length, towards[1] / length, towards[2] / length];
  // Turning about the line of sight, seen from inside the sphere, north goes to east anticlockwise as seen from outside it.
  const heading = rotatedAbout(north, from, -angleDeg);
  const cosine = Math.cos((distanceDeg * Math.PI) / 180);
  const sine = Math.sin((distanceDeg * Math.PI) / 180);
  return [
    from[0] * cosine + heading[0] * sine,
    from[1] * cosine + heading[1] * sine,
    from[2] * cosine + heading[2] * sine,
  ];
};

export interface ReadLanding {
  readonly ofDate: Equatorial;
  readonly sigmaDeg: number;
  readonly note?: string;
  /** Where degrees east or west may have been read in right ascension: the place that this would be. */
  readonly alongRa?: { readonly degrees: number; readonly ofDate: Equatorial };
}

/** Under this the two readings are alike to the eye. */
const LEAST_ALONG_RA_DEG = 5;

/** Read by a scale or a chart, a small offset is out by a few minutes of arc. Common practice, no source. */
const LEAST_SIGMA_DEG = 0.1;

const alongRaOf = ({ raHours, decDeg }: Equatorial, towards: number, degrees: number): Pick<ReadLanding, 'alongRa'> => {
  if (![90, 270].includes(towards) || degrees < LEAST_ALONG_RA_DEG) return {};
  const hours = ((towards === 90 ? 1 : -1) * degrees) / 15;
  return { alongRa: { degrees, ofDate: { raHours: wrapHours24(raHours + hours), decDeg } } };
};

/** "0.4 degrees east, 0.2 degrees low": the second is counted from where the first ends. */
const readOffsets = (sky: SkyThen, text: string, target: PointedTarget, body: SkyBody): ReadLanding | null => {
  const [first = '', second, ...more] = text.split(/\s*(?:,|\band\b|&)\s*/iu);
  const begun = more.length > 0 ? null : readOffset(sky, first, target, body);
  if (begun === null || second === undefined) return begun;
  const frame = horizontalFromOfDate(begun.ofDate, sky.observer, sky.utcMs);
  const ended = readOffset(sky, second, { ...target, ofDate: begun.ofDate }, frame);
  if (ended === null) return null;
  const note = begun.note ?? ended.note;
  return {
    ofDate: ended.ofDate,
    sigmaDeg: Math.max(begun.sigmaDeg, ended.sigmaDeg),
    ...(note === undefined ? {} : { note }),
  };
};

/** "15 degrees west of it", "20′ higher": null when the text is no offset. `body`: what is moved from, or where it stands. */
const readOffset = (
  { observer, utcMs }: SkyThen,
  text: string,
  target: PointedTarget,
  body: SkyBody | Horizontal,
): ReadLanding | null => {
  const offset = OFFSET.exec(text);
  if (offset === null) return null;
  const word = offset[3]!.toLowerCase();
  const distanceDeg = Number(offset[1]) * (UNIT_DEGREES.get((offset[2] ?? '°').toLowerCase()) ?? 1);
  const onSky = SKY_DIRECTIONS.get(word);
  const inHorizon = HORIZON_DIRECTIONS.get(word);
  if ((onSky === undefined && inHorizon === undefined) || distanceDeg > 180) return null;
  // A guess by eye is out by a sixth or so; common practice, no source.
  const leastDeg = distanceDeg < 1 ? LEAST_SIGMA_DEG : POSITION_SIGMA_DEG;
  const sigmaDeg = Math.max(leastDeg, 0.15 * distanceDeg);
  if (onSky !== undefined)
    return {
      ...alongRaOf(target.ofDate, onSky, distanceDeg),
      ofDate: equatorialFromVector(moved(unitFromEquatorial(target.ofDate), [0, 0, 1], onSky, distanceDeg)),
      sigmaDeg,
      note: 'North, south, east and west are taken as on the sky: west is where the stars set to.',
    };
  const at = 'altitudeDeg' in body ? body : horizontalOf(body, observer, utcMs);
  const isUpright = inHorizon === 0 || inHorizon === 180;
  const levelDeg = distanceDeg / Math.max(0.2, Math.cos((at.altitudeDeg * Math.PI) / 180));
  const altitudeDeg = at.altitudeDeg + (inHorizon === 0 ? distanceDeg : -distanceDeg);
  return {
    ofDate: ofDateFromHorizontal(
      isUpright
        ? { altitudeDeg, azimuthDeg: at.azimuthDeg }
        : { altitudeDeg: at.altitudeDeg, azimuthDeg: at.azimuthDeg + (inHorizon === 90 ? levelDeg : -levelDeg) },
      observer,
      utcMs,
    ),
    sigmaDeg,
  };
};

/** Where the tube really went: a name, J2000 coordinates, `alt,az`, or "about 15 degrees west of it". */
export const readLanding = (
  sky: SkyThen,
  text: string,
  target: PointedTarget,
  body: SkyBody,
): ReadLanding | Problem => {
  const { deps, observer, utcMs } = sky;
  const clean = text.trim();
  const pair = readAltAz('landed', clean);
  if (isProblem(pair)) return pair;
  if (pair !== null) return { ofDate: ofDateFromHorizontal(pair, observer, utcMs), sigmaDeg: POSITION_SIGMA_DEG };
  if (ON_TARGET.test(clean)) return { ofDate: target.ofDate, sigmaDeg: POSITION_SIGMA_DEG };
  const offset = readOffsets(sky, clean, target, body);
  if (offset !== null) return offset;
  const found = resolveTarget(deps.catalogue, clean);
  if (!isProblem(found))
    return { ofDate: placeOf(found.target.body, observer, utcMs).ofDate, sigmaDeg: POSITION_SIGMA_DEG };
  return problem(
    'bad-landing',
    `landed: "${tidy(clean, 40)}" is not a place I know. Give a star's name, J2000 coordinates (16:41:42 +36:28), alt,az in degrees (41,135), or words such as "about 15 degrees west of it".`,
  );
};
