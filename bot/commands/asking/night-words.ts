/** How a night is said and drawn: when a body is above the horizon, when it is dark, what the Moon does. */
import { horizonAltitudeDegAt } from '../../pointing/horizon/horizon-profile.js';
import type { ChartPoint, NightChart } from '../../reply/reply.js';
import { degrees } from '../../reply/wording.js';
import { altitudeCurve } from '../../sky/altitude-curve.js';
import { MOON, type MoonState } from '../../sky/moon.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import { riseTransitSet, type RiseTransitSet } from '../../sky/rise-set.js';
import type { Twilights, TwilightTimes } from '../../sky/twilight.js';
import type { Observer, SkyBody, UtcMs } from '../../sky/types.js';
import type { HorizonPoint } from '../../store/store.js';
import { formatClock, formatLocalTime, formatSpan } from '../../times/index.js';

const CURVE_POINTS = 97;

/** "rises 18:40, sets 03:12 MST", "up until 01:05, back at 09:30 MST", "all night, it never sets here". */
export const aboveHorizonWords = ({ riseUtcMs, setUtcMs, alwaysUp, neverUp }: RiseTransitSet, zone: string): string => {
  if (alwaysUp) return 'all night, it does not set';
  if (neverUp) return 'not at all this night';
  if (riseUtcMs === null && setUtcMs !== null) return `until ${formatLocalTime(setUtcMs, zone)}`;
  if (setUtcMs === null && riseUtcMs !== null) return `from ${formatLocalTime(riseUtcMs, zone)}`;
  if (riseUtcMs === null || setUtcMs === null) return 'not at all this night';
  return riseUtcMs < setUtcMs
    ? formatSpan(riseUtcMs, setUtcMs, zone)
    : `until ${formatSpan(setUtcMs, riseUtcMs, zone).replace(' to ', ', again from ')}`;
};

/** The span a twilight's darkness covers within the night. */
export const twilightSpan = (times: TwilightTimes | null, night: TimeSpan): TimeSpan | null =>
  times === null
    ? null
    : { startUtcMs: times.duskUtcMs ?? night.startUtcMs, endUtcMs: times.dawnUtcMs ?? night.endUtcMs };

/** Why a night has no full darkness, as a sentence; null where it has. Each twilight is named by how far down the Sun is at its darkest. */
export const noDarkWords = (
  { nautical, civil, astronomical, sunAlwaysUp }: Twilights,
  night: TimeSpan,
  zone: string,
): string | null => {
  if (astronomical !== null) return null;
  if (sunAlwaysUp) return 'No darkness: the Sun does not set';
  const next = twilightSpan(nautical, night) ?? twilightSpan(civil, night);
  if (next === null) return 'No darkness: civil twilight, the brightest, lasts all night';
  const word = nautical !== null ? 'astronomical twilight' : 'nautical twilight';
  return `No full darkness: at its darkest ${word}, ${formatSpan(next.startUtcMs, next.endUtcMs, zone)}`;
};

/** "18:24 to 06:12 MST", or why there is none. */
export const darkWords = (twilights: Twilights, night: TimeSpan, zone: string): string => {
  const dark = twilightSpan(twilights.astronomical, night);
  if (dark === null) return (noDarkWords(twilights, night, zone) ?? '').replace(/^No (?:full )?darkness: /u, '');
  return twilights.astronomical?.darkAllNight === true
    ? 'all the time, the Sun stays far down'
    : formatSpan(dark.startUtcMs, dark.endUtcMs, zone);
};

/** "62° away, 34 % lit, sets 21:40": the Moon as it stands to a target at an instant. */
export const moonWords = (
  moon: MoonState,
  separationDeg: number | null,
  moonTimes: RiseTransitSet,
  atUtcMs: UtcMs,
  zone: string,
): string => {
  const lit = `${Math.round(moon.illuminatedFraction * 100)} % lit`;
  const next = (
    [
      ['rises', moonTimes.riseUtcMs],
      ['sets', moonTimes.setUtcMs],
    ] as const
  )
    .filter((event): event is readonly ['rises' | 'sets', UtcMs] => event[1] !== null && event[1] > atUtcMs)
    .sort((a, b) => a[1] - b[1])[0];
  const parts =
    moon.place.altitudeDeg > 0
      ? [separationDeg === null ? 'up' : `${degrees(separationDeg)} away`, lit]
      : ['down then', lit];
  return [...parts, ...(next === undefined ? [] : [`${next[0]} ${formatClock(next[1], zone)}`])].join(', ');
};

