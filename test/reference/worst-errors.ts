/** Compares the sky core with every reference case and keeps the worst error of each quantity: the README's table and the test read it. */
import {
  horizontalSeparationDeg,
  positionAngleDeg,
  separationDeg,
  wrapDeg180,
  wrapHours12,
} from '../../bot/sky/angles.js';
import { apparentMagnitude } from '../../bot/sky/brightness.js';
import { horizonFrame } from '../../bot/sky/horizon-frame.js';
import { moonAt } from '../../bot/sky/moon.js';
import { nightFrame } from '../../bot/sky/night-frame.js';
import { equatorialOfDateFromJ2000, placeOf } from '../../bot/sky/place.js';
import { refractionDeg } from '../../bot/sky/refraction.js';
import { riseTransitSet } from '../../bot/sky/rise-set.js';
import { siderealTimes } from '../../bot/sky/sidereal-time.js';
import { twilights } from '../../bot/sky/twilight.js';
import type { Equatorial } from '../../bot/sky/types.js';
import { readEvents, readPlaces } from './reference-cases.js';
import type { EventCase, HorizontalCase, TwilightCase } from './reference-cases.js';

export interface WorstError {
  readonly quantity: string;
  readonly cases: number;
  readonly worst: number;
  readonly rms: number;
  readonly limit: number;
  readonly unit: '°' | 's' | '″' | '%' | 'mag';
  readonly reference: string;
}

/**
 * A path is called grazing where the body crosses the horizon more slowly than this: there a second of time is no longer what
 * decides. Planets, whose shortened series in the engine are out by up to some 21″, need a steeper path for 5 s to hold.
 */
const GRAZING_DEG_PER_HOUR = { star: 1, sunOrMoon: 1, planet: 4.5 } as const;

const ASTROPY = 'astropy 8.0.2 (ERFA)';
const ERFA = 'pyerfa 2.0.1.5';
const SKYFIELD = 'skyfield 1.55, JPL DE421';

const row = (
  quantity: string,
  errors: readonly number[],
  limit: number,
  unit: WorstError['unit'],
  reference: string,
): WorstError => {
  // A missing answer would show as NaN; it must count as the worst there is, never drop out of the maximum.
  const sizes = errors.map((error) => (Number.isNaN(error) ? Infinity : Math.abs(error)));
  return {
    quantity,
    cases: sizes.length,
    worst: Math.max(...sizes),
    rms: Math.sqrt(sizes.reduce((sum, size) => sum + size * size, 0) / sizes.length),
    limit,
    unit,
    reference,
  };
};

/** Error along the sky, which unlike the azimuth's own stays meaningful at the zenith. */
const horizontalError = (expected: HorizontalCase): number =>
  horizontalSeparationDeg(expected, placeOf(expected.body, expected.observer, expected.utcMs));

const equatorialErrorArcsec = (expected: Equatorial, actual: Equatorial): number =>
  separationDeg(expected, actual) * 3600;

