/** `sun`: how near a target is to the Sun, and how near the tube comes to it on the way there. */
import { isProblem, type Problem } from '../../ground/problem.js';
import type { MountKind } from '../../pointing/mount/mount.js';
import { reply, type Fact, type Outcome, type PointsAt, type Reply } from '../../reply/reply.js';
import { degrees, direction, isoUtc, rounded } from '../../reply/wording.js';
import { placeOf } from '../../sky/place.js';
import { sunSafety, type SunSafety } from '../../sky/sun-safety.js';
import type { Observer, UtcMs } from '../../sky/types.js';
import { formatLocalDateTime } from '../../times/index.js';
import { cautionText } from '../../cautions/cautions.js';
import { choice, defineCommand, optional, text, type Deps } from '../core/command.js';
import { HOME_WORDS, MOUNT_WORDS, mountFor, mountOption, savedNumbers } from '../asking/mount-for.js';
import type { Asking } from '../asking/resolve-site.js';
import { readSpeeds, speedsWords } from '../asking/mount-numbers.js';
import {
  commandLine,
  dayTimeFor,
  sunEventFor,
  targetAtSite,
  targetFor,
  wholeSecond,
} from '../asking/question-parts.js';
import { graver } from '../../reply/levels.js';
import { sunEdgeWords } from '../asking/sun-edge-words.js';
import { withCapsOn } from './caps-on.js';
import { downFirst, NOTHING_DOWN, type DownFirst } from './down-first.js';
import { judgeWay, type Judged } from './judge-way.js';
import { nearWords } from './near-sun.js';
import { turnWords } from './turn-words.js';
import { levelThen, standsWords, targetFact } from './stands-then.js';
import { afterWords, apartWords, summaryFor, type KnownMotion, type Question, type Start } from './sun-summary.js';
import { wayData, wayWords } from './way-words.js';

/** What is so near the Sun is looked for by day, and at dusk and dawn: who asks at night may mean that. Common practice, no source. */
const NEAR_BY_DAY_DEG = 60;
const HOME_NAMES = new Set(['home', 'park', 'parked']);

const ON_THE_WAY = 'On the way';
const CABLE_GUARD =
  'The base is taken to turn the short way. One that guards its cables may go the long way round: watch it, caps on.';

const startFor = (
  deps: Deps,
  fromText: string | undefined,
  { mount, observer, utcMs }: { readonly mount: MountKind; readonly observer: Observer; readonly utcMs: UtcMs },
  lineFor: (from: string) => string,
): Start | Problem => {
  if (fromText === undefined || HOME_NAMES.has(fromText.trim().toLowerCase()))
    return { from: 'home', said: HOME_WORDS[mount], body: null };
  const start = targetFor(deps, fromText, lineFor);
  return isProblem(start)
    ? start
    : { from: placeOf(start.target.body, observer, utcMs).ofDate, said: start.target.name, body: start.target.body };
};

const motionWords = ({ motion, isSaved }: KnownMotion): string =>
  motion === null
    ? 'whichever axis goes first or up to four times faster; give speeds: (or save them with gear) to reckon yours alone'
    : `with the axes together at ${isSaved ? 'the speeds you saved, ' : ''}${speedsWords(motion)}`;

/** Its edge may show while its middle is down. */
const belowWords = ({ isSunUp }: SunSafety, height: string): string =>
  isSunUp ? 'on the horizon, its upper edge up' : `${height} below the horizon`;

