/** `sun`: how near a target is to the Sun, and how near the tube comes to it on the way there. */
import { isProblem, type Problem } from '../../ground/problem.js';
import type { Target } from '../../catalogue/index.js';
import type { MountKind } from '../../pointing/mount/mount.js';
import { saferWay, straightWay, type Way, type WayRequest } from '../../pointing/way/way-past-sun.js';
import { SLEW_SPEED_DEG_PER_S } from '../../pointing/way/slew.js';
import { reply, type Outcome, type Reply } from '../../reply/reply.js';
import { degrees, direction, isoUtc, rounded } from '../../reply/wording.js';
import { SUN_HORIZON_ALTITUDE_DEG, placeOf, sunSafety, type SunLevel, type SunSafety } from '../../sky/index.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { cautionText } from '../../cautions/cautions.js';
import { defineCommand, optional, text } from '../core/command.js';
import type { Deps } from '../core/deps.js';
import { HOME_WORDS, MOUNT_WORDS, mountFor, mountOption } from '../asking/mount-for.js';
import { commandLine, targetAtSite, targetFor, timeFor } from '../asking/question-parts.js';
import { graver } from '../../reply/levels.js';
import { wayData, wayWords } from './way-words.js';

const HOME_NAMES = new Set(['home', 'park', 'parked']);

interface Start {
  readonly from: WayRequest['from'];
  readonly said: string;
}

const startFor = (
  deps: Deps,
  fromText: string | undefined,
  mount: MountKind,
  observer: Observer,
  utcMs: UtcMs,
  lineFor: (from: string) => string,
): Start | Problem => {
  if (fromText === undefined || HOME_NAMES.has(fromText.trim().toLowerCase()))
    return { from: 'home', said: HOME_WORDS[mount] };
  const start = targetFor(deps, fromText, lineFor);
  return isProblem(start)
    ? start
    : { from: placeOf(start.target.body, observer, utcMs).ofDate, said: start.target.name };
};

interface Judged {
  readonly straight: Way;
  /** How the straight way stands to the Sun; clear with the Sun down. */
  readonly level: SunLevel;
  readonly safer: Way | null;
}

const judgeWay = (request: WayRequest, sun: SunSafety, limits: Deps['sunLimits']): Judged => {
  const straight = straightWay(request);
  const least = straight.minimumSeparationDeg;
  const level: SunLevel =
    sun.sunAltitudeDeg <= SUN_HORIZON_ALTITUDE_DEG
      ? 'clear'
      : least < limits.dangerDeg
        ? 'danger'
        : least < limits.cautionDeg
          ? 'caution'
          : 'clear';
  if (level === 'clear' || sun.separationDeg < limits.dangerDeg) return { straight, level, safer: null };
  // The ends cannot be helped; between them the way need be no worse than the nearer of the two.
  const wishDeg = Math.min(limits.cautionDeg, sun.separationDeg, straight.legs.length === 0 ? least : 180) - 0.5;
  const safer = saferWay(request, limits.dangerDeg, wishDeg);
  // By caution alone nobody is sent round for a degree or two.
  return {
    straight,
    level,
    safer: safer !== null && (level === 'danger' || safer.minimumSeparationDeg > least + 5) ? safer : null,
  };
};

const afterWords = (way: Way, utcMs: UtcMs, zone: string): string =>
  `${Math.round((way.closestUtcMs - utcMs) / 1000)} s after setting off, at ${formatLocalTime(way.closestUtcMs, zone)}`;

const summaryFor = (
  target: Target,
  sun: SunSafety,
  { straight, level, safer }: Judged,
  dangerDeg: number,
  utcMs: UtcMs,
  zone: string,
): string => {
  const next = sun.nextSunriseUtcMs === null ? '' : ` until ${formatLocalTime(sun.nextSunriseUtcMs, zone)}`;
  if (target.kind === 'sun') return 'That is the Sun itself. Only with a proper solar filter, fitted before you point.';
  if (sun.sunAltitudeDeg <= SUN_HORIZON_ALTITUDE_DEG) {
    return sun.level === 'clear'
      ? `The Sun is down${next}.`
      : `The Sun is down, but rises soon${next === '' ? '' : `, at ${formatLocalTime(sun.nextSunriseUtcMs ?? utcMs, zone)}`}.`;
  }
  const least = straight.minimumSeparationDeg;
  if (sun.level === 'danger')
    return `${target.name} is only ${degrees(sun.separationDeg, 1)} from the Sun. Not by day.`;
  if (level === 'danger') {
    const rest = safer === null ? `Not by day: no way tried keeps ${degrees(dangerDeg)} clear.` : 'Go round as below.';
    return `Going straight there the tube passes ${degrees(least, 1)} from the Sun, ${afterWords(straight, utcMs, zone)}. ${rest}`;
  }
  return `${target.name} is ${degrees(sun.separationDeg)} from the Sun, and the tube stays ${degrees(least)} from it or more on the way.`;
};