const placeRows = (): WorstError[] => {
  const places = readPlaces();
  const solarSystem = (names: readonly string[]) => places.solarSystem.filter(({ name }) => names.includes(name));
  const planets = ['Mercury', 'Venus', 'Mars', 'Jupiter', 'Saturn', 'Uranus', 'Neptune', 'Pluto'];
  return [
    row('stars: altitude and azimuth, 2020–2035', places.stars.map(horizontalError), 0.001, '°', ASTROPY),
    row(
      'stars: altitude, batch path',
      places.stars.map(({ body, observer, utcMs, altitudeDeg }) => {
        const frame = horizonFrame(observer, utcMs);
        return body.kind === 'fixed' ? frame.altitudeDegOf(frame.directionOf(body)) - altitudeDeg : NaN;
      }),
      0.001,
      '°',
      ASTROPY,
    ),
    row(
      'stars: altitude, night frame 12 h off its middle',
      places.stars.map(({ body, observer, utcMs, altitudeDeg }) => {
        const frame = nightFrame(observer, utcMs, utcMs + 86_400_000);
        return body.kind === 'fixed' ? frame.altitudeDegAt(frame.directionOfBody(body), utcMs) - altitudeDeg : NaN;
      }),
      0.001,
      '°',
      ASTROPY,
    ),
    row(
      'stars: place of date',
      places.stars.map(({ body, observer, utcMs, ofDate }) =>
        equatorialErrorArcsec(ofDate, placeOf(body, observer, utcMs).ofDate),
      ),
      3.6,
      '″',
      ERFA,
    ),
    row('stars: altitude and azimuth, 1973–2099', places.starsCentury.map(horizontalError), 0.001, '°', ASTROPY),
    row(
      'J2000 to date',
      places.rotations.map(({ utcMs, j2000, ofDate }) =>
        equatorialErrorArcsec(ofDate, equatorialOfDateFromJ2000(j2000, utcMs)),
      ),
      0.5,
      '″',
      ERFA,
    ),
    row('Sun: altitude and azimuth', solarSystem(['Sun']).map(horizontalError), 0.01, '°', SKYFIELD),
    row('Moon: altitude and azimuth', solarSystem(['Moon']).map(horizontalError), 0.01, '°', SKYFIELD),
    row('planets: altitude and azimuth', solarSystem(planets).map(horizontalError), 0.01, '°', SKYFIELD),
    row(
      'Sun, Moon, planets: place of date',
      places.solarSystem.map(({ body, observer, utcMs, ofDate }) =>
        equatorialErrorArcsec(ofDate, placeOf(body, observer, utcMs).ofDate),
      ),
      36,
      '″',
      SKYFIELD,
    ),
    row(
      'Sun, Moon, planets: J2000 place',
      places.solarSystem.map(({ body, observer, utcMs, j2000 }) =>
        equatorialErrorArcsec(j2000, placeOf(body, observer, utcMs).j2000),
      ),
      36,
      '″',
      SKYFIELD,
    ),
    row('Sun, Moon, planets, 1900–2052', places.solarSystemCentury.map(horizontalError), 0.01, '°', SKYFIELD),
    row('Sun, 2054–2099', places.sunTo2100.map(horizontalError), 0.01, '°', ASTROPY),
    row(
      'planets: magnitude, 15° or more from the Sun',
      places.magnitudes.map(({ name, utcMs, magnitude }) => apparentMagnitude(name, utcMs) - magnitude),
      0.25,
      'mag',
      'skyfield 1.55 (Mallama and Hilton 2018)',
    ),
    row(
      'Moon: lit fraction',
      places.moonPhase.map(
        ({ utcMs, illuminatedFraction }) =>
          100 *
          (moonAt({ latitudeDeg: 0, longitudeDeg: 0, elevationM: 0 }, utcMs).illuminatedFraction - illuminatedFraction),
      ),
      0.1,
      '%',
      SKYFIELD,
    ),
    row(
      'Moon: elongation in longitude',
      places.moonPhase.map(({ utcMs, elongationDeg }) =>
        wrapDeg180(moonAt({ latitudeDeg: 0, longitudeDeg: 0, elevationM: 0 }, utcMs).elongationDeg - elongationDeg),
      ),
      0.01,
      '°',
      SKYFIELD,
    ),
    row(
      'sidereal time, all four',
      places.sidereal.flatMap((expected) => {
        const actual = siderealTimes(expected.utcMs, expected.longitudeDeg);
        return (['gmstHours', 'gastHours', 'lmstHours', 'lastHours'] as const).map(
          (key) => wrapHours12(actual[key] - expected[key]) * 3600,
        );
      }),
      0.02,
      's',
      ERFA,
    ),
    row(
      'refraction from 15° up',
      places.refraction.map(
        ({ airlessAltitudeDeg, refractionDeg: expected }) => (refractionDeg(airlessAltitudeDeg) - expected) * 3600,
      ),
      10,
      '″',
      ERFA,
    ),
    row(
      'separation of two directions',
      places.angles.map(({ a, b, separationDeg: expected }) => (separationDeg(a, b) - expected) * 3600),
      0.000_01,
      '″',
      ERFA,
    ),
    row(
      'position angle, by its effect at the far end',
      places.angles.map(
        ({ a, b, separationDeg: apart, positionAngleDeg: expected }) =>
          wrapDeg180(positionAngleDeg(a, b) - expected) * 3600 * Math.sin((apart * Math.PI) / 180),
      ),
      0.000_01,
      '″',
      ERFA,
    ),
  ];
};

/** Seconds between two instants: 0 when both are "no event", infinite when one alone is. */
const secondsBetween = (actual: number | null, expected: number | null): number => {
  if (actual === null && expected === null) return 0;
  return actual === null || expected === null ? Infinity : (actual - expected) / 1000;
};

