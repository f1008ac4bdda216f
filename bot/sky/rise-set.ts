/** When a body rises, crosses the meridian and sets inside a span of time. */
import { MS_PER_DAY, MS_PER_HOUR } from '../ground/durations.js';
import { asinDeg } from './angles.js';
import { crossingsOf, zeroBetween } from './crossings.js';
import type { Crossing, TimeFunction } from './crossings.js';
import { nightFrame } from './night-frame.js';
import type { NightDirection, NightFrame } from './night-frame.js';
import { skyTrack } from './sky-track.js';
import type { SkyTrack } from './sky-track.js';
import type { FixedBody, Observer, SkyBody, UtcMs } from './types.js';

/** Airless altitude at which stars and planets rise and set: the usual 34′ of refraction at the horizon. */
export const HORIZON_ALTITUDE_DEG = -34 / 60;
/** Airless altitude of the Sun's centre when its upper edge rises or sets: 34′ of refraction and 16′ of semidiameter. */
export const SUN_HORIZON_ALTITUDE_DEG = -50 / 60;

/** Mean radius of the Moon in astronomical units (1737.4 km: IAU Working Group on Cartographic Coordinates, 2015). */
const MOON_RADIUS_AU = 1737.4 / 149_597_870.7;

export interface RiseTransitSet {
  /** The first rising in the span, or null when there is none. */
  readonly riseUtcMs: UtcMs | null;
  /** The first crossing of the upper meridian (hour angle 0, up or not) in the span, or null. */
  readonly transitUtcMs: UtcMs | null;
  /** The first setting in the span, or null. */
  readonly setUtcMs: UtcMs | null;
  /** Above the horizon for the whole span. */
  readonly alwaysUp: boolean;
  /** Below the horizon for the whole span. */
  readonly neverUp: boolean;
}

/**
 * Degrees above the body's own horizon as a function of time: −34′ for stars and planets, −50′ for the Sun's centre, and for
 * the Moon −34′ for its upper edge, its true semidiameter being taken for the instant (as the almanacs do; Explanatory
 * Supplement to the Astronomical Almanac, 3rd ed., sec. 12.3).
 */
export const aboveHorizon = (body: SkyBody, track: SkyTrack): TimeFunction => {
  if (body.kind !== 'solarSystem') return (utcMs) => track.altitudeDegAt(utcMs) - HORIZON_ALTITUDE_DEG;
  switch (body.body) {
    case 'Sun':
      return (utcMs) => track.altitudeDegAt(utcMs) - SUN_HORIZON_ALTITUDE_DEG;
    case 'Moon':
      return (utcMs) =>
        track.altitudeDegAt(utcMs) + asinDeg(MOON_RADIUS_AU / track.distanceAuAt(utcMs)) - HORIZON_ALTITUDE_DEG;
    default:
      return (utcMs) => track.altitudeDegAt(utcMs) - HORIZON_ALTITUDE_DEG;
  }
};

const orNull = (utcMs: UtcMs, endUtcMs: UtcMs): UtcMs | null => (utcMs <= endUtcMs ? utcMs : null);

/** {@link riseTransitSet} for a fixed direction of a night already worked out: the batch path. */
export const fixedRiseTransitSet = (frame: NightFrame, direction: NightDirection): RiseTransitSet => {
  const { startUtcMs, endUtcMs } = frame;
  const transitUtcMs = orNull(frame.nextAtHourAngle(direction, 0, startUtcMs), endUtcMs);
  const arc = frame.arcAbove(direction, HORIZON_ALTITUDE_DEG);
  if (arc.kind !== 'crosses') {
    return {
      riseUtcMs: null,
      transitUtcMs,
      setUtcMs: null,
      alwaysUp: arc.kind === 'above',
      neverUp: arc.kind === 'below',
    };
  }
  const riseUtcMs = orNull(frame.nextAtHourAngle(direction, -arc.halfArcDeg, startUtcMs), endUtcMs);
  const setUtcMs = orNull(frame.nextAtHourAngle(direction, arc.halfArcDeg, startUtcMs), endUtcMs);
  const still = riseUtcMs === null && setUtcMs === null;
  const up = Math.abs(frame.hourAngleDegAt(direction, startUtcMs)) < arc.halfArcDeg;
  return { riseUtcMs, transitUtcMs, setUtcMs, alwaysUp: still && up, neverUp: still && !up };
};

