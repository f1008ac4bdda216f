/** `up`: is a target up tonight, when is it best, and what stands in the way? */
import { nameWithAlias } from '../catalogue/index.js';
import {
  readEquipment,
  SKIES,
  SKY_NAMES,
  USUAL_EQUIPMENT,
  USUAL_SKY,
  ZENITH_MAG_PER_ARCSEC2,
} from '../evening/equipment.js';
import { outlook, type Outlook } from '../evening/outlook.js';
import { LEAST_USEFUL_ALTITUDE_DEG } from '../evening/pick.js';
import { isProblem, type Problem } from '../ground/problem.js';
import { reply, type Fact, type Outcome } from '../reply/reply.js';
import { compassWord } from '../reply/wording.js';
import { bestTime } from '../sky/best-time.js';
import { moonAt, moonSeparationDeg } from '../sky/moon.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import type { RiseTransitSet } from '../sky/rise-set.js';
import { twilights } from '../sky/twilight.js';
import type { UtcMs } from '../sky/types.js';
import { formatClock, formatLocalTime, nightAround, type NamedNight } from '../times/index.js';
import { choice, defineCommand, optional, text } from './core/command.js';
import {
  aboveHorizonWords,
  darkWords,
  moonTimesOf,
  moonWords,
  nightAltText,
  nightChart,
  noDarkWords,
  twilightSpan,
} from './asking/night-words.js';
import {
  hourOfNight,
  nightFor,
  targetAtSite,
  timeFor,
  type AskedTime,
  type TargetAtSite,
} from './asking/question-parts.js';
import { eveningBest, eveningFact } from './up/evening-best.js';
import { atHour, notYet } from './up/hour-words.js';
import { asksForCompanion } from './up/split-words.js';
import { dataOf } from './up/up-data.js';
import { pointsAtOf } from './up/up-points.js';
import { bestAfter, showsWords, verdictWords, type Circumstances } from './up/verdict-words.js';
import { whatItIs } from './up/what-it-is.js';

/** Higher than this a mount that turns in azimuth can hardly follow; common practice, no source. */
const OVERHEAD_DEG = 80;

/** What is past is told as past. */
const inTheSky = (times: RiseTransitSet, nowUtcMs: UtcMs, night: TimeSpan, zone: string): string => {
  const { riseUtcMs, setUtcMs } = times;
  const isNow = nowUtcMs > night.startUtcMs && nowUtcMs < night.endUtcMs;
  if (!isNow || riseUtcMs === null || nowUtcMs < riseUtcMs) return aboveHorizonWords(times, zone);
  if (setUtcMs !== null && setUtcMs > riseUtcMs)
    return nowUtcMs > setUtcMs
      ? `no more: it set at ${formatLocalTime(setUtcMs, zone)}`
      : `until ${formatLocalTime(setUtcMs, zone)}; it rose at ${formatClock(riseUtcMs, zone)}`;
  return `since ${formatLocalTime(riseUtcMs, zone)}`;
};

const horizonNotes = ({ target, where }: TargetAtSite, { clearsUtcMs, hiddenUtcMs, best }: Outlook): string[] => {
  const { observer, zone } = where.site;
  const side = compassWord(horizontalOf(target.body, observer, clearsUtcMs ?? hiddenUtcMs ?? best.utcMs).azimuthDeg);
  return [
    ...(clearsUtcMs === null ? [] : [`Behind your ${side} horizon until ${formatLocalTime(clearsUtcMs, zone)}.`]),
    ...(hiddenUtcMs === null ? [] : [`Goes behind your horizon at ${formatLocalTime(hiddenUtcMs, zone)}.`]),
  ];
};

const moonFact = ({ target, where }: TargetAtSite, { best }: Outlook, night: TimeSpan): readonly Fact[] => {
  const { observer, zone } = where.site;
  if (target.id === 'sun') return [];
  const moon = moonAt(observer, best.utcMs);
  if (target.id === 'moon')
    return [
      {
        label: 'Lit',
        value: `${Math.round(moon.illuminatedFraction * 100)} %, ${moon.waxing ? 'growing' : 'shrinking'}`,
      },
    ];
  const separation = moonSeparationDeg(target.body, observer, best.utcMs);
  return [{ label: 'Moon', value: moonWords(moon, separation, moonTimesOf(observer, night), best.utcMs, zone) }];
};

/** The hour asked about, and the night it is of. */
const hourAndNight = (
  { on, at }: { readonly on?: string | undefined; readonly at?: string | undefined },
  { site }: TargetAtSite['where'],
  nowUtcMs: UtcMs,
): { readonly hour: AskedTime | null; readonly night: NamedNight } | Problem => {
  // A bare hour is of the night asked about; with a night of its own the hour says which.
  const dated = nightFor(on, site, nowUtcMs);
  if (isProblem(dated)) return dated;
  if (at === undefined) return { hour: null, night: dated };
  const hour = on === undefined ? timeFor(at, site.zone, nowUtcMs) : hourOfNight(at, site.zone, dated);
  if (isProblem(hour)) return hour;
  return { hour, night: on === undefined ? nightAround(hour.utcMs, site) : dated };
};

const overheadNotes = ({ verdict, best }: Outlook): readonly string[] =>
  verdict === 'up' && best.altitudeDeg > OVERHEAD_DEG
    ? ['Nearly overhead then: a Dobsonian or alt-azimuth mount follows it better an hour before or after.']
    : [];

