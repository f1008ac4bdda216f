/** What `meridian` says of a target that is followed: until when, on which side of the pier, and what to watch. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import type { Target } from '../../catalogue/index.js';
import { oppositeSide, pierSide, type MountKind, type PierSide } from '../../pointing/mount/mount.js';
import type { TrackingLimit } from '../../pointing/mount/tracking-limit.js';
import type { Fact, PointsAt, Reply } from '../../reply/reply.js';
import { degrees, degreesAsAsked, duration, isoUtc, rounded } from '../../reply/wording.js';
import { placeOf } from '../../sky/place.js';
import { SIDEREAL_DEG_PER_MS } from '../../sky/earth.js';
import type { Observer, Place, UtcMs } from '../../sky/types.js';
import type { Gear } from '../../store/store.js';
import { formatLocalTime } from '../../times/index.js';
import { limitsWords } from '../asking/mount-numbers.js';
import { lastCrossing } from './by-hour.js';

const NEAR_ZENITH_DEG = 85;
/** The air lifts what stands at the horizon by over half a degree, and a high place sees lower. */
const SEEN_FROM_DEG = -1.5;
/** The sky turns by a degree in 239.3 s. */
const MS_PER_SIDEREAL_DEGREE = 1 / SIDEREAL_DEG_PER_MS;

const sideWords = (side: PierSide): string => `tube ${side} of the pier, looking ${oppositeSide(side)}`;

export interface Followed {
  readonly target: Target;
  readonly observer: Observer;
  readonly zone: string;
  readonly utcMs: UtcMs;
  readonly mount: MountKind;
  readonly pastDeg: number;
  /** How long before the meridian the later side of the pier may be taken. */
  readonly earlyDeg: number;
  /** The limits are the member's own, as saved. */
  readonly saved: Gear['limits'];
  readonly lowestDeg: number;
  readonly place: Place;
  readonly limit: TrackingLimit;
  readonly meridianUtcMs: UtcMs;
  readonly atMeridian: Place;
  /** A German mount's flip that comes while the target is still high enough. */
  readonly flipUtcMs: UtcMs | null;
}

const reasonWords = ({ limit, lowestDeg, pastDeg }: Followed): string => {
  switch (limit.reason) {
    case 'meridian': {
      const where = limit.isFlipBelowPole ? 'the meridian below the pole' : 'the meridian';
      return `then the mount must flip, ${pastDeg === 0 ? `at ${where}` : `${degrees(pastDeg)} past ${where}`}`;
    }
    case 'low':
      return `then it sinks below ${degreesAsAsked(lowestDeg)}`;
    case 'sunrise':
      return 'then the Sun rises: cap and park before';
    case 'none':
      return 'nothing ends it within a day';
  }
};

/** Until when a target can be followed all told, flips and all; null where nothing ends it. */
const endUtcMs = ({ limit }: Followed): UtcMs | null => {
  const ends = [limit.lowUtcMs, limit.sunriseUtcMs].filter((utcMs) => utcMs !== null);
  return ends.length === 0 ? null : Math.min(...ends);
};

export const summaryOf = (followed: Followed): string => {
  const { target, place, limit, utcMs, zone, lowestDeg, flipUtcMs } = followed;
  const now = formatLocalTime(utcMs, zone);
  if (place.altitudeDeg < 0) return `${target.name} is below the horizon at ${now}.`;
  if (place.altitudeDeg < lowestDeg) {
    const digits = Math.round(place.altitudeDeg) < lowestDeg ? 0 : 1;
    return `${target.name} is only ${degrees(place.altitudeDeg, digits)} high at ${now}, below your ${degreesAsAsked(lowestDeg)}.`;
  }
  const until =
    limit.untilUtcMs === null
      ? `${target.name} can be followed all day and night`
      : `${target.name} can be followed for ${duration(limit.untilUtcMs - utcMs)}, until ${formatLocalTime(limit.untilUtcMs, zone)}`;
  const end = endUtcMs(followed);
  const flipped =
    flipUtcMs !== null && limit.reason === 'meridian' && end !== null
      ? `; after the flip until ${formatLocalTime(end, zone)}`
      : '';
  return `${until}; ${reasonWords(followed)}${flipped}.`;
};

export const sideFact = ({ place, flipUtcMs }: Followed): Fact => {
  const side = pierSide(place.hourAngleHours);
  return {
    label: 'Pier side',
    value:
      flipUtcMs === null
        ? `${sideWords(side)}; no flip while it is high enough`
        : `now ${sideWords(side)}; after the flip ${sideWords(oppositeSide(side))}`,
  };
};

/** Whether it comes to the meridian while it is being followed. */
const crossesWhileFollowed = (followed: Followed): boolean => {
  const end = endUtcMs(followed);
  return followed.place.altitudeDeg >= followed.lowestDeg && (end === null || followed.meridianUtcMs <= end);
};

