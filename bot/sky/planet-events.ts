/** Oppositions and greatest elongations of the planets. */
import { MS_PER_DAY } from '../ground/durations.js';
import { Body, SearchMaxElongation, SearchRelativeLongitude } from 'astronomy-engine';
import { apparentMagnitude } from './brightness.js';
import { engineTime } from './engine-time.js';
import type { TimeSpan } from './night.js';
import type { SolarSystemBody, UtcMs } from './types.js';

export interface PlanetEvent {
  readonly planet: SolarSystemBody;
  readonly what: 'opposition' | 'greatest-elongation';
  readonly utcMs: UtcMs;
  /** From the Sun, for an elongation; null at an opposition. */
  readonly elongationDeg: number | null;
  /** Which sky an elongation is seen in. */
  readonly visibility: 'morning' | 'evening' | null;
  readonly magnitude: number;
}

const OUTER = ['Mars', 'Jupiter', 'Saturn', 'Uranus', 'Neptune'] as const;
const INNER = ['Mercury', 'Venus'] as const;

const oppositionsOf = (planet: (typeof OUTER)[number], { startUtcMs, endUtcMs }: TimeSpan): PlanetEvent[] => {
  const found: PlanetEvent[] = [];
  const from = (utcMs: UtcMs): UtcMs => SearchRelativeLongitude(Body[planet], 0, engineTime(utcMs)).date.getTime();
  for (let utcMs = from(startUtcMs); utcMs < endUtcMs; utcMs = from(utcMs + MS_PER_DAY))
    found.push({
      planet,
      what: 'opposition',
      utcMs,
      elongationDeg: null,
      visibility: null,
      magnitude: apparentMagnitude(planet, utcMs),
    });
  return found;
};

/** Mars comes round in 780 days, Jupiter in 399, the others sooner: from so long before there is one at least. */
const SYNODIC_DAYS = { Mars: 800, Jupiter: 410, Saturn: 390, Uranus: 380, Neptune: 380 } as const;

/** The last opposition before an instant and the first after it; null for a planet inside the Earth's way. */
export const oppositionsAround = (
  planet: string,
  utcMs: UtcMs,
): { readonly lastUtcMs: UtcMs; readonly nextUtcMs: UtcMs } | null => {
  const outer = OUTER.find((name) => name.toLowerCase() === planet.toLowerCase());
  if (outer === undefined) return null;
  const from = (startUtcMs: UtcMs): UtcMs =>
    SearchRelativeLongitude(Body[outer], 0, engineTime(startUtcMs)).date.getTime();
  let lastUtcMs = from(utcMs - SYNODIC_DAYS[outer] * MS_PER_DAY);
  let nextUtcMs = from(lastUtcMs + MS_PER_DAY);
  while (nextUtcMs <= utcMs) {
    lastUtcMs = nextUtcMs;
    nextUtcMs = from(lastUtcMs + MS_PER_DAY);
  }
  return { lastUtcMs, nextUtcMs };
};

const elongationsOf = (planet: (typeof INNER)[number], { startUtcMs, endUtcMs }: TimeSpan): PlanetEvent[] => {
  const found: PlanetEvent[] = [];
  let fromUtcMs = startUtcMs;
  while (found.length < 20) {
    const { time, elongation, visibility } = SearchMaxElongation(Body[planet], engineTime(fromUtcMs));
    const utcMs = time.date.getTime();
    if (utcMs >= endUtcMs) return found;
    found.push({
      planet,
      what: 'greatest-elongation',
      utcMs,
      elongationDeg: elongation,
      visibility: visibility === 'morning' ? 'morning' : 'evening',
      magnitude: apparentMagnitude(planet, utcMs),
    });
    fromUtcMs = utcMs + MS_PER_DAY;
  }
  return found;
};

/** All within the span, in order. A span of up to a year has each planet's next opposition at most once. */
export const planetEvents = (span: TimeSpan): readonly PlanetEvent[] =>
  [
    ...OUTER.flatMap((planet) => oppositionsOf(planet, span)),
    ...INNER.flatMap((planet) => elongationsOf(planet, span)),
  ].sort((a, b) => a.utcMs - b.utcMs);
