/** Close meetings of the Moon, the planets and the bright stars near their way, at the hour they are best seen here. */
import { MS_PER_HOUR } from '../ground/durations.js';
import { angleBetween, horizontalSeparationDeg, unitFromEquatorial, type Vector3 } from '../sky/angles.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf, placeOf } from '../sky/place.js';
import { SUN } from '../sky/twilight.js';
import type { Observer, SkyBody, SolarSystemBody, UtcMs } from '../sky/types.js';

export interface Meeting {
  readonly names: readonly [string, string];
  /** The second: the planet or star. */
  readonly body: SkyBody;
  readonly utcMs: UtcMs;
  readonly separationDeg: number;
  /** Of the second: the planet or star. */
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
}

/** The Moon moves its own width in an hour: often enough to see a minimum coming. */
const MOON_STEP_MS = 8 * MS_PER_HOUR;
const PLANET_STEP_MS = 24 * MS_PER_HOUR;
/** What a beginner sees as close; common practice, no source. */
const MOON_LIMIT_DEG = 5;
const STAR_LIMIT_DEG = 3;
const PLANET_LIMIT_DEG = 2;
const SUN_BELOW_DEG = -5;
const LEAST_ALTITUDE_DEG = 7;

const PLANETS: readonly SolarSystemBody[] = ['Mercury', 'Venus', 'Mars', 'Jupiter', 'Saturn'];
/** Bright stars within 6° of the ecliptic and the Pleiades (J2000, Hipparcos). */
const STARS: readonly (readonly [name: string, raHours: number, decDeg: number])[] = [
  ['the Pleiades', 3.7914, 24.105],
  ['Aldebaran', 4.5987, 16.509],
  ['Regulus', 10.1395, 11.967],
  ['Spica', 13.4199, -11.161],
  ['Antares', 16.4901, -26.432],
];

interface Named {
  readonly name: string;
  readonly body: SkyBody;
}
const planet = (body: SolarSystemBody): Named => ({ name: body, body: { kind: 'solarSystem', body } });
const MOON_NAMED: Named = { name: 'Moon', body: { kind: 'solarSystem', body: 'Moon' } };
const NAMED_STARS: readonly Named[] = STARS.map(([name, raHoursJ2000, decDegJ2000]) => ({
  name,
  body: { kind: 'fixed', raHoursJ2000, decDegJ2000 },
}));

type Track = (utcMs: UtcMs) => Vector3;

/** Directions seen from the place, kept so that no body is placed twice for one instant. */
const trackOf = ({ body }: Named, observer: Observer): Track => {
  const kept = new Map<UtcMs, Vector3>();
  return (utcMs) => {
    let vector = kept.get(utcMs);
    if (vector === undefined) {
      vector =
        body.kind === 'fixed'
          ? unitFromEquatorial({ raHours: body.raHoursJ2000, decDeg: body.decDegJ2000 })
          : unitFromEquatorial(placeOf(body, observer, utcMs).j2000);
      kept.set(utcMs, vector);
    }
    return vector;
  };
};

interface Pair {
  readonly first: Named;
  readonly second: Named;
  readonly limitDeg: number;
  readonly stepMs: number;
}

/** The closest hour about a minimum at which both are up in a dark enough sky, or null. */
const bestSeen = ({ first, second, limitDeg, stepMs }: Pair, observer: Observer, nearUtcMs: UtcMs): Meeting | null => {
  let best: Meeting | null = null;
  for (let utcMs = nearUtcMs - 1.5 * stepMs; utcMs <= nearUtcMs + 1.5 * stepMs; utcMs += MS_PER_HOUR) {
    if (horizontalOf(SUN, observer, utcMs).altitudeDeg > SUN_BELOW_DEG) continue;
    const there = horizontalOf(second.body, observer, utcMs);
    if (there.altitudeDeg < LEAST_ALTITUDE_DEG) continue;
    const other = horizontalOf(first.body, observer, utcMs);
    const separationDeg = horizontalSeparationDeg(there, other);
    if (other.altitudeDeg < LEAST_ALTITUDE_DEG || separationDeg > limitDeg) continue;
    if (best === null || separationDeg < best.separationDeg)
      best = { names: [first.name, second.name], body: second.body, utcMs, separationDeg, ...there };
  }
  return best;
};

const meetingsOf = (pair: Pair, tracks: readonly [Track, Track], observer: Observer, span: TimeSpan): Meeting[] => {
  // What the Moon meets moves little in half a day: its place of the day will do to see a minimum coming.
  const slow = (utcMs: UtcMs): UtcMs =>
    pair.first.name === 'Moon' ? Math.round(utcMs / PLANET_STEP_MS) * PLANET_STEP_MS : utcMs;
  const apart = (utcMs: UtcMs): number => angleBetween(tracks[0](utcMs), tracks[1](slow(utcMs)));
  const found: Meeting[] = [];
  const reach = pair.limitDeg + (pair.first.name === 'Moon' ? 6 : 1);
  for (let utcMs = span.startUtcMs; utcMs < span.endUtcMs; utcMs += pair.stepMs) {
    const now = apart(utcMs);
    if (now > reach || now > apart(utcMs - pair.stepMs) || now >= apart(utcMs + pair.stepMs)) continue;
    const seen = bestSeen(pair, observer, utcMs);
    if (seen !== null && seen.utcMs >= span.startUtcMs) found.push(seen);
  }
  return found;
};

const pairs = (): readonly Pair[] => {
  const planets = PLANETS.map(planet);
  const withMoon = [
    ...planets.map((second) => ({ second, limitDeg: MOON_LIMIT_DEG })),
    ...NAMED_STARS.map((second) => ({ second, limitDeg: STAR_LIMIT_DEG })),
  ].map((pair) => ({ ...pair, first: MOON_NAMED, stepMs: MOON_STEP_MS }));
  const among = planets.flatMap((first, i) =>
    planets.slice(i + 1).map((second) => ({ first, second, limitDeg: PLANET_LIMIT_DEG, stepMs: PLANET_STEP_MS })),
  );
  return [...withMoon, ...among];
};

/** All within the span, in order. */
export const meetingsHere = (observer: Observer, span: TimeSpan): readonly Meeting[] => {
  // Whole steps, so that tracks are shared.
  const aligned = {
    startUtcMs: Math.floor(span.startUtcMs / PLANET_STEP_MS) * PLANET_STEP_MS,
    endUtcMs: span.endUtcMs,
  };
  const tracks = new Map<string, Track>();
  const track = (named: Named): Track => {
    const kept = tracks.get(named.name) ?? trackOf(named, observer);
    tracks.set(named.name, kept);
    return kept;
  };
  return pairs()
    .flatMap((pair) => meetingsOf(pair, [track(pair.first), track(pair.second)], observer, aligned))
    .filter(({ utcMs }) => utcMs >= span.startUtcMs)
    .sort((a, b) => a.utcMs - b.utcMs);
};