const fixedInDayPieces = (body: FixedBody, observer: Observer, startUtcMs: UtcMs, endUtcMs: UtcMs): RiseTransitSet => {
  let whole: RiseTransitSet | null = null;
  for (let from = startUtcMs; whole === null || from < endUtcMs; from += MS_PER_DAY) {
    const frame = nightFrame(observer, from, Math.min(endUtcMs, from + MS_PER_DAY));
    const piece = fixedRiseTransitSet(frame, frame.directionOfBody(body));
    whole =
      whole === null
        ? piece
        : {
            riseUtcMs: whole.riseUtcMs ?? piece.riseUtcMs,
            transitUtcMs: whole.transitUtcMs ?? piece.transitUtcMs,
            setUtcMs: whole.setUtcMs ?? piece.setUtcMs,
            alwaysUp: whole.alwaysUp && piece.alwaysUp,
            neverUp: whole.neverUp && piece.neverUp,
          };
    if (whole.riseUtcMs !== null && whole.transitUtcMs !== null && whole.setUtcMs !== null) break;
  }
  return whole;
};

/** First crossing of the upper meridian by a body whose hour angle grows by 14° to 15° an hour. */
const firstTransit = (track: SkyTrack, startUtcMs: UtcMs, endUtcMs: UtcMs): UtcMs | null => {
  const stepMs = MS_PER_HOUR;
  let from = startUtcMs;
  let before = track.hourAngleDegAt(from);
  while (from < endUtcMs) {
    const to = Math.min(endUtcMs, from + stepMs);
    const after = track.hourAngleDegAt(to);
    if (before === 0) return from;
    if (before < 0 && after >= 0 && after - before < 180) return zeroBetween(track.hourAngleDegAt, from, to);
    from = to;
    before = after;
  }
  return null;
};

/**
 * The first rising, upper transit and setting of a body between two instants (ends included); "no event" is null. Fixed
 * bodies by closed form, the rest by search, in which passes however short between two samples are found.
 * The horizon is the sea-level one, airless altitude −34′ (see {@link aboveHorizon}); the observer's height does not dip it.
 */
export const riseTransitSet = (
  body: SkyBody,
  observer: Observer,
  startUtcMs: UtcMs,
  endUtcMs: UtcMs,
): RiseTransitSet => {
  if (body.kind === 'fixed') return fixedInDayPieces(body, observer, startUtcMs, endUtcMs);
  const track = skyTrack(body, observer);
  const height = aboveHorizon(body, track);
  const crossings = crossingsOf(height, startUtcMs, endUtcMs);
  const up = height(startUtcMs) > 0;
  return {
    riseUtcMs: crossings.find(({ rising }) => rising)?.utcMs ?? null,
    transitUtcMs: firstTransit(track, startUtcMs, endUtcMs),
    setUtcMs: crossings.find(({ rising }) => !rising)?.utcMs ?? null,
    alwaysUp: crossings.length === 0 && up,
    neverUp: crossings.length === 0 && !up,
  };
};

/** Every passage of a body's centre through an airless altitude between two instants, in order. */
export const altitudeCrossings = (
  body: SkyBody,
  observer: Observer,
  altitudeDeg: number,
  startUtcMs: UtcMs,
  endUtcMs: UtcMs,
): Crossing[] => {
  const track = skyTrack(body, observer);
  return crossingsOf((utcMs) => track.altitudeDegAt(utcMs) - altitudeDeg, startUtcMs, endUtcMs);
};
