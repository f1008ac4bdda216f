/** `meridian`: when a target crosses the meridian, on which side of the pier the tube is, and how long it can be followed. */
import { MS_PER_MINUTE } from '../ground/durations.js';
import { isProblem } from '../ground/problem.js';
import type { Target } from '../catalogue/index.js';
import { oppositeSide, pierSide, type MountKind, type PierSide } from '../pointing/mount/mount.js';
import { nextAtHourAngle, trackingLimit, type TrackingLimit } from '../pointing/mount/tracking-limit.js';
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { degrees, direction, duration, isoUtc, rounded } from '../reply/wording.js';
import { placeOf } from '../sky/index.js';
import type { Place, UtcMs } from '../sky/types.js';
import { formatLocalTime } from '../times/index.js';
import { defineCommand, number, optional, text } from './core/command.js';
import { mountFor, mountOption } from './asking/mount-for.js';
import { targetAtSite, timeFor } from './asking/question-parts.js';

/** As most mounts come: they flip at the meridian; and under 15° the air and the neighbours spoil it. Common practice, no source. */
const USUAL_PAST_DEG = 0;
const USUAL_LOWEST_DEG = 15;
const NEAR_ZENITH_DEG = 85;

const sideWords = (side: PierSide): string => `tube ${side} of the pier, looking ${oppositeSide(side)}`;

const reasonWords = (limit: TrackingLimit, lowestDeg: number, pastDeg: number): string => {
  switch (limit.reason) {
    case 'meridian':
      return pastDeg === 0
        ? 'then the mount must flip, at the meridian'
        : `then the mount must flip, ${degrees(pastDeg)} past the meridian`;
    case 'low':
      return `then it sinks below ${degrees(lowestDeg)}`;
    case 'sunrise':
      return 'then the Sun rises: cap and park before';
    case 'none':
      return 'nothing ends it within a day';
  }
};

const summaryOf = (
  target: Target,
  place: Place,
  limit: TrackingLimit,
  mount: MountKind,
  utcMs: UtcMs,
  zone: string,
  lowestDeg: number,
  pastDeg: number,
): string => {
  if (place.altitudeDeg < 0) return `${target.name} is below the horizon at ${formatLocalTime(utcMs, zone)}.`;
  if (place.altitudeDeg < lowestDeg)
    return `${target.name} is only ${degrees(place.altitudeDeg)} high at ${formatLocalTime(utcMs, zone)}, below your ${degrees(lowestDeg)}.`;
  const until =
    limit.untilUtcMs === null
      ? `${target.name} can be followed all day and night`
      : `${target.name} can be followed for ${duration(limit.untilUtcMs - utcMs)}, until ${formatLocalTime(limit.untilUtcMs, zone)}`;
  const flipped =
    mount === 'german' && limit.flipUtcMs !== null && limit.reason === 'meridian' && limit.lowUtcMs !== null
      ? `; after the flip until ${formatLocalTime(Math.min(limit.lowUtcMs, limit.sunriseUtcMs ?? Infinity), zone)}`
      : '';
  return `${until}; ${reasonWords(limit, lowestDeg, pastDeg)}${flipped}.`;
};

