/**
 * How one target fares in one night: its best hour in the best sky there is, what keeps it from being seen, and by how much. Hours
 * that are past count for nothing.
 */
import type { Target } from '../catalogue/index.js';
import { clearSpans } from '../pointing/horizon/horizon-profile.js';
import { separationDeg, unitFromEquatorial } from '../sky/angles.js';
import { bestTime } from '../sky/best-time.js';
import { apparentMagnitude } from '../sky/brightness.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf, placeOf } from '../sky/place.js';
import { riseTransitSet, type RiseTransitSet } from '../sky/rise-set.js';
import { SUN, type Twilights } from '../sky/twilight.js';
import type { Observer, SkyBody, UtcMs } from '../sky/types.js';
import type { Equipment } from './equipment.js';
import { LEAST_PLANET_ALTITUDE_DEG, LEAST_USEFUL_ALTITUDE_DEG } from './pick.js';
import { skyMagAt, skySample, type SkySample } from './sky-samples.js';
import { marginMag, type Seen } from './visibility.js';

/** What stands in the way, the worst first; `up` when nothing does. */
export type Verdict =
  | 'up'
  | 'low'
  | 'washed-out'
  | 'too-faint'
  | 'twilight-only'
  | 'lost-in-sun'
  | 'day-only'
  | 'behind-horizon'
  | 'never-up'
  | 'past';

export type SkyName = 'dark' | 'astronomical twilight' | 'nautical twilight' | 'civil twilight' | 'daylight';

export interface Point {
  readonly utcMs: UtcMs;
  readonly altitudeDeg: number;
}

export interface OutlookQuestion {
  readonly target: Target;
  readonly observer: Observer;
  readonly night: TimeSpan;
  readonly twilight: Twilights;
  readonly horizon: readonly { readonly azimuthDeg: number; readonly altitudeDeg: number }[] | null;
  readonly nowUtcMs: UtcMs;
  readonly equipment: Equipment;
  readonly zenithMagPerArcsec2: number;
}

export interface Outlook {
  readonly verdict: Verdict;
  readonly best: Point;
  readonly azimuthDeg: number;
  readonly sky: SkyName;
  readonly sample: SkySample;
  /** Magnitudes above the threshold of seeing at the best hour; null where nothing is known of its brightness. */
  readonly marginMag: number | null;
  /** What Moon and twilight take of it then. */
  readonly lostToMoonMag: number;
  readonly sunSeparationDeg: number;
  readonly magnitude: number | null;
  readonly times: RiseTransitSet;
  /** Highest it ever gets at this latitude, for what is fixed among the stars. */
  readonly culminationDeg: number | null;
  /** In the window looked at: when it clears the site's own horizon, and when it goes behind. */
  readonly clearsUtcMs: UtcMs | null;
  readonly hiddenUtcMs: UtcMs | null;
}

/** Under this a target is lost in the Sun's glare; common practice, no source. */
const LOST_IN_SUN_DEG = 12;
/** Bright enough for twilight; common practice, no source. */
const TWILIGHT_MAGNITUDE = 3;
const SHOWS_MAG = 0.2;
const UNKNOWN_MAG = -8;
const STEP_MS = 120_000;
const EDGE_DEG = 0.05;

const skyName = (sunAltitudeDeg: number): SkyName => {
  if (sunAltitudeDeg > -0.833) return 'daylight';
  // The ends of each are its edges to a hair.
  if (sunAltitudeDeg > -6 + EDGE_DEG) return 'civil twilight';
  if (sunAltitudeDeg > -12 + EDGE_DEG) return 'nautical twilight';
  return sunAltitudeDeg > -18 + EDGE_DEG ? 'astronomical twilight' : 'dark';
};

const isBody = ({ body }: Target, name: string): boolean => body.kind === 'solarSystem' && body.body === name;

