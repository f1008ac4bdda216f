/** `up`: is a target up tonight, when is it best, and what stands in the way. */
import { isProblem } from '../ground/problem.js';
import { nameWithAlias, type Target } from '../catalogue/index.js';
import { clearSpans } from '../pointing/horizon/horizon-profile.js';
import { reply, type ChartPoint, type Outcome } from '../reply/reply.js';
import { compassWord, degrees, isoUtc, rounded } from '../reply/wording.js';
import {
  bestTime,
  horizontalOf,
  moonAt,
  moonSeparationDeg,
  placeOf,
  riseTransitSet,
  sunSafety,
  twilights,
  type RiseTransitSet,
  type TimeSpan,
  type Twilights,
} from '../sky/index.js';
import type { Observer, UtcMs } from '../sky/types.js';
import type { HorizonPoint } from '../store/store.js';
import { formatLocalTime } from '../times/index.js';
import { defineCommand, optional, text } from './core/command.js';
import {
  aboveHorizonWords,
  darkWords,
  moonTimesOf,
  moonWords,
  nightAltText,
  nightChart,
  twilightSpan,
} from './asking/night-words.js';
import { nightFor, targetAtSite, wholeSecond } from './asking/question-parts.js';

/** Under this the air is thick and roofs are near; common practice, no source. */
export const LEAST_USEFUL_ALTITUDE_DEG = 20;
/** A Moon this lit and this near washes out faint things; common practice, no source. */
const BRIGHT_MOON = { illuminatedFraction: 0.4, separationDeg: 40 } as const;
/** Bright enough to be worth pointing at in twilight; common practice, no source. */
const TWILIGHT_MAGNITUDE = 3;

/** What `up` finds, in a word of its own; `data.verdict`. */
type Verdict = 'up' | 'low' | 'twilight-only' | 'day-only' | 'behind-horizon' | 'never-up';

const isSun = ({ body }: Target): boolean => body.kind === 'solarSystem' && body.body === 'Sun';
const standsTwilight = ({ body, magnitude }: Target): boolean =>
  body.kind === 'solarSystem' || (magnitude !== null && magnitude <= TWILIGHT_MAGNITUDE);

interface Window extends TimeSpan {
  readonly sky: 'dark' | 'twilight' | 'day';
}

/** The stretches in which to look, best sky first. */
const windowsOf = (target: Target, twilight: Twilights, night: TimeSpan): readonly Window[] => {
  if (isSun(target)) return [{ ...night, sky: 'day' }];
  const spans = [twilight.astronomical, twilight.nautical, twilight.civil].map((times) => twilightSpan(times, night));
  const windows = spans.flatMap((span, index): Window[] =>
    span === null ? [] : [{ ...span, sky: index === 0 ? 'dark' : 'twilight' }],
  );
  const sunDown =
    !twilight.sunAlwaysUp && twilight.sunsetUtcMs !== null && twilight.sunriseUtcMs !== null
      ? [{ startUtcMs: twilight.sunsetUtcMs, endUtcMs: twilight.sunriseUtcMs, sky: 'twilight' } as const]
      : [];
  const all: readonly Window[] = [...windows, ...sunDown];
  return all.length > 0 ? all : [{ ...night, sky: 'day' }];
};

interface Best {
  readonly point: ChartPoint;
  readonly window: Window;
}

/** Highest in the first window where it is up; a faint target gets only the darkest there is. */
const bestOf = (target: Target, observer: Observer, windows: readonly Window[]): Best => {
  const [first, ...others] = windows as readonly [Window, ...Window[]];
  const found = (window: Window): Best => ({ point: bestTime(target.body, observer, window), window });
  const darkest = found(first);
  if (darkest.point.altitudeDeg > 0 || !standsTwilight(target)) return darkest;
  return others.map(found).find(({ point }) => point.altitudeDeg > 0) ?? darkest;
};

interface Obstructed {
  /** The highest moment at which the target clears the profile, or null where it never does in the window. */
  readonly best: ChartPoint | null;
  /** When it first clears the profile in the window, if it starts behind it; and when it goes behind. */
  readonly clearsUtcMs: UtcMs | null;
  readonly hiddenUtcMs: UtcMs | null;
}

const STEP_MS = 120_000;

