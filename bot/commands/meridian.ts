/** `meridian`: when a target crosses the meridian, on which side of the pier the tube is, and how long it can be followed. */
import { isProblem } from '../ground/problem.js';
import type { MountKind } from '../pointing/mount/mount.js';
import { nextAtHourAngle, trackingLimit } from '../pointing/mount/tracking-limit.js';
import { reply, type Outcome } from '../reply/reply.js';
import { degrees, direction } from '../reply/wording.js';
import { placeOf } from '../sky/place.js';
import { byHourWords, untilOf } from './meridian/by-hour.js';
import {
  dataOf,
  meridianWords,
  notesOf,
  pointsOf,
  sideFact,
  summaryOf,
  type Followed,
} from './meridian/followed-words.js';
import { startOf } from './meridian/start-of.js';
import { acrossReply } from './meridian/way-across.js';
import { defineCommand, number, optional, text, type Deps, type Request } from './core/command.js';
import { mountFor, mountOption, savedNumbers } from './asking/mount-for.js';
import type { Asking } from './asking/resolve-site.js';
import { commandLine, targetAtSite, targetFor, timeFor, type TargetAtSite } from './asking/question-parts.js';

/** As most mounts come: they flip at the meridian; and under 15° the air and the neighbours spoil it. Common practice, no source. */
const USUAL_PAST_DEG = 0;
const USUAL_LOWEST_DEG = 15;

/** How far past the meridian, and how long before it: as asked, else as saved, else as most mounts come. */
const limitsFor = async (
  request: Asking,
  past: number | undefined,
  mount: MountKind,
): Promise<Pick<Followed, 'saved' | 'pastDeg' | 'earlyDeg'>> => {
  const saved = mount === 'german' ? await savedNumbers(request, 'limits', mount) : null;
  return { saved, pastDeg: past ?? saved?.westDeg ?? USUAL_PAST_DEG, earlyDeg: saved?.eastDeg ?? 0 };
};

/** From another target: whether it flips on the way. */
const fromTarget = (
  deps: Deps,
  { options, nowUtcMs }: Request<{ readonly from?: string | undefined; readonly at?: string | undefined }>,
  { target, where, notes }: TargetAtSite,
  mount: MountKind,
): Outcome => {
  const { observer, zone } = where.site;
  const time = timeFor(options.at, zone, nowUtcMs);
  if (isProblem(time)) return time;
  const start = targetFor(deps, options.from ?? '', (from) =>
    commandLine('meridian', target.name, { from, at: options.at, site: where.site.name }),
  );
  if (isProblem(start)) return start;
  const across = { from: start.target, to: target, observer, zone, utcMs: time.utcMs, mount };
  return reply({ ...acrossReply(across), notes: [...time.notes, ...notes] });
};

export const meridian = defineCommand({
  name: 'meridian',
  summary: 'When does it cross the meridian, and how long can I follow it?',
  options: {
    target: text('What is being followed: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    at: optional(text('From when: now, tonight 22:30, 2026-12-13T21:00', { complete: 'time', maxLength: 80 })),
    before: optional(text('Whether it flips before that hour: 03:00', { complete: 'time', maxLength: 80 })),
    from: optional(text('Where the tube stands: a target; whether it flips on the way', { complete: 'target' })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    mount: mountOption,
    past: optional(
      number('Degrees past the meridian your mount may track before it flips (0 unless saved with gear)', {
        min: 0,
        max: 45,
      }),
    ),
    above: optional(number('Lowest altitude you want, in degrees (15 when not said)', { min: 0, max: 80 })),
  },
  examples: [
    'meridian M 37 at:"tonight 22:00" site:52.71,0.12',
    'meridian NGC 253 at:"tonight 20:00" past:5 above:20 site:"Perth, Australia"',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const asked = await targetAtSite(deps, request, {
      command: 'meridian',
      isSafety: true,
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
    const lowestAltitudeDeg = options.above ?? USUAL_LOWEST_DEG;
    const mount = await mountFor(request, options.mount);
    if (options.from !== undefined) return fromTarget(deps, request, asked, mount);
    const time = startOf(options.at, { site: where.site, body: target.body, lowestAltitudeDeg, nowUtcMs });
    if (isProblem(time)) return time;
    const { utcMs } = time;
    const { saved, pastDeg: pastMeridianDeg, earlyDeg } = await limitsFor(request, options.past, mount);
    const place = placeOf(target.body, observer, utcMs);
    const limit = trackingLimit({ mount, body: target.body, observer, utcMs, pastMeridianDeg, lowestAltitudeDeg });
    const meridianUtcMs = nextAtHourAngle(target.body, observer, utcMs, 0);
    const flipsInTime = limit.flipUtcMs !== null && limit.flipUtcMs <= (limit.lowUtcMs ?? Infinity);
    const followed: Followed = {
      target,
      observer,
      zone,
      utcMs,
      mount,
      pastDeg: pastMeridianDeg,
      earlyDeg,
      saved,
      lowestDeg: lowestAltitudeDeg,
      place,
      limit,
      meridianUtcMs,
      atMeridian: placeOf(target.body, observer, meridianUtcMs),
      flipUtcMs: flipsInTime ? limit.flipUtcMs : null,
    };
    const untilUtcMs = options.before === undefined ? null : untilOf(options.before, zone, utcMs);
    if (isProblem(untilUtcMs)) return untilUtcMs;
    const byHour =
      untilUtcMs === null ? [] : [byHourWords({ ...followed, name: target.name, body: target.body }, untilUtcMs)];
    return reply({
      title: `${target.name} and the meridian`,
      level: place.altitudeDeg >= lowestAltitudeDeg ? 'good' : 'info',
      summary: [...byHour, summaryOf(followed)].join(' '),
      facts: [
        { label: 'Meridian', value: meridianWords(followed) },
        ...(mount === 'german' ? [sideFact(followed)] : []),
        ...(place.altitudeDeg > 0
          ? [{ label: 'Height', value: `${degrees(place.altitudeDeg)} high, ${direction(place.azimuthDeg)}` }]
          : []),
      ],
      notes: [...notesOf(followed), ...time.notes, ...asked.notes],
      pointsAt: pointsOf(followed),
      data: dataOf(followed),
    });
  },
});