const factsFor = (
  catalogue: Deps['catalogue'],
  { target, observer, utcMs, zone, isNow }: Question,
  sun: SunSafety,
  { straight }: Judged,
): Fact[] => {
  const nextSunset = sun.nextSunsetUtcMs === null ? null : sunEdgeWords(observer, sun.nextSunsetUtcMs, 'set', zone);
  const height = degrees(Math.abs(sun.sunAltitudeDeg), Math.abs(sun.sunAltitudeDeg) < 2 ? 1 : 0);
  const facts: Fact[] = [
    ...(isNow ? [] : [{ label: 'When', value: formatLocalDateTime(utcMs, zone) }]),
    {
      label: 'Sun',
      value: sun.sunAltitudeDeg > 0 ? `${height} high in the ${direction(sun.sunAzimuthDeg)}` : belowWords(sun, height),
    },
    ...(target.kind === 'sun' ? [] : [{ label: 'From the Sun', value: degrees(sun.separationDeg, 1) }]),
  ];
  const near = target.kind === 'sun' ? nearWords(catalogue, observer, utcMs) : null;
  if (near !== null) facts.push({ label: 'Near it', value: near });
  if (!sun.isSunUp) return facts;
  if (target.kind !== 'sun')
    facts.push({
      label: ON_THE_WAY,
      value: `nearest ${degrees(straight.minimumSeparationDeg, 1)}, ${afterWords(straight, utcMs, zone)}`,
    });
  return nextSunset === null ? facts : [...facts, { label: 'Sunset', value: nextSunset }];
};

/** The target, where the tube stands, and the stops of the way round. */
const pointsOf = ({ target, observer, zone, utcMs, start }: Question, { safer }: Judged): PointsAt[] => [
  { what: target.name, when: { utcMs }, observer, zone, direction: target.body },
  ...(start.body === null ? [] : [{ what: start.said, when: { utcMs }, observer, zone, direction: start.body }]),
  ...(safer?.legs ?? []).slice(0, -1).map(({ altitudeDeg, azimuthDeg, endsAtS }, i) => ({
    what: `stop ${i + 1} of the way round`,
    when: { utcMs: utcMs + endsAtS * 1000 },
    observer,
    zone,
    direction: { altitudeDeg, azimuthDeg },
  })),
];

const dataFor = (
  { utcMs, mount, motion }: Question,
  sun: SunSafety,
  { straight, level, safer }: Judged,
): Reply['data'] => ({
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
    reckonedFor: motion === null ? 'any speeds' : 'these speeds',
    route: wayData(straight),
    saferRoute: safer === null ? [] : wayData(safer),
    saferMinimumSeparationDeg: safer === null ? null : rounded(safer.minimumSeparationDeg, 3),
  },
});

const downOf = (question: Question): DownFirst => {
  const { target, start } = question;
  const stood = start.body === null ? null : { name: start.said, body: start.body };
  return target.kind === 'sun' ? NOTHING_DOWN : downFirst(target, stood, question);
};

const sunReply = (
  deps: Deps,
  question: Question,
): Pick<Reply, 'title' | 'level' | 'summary' | 'facts' | 'notes' | 'cautions' | 'pointsAt' | 'data'> => {
  const { target, observer, utcMs, mount, motion, start } = question;
  const limits = deps.sunLimits;
  const sun = sunSafety(target.body, observer, utcMs, limits);
  const place = placeOf(target.body, observer, utcMs);
  const judged = judgeWay({ mount, observer, utcMs, target: place.ofDate, from: start.from, motion }, sun, limits);
  const { level, safer } = judged;
  const down = downOf(question);
  const round =
    safer === null || down.words.length > 0
      ? []
      : [
          `The way round, ${degrees(safer.minimumSeparationDeg)} clear of the Sun:`,
          ...wayWords(mount, safer, target.name),
        ];
  const isForTheDay = !sun.isSunUp && target.kind !== 'sun' && sun.separationDeg < NEAR_BY_DAY_DEG;
  const byDay = `By day it is ${degrees(sun.separationDeg)} from the Sun: ask again then before you point, stand the tube in shade and never sweep.`;
  const reckoned = `Reckoned for ${MOUNT_WORDS[mount]} from ${start.said}, ${motionWords(question)}. Ask again if you set off later.`;
  return {
    title: target.kind === 'sun' ? 'The Sun' : `The Sun and ${target.name}`,
    level: levelThen(graver(down.level, level === 'clear' ? 'good' : level), question, place, sun),
    summary: [
      ...down.words,
      summaryFor(question, sun, judged, limits.dangerDeg),
      ...standsWords(question, place, sun),
      ...turnWords(question, place, sun.isSunUp),
    ].join(' '),
    facts: [...factsFor(deps.catalogue, question, sun, judged), ...targetFact(question, place)],
    notes: [
      ...round,
      ...(isForTheDay ? [byDay] : []),
      ...(sun.isSunUp && !down.isTargetDown ? [reckoned, ...(mount === 'altaz' ? [CABLE_GUARD] : [])] : []),
    ],
    cautions: level === 'clear' || target.kind === 'sun' ? [] : [cautionText('sun-slew')],
    pointsAt: pointsOf(question, judged),
    data: dataFor(question, sun, judged),
  };
};

