/**
 * How one target fares in one night: its best hour in the best sky there is, what keeps it from being seen, and by how much. Hours
 * that are past count for nothing.
 */
import type { Target } from '../catalogue/index.js';
import { separationDeg, unitFromEquatorial } from '../sky/angles.js';
import { bestTime } from '../sky/best-time.js';
import { moonlessDark } from '../sky/moon.js';
import { horizontalOf, placeOf } from '../sky/place.js';
import { riseTransitSet, type RiseTransitSet } from '../sky/rise-set.js';
import { SUN } from '../sky/twilight.js';
import type { Observer, SkyBody, UtcMs } from '../sky/types.js';
import { SHOWS_MAG } from './ease.js';
import { isBody, leastAltitudeDegOf } from './pick.js';
import { skyMagAt, skySample, type SkySample } from './sky-samples.js';
import { magnitudeThen } from './variable-now.js';
import { skyName, verdictOf, type SkyName, type Verdict } from './verdict.js';
import { marginMag, type Seen } from './visibility.js';
import { bestOpen, obstructed, windowsOf, type Open, type OutlookQuestion, type Point } from './windows.js';

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
  /** Its best hour is not its highest but its highest without the Moon, which drowns it else. */
  readonly isMoonAvoided: boolean;
  /** Its best hour in this night, where that is over. */
  readonly missed: (Point & { readonly azimuthDeg: number }) | null;
  /** Highest it ever gets at this latitude, for what is fixed among the stars. */
  readonly culminationDeg: number | null;
  /** In the window looked at: when it clears the site's own horizon, and when it goes behind. */
  readonly clearsUtcMs: UtcMs | null;
  readonly hiddenUtcMs: UtcMs | null;
}

const UNKNOWN_MAG = -8;

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

interface Looked {
  readonly best: Point;
  readonly azimuthDeg: number;
  readonly sample: SkySample;
  readonly marginMag: number | null;
  readonly lostToMoonMag: number;
}

/** How it stands and shows at an instant, to the second. */
const lookAt = (question: OutlookQuestion, magnitude: number | null, utcMs: UtcMs): Looked => {
  const bestUtcMs = Math.round(utcMs / 1000) * 1000;
  const { altitudeDeg, azimuthDeg } = horizontalOf(question.target.body, question.observer, bestUtcMs);
  const best = { utcMs: bestUtcMs, altitudeDeg };
  const sample = skySample(question.observer, bestUtcMs);
  return { best, azimuthDeg, sample, ...margins(question, magnitude, best, sample) };
};

/** Where moonlight drowns it at its highest: its highest while the Moon is down, if it shows then. */
const withoutMoon = (question: OutlookQuestion, magnitude: number | null, { window }: Open): Looked | null => {
  const { target, observer } = question;
  const looked = moonlessDark(observer, window.startUtcMs, window.endUtcMs)
    .map((span) => lookAt(question, magnitude, bestTime(target.body, observer, span).utcMs))
    .filter(
      ({ best, marginMag }) => best.altitudeDeg >= leastAltitudeDegOf(target.body) && (marginMag ?? 0) >= SHOWS_MAG,
    )
    .sort((a, b) => b.best.altitudeDeg - a.best.altitudeDeg);
  return looked[0] ?? null;
};

/** As it is from now on. */
const fromNow = (question: OutlookQuestion): Outlook => {
  const { target, observer, night, horizon, nowUtcMs } = question;
  const { body } = target;
  const middleUtcMs = (night.startUtcMs + night.endUtcMs) / 2;
  const magnitude = magnitudeThen(target, middleUtcMs);
  const windows = windowsOf(question, magnitude);
  const open = bestOpen(question, windows, ({ utcMs }) => {
    const { marginMag: margin } = lookAt(question, magnitude, utcMs);
    return margin === null || margin >= SHOWS_MAG;
  });
  const bite = horizon === null || open.point.altitudeDeg <= 0 ? null : obstructed(question, open.window);
  const times = riseTransitSet(body, observer, night.startUtcMs, night.endUtcMs);
  const judged = (looked: Looked): Pick<Outlook, keyof Looked | 'verdict' | 'sky' | 'sunSeparationDeg'> => {
    const sky = skyName(looked.sample.sunAltitudeDeg);
    const { utcMs } = looked.best;
    const sunSeparationDeg = separationDeg(placeOf(body, observer, utcMs).ofDate, placeOf(SUN, observer, utcMs).ofDate);
    const verdict = verdictOf({
      target: { ...target, magnitude },
      neverUp: times.neverUp,
      isPast: nowUtcMs < night.endUtcMs && windows.every(({ startUtcMs, endUtcMs }) => startUtcMs >= endUtcMs),
      isBehind: bite !== null && bite.best === null,
      ...looked,
      sky,
      sunSeparationDeg,
    });
    return { ...looked, verdict, sky, sunSeparationDeg };
  };
  const highest = judged(lookAt(question, magnitude, (bite?.best ?? open.point).utcMs));
  const moonless = highest.verdict === 'washed-out' && horizon === null ? withoutMoon(question, magnitude, open) : null;
  return {
    ...(moonless === null ? highest : judged(moonless)),
    isMoonAvoided: moonless !== null,
    magnitude,
    times,
    missed: null,
    culminationDeg: culmination(body, observer, middleUtcMs),
    clearsUtcMs: bite?.clearsUtcMs ?? null,
    hiddenUtcMs: bite?.best == null ? null : bite.hiddenUtcMs,
  };
};

/** What the rest of a night under way has no good hour for may have had one before. */
const MAY_BE_OVER: readonly Verdict[] = ['low', 'day-only', 'behind-horizon'];

/** Whether the night's best hour, now past, was better than what is left of it. */
const isOver = (left: Outlook, whole: Outlook, nowUtcMs: UtcMs): boolean =>
  whole.best.utcMs < nowUtcMs &&
  (whole.verdict === 'up' ||
    (left.verdict === 'day-only' && whole.verdict !== 'day-only' && whole.best.altitudeDeg > 0));

export const outlook = (question: OutlookQuestion): Outlook => {
  const { night, nowUtcMs } = question;
  const found = fromNow(question);
  const isUnderWay = nowUtcMs > night.startUtcMs && nowUtcMs < night.endUtcMs;
  if (!isUnderWay || !MAY_BE_OVER.includes(found.verdict)) return found;
  const whole = fromNow({ ...question, nowUtcMs: night.startUtcMs });
  return isOver(found, whole, nowUtcMs)
    ? { ...found, verdict: 'past', missed: { ...whole.best, azimuthDeg: whole.azimuthDeg } }
    : found;
};