const noteOfFaint = (all: Circumstances, noDark: string | null): readonly string[] => {
  const { target, found } = all;
  const isFaint =
    target.body.kind === 'fixed' &&
    !target.kind.endsWith('star') &&
    !['never-up', 'past', 'lost-in-sun', 'day-only'].includes(found.verdict);
  return isFaint && noDark !== null ? ['The sky does not get fully dark, so faint detail will be lost.'] : [];
};

const companionNotes = (typed: string, { target }: TargetAtSite): readonly string[] =>
  target.double !== null && asksForCompanion(typed, target)
    ? [
        `Its companion, mag ${target.double.magnitudes[1]}, stands ${target.double.separationArcsec}″ from it: the times are those of the pair.`,
      ]
    : [];

export const up = defineCommand({
  name: 'up',
  summary: 'Is a target up tonight, when is it best, and what is in the way?',
  options: {
    target: text('What to point at: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    on: optional(text('Which night: tonight, tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
    at: optional(text('Also how high at this hour: 21:00, 9pm', { complete: 'time', maxLength: 80 })),
    with: optional(
      text('With what: eyes, binoculars, or an aperture such as 150 mm (usual: 150 mm)', { maxLength: 40 }),
    ),
    sky: optional(choice("How dark your sky is (usual: the site's, or country)", SKIES, SKY_NAMES)),
  },
  examples: [
    'up NGC 7331 site:51.05,-114.07',
    'up Saturn tomorrow 9pm site:"Hobart, Tasmania"',
    'up M 33 with:binoculars sky:suburb',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const equipment = options.with === undefined ? USUAL_EQUIPMENT : readEquipment(options.with);
    if (isProblem(equipment)) return equipment;
    const asked = await targetAtSite(deps, request, {
      command: 'up',
      target: options.target,
      site: options.site,
      rest: { on: options.on, at: options.at, with: options.with, sky: options.sky },
    });
    if (isProblem(asked)) return asked;
    const { target, where } = asked;
    const { observer, zone } = where.site;
    const dated = hourAndNight(options, where, nowUtcMs);
    if (isProblem(dated)) return dated;
    const { hour, night } = dated;
    const sky = options.sky ?? where.sky ?? USUAL_SKY;

    const twilight = twilights(observer, night.startUtcMs, night.endUtcMs);
    const dark = twilightSpan(twilight.astronomical, night);
    const found = outlook({
      target,
      observer,
      night,
      twilight,
      horizon: where.horizon,
      nowUtcMs,
      equipment,
      zenithMagPerArcsec2: ZENITH_MAG_PER_ARCSEC2[sky],
    });
    const { best, times, verdict } = found;
    const said: Circumstances = {
      target,
      found,
      zone,
      equipment,
      sky,
      sunAlwaysUp: twilight.sunAlwaysUp,
      hasDark: dark !== null,
      topDeg: () => bestTime(target.body, observer, night).altitudeDeg,
    };
    const then = hour === null ? null : atHour(asked, found, hour.utcMs);
    const first = then?.words ?? notYet(asked, found, night, nowUtcMs);
    const evening = eveningBest(asked, night, found, dark, nowUtcMs);
    const shows = showsWords(said);
    const darkLine = darkWords(twilight, night, zone);
    const moon = moonFact(asked, found, night);
    const title = `${nameWithAlias(target)}, night of ${night.said}`;
    return reply({
      title,
      level: verdict === 'up' && (then === null || then.isUseful) ? 'good' : 'info',
      summary: first === null ? verdictWords(said) : `${first} ${bestAfter(said)}`,
      facts: [
        { label: 'It is', value: whatItIs(target, found.magnitude, zone, Math.max(nowUtcMs, night.startUtcMs)) },
        ...(shows === null ? [] : [{ label: 'Shows', value: shows }]),
        ...eveningFact(asked, evening),
        { label: 'In the sky', value: inTheSky(times, nowUtcMs, night, zone) },
        ...(target.id === 'sun' ? [] : [{ label: 'Dark', value: darkLine }]),
        ...moon,
      ],
      notes: [
        ...companionNotes(options.target, asked),
        ...(verdict === 'low' ? ['Low down the air blurs and dims; roofs and trees may hide it.'] : []),
        ...overheadNotes(found),
        ...noteOfFaint(said, noDarkWords(twilight, night, zone)),
        ...horizonNotes(asked, found),
        ...(hour?.notes ?? []),
        ...asked.notes,
      ],
      pointsAt: pointsAtOf(deps, asked, found, [
        nowUtcMs >= night.startUtcMs && nowUtcMs < night.endUtcMs ? nowUtcMs : null,
        hour?.utcMs ?? null,
        evening?.utcMs ?? null,
      ]),
      chart: nightChart({
        title,
        body: target.body,
        observer,
        zone,
        night,
        twilights: twilight,
        horizon: where.horizon,
        minimumAltitudeDeg: LEAST_USEFUL_ALTITUDE_DEG,
        best: best.altitudeDeg > 0 && verdict !== 'behind-horizon' && verdict !== 'past' ? best : null,
        nowUtcMs,
        altText: nightAltText(
          target.name,
          times,
          best,
          { dark: darkLine, moon: moon[0]?.value ?? 'the target itself' },
          zone,
        ),
      }),
      data: dataOf(asked, night, found, dark),
    });
  },
});
