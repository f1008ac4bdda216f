/** The Sun over the Moon against a worked example, and the features that it lights. */
import { describe, expect, it } from 'vitest';
import { moonFeatureIn } from '../../bot/catalogue/index.js';
import { MS_PER_DAY } from '../../bot/ground/durations.js';
import { sunHeightDeg, sunOverMoon, sunPasses } from '../../bot/sky/moon-terminator.js';
import { nextMoonPhase } from '../../bot/sky/moon-phase.js';

const TT_MINUS_UTC_1992_S = 59.184;

describe('the Sun over the Moon', () => {
  it('stands where J. Meeus works it out (Astronomical Algorithms, 2nd ed., example 53.a: 1992 April 12, 0h TD)', () => {
    const { overhead, colongitudeDeg } = sunOverMoon(Date.UTC(1992, 3, 12) - TT_MINUS_UTC_1992_S * 1000);
    expect(overhead.longitudeDeg).toBeCloseTo(67.89, 1);
    expect(overhead.latitudeDeg).toBeCloseTo(1.46, 1);
    expect(colongitudeDeg).toBeCloseTo(22.11, 1);
  });

  // PyEphem 4.2.1, Moon.colong, at these instants (its own series are good to some 0.4°).
  it.each([
    ['2026-11-27T18:00:00Z', 130.64],
    ['2026-12-17T05:43:00Z', 7.38],
    ['2026-12-24T01:28:00Z', 90.49],
    ['2027-01-15T20:00:00Z', 7.35],
  ])('has the colongitude that another library gives at %s', (utc, colongitudeDeg) => {
    expect(Math.abs(sunOverMoon(Date.parse(utc)).colongitudeDeg - colongitudeDeg)).toBeLessThan(0.45);
  });

  it('is about 0° at first quarter and 90° at full Moon, give or take the libration in longitude (by definition)', () => {
    for (let quarter = 1, utcMs = Date.UTC(2026, 11, 1); quarter <= 2; quarter++) {
      const { colongitudeDeg } = sunOverMoon(nextMoonPhase(quarter * 90, utcMs));
      expect(Math.abs(((colongitudeDeg - (quarter - 1) * 90 + 540) % 360) - 180)).toBeLessThan(9);
    }
  });

  it('rises over a feature where it crosses its horizon, and once a lunation', () => {
    const copernicus = moonFeatureIn('when is sunrise on copernicus');
    if (copernicus === null) throw new Error('Copernicus is not in the table.');
    const from = Date.UTC(2026, 10, 27, 18);
    const rise = sunPasses(copernicus, { heightDeg: 0, isRising: true }, from);
    if (rise === null) throw new Error('The Sun does not rise there.');
    expect(sunHeightDeg(copernicus, sunOverMoon(rise))).toBeCloseTo(0, 3);
    // Near its own longitude, 20° west: the colongitude is that number when the Sun rises there (by definition, at low latitudes).
    expect(sunOverMoon(rise).colongitudeDeg).toBeCloseTo(20.1, 0);
    const next = sunPasses(copernicus, { heightDeg: 0, isRising: true }, rise + MS_PER_DAY) ?? 0;
    expect((next - rise) / MS_PER_DAY).toBeCloseTo(29.5, 0);
  });
});

describe('the names of what is looked at on the Moon', () => {
  it.each([
    ['is the straight wall up', 'Straight Wall'],
    ['rupes recta', 'Straight Wall'],
    ['schröter’s valley tonight', 'Vallis Schröteri'],
    ['alpine valley', 'Vallis Alpes'],
    ['lunar x in december', 'Lunar X'],
    ['copernicus', 'Copernicus'],
  ])('%s', (words, name) => expect(moonFeatureIn(words)?.name).toBe(name));

  it('are none in other words', () => {
    for (const words of ['pluto', 'is m 13 up', 'platoon', 'x marks it'])
      expect(moonFeatureIn(words), words).toBeNull();
  });
});