/** Moon and planets are looked at from civil dusk on; what is faint gets the darkest there is, and twilight only where it stands it. */
const windowsOf = (
  { target, night, twilight, nowUtcMs }: OutlookQuestion,
  magnitude: number | null,
): readonly TimeSpan[] => {
  const spanOf = (times: Twilights['civil']): TimeSpan | null =>
    times && { startUtcMs: times.duskUtcMs ?? night.startUtcMs, endUtcMs: times.dawnUtcMs ?? night.endUtcMs };
  const down: TimeSpan | null = twilight.sunAlwaysUp
    ? null
    : { startUtcMs: twilight.sunsetUtcMs ?? night.startUtcMs, endUtcMs: twilight.sunriseUtcMs ?? night.endUtcMs };
  const spans = [twilight.astronomical, twilight.nautical, twilight.civil].map(spanOf);
  const nested = isBody(target, 'Sun') ? [] : [...spans, down];
  const isBright = target.body.kind === 'solarSystem' || (magnitude !== null && magnitude <= TWILIGHT_MAGNITUDE);
  const found = nested.filter((span) => span !== null);
  const windows = isBright ? found : found.slice(0, 1);
  const isUnderWay = nowUtcMs > night.startUtcMs && nowUtcMs < night.endUtcMs;
  return (windows.length > 0 ? windows : [night]).map((span) =>
    isUnderWay ? { ...span, startUtcMs: Math.max(span.startUtcMs, Math.min(nowUtcMs, span.endUtcMs)) } : span,
  );
};

/** The moments in a window at which the target clears the site's own horizon; what lies below level hides nothing that is up. */
const obstructed = (question: OutlookQuestion, window: TimeSpan) => {
  const { target, observer } = question;
  const profile = (question.horizon ?? []).map(({ azimuthDeg, altitudeDeg }) => ({
    azimuthDeg,
    altitudeDeg: Math.max(0, altitudeDeg),
  }));
  const steps = Math.max(1, Math.ceil((window.endUtcMs - window.startUtcMs) / STEP_MS));
  const curve = Array.from({ length: steps + 1 }, (_, i) => {
    const utcMs = window.startUtcMs + ((window.endUtcMs - window.startUtcMs) * i) / steps;
    return { utcMs, ...horizontalOf(target.body, observer, utcMs) };
  });
  const spans = clearSpans(curve, profile);
  const clear = curve.filter(({ utcMs }) => spans.some((span) => utcMs >= span.startUtcMs && utcMs <= span.endUtcMs));
  return {
    best: clear.reduce<Point | null>(
      (top, next) => (top === null || next.altitudeDeg > top.altitudeDeg ? next : top),
      null,
    ),
    clearsUtcMs: spans.find(({ startUtcMs }) => startUtcMs > window.startUtcMs)?.startUtcMs ?? null,
    hiddenUtcMs: spans.findLast(({ endUtcMs }) => endUtcMs < window.endUtcMs)?.endUtcMs ?? null,
  };
};

/** The window with the best sky in which the target is up at a useful height, else up at all, else the first. */
const bestOpen = (
  { target, observer }: OutlookQuestion,
  windows: readonly TimeSpan[],
): { readonly window: TimeSpan; readonly point: Point } => {
  const least = target.body.kind === 'solarSystem' ? LEAST_PLANET_ALTITUDE_DEG : 0;
  const found = windows.map((window) => ({ window, point: bestTime(target.body, observer, window) }));
  const good = found.find(({ point }) => point.altitudeDeg > least) ?? found.find(({ point }) => point.altitudeDeg > 0);
  return good ?? (found[0] as { window: TimeSpan; point: Point });
};

const seenOf = ({ kind, sizeArcmin, minorSizeArcmin, showpieceRank }: Target, magnitude: number | null): Seen => ({
  kind,
  magnitude: magnitude ?? Number.NaN,
  sizeArcmin: sizeArcmin ?? Number.NaN,
  minorSizeArcmin: minorSizeArcmin ?? sizeArcmin ?? Number.NaN,
  showpieceRank: showpieceRank ?? 0,
});

const MOONLESS = { moonlight: 0, moonAltitudeDeg: -90 } as const;

/** The margin at the best hour, and with the Moon taken away. */
const margins = (question: OutlookQuestion, magnitude: number | null, best: Point, sample: SkySample) => {
  const { target, observer, equipment, zenithMagPerArcsec2 } = question;
  const direction = unitFromEquatorial(placeOf(target.body, observer, best.utcMs).j2000);
  const under = (at: SkySample): number =>
    marginMag(
      seenOf(target, magnitude),
      skyMagAt(at, direction, best.altitudeDeg, zenithMagPerArcsec2),
      best.altitudeDeg,
      equipment,
    );
  const isMoon = isBody(target, 'Moon');
  const moonless = under({ ...sample, ...MOONLESS });
  const lit = isMoon ? moonless : under(sample);
  return lit < UNKNOWN_MAG ? { marginMag: null, lostToMoonMag: 0 } : { marginMag: lit, lostToMoonMag: moonless - lit };
};