const bandsOf = (twilights: Twilights, night: TimeSpan): NightChart['bands'] => {
  const { sunsetUtcMs, sunriseUtcMs, sunAlwaysUp, sunAlwaysDown, civil, nautical, astronomical } = twilights;
  if (sunAlwaysUp) return [{ fromUtcMs: night.startUtcMs, toUtcMs: night.endUtcMs, band: 'day' }];
  const down: TimeSpan = sunAlwaysDown
    ? night
    : { startUtcMs: sunsetUtcMs ?? night.startUtcMs, endUtcMs: sunriseUtcMs ?? night.endUtcMs };
  const nested = (
    [
      ['day', night],
      ['civil', down],
      ['nautical', twilightSpan(civil, night)],
      ['astronomical', twilightSpan(nautical, night)],
      ['dark', twilightSpan(astronomical, night)],
    ] as const
  ).filter((entry): entry is readonly [NightChart['bands'][number]['band'], TimeSpan] => entry[1] !== null);
  const bands: { fromUtcMs: UtcMs; toUtcMs: UtcMs; band: NightChart['bands'][number]['band'] }[] = [];
  nested.forEach(([band, span], index) => {
    const inner = nested[index + 1]?.[1];
    if (inner === undefined) {
      bands.push({ fromUtcMs: span.startUtcMs, toUtcMs: span.endUtcMs, band });
      return;
    }
    bands.push(
      { fromUtcMs: span.startUtcMs, toUtcMs: inner.startUtcMs, band },
      { fromUtcMs: inner.endUtcMs, toUtcMs: span.endUtcMs, band },
    );
  });
  return bands.filter(({ fromUtcMs, toUtcMs }) => toUtcMs > fromUtcMs).sort((a, b) => a.fromUtcMs - b.fromUtcMs);
};

interface NightPicture {
  readonly title: string;
  readonly body: SkyBody;
  readonly observer: Observer;
  readonly zone: string;
  readonly night: TimeSpan;
  readonly twilights: Twilights;
  readonly horizon: readonly HorizonPoint[] | null;
  readonly minimumAltitudeDeg: number;
  readonly best: ChartPoint | null;
  readonly nowUtcMs: UtcMs | null;
  readonly altText: string;
}

const COMPASS = ['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'] as const;
const LEAST_COMPASS_DEG = 8;
const LEAST_APART_MS = 60 * 60_000;

/** Where along the curve the target passes one of eight directions, no two nearer than an hour. */
const compassAlong = (body: SkyBody, observer: Observer, curve: readonly ChartPoint[]): NightChart['compass'] => {
  const azimuths = curve.map(({ utcMs }) => horizontalOf(body, observer, utcMs).azimuthDeg);
  const found: (ChartPoint & { readonly word: string })[] = [];
  curve.forEach((point, i) => {
    const before = azimuths[i - 1];
    const after = azimuths[i];
    if (before === undefined || after === undefined || point.altitudeDeg < LEAST_COMPASS_DEG) return;
    const [sector, last] = [Math.floor(after / 45), Math.floor(before / 45)];
    const passed = sector === last || Math.abs(after - before) > 90 ? null : Math.max(sector, last);
    const isApart = point.utcMs - (found.at(-1)?.utcMs ?? -LEAST_APART_MS) >= LEAST_APART_MS;
    if (passed !== null && isApart) found.push({ ...point, word: COMPASS[passed % 8] ?? '' });
  });
  return found;
};

/** Everything the altitude chart of one night shows, as data. */
export const nightChart = ({ body, observer, night, horizon, twilights, ...rest }: NightPicture): NightChart => {
  const curve = altitudeCurve(body, observer, night.startUtcMs, night.endUtcMs, CURVE_POINTS);
  const isMoon = body.kind === 'solarSystem' && body.body === 'Moon';
  return {
    kind: 'night',
    ...rest,
    startUtcMs: night.startUtcMs,
    endUtcMs: night.endUtcMs,
    curve,
    compass: compassAlong(body, observer, curve) ?? [],
    moonCurve: isMoon ? [] : altitudeCurve(MOON, observer, night.startUtcMs, night.endUtcMs, CURVE_POINTS),
    bands: bandsOf(twilights, night),
    ...(horizon === null
      ? {}
      : {
          horizonCurve: curve.map(({ utcMs }) => ({
            utcMs,
            altitudeDeg: horizonAltitudeDegAt(horizon, horizontalOf(body, observer, utcMs).azimuthDeg),
          })),
        }),
  };
};

/** What the chart shows, for those who cannot see it. */
export const nightAltText = (
  name: string,
  times: RiseTransitSet,
  best: ChartPoint | null,
  { dark, moon }: { readonly dark: string; readonly moon: string },
  zone: string,
): string =>
  [
    `Altitude of ${name} through the night`,
    `above the horizon ${aboveHorizonWords(times, zone)}`,
    best === null || best.altitudeDeg <= 0
      ? 'below the horizon in the hours that count'
      : `best at ${formatLocalTime(best.utcMs, zone)}, ${degrees(best.altitudeDeg)}`,
    `dark ${dark}`,
    `Moon ${moon}`,
  ]
    .join('; ')
    .concat('.');

export const moonTimesOf = (observer: Observer, night: TimeSpan): RiseTransitSet =>
  riseTransitSet(MOON, observer, night.startUtcMs, night.endUtcMs);
