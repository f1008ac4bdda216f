/** `up`: is a target up tonight, when is it best, and what stands in the way. */
import { nameWithAlias } from '../catalogue/index.js';
import { USUAL_EQUIPMENT, USUAL_SKY, ZENITH_MAG_PER_ARCSEC2 } from '../evening/equipment.js';
import { outlook, type Outlook, type Verdict } from '../evening/outlook.js';
import { LEAST_USEFUL_ALTITUDE_DEG } from '../evening/pick.js';
import { isProblem } from '../ground/problem.js';
import { reply, type ChartPoint, type Fact, type Outcome, type PointsAt } from '../reply/reply.js';
import { compassWord, degrees, isoUtc, rounded } from '../reply/wording.js';
import { bestTime } from '../sky/best-time.js';
import { moonAt, moonSeparationDeg } from '../sky/moon.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import type { RiseTransitSet } from '../sky/rise-set.js';
import { sunSafety } from '../sky/sun-safety.js';
import { twilights } from '../sky/twilight.js';
import type { UtcMs } from '../sky/types.js';
import { formatClock, formatLocalTime, localToUtc } from '../times/index.js';
import { defineCommand, optional, text } from './core/command.js';
import type { Deps } from './core/deps.js';
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
  nightAround,
  nightFor,
  targetAtSite,
  timeFor,
  type AskedNight,
  type TargetAtSite,
} from './asking/question-parts.js';
import { showsWords, verdictWords, type Circumstances } from './up/verdict-words.js';
import { whatItIs } from './up/what-it-is.js';

const BEDTIME = { hour: 0, minute: 30, second: 0 } as const;
const DAY_MS = 86_400_000;
/** Hours nearer together than this are one to whoever plans an evening. */
const SAME_HOUR_MS = 20 * 60_000;

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

/** For whoever goes to bed after midnight: the best of the evening, where the night's best comes later; else null. */
const eveningBest = (
  { target, where }: TargetAtSite,
  night: AskedNight,
  { best, verdict }: Outlook,
  dark: TimeSpan | null,
  nowUtcMs: UtcMs,
): ChartPoint | null => {
  const { observer, zone } = where.site;
  const bedtimeUtcMs = localToUtc(night.date, BEDTIME, zone).utcMs + DAY_MS;
  const startUtcMs = Math.max(dark?.startUtcMs ?? best.utcMs, nowUtcMs < night.endUtcMs ? nowUtcMs : 0);
  const comesLater = best.utcMs - bedtimeUtcMs >= SAME_HOUR_MS && startUtcMs < bedtimeUtcMs;
  if (verdict !== 'up' || !comesLater || where.horizon !== null) return null;
  const evening = bestTime(target.body, observer, { startUtcMs, endUtcMs: bedtimeUtcMs });
  return evening.altitudeDeg < 0 ? null : evening;
};

const eveningFact = ({ target, where }: TargetAtSite, evening: ChartPoint | null): readonly Fact[] => {
  if (evening === null) return [];
  const { observer, zone } = where.site;
  const { azimuthDeg } = horizontalOf(target.body, observer, evening.utcMs);
  const direction = compassWord(azimuthDeg);
  return [
    {
      label: 'This evening',
      value: `best ${formatLocalTime(evening.utcMs, zone)}, ${degrees(evening.altitudeDeg)} in the ${direction}`,
    },
  ];
};

const isDownThen = ({ target, where }: TargetAtSite, utcMs: UtcMs): boolean =>
  horizontalOf(target.body, where.site.observer, utcMs).altitudeDeg <= 0;