/** How a horizon profile bites into a window; what lies below level hides nothing that is up. */
const obstructed = (
  target: Target,
  observer: Observer,
  window: TimeSpan,
  horizon: readonly HorizonPoint[],
): Obstructed => {
  const profile = horizon.map(({ azimuthDeg, altitudeDeg }) => ({ azimuthDeg, altitudeDeg: Math.max(0, altitudeDeg) }));
  const steps = Math.max(1, Math.ceil((window.endUtcMs - window.startUtcMs) / STEP_MS));
  const curve = Array.from({ length: steps + 1 }, (_, i) => {
    const utcMs = window.startUtcMs + ((window.endUtcMs - window.startUtcMs) * i) / steps;
    return { utcMs, ...horizontalOf(target.body, observer, utcMs) };
  });
  const spans = clearSpans(curve, profile);
  const clear = curve.filter(({ utcMs }) =>
    spans.some(({ startUtcMs, endUtcMs }) => utcMs >= startUtcMs && utcMs <= endUtcMs),
  );
  const best = clear.reduce<ChartPoint | null>(
    (top, { utcMs, altitudeDeg }) => (top === null || altitudeDeg > top.altitudeDeg ? { utcMs, altitudeDeg } : top),
    null,
  );
  return {
    best,
    clearsUtcMs: spans.find(({ startUtcMs }) => startUtcMs > window.startUtcMs)?.startUtcMs ?? null,
    hiddenUtcMs: spans.findLast(({ endUtcMs }) => endUtcMs < window.endUtcMs)?.endUtcMs ?? null,
  };
};

const verdictOf = (times: RiseTransitSet, { point, window }: Best, behind: boolean): Verdict => {
  if (times.neverUp) return 'never-up';
  if (point.altitudeDeg <= 0) return 'day-only';
  if (behind) return 'behind-horizon';
  if (window.sky === 'twilight') return 'twilight-only';
  return point.altitudeDeg >= LEAST_USEFUL_ALTITUDE_DEG ? 'up' : 'low';
};