const sunReply = (
  deps: Deps,
  target: Target,
  observer: Observer,
  zone: string,
  utcMs: UtcMs,
  mount: MountKind,
  start: Start,
): Pick<Reply, 'title' | 'level' | 'summary' | 'facts' | 'notes' | 'cautions' | 'pointsAt' | 'data'> => {
  const limits = deps.sunLimits;
  const sun = sunSafety(target.body, observer, utcMs, limits);
  const place = placeOf(target.body, observer, utcMs);
  const judged = judgeWay({ mount, observer, utcMs, target: place.ofDate, from: start.from }, sun, limits);
  const { straight, level, safer } = judged;
  const isUp = sun.sunAltitudeDeg > SUN_HORIZON_ALTITUDE_DEG;
  const nextSunset = sun.nextSunsetUtcMs === null ? null : formatLocalTime(sun.nextSunsetUtcMs, zone);
  return {
    title: target.kind === 'sun' ? 'The Sun' : `The Sun and ${target.name}`,
    level: graver('good', level === 'clear' ? 'good' : level),
    summary: summaryFor(target, sun, judged, limits.dangerDeg, utcMs, zone),
    facts: [
      {
        label: 'Sun',
        value: isUp
          ? `${degrees(sun.sunAltitudeDeg)} high in the ${direction(sun.sunAzimuthDeg)}`
          : `${degrees(-sun.sunAltitudeDeg)} below the horizon`,
      },
      { label: 'From the Sun', value: degrees(sun.separationDeg, 1) },
      ...(!isUp || target.kind === 'sun'
        ? []
        : [
            {
              label: 'On the way',
              value: `nearest ${degrees(straight.minimumSeparationDeg, 1)}, ${afterWords(straight, utcMs, zone)}`,
            },
          ]),
      ...(isUp && nextSunset !== null ? [{ label: 'Sunset', value: nextSunset }] : []),
    ],
    notes: [
      ...(safer === null
        ? []
        : [
            `The way round, ${degrees(safer.minimumSeparationDeg)} clear of the Sun:`,
            ...wayWords(mount, safer, target.name),
          ]),
      ...(!isUp
        ? []
        : [
            `Reckoned for ${MOUNT_WORDS[mount]} from ${start.said}, both axes at ${SLEW_SPEED_DEG_PER_S}° a second. Ask again if you set off later.`,
          ]),
      ...(place.altitudeDeg < 0 ? [`${target.name} is below the horizon then.`] : []),
    ],
    cautions: level === 'clear' || target.kind === 'sun' ? [] : [cautionText('sun-slew')],
    pointsAt: [{ what: target.name, when: { utcMs }, observer, zone, direction: target.body }],
    data: {
      utc: isoUtc(utcMs),
      separationDeg: rounded(sun.separationDeg, 4),
      sunAltitudeDeg: rounded(sun.sunAltitudeDeg, 4),
      level: sun.level,
      sunriseUtc: sun.nextSunriseUtcMs === null ? null : isoUtc(sun.nextSunriseUtcMs),
      sunsetUtc: sun.nextSunsetUtcMs === null ? null : isoUtc(sun.nextSunsetUtcMs),
      mount,
      path: {
        minimumSeparationDeg: rounded(straight.minimumSeparationDeg, 3),
        closestUtc: isoUtc(straight.closestUtcMs),
        level,
        route: wayData(straight),
        saferRoute: safer === null ? [] : wayData(safer),
        saferMinimumSeparationDeg: safer === null ? null : rounded(safer.minimumSeparationDeg, 3),
      },
    },
  };
};

export const sun = defineCommand({
  name: 'sun',
  summary: 'Is the Sun in the way of a target, or of the slew to it?',
  options: {
    target: text('What to point at: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    at: optional(text('When: now, tomorrow 10:00, 2026-12-13T11:00', { complete: 'time', maxLength: 80 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    from: optional(text('Where the tube stands now: home (default), park, or a target', { complete: 'target' })),
    mount: mountOption,
  },
  examples: [
    'sun Venus at:"tomorrow 11:00" site:52.71,0.12',
    'sun Mercury from:Capella mount:fork site:"Cork, Ireland"',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, asker, nowUtcMs } = request;
    const asked = await targetAtSite(deps, request, {
      command: 'sun',
      target: options.target,
      site: options.site,
      rest: {
        at: options.at,
        from: options.from,
        mount: options.mount,
      },
    });
    if (isProblem(asked)) return asked;
    const { target, where } = asked;
    const { observer, zone } = where.site;
    const time = timeFor(options.at, zone, nowUtcMs);
    if (isProblem(time)) return time;
    const mount = await mountFor(deps, asker, options.mount);
    const start = startFor(deps, options.from, mount, observer, time.utcMs, (from) =>
      commandLine('sun', target.name, { at: options.at, site: options.site, from, mount: options.mount }),
    );
    if (isProblem(start)) return start;
    const answer = sunReply(deps, target, observer, zone, time.utcMs, mount, start);
    return reply({ ...answer, notes: [...answer.notes, ...time.notes, ...asked.notes] });
  },
});