export const meridian = defineCommand({
  name: 'meridian',
  summary: 'When does it cross the meridian, and how long can I follow it?',
  options: {
    target: text('What is being followed: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    at: optional(text('From when: now, tonight 22:30, 2026-12-13T21:00', { complete: 'time', maxLength: 80 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    mount: mountOption,
    past: optional(
      number('Degrees past the meridian your mount may track before it flips (0 when not said)', { min: 0, max: 45 }),
    ),
    above: optional(number('Lowest altitude you want, in degrees (15 when not said)', { min: 0, max: 80 })),
  },
  examples: [
    'meridian M 37 at:"tonight 22:00" site:52.71,0.12',
    'meridian NGC 253 at:"tonight 20:00" past:5 above:20 site:"Perth, Australia"',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, asker, nowUtcMs } = request;
    const asked = await targetAtSite(deps, request, {
      command: 'meridian',
      target: options.target,
      site: options.site,
      rest: {
        at: options.at,
        mount: options.mount,
      },
    });
    if (isProblem(asked)) return asked;
    const { target, where } = asked;
    const { observer, zone } = where.site;
    const time = timeFor(options.at, zone, nowUtcMs);
    if (isProblem(time)) return time;
    const { utcMs } = time;
    const mount = await mountFor(deps, asker, options.mount);
    const pastMeridianDeg = options.past ?? USUAL_PAST_DEG;
    const lowestAltitudeDeg = options.above ?? USUAL_LOWEST_DEG;
    const place = placeOf(target.body, observer, utcMs);
    const limit = trackingLimit({ mount, body: target.body, observer, utcMs, pastMeridianDeg, lowestAltitudeDeg });
    const meridianUtcMs = nextAtHourAngle(target.body, observer, utcMs, 0);
    const atMeridian = placeOf(target.body, observer, meridianUtcMs);
    const side = pierSide(place.hourAngleHours);
    const isUp = place.altitudeDeg > 0;
    return reply({
      title: `${target.name} and the meridian`,
      level: place.altitudeDeg >= lowestAltitudeDeg ? 'good' : 'info',
      summary: summaryOf(target, place, limit, mount, utcMs, zone, lowestAltitudeDeg, pastMeridianDeg),
      facts: [
        {
          label: 'Meridian',
          value: `in ${duration(meridianUtcMs - utcMs)}, at ${formatLocalTime(meridianUtcMs, zone)}, ${degrees(atMeridian.altitudeDeg)} high`,
        },
        ...(mount !== 'german'
          ? []
          : [
              {
                label: 'Pier side',
                value:
                  place.hourAngleHours < 0
                    ? `now ${sideWords(side)}; after the flip ${sideWords(oppositeSide(side))}`
                    : `${sideWords(side)}; no flip until it comes round again`,
              },
            ]),
        ...(isUp
          ? [{ label: 'Height', value: `${degrees(place.altitudeDeg)} high, ${direction(place.azimuthDeg)}` }]
          : []),
      ],
      notes: [
        ...(mount === 'altaz' && atMeridian.altitudeDeg > NEAR_ZENITH_DEG
          ? [
              `It passes ${degrees(90 - atMeridian.altitudeDeg, 1)} from the zenith, where an alt-azimuth mount must whirl round: leave it alone for a quarter of an hour about then.`,
            ]
          : []),
        ...(mount === 'german' && limit.reason === 'meridian'
          ? [
              'Watch the flip: the tube, the cables and the camera must clear the pier. Mounts differ in how far past the meridian they may track (past:).',
            ]
          : []),
        ...time.notes,
        ...asked.notes,
      ],
      pointsAt: isUp ? [{ what: target.name, when: { utcMs }, observer, zone, direction: target.body }] : NOWHERE,
      data: {
        utc: isoUtc(utcMs),
        mount,
        hourAngleHours: rounded(place.hourAngleHours, 5),
        altitudeDeg: rounded(place.altitudeDeg, 4),
        meridianUtc: isoUtc(meridianUtcMs),
        meridianAltitudeDeg: rounded(atMeridian.altitudeDeg, 4),
        pierSide: mount === 'german' ? side : null,
        pierSideAfter: mount === 'german' && place.hourAngleHours < 0 ? oppositeSide(side) : null,
        trackUntilUtc: limit.untilUtcMs === null ? null : isoUtc(limit.untilUtcMs),
        trackMinutes: limit.untilUtcMs === null ? null : rounded((limit.untilUtcMs - utcMs) / MS_PER_MINUTE, 1),
        limit: limit.reason,
        flipUtc: limit.flipUtcMs === null ? null : isoUtc(limit.flipUtcMs),
      },
    });
  },
});