const atHourFact = ({ target, where }: TargetAtSite, utcMs: UtcMs | null): readonly Fact[] => {
  if (utcMs === null) return [];
  const { observer, zone } = where.site;
  const { altitudeDeg, azimuthDeg } = horizontalOf(target.body, observer, utcMs);
  return [
    {
      label: `At ${formatClock(utcMs, zone)}`,
      value:
        altitudeDeg > 0
          ? `${degrees(altitudeDeg)} high in the ${compassWord(azimuthDeg)}`
          : `down, ${degrees(-altitudeDeg)} below the horizon`,
    },
  ];
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

/** It is named when it rises and sets: that counts where it does so beside the Sun, not as a word on every night. */
const besideSun = (
  deps: Deps,
  { target, where }: TargetAtSite,
  { riseUtcMs, setUtcMs }: RiseTransitSet,
): readonly UtcMs[] =>
  [riseUtcMs, setUtcMs].filter((utcMs): utcMs is UtcMs => {
    if (utcMs === null) return false;
    const { isSunUp, level } = sunSafety(target.body, where.site.observer, utcMs, deps.sunLimits);
    return isSunUp && level !== 'clear';
  });

/** Who asks by day for tonight may slew at once; who asks for another night will not. */
const pointsAtOf = (
  deps: Deps,
  asked: TargetAtSite,
  { times, best, clearsUtcMs, hiddenUtcMs }: Outlook,
  others: readonly (UtcMs | null)[],
): readonly PointsAt[] => {
  const { target, where } = asked;
  const { observer, zone } = where.site;
  const instants = [best.utcMs, clearsUtcMs, hiddenUtcMs, ...others].filter(
    (utcMs): utcMs is UtcMs => utcMs !== null && horizontalOf(target.body, observer, utcMs).altitudeDeg > 0,
  );
  return [...instants, ...besideSun(deps, asked, times)].map((utcMs) => ({
    what: target.name,
    when: { utcMs },
    observer,
    zone,
    direction: target.body,
  }));
};

/** `data.verdict` tells where it stands alone; `data.hindrance` what keeps it from being seen. */
const CONTRACT_VERDICT: Readonly<Partial<Record<Verdict, Verdict>>> = {
  'washed-out': 'up',
  'too-faint': 'up',
  'lost-in-sun': 'day-only',
  past: 'day-only',
};

const orNull = (utcMs: UtcMs | null): string | null => (utcMs === null ? null : isoUtc(utcMs));

const dataOf = ({ target, where }: TargetAtSite, night: TimeSpan, found: Outlook, dark: TimeSpan | null) => {
  const { observer } = where.site;
  const { times, best } = found;
  const moon = moonAt(observer, best.utcMs);
  return {
    night: { startUtc: isoUtc(night.startUtcMs), endUtc: isoUtc(night.endUtcMs) },
    riseUtc: orNull(times.riseUtcMs),
    transitUtc: orNull(times.transitUtcMs),
    setUtc: orNull(times.setUtcMs),
    alwaysUp: times.alwaysUp,
    neverUp: times.neverUp,
    darkness: dark === null ? null : { startUtc: isoUtc(dark.startUtcMs), endUtc: isoUtc(dark.endUtcMs) },
    bestUtc: isoUtc(best.utcMs),
    bestAltitudeDeg: rounded(best.altitudeDeg, 4),
    upInDarkness: dark !== null && bestTime(target.body, observer, dark).altitudeDeg > 0,
    moon: {
      separationDeg: rounded(moonSeparationDeg(target.body, observer, best.utcMs), 4),
      illuminatedFraction: rounded(moon.illuminatedFraction, 4),
      altitudeDeg: rounded(moon.place.altitudeDeg, 4),
    },
    sky: found.sky,
    marginMag: found.marginMag === null ? null : rounded(found.marginMag, 2),
    verdict: CONTRACT_VERDICT[found.verdict] ?? found.verdict,
    hindrance: found.verdict === 'up' ? null : found.verdict,
  };
};

export const up = defineCommand({
  name: 'up',
  summary: 'Is a target up tonight, when is it best, and what is in the way?',
  options: {
    target: text('What to point at: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    on: optional(text('Which night: tonight, tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
    at: optional(text('Also how high at this hour: 21:00, 9pm', { complete: 'time', maxLength: 80 })),
  },
  examples: ['up NGC 7331 site:51.05,-114.07', 'up Saturn tomorrow 9pm site:"Hobart, Tasmania"'],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const asked = await targetAtSite(deps, request, {
      command: 'up',
      target: options.target,
      site: options.site,
      rest: { on: options.on, at: options.at },
    });
    if (isProblem(asked)) return asked;
    const { target, where } = asked;
    const { observer, zone } = where.site;
    // A bare hour is of the night asked about; with a night of its own the hour says which.
    const dated = nightFor(options.on, where.site, nowUtcMs);
    if (isProblem(dated)) return dated;
    const hour =
      options.at === undefined
        ? null
        : timeFor(options.at, zone, options.on === undefined ? nowUtcMs : dated.startUtcMs + DAY_MS / 8);
    if (isProblem(hour)) return hour;
    const night = hour === null || options.on !== undefined ? dated : nightAround(hour.utcMs, where.site);

    const twilight = twilights(observer, night.startUtcMs, night.endUtcMs);
    const dark = twilightSpan(twilight.astronomical, night);
    const found = outlook({
      target,
      observer,
      night,
      twilight,
      horizon: where.horizon,
      nowUtcMs,
      equipment: USUAL_EQUIPMENT,
      zenithMagPerArcsec2: ZENITH_MAG_PER_ARCSEC2[USUAL_SKY],
    });
    const { best, times, verdict } = found;
    const said: Circumstances = {
      target,
      found,
      zone,
      equipment: USUAL_EQUIPMENT,
      sky: USUAL_SKY,
      sunAlwaysUp: twilight.sunAlwaysUp,
      hasDark: dark !== null,
      topDeg: bestTime(target.body, observer, night).altitudeDeg,
    };
    const evening = eveningBest(asked, night, found, dark, nowUtcMs);
    const shows = showsWords(said);
    const darkLine = darkWords(twilight, night, zone);
    const moon = moonFact(asked, found, night);
    const isFaint =
      target.body.kind === 'fixed' &&
      !target.kind.endsWith('star') &&
      !['never-up', 'past', 'lost-in-sun'].includes(verdict);
    const noDark = isFaint && target.id !== 'sun' ? noDarkWords(twilight, night, zone) : null;
    return reply({
      title: `${nameWithAlias(target)}, night of ${night.said}`,
      level: verdict === 'up' && (hour === null || !isDownThen(asked, hour.utcMs)) ? 'good' : 'info',
      summary:
        hour !== null && isDownThen(asked, hour.utcMs)
          ? `Down at ${formatLocalTime(hour.utcMs, zone)}. ${verdictWords(said)}`
          : verdictWords(said),
      facts: [
        { label: 'It is', value: whatItIs(target, found.magnitude, zone, Math.max(nowUtcMs, night.startUtcMs)) },
        ...(shows === null ? [] : [{ label: 'Shows', value: shows }]),
        ...atHourFact(asked, hour?.utcMs ?? null),
        ...eveningFact(asked, evening),
        { label: 'In the sky', value: inTheSky(times, nowUtcMs, night, zone) },
        ...(target.id === 'sun' ? [] : [{ label: 'Dark', value: darkLine }]),
        ...moon,
      ],
      notes: [
        ...(verdict === 'low' ? ['Low down the air blurs and dims; roofs and trees may hide it.'] : []),
        ...(noDark === null || verdict === 'day-only'
          ? []
          : ['The sky does not get fully dark, so faint detail will be lost.']),
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
        title: `${nameWithAlias(target)}, night of ${night.said}`,
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