/** How far from the Sun alone: no way is made up for whoever asks of none. */
const apartReply = (deps: Deps, question: Question): ReturnType<typeof sunReply> => {
  const whole = sunReply(deps, question);
  const sun = sunSafety(question.target.body, question.observer, question.utcMs, deps.sunLimits);
  return {
    ...whole,
    level: 'info',
    summary: apartWords(question, sun),
    facts: whole.facts.filter(({ label }) => label !== ON_THE_WAY),
    notes: [],
    cautions: [],
    pointsAt: whole.pointsAt.slice(0, 1),
  };
};

/** The speeds as given, else those the member saved, else null: any. */
const motionFor = async (
  request: Asking,
  given: string | undefined,
  mount: MountKind,
): Promise<KnownMotion | Problem> => {
  const speeds = given === undefined ? await savedNumbers(request, 'speeds', mount) : readSpeeds(given);
  if (speeds !== null && isProblem(speeds)) return speeds;
  return { motion: speeds === null ? null : { ...speeds, order: 'together' }, isSaved: given === undefined };
};

export const sun = defineCommand({
  name: 'sun',
  summary: 'Is the Sun in the way of a target, or of the slew to it?',
  sentence: /\S/u,
  options: {
    target: text('What to point at: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    at: optional(text('When: now, tomorrow 10:00, 2026-12-13T11:00', { complete: 'time', maxLength: 80 })),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    first: optional(choice('Say first how far it is from the Sun, and nothing of a way', ['apart'])),
    from: optional(text('Where the tube stands now: home (default), park, or a target', { complete: 'target' })),
    mount: mountOption,
    speeds: optional(
      text('Top speeds of both axes in degrees a second, such as 4,3; the worst is reckoned with when not said', {
        maxLength: 20,
      }),
    ),
  },
  examples: [
    'sun Venus at:"tomorrow 11:00" site:52.71,0.12',
    'sun Mercury from:Capella mount:fork site:"Cork, Ireland"',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const asked = await targetAtSite(deps, request, {
      command: 'sun',
      isSafety: true,
      target: options.target,
      site: options.site,
      rest: {
        at: options.at,
        from: options.from,
        mount: options.mount,
      },
    });
    if (isProblem(asked)) return withCapsOn(asked);
    const { target, where } = asked;
    const { observer, zone } = where.site;
    const time = sunEventFor(options.at, where.site, nowUtcMs) ?? dayTimeFor(options.at, zone, nowUtcMs);
    if (isProblem(time)) return time;
    const mount = await mountFor(request, options.mount);
    const start = startFor(deps, options.from, { mount, observer, utcMs: time.utcMs }, (from) =>
      commandLine('sun', target.name, { at: options.at, site: options.site, from, mount: options.mount }),
    );
    if (isProblem(start)) return start;
    const known = await motionFor(request, options.speeds, mount);
    if (isProblem(known)) return known;
    const isNow = time.utcMs === wholeSecond(nowUtcMs);
    const answerOf = options.first === 'apart' && target.kind !== 'sun' ? apartReply : sunReply;
    const answer = answerOf(deps, {
      target,
      observer,
      zone,
      utcMs: time.utcMs,
      isNow,
      mount,
      start,
      ...known,
    });
    return reply({ ...answer, notes: [...answer.notes, ...time.notes, ...asked.notes] });
  },
});
