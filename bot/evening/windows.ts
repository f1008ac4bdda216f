/** In which of a night's skies a target is looked at, and when in it: dark for what is faint, twilight for what stands it. */
import type { Target } from '../catalogue/index.js';
import { clearSpans } from '../pointing/horizon/horizon-profile.js';
import { bestTime } from '../sky/best-time.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import type { Twilights } from '../sky/twilight.js';
import type { Observer, UtcMs } from '../sky/types.js';
import { isBody, leastAltitudeDegOf, standsTwilight } from './pick.js';
import type { Equipment } from './equipment.js';

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

export interface Point {
  readonly utcMs: UtcMs;
  readonly altitudeDeg: number;
}

export interface Open {
  readonly window: TimeSpan;
  readonly point: Point;
}

const STEP_MS = 120_000;

/** As high as this in the dark a planet is not waited for in twilight; common practice, no source. */
const HIGH_ENOUGH_DEG = 20;
/** So little height is not worth a brighter sky; common practice, no source. */
const SLACK_DEG = 2;

/** A night's skies, the darkest first: the Sun 18°, 12° and 6° below the horizon, and down at all where no other is asked for. */
const skiesOf = ({ night, twilight }: OutlookQuestion): { readonly dark: TimeSpan[]; readonly down: TimeSpan[] } => {
  const spanOf = (times: Twilights['civil']): TimeSpan[] =>
    times === null
      ? []
      : [{ startUtcMs: times.duskUtcMs ?? night.startUtcMs, endUtcMs: times.dawnUtcMs ?? night.endUtcMs }];
  const down = twilight.sunAlwaysUp
    ? []
    : [{ startUtcMs: twilight.sunsetUtcMs ?? night.startUtcMs, endUtcMs: twilight.sunriseUtcMs ?? night.endUtcMs }];
  return { dark: [twilight.astronomical, twilight.nautical, twilight.civil].flatMap(spanOf), down };
};

/** The night asked about may be an evening alone. */
const within = (span: TimeSpan, { startUtcMs, endUtcMs }: TimeSpan): TimeSpan => ({
  startUtcMs: Math.max(span.startUtcMs, startUtcMs),
  endUtcMs: Math.min(span.endUtcMs, endUtcMs),
});

/**
 * Planets are looked at from civil dusk on, the Moon and bright stars while the Sun is down; what is faint gets the darkest there is.
 * What is past counts for nothing.
 */
export const windowsOf = (question: OutlookQuestion, magnitude: number | null): readonly TimeSpan[] => {
  const { target, night, nowUtcMs } = question;
  const { dark, down } = skiesOf(question);
  const all = [...dark, ...down];
  const isPlanet = target.body.kind === 'solarSystem' && !isBody(target, 'Moon');
  const nested = isPlanet && dark.length > 0 ? dark : all;
  const skies = standsTwilight(target, magnitude) ? nested : all.slice(0, 1);
  const windows = skies.map((span) => within(span, night)).filter(({ startUtcMs, endUtcMs }) => endUtcMs > startUtcMs);
  const isUnderWay = nowUtcMs > night.startUtcMs && nowUtcMs < night.endUtcMs;
  return (windows.length > 0 && !isBody(target, 'Sun') ? windows : [night]).map((span) =>
    isUnderWay ? { ...span, startUtcMs: Math.max(span.startUtcMs, Math.min(nowUtcMs, span.endUtcMs)) } : span,
  );
};

/** The moments in a window at which the target clears the site's own horizon; what lies below level hides nothing that is up. */
export const obstructed = (question: OutlookQuestion, window: TimeSpan) => {
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

/**
 * The darkest window in which the target stands at a useful height, else is up at all, else the first. A planet that the dark has
 * only low down is taken in twilight, as high as it is still seen there.
 */
export const bestOpen = (
  { target, observer }: OutlookQuestion,
  windows: readonly TimeSpan[],
  isSeen: (point: Point) => boolean,
): Open => {
  const found = windows.map((window): Open => ({ window, point: bestTime(target.body, observer, window) }));
  const isPlanet = target.body.kind === 'solarSystem' && !isBody(target, 'Moon');
  const least = isPlanet ? leastAltitudeDegOf(target.body) : 0;
  const risen = found.filter(({ point }) => point.altitudeDeg > 0);
  const useful = risen.filter(({ point }) => point.altitudeDeg > least);
  const seen = isPlanet ? (useful.length > 0 ? useful : risen).filter(({ point }) => isSeen(point)) : [];
  const topDeg = Math.max(-90, ...seen.map(({ point }) => point.altitudeDeg));
  const enoughDeg = Math.min(HIGH_ENOUGH_DEG, topDeg - SLACK_DEG);
  return seen.find(({ point }) => point.altitudeDeg >= enoughDeg) ?? useful[0] ?? risen[0] ?? (found[0] as Open);
};