export const up = defineCommand({
  name: 'up',
  summary: 'Is a target up tonight, when is it best, and what is in the way?',
  options: {
    target: text('What to point at: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    on: optional(text('Which night: tonight, tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
  },
  examples: ['up NGC 7331 site:51.05,-114.07', 'up Saturn site:"Hobart, Tasmania" on:tomorrow'],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const asked = await targetAtSite(deps, request, {
      command: 'up',
      target: options.target,
      site: options.site,
      rest: { on: options.on },
    });
    if (isProblem(asked)) return asked;
    const { target, where } = asked;
    const { observer, zone } = where.site;
    const night = nightFor(options.on, where.site, nowUtcMs);
    if (isProblem(night)) return night;

    const times = riseTransitSet(target.body, observer, night.startUtcMs, night.endUtcMs);
    const twilight = twilights(observer, night.startUtcMs, night.endUtcMs);
    const dark = twilightSpan(twilight.astronomical, night);
    const open = bestOf(target, observer, windowsOf(target, twilight, night));
    const bite =
      where.horizon === null || open.point.altitudeDeg <= 0
        ? null
        : obstructed(target, observer, open.window, where.horizon);
    const bestUtcMs = wholeSecond((bite?.best ?? open.point).utcMs);
    const best: ChartPoint = {
      utcMs: bestUtcMs,
      altitudeDeg: horizontalOf(target.body, observer, bestUtcMs).altitudeDeg,
    };
    const verdict = verdictOf(times, { ...open, point: best }, bite !== null && bite.best === null);

    const moon = moonAt(observer, best.utcMs);
    const isMoon = target.id === 'moon';
    const moonSeparation = moonSeparationDeg(target.body, observer, best.utcMs);
    const moonLine = moonWords(moon, moonSeparation, moonTimesOf(observer, night), best.utcMs, zone);
    const darkLine = darkWords(twilight, night, zone);
    const { azimuthDeg } = horizontalOf(target.body, observer, best.utcMs);
    const bestWords = `${formatLocalTime(best.utcMs, zone)}, ${degrees(best.altitudeDeg)} high in the ${compassWord(azimuthDeg)}`;

    const summary = ((): string => {
      switch (verdict) {
        case 'up':
          return `Up, best at ${bestWords}.`;
        case 'low':
          return `Up but low, best at ${bestWords}.`;
        case 'twilight-only':
          return `Up only in twilight, best at ${bestWords}.`;
        case 'day-only':
          return dark === null
            ? 'Not up while the Sun is down.'
            : 'Not up in the dark hours: it is above the horizon only by day or in twilight.';
        case 'behind-horizon':
          return `Behind your horizon all the dark hours; it reaches ${degrees(open.point.altitudeDeg)} at ${formatLocalTime(open.point.utcMs, zone)}.`;
        case 'never-up':
          return `Not up from here this night: at best ${degrees(-bestTime(target.body, observer, night).altitudeDeg)} below the horizon.`;
      }
    })();

    // Who asks by day for tonight may slew at once; who asks for another night will not.
    const pointsNow =
      nowUtcMs >= night.startUtcMs &&
      nowUtcMs < night.endUtcMs &&
      horizontalOf(target.body, observer, nowUtcMs).altitudeDeg > 0;
    // It is named when it rises and sets: that counts where it does so beside the Sun, not as a word on every night.
    const besideSun = [times.riseUtcMs, times.setUtcMs].filter(
      (utcMs) =>
        utcMs !== null &&
        sunSafety(target.body, observer, utcMs, deps.sunLimits).isSunUp &&
        sunSafety(target.body, observer, utcMs, deps.sunLimits).level !== 'clear',
    );
    const instants = [
      ...(pointsNow ? [nowUtcMs] : []),
      ...(best.altitudeDeg > 0 ? [best.utcMs] : []),
      ...besideSun.filter((utcMs) => utcMs !== null),
    ];

    const washedOut =
      !isMoon &&
      !isSun(target) &&
      moon.place.altitudeDeg > 0 &&
      moon.illuminatedFraction >= BRIGHT_MOON.illuminatedFraction &&
      moonSeparation < BRIGHT_MOON.separationDeg &&
      target.body.kind === 'fixed';
    const side = compassWord(
      horizontalOf(target.body, observer, bite?.clearsUtcMs ?? bite?.hiddenUtcMs ?? best.utcMs).azimuthDeg,
    );
    return reply({
      title: `${nameWithAlias(target)}, night of ${night.said}`,
      level: verdict === 'up' ? 'good' : 'info',
      summary,
      facts: [
        { label: 'In the sky', value: aboveHorizonWords(times, zone) },
        { label: 'Dark', value: darkLine },
        ...(isMoon
          ? [
              {
                label: 'Lit',
                value: `${Math.round(moon.illuminatedFraction * 100)} %, ${moon.waxing ? 'growing' : 'shrinking'}`,
              },
            ]
          : isSun(target)
            ? []
            : [{ label: 'Moon', value: moonLine }]),
      ],
      notes: [
        ...(verdict === 'low'
          ? [`Under ${LEAST_USEFUL_ALTITUDE_DEG}° the air blurs and dims; roofs and trees may hide it.`]
          : []),
        ...(dark === null && verdict !== 'never-up' && !standsTwilight(target)
          ? ['The sky does not get fully dark, so faint detail will be lost.']
          : []),
        ...(washedOut ? ['The bright Moon is near: expect a washed-out view.'] : []),
        ...(bite?.clearsUtcMs == null
          ? []
          : [`Behind your ${side} horizon until ${formatLocalTime(bite.clearsUtcMs, zone)}.`]),
        ...(bite?.hiddenUtcMs == null || bite.best === null
          ? []
          : [`Goes behind your horizon at ${formatLocalTime(bite.hiddenUtcMs, zone)}.`]),
        ...asked.notes,
      ],
      pointsAt: instants.map((utcMs) => ({
        what: target.name,
        when: { utcMs },
        observer,
        zone,
        direction: target.body,
      })),
      chart: nightChart({
        title: `${target.name}, night of ${night.said}`,
        body: target.body,
        observer,
        zone,
        night,
        twilights: twilight,
        horizon: where.horizon,
        minimumAltitudeDeg: LEAST_USEFUL_ALTITUDE_DEG,
        best: best.altitudeDeg > 0 ? best : null,
        nowUtcMs,
        altText: nightAltText(target.name, times, best, darkLine, isMoon ? 'the target itself' : moonLine, zone),
      }),
      data: {
        night: { startUtc: isoUtc(night.startUtcMs), endUtc: isoUtc(night.endUtcMs) },
        riseUtc: times.riseUtcMs === null ? null : isoUtc(times.riseUtcMs),
        transitUtc: times.transitUtcMs === null ? null : isoUtc(times.transitUtcMs),
        setUtc: times.setUtcMs === null ? null : isoUtc(times.setUtcMs),
        alwaysUp: times.alwaysUp,
        neverUp: times.neverUp,
        darkness: dark === null ? null : { startUtc: isoUtc(dark.startUtcMs), endUtc: isoUtc(dark.endUtcMs) },
        bestUtc: isoUtc(best.utcMs),
        bestAltitudeDeg: rounded(best.altitudeDeg, 4),
        upInDarkness: dark !== null && bestTime(target.body, observer, dark).altitudeDeg > 0,
        moon: {
          separationDeg: rounded(moonSeparation, 4),
          illuminatedFraction: rounded(moon.illuminatedFraction, 4),
          altitudeDeg: rounded(placeOf({ kind: 'solarSystem', body: 'Moon' }, observer, best.utcMs).altitudeDeg, 4),
        },
        verdict,
      },
    });
  },
});