/** From when it may be flipped, where that is before it must. */
const earlyWords = ({ flipUtcMs, earlyDeg, pastDeg, utcMs, zone }: Followed): string[] => {
  if (flipUtcMs === null || earlyDeg + pastDeg === 0) return [];
  const fromUtcMs = flipUtcMs - (earlyDeg + pastDeg) * MS_PER_SIDEREAL_DEGREE;
  return [
    fromUtcMs <= utcMs
      ? 'It may be flipped now already.'
      : `It may be flipped from ${formatLocalTime(fromUtcMs, zone)} on.`,
  ];
};

/** A tube that has come across the meridian on its first side goes on to the limit there. */
const stillOnFirstSide = ({ place, pastDeg, utcMs, zone }: Followed): string[] => {
  const hourAngleDeg = place.hourAngleHours * 15;
  return hourAngleDeg > 0 && hourAngleDeg < pastDeg
    ? [
        `If the tube has followed it across the meridian without a flip, that is due at ${formatLocalTime(utcMs + (pastDeg - hourAngleDeg) * MS_PER_SIDEREAL_DEGREE, zone)}.`,
      ]
    : [];
};

const germanNotes = (followed: Followed): string[] => [
  ...earlyWords(followed),
  ...stillOnFirstSide(followed),
  ...(followed.limit.reason === 'meridian'
    ? [
        `Watch the flip: the tube, the cables and the camera must clear the pier.${followed.saved === null ? ' Mounts differ in how far past the meridian they may track (past:, or gear limits:).' : ''}`,
      ]
    : []),
  ...(followed.saved === null ? [] : [`Reckoned with the limits you saved: ${limitsWords(followed.saved)}.`]),
];

export const notesOf = (followed: Followed): string[] => {
  const { mount, atMeridian } = followed;
  if (mount === 'german') return germanNotes(followed);
  return mount === 'altaz' && atMeridian.altitudeDeg > NEAR_ZENITH_DEG && crossesWhileFollowed(followed)
    ? [
        `It passes ${degrees(90 - atMeridian.altitudeDeg, 1)} from the zenith, where an alt-azimuth mount must whirl round: leave it alone for a quarter of an hour about then.`,
      ]
    : [];
};

const heightWords = ({ altitudeDeg }: Place): string =>
  altitudeDeg < 0 ? 'below the horizon' : `${degrees(altitudeDeg)} high`;

/** When it comes; and when it was there, where it stands west of it since. */
export const meridianWords = (followed: Followed): string => {
  const { target, observer, zone, utcMs, meridianUtcMs, atMeridian } = followed;
  const next = `in ${duration(meridianUtcMs - utcMs)}, at ${formatLocalTime(meridianUtcMs, zone)}, ${heightWords(atMeridian)}`;
  const last = followed.place.altitudeDeg > 0 ? lastCrossing({ body: target.body, observer, utcMs }) : null;
  return last === null
    ? next
    : `passed ${duration(utcMs - last)} ago, at ${formatLocalTime(last, zone)}, ${heightWords(placeOf(target.body, observer, last))}; next ${next}`;
};

/** All the while it is followed, and the meridian where that lies beyond; each only with the target up. */
export const pointsOf = (followed: Followed): PointsAt[] => {
  const { target, observer, zone, utcMs, place, meridianUtcMs, atMeridian, limit } = followed;
  const named = { what: target.name, observer, zone, direction: target.body };
  const untilUtcMs = endUtcMs(followed) ?? limit.untilUtcMs ?? utcMs;
  return [
    ...(place.altitudeDeg > SEEN_FROM_DEG
      ? [{ ...named, when: { fromUtcMs: utcMs, untilUtcMs: Math.max(utcMs, untilUtcMs) } }]
      : []),
    ...(atMeridian.altitudeDeg > SEEN_FROM_DEG
      ? [{ ...named, what: `${target.name} at the meridian`, when: { utcMs: meridianUtcMs } }]
      : []),
  ];
};

export const dataOf = (followed: Followed): Reply['data'] => {
  const { utcMs, mount, place, limit, meridianUtcMs, atMeridian, flipUtcMs } = followed;
  const side = pierSide(place.hourAngleHours);
  return {
    utc: isoUtc(utcMs),
    mount,
    hourAngleHours: rounded(place.hourAngleHours, 5),
    altitudeDeg: rounded(place.altitudeDeg, 4),
    meridianUtc: isoUtc(meridianUtcMs),
    meridianAltitudeDeg: rounded(atMeridian.altitudeDeg, 4),
    pierSide: mount === 'german' ? side : null,
    pierSideAfter: flipUtcMs === null ? null : oppositeSide(side),
    trackUntilUtc: limit.untilUtcMs === null ? null : isoUtc(limit.untilUtcMs),
    trackMinutes: limit.untilUtcMs === null ? null : rounded((limit.untilUtcMs - utcMs) / MS_PER_MINUTE, 1),
    limit: limit.reason,
    flipUtc: flipUtcMs === null ? null : isoUtc(flipUtcMs),
  };
};