const culmination = (body: SkyBody, observer: Observer, utcMs: UtcMs): number | null =>
  body.kind === 'fixed' ? 90 - Math.abs(observer.latitudeDeg - placeOf(body, observer, utcMs).ofDate.decDeg) : null;

interface Circumstances {
  readonly target: Target;
  readonly neverUp: boolean;
  readonly isPast: boolean;
  readonly isBehind: boolean;
  readonly best: Point;
  readonly sky: SkyName;
  readonly marginMag: number | null;
  readonly lostToMoonMag: number;
  readonly sunSeparationDeg: number;
}

const verdictOf = (found: Circumstances): Verdict => {
  const { target, neverUp, isPast, isBehind, best, sky, marginMag: margin, lostToMoonMag, sunSeparationDeg } = found;
  const isSun = isBody(target, 'Sun');
  if (neverUp) return 'never-up';
  if (isSun) return best.altitudeDeg > 0 ? 'up' : 'day-only';
  if (isPast) return 'past';
  if (sunSeparationDeg < LOST_IN_SUN_DEG && !isBody(target, 'Moon')) return 'lost-in-sun';
  if (best.altitudeDeg <= 0 || (sky === 'daylight' && !isBody(target, 'Moon'))) return 'day-only';
  if (isBehind) return 'behind-horizon';
  const isNear = target.body.kind === 'solarSystem';
  const standsTwilight = isNear || (target.magnitude !== null && target.magnitude <= TWILIGHT_MAGNITUDE);
  if (!standsTwilight && (sky === 'civil twilight' || sky === 'nautical twilight')) return 'twilight-only';
  if (best.altitudeDeg < (isNear ? LEAST_PLANET_ALTITUDE_DEG : LEAST_USEFUL_ALTITUDE_DEG)) return 'low';
  if (margin !== null && margin < SHOWS_MAG) return margin + lostToMoonMag >= SHOWS_MAG ? 'washed-out' : 'too-faint';
  return 'up';
};

export const outlook = (question: OutlookQuestion): Outlook => {
  const { target, observer, night, horizon, nowUtcMs } = question;
  const { body } = target;
  const middleUtcMs = (night.startUtcMs + night.endUtcMs) / 2;
  const magnitude = body.kind === 'solarSystem' ? apparentMagnitude(body.body, middleUtcMs) : target.magnitude;
  const windows = windowsOf(question, magnitude);
  const open = bestOpen(question, windows);
  const bite = horizon === null || open.point.altitudeDeg <= 0 ? null : obstructed(question, open.window);
  const bestUtcMs = Math.round((bite?.best ?? open.point).utcMs / 1000) * 1000;
  const { altitudeDeg, azimuthDeg } = horizontalOf(body, observer, bestUtcMs);
  const best = { utcMs: bestUtcMs, altitudeDeg };
  const sample = skySample(observer, bestUtcMs);
  const times = riseTransitSet(body, observer, night.startUtcMs, night.endUtcMs);
  const sunSeparationDeg = separationDeg(
    placeOf(body, observer, bestUtcMs).ofDate,
    placeOf(SUN, observer, bestUtcMs).ofDate,
  );
  const seen = margins(question, magnitude, best, sample);
  const sky = skyName(sample.sunAltitudeDeg);
  return {
    verdict: verdictOf({
      target,
      neverUp: times.neverUp,
      isPast: nowUtcMs < night.endUtcMs && windows.every(({ startUtcMs, endUtcMs }) => startUtcMs >= endUtcMs),
      isBehind: bite !== null && bite.best === null,
      best,
      sky,
      ...seen,
      sunSeparationDeg,
    }),
    best,
    azimuthDeg,
    sky,
    sample,
    ...seen,
    sunSeparationDeg,
    magnitude,
    times,
    culminationDeg: culmination(body, observer, middleUtcMs),
    clearsUtcMs: bite?.clearsUtcMs ?? null,
    hiddenUtcMs: bite?.best == null ? null : bite.hiddenUtcMs,
  };
};