interface EventErrors {
  readonly steepSeconds: number[];
  readonly transitSeconds: number[];
  /** For slow crossings: how far from its horizon the body really was at our instant. */
  readonly slowHeights: number[];
}

const compareEvents = (cases: readonly EventCase[], grazingDegPerHour: number): EventErrors => {
  const errors: EventErrors = { steepSeconds: [], transitSeconds: [], slowHeights: [] };
  for (const expected of cases) {
    const actual = riseTransitSet(expected.body, expected.observer, expected.startUtcMs, expected.endUtcMs);
    errors.transitSeconds.push(secondsBetween(actual.transitUtcMs, expected.transitUtcMs));
    for (const [time, reference, rate] of [
      [actual.riseUtcMs, expected.riseUtcMs, expected.riseRateDegPerHour],
      [actual.setUtcMs, expected.setUtcMs, expected.setRateDegPerHour],
    ] as const) {
      const seconds = secondsBetween(time, reference);
      if (rate === null || Math.abs(rate) >= grazingDegPerHour) errors.steepSeconds.push(seconds);
      else errors.slowHeights.push((seconds / 3600) * rate);
    }
    if (actual.alwaysUp !== expected.alwaysUp || actual.neverUp !== expected.neverUp)
      errors.steepSeconds.push(Infinity);
  }
  return errors;
};

/** Seconds that dusk and dawn of each kind are off. */
const twilightErrors = (expected: TwilightCase): readonly number[] => {
  const actual = twilights(expected.observer, expected.startUtcMs, expected.endUtcMs);
  const sun = actual.sunAlwaysUp
    ? null
    : { duskUtcMs: actual.sunsetUtcMs, dawnUtcMs: actual.sunriseUtcMs, darkAllNight: actual.sunAlwaysDown };
  const pairs = [
    [sun, expected.sun],
    [actual.civil, expected.civil],
    [actual.nautical, expected.nautical],
    [actual.astronomical, expected.astronomical],
  ] as const;
  return pairs.flatMap(([ours, theirs]) => {
    // Presence must agree however slow the Sun is.
    const presence = ours?.darkAllNight === theirs?.darkAllNight ? [] : [Infinity];
    const rate = theirs?.rateDegPerHour ?? null;
    if (rate !== null && rate < GRAZING_DEG_PER_HOUR.sunOrMoon) return presence;
    return [
      ...presence,
      ...(['duskUtcMs', 'dawnUtcMs'] as const).map((key) => secondsBetween(ours?.[key] ?? null, theirs?.[key] ?? null)),
    ];
  });
};

const eventRows = (): WorstError[] => {
  const events = readEvents();
  const all = [...events.stars, ...events.solarSystem, ...events.grazing];
  const isSunOrMoon = ({ name }: EventCase): boolean => name === 'Sun' || name === 'Moon';
  const stars = compareEvents(
    all.filter(({ body }) => body.kind === 'fixed'),
    GRAZING_DEG_PER_HOUR.star,
  );
  const sunAndMoon = compareEvents(all.filter(isSunOrMoon), GRAZING_DEG_PER_HOUR.sunOrMoon);
  const planets = compareEvents(
    all.filter((event) => event.body.kind !== 'fixed' && !isSunOrMoon(event)),
    GRAZING_DEG_PER_HOUR.planet,
  );
  const twilightSeconds = events.twilights.flatMap(twilightErrors);
  return [
    row('stars: rising and setting', stars.steepSeconds, 5, 's', SKYFIELD),
    row('Sun and Moon: rising and setting', sunAndMoon.steepSeconds, 5, 's', SKYFIELD),
    row('planets: rising and setting', planets.steepSeconds, 5, 's', SKYFIELD),
    row(
      'transits',
      [...stars.transitSeconds, ...sunAndMoon.transitSeconds, ...planets.transitSeconds],
      5,
      's',
      SKYFIELD,
    ),
    row('sunset, sunrise and twilights, polar cases in', twilightSeconds, 5, 's', SKYFIELD),
    row('stars, grazing (under 1° an hour): height when said to rise or set', stars.slowHeights, 0.001, '°', SKYFIELD),
    row('Sun and Moon, grazing (under 1° an hour): the same', sunAndMoon.slowHeights, 0.01, '°', SKYFIELD),
    row('planets, grazing (under 4.5° an hour): the same', planets.slowHeights, 0.01, '°', SKYFIELD),
  ];
};

/** One row for each quantity compared. */
export const worstErrors = (): WorstError[] => [...placeRows(), ...eventRows()];
