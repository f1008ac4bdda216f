/**
 * Worked examples of J. Meeus, Astronomical Algorithms (2nd ed., Willmann-Bell 1998). The printed results are values from
 * memory; each was checked against pyerfa 2.0.1.5 or skyfield 1.55 on JPL DE421 before it was written here, and agreed to the
 * precision asserted.
 */
import { describe, expect, it } from 'vitest';
import { separationDeg } from '../../bot/sky/angles.js';
import { moonAt } from '../../bot/sky/moon.js';
import { equatorialOfDateFromJ2000, horizontalFromOfDate, placeOf } from '../../bot/sky/place.js';
import { refractionDeg } from '../../bot/sky/refraction.js';
import { altitudeCrossings, riseTransitSet } from '../../bot/sky/rise-set.js';
import { siderealTimes } from '../../bot/sky/sidereal-time.js';
import type { Equatorial, Observer, SkyBody } from '../../bot/sky/types.js';

const hms = (hours: number, minutes: number, seconds: number): number => hours + minutes / 60 + seconds / 3600;
const dms = hms;

/** UTC milliseconds of a Julian Ephemeris Day, given TT − UTC then. */
const ofJde = (jde: number, ttMinusUtcSeconds: number): number =>
  (jde - 2_440_587.5) * 86_400_000 - ttMinusUtcSeconds * 1000;

/** The Earth's centre, for geocentric examples: on the equator, one equatorial radius down. */
const EARTH_CENTRE: Observer = { latitudeDeg: 0, longitudeDeg: 0, elevationM: -6_378_137 };
const NAVAL_OBSERVATORY: Observer = { latitudeDeg: dms(38, 55, 17), longitudeDeg: -dms(77, 3, 56), elevationM: 0 };
const VENUS: SkyBody = { kind: 'solarSystem', body: 'Venus' };

const arcsecApart = (a: Equatorial, b: Equatorial): number => separationDeg(a, b) * 3600;

describe('worked examples of Meeus, Astronomical Algorithms', () => {
  it('12.a: sidereal time at Greenwich on 1987 April 10 at 0 h', () => {
    const times = siderealTimes(Date.UTC(1987, 3, 10), 0);
    // Printed by the IAU 1982 formula; IAU 2006 gives 0.003 s more.
    expect(Math.abs(times.gmstHours - hms(13, 10, 46.3668)) * 3600).toBeLessThan(0.01);
    expect(Math.abs(times.gastHours - hms(13, 10, 46.1351)) * 3600).toBeLessThan(0.01);
  });

  it('12.b: mean sidereal time at Greenwich on 1987 April 10 at 19:21', () => {
    expect(
      Math.abs(siderealTimes(Date.UTC(1987, 3, 10, 19, 21), 0).gmstHours - hms(8, 34, 57.0896)) * 3600,
    ).toBeLessThan(0.01);
  });

  it('13.b: altitude and azimuth of Venus from Washington', () => {
    const utcMs = Date.UTC(1987, 3, 10, 19, 21);
    const venus: Equatorial = { raHours: hms(23, 9, 16.641), decDeg: -dms(6, 43, 11.61) };
    const { altitudeDeg, azimuthDeg } = horizontalFromOfDate(venus, NAVAL_OBSERVATORY, utcMs);
    expect(altitudeDeg).toBeCloseTo(15.1249, 3);
    expect(azimuthDeg).toBeCloseTo(68.0337 + 180, 3);
    expect(arcsecApart(placeOf(VENUS, EARTH_CENTRE, utcMs).ofDate, venus)).toBeLessThan(36);
  });

  it('15.a: rising, transit and setting of Venus at Boston on 1988 March 20', () => {
    const boston: Observer = { latitudeDeg: 42.3333, longitudeDeg: -71.0833, elevationM: 0 };
    const midnight = Date.UTC(1988, 2, 20);
    const { riseUtcMs, transitUtcMs, setUtcMs } = riseTransitSet(VENUS, boston, midnight, midnight + 86_400_000);
    // The book gives fractions of a day to five places, some 0.9 s, by interpolation in three days' places.
    expect(Math.abs((riseUtcMs! - midnight) / 86_400_000 - 0.51766)).toBeLessThan(0.0001);
    expect(Math.abs((transitUtcMs! - midnight) / 86_400_000 - 0.8198)).toBeLessThan(0.0001);
    expect(Math.abs((setUtcMs! - midnight) / 86_400_000 - 0.1213)).toBeLessThan(0.0001);
    expect(
      altitudeCrossings(VENUS, boston, -0.5667, midnight, midnight + 86_400_000).map(({ rising }) => rising),
    ).toEqual([false, true]);
  });

  it("16.a: refraction of the Sun's upper edge near the horizon", () => {
    expect(refractionDeg(33.246 / 60) * 60).toBeCloseTo(24.618, 2);
  });

  it('17.a: separation of Arcturus and Spica', () => {
    const arcturus: Equatorial = { raHours: 213.9154 / 15, decDeg: 19.1825 };
    const spica: Equatorial = { raHours: 201.2983 / 15, decDeg: -11.1614 };
    expect(separationDeg(arcturus, spica)).toBeCloseTo(32.793, 4);
  });

  describe('21.b and 23.a: Theta Persei on 2028 November 13.19 TD', () => {
    const utcMs = ofJde(2_462_088.69, 69.184);
    const catalogued: Equatorial = { raHours: hms(2, 44, 11.986), decDeg: dms(49, 13, 42.48) };
    const theta: SkyBody = {
      kind: 'fixed',
      raHoursJ2000: catalogued.raHours,
      decDegJ2000: catalogued.decDeg,
      pmRaCosDecMasPerYear: 0.03425 * 15_000 * Math.cos((catalogued.decDeg * Math.PI) / 180),
      pmDecMasPerYear: -89.5,
    };

    it('precession (21.b), with the nutation of 23.a put to the printed mean place', () => {
      const moved: Equatorial = { raHours: 41.054063 / 15, decDeg: 49.22775 };
      const trueOfDate: Equatorial = { raHours: (41.547214 + 15.843 / 3600) / 15, decDeg: 49.348483 + 6.218 / 3600 };
      expect(arcsecApart(equatorialOfDateFromJ2000(moved, utcMs), trueOfDate)).toBeLessThan(0.2);
    });

    it('apparent place (23.a): proper motion, precession, nutation and aberration', () => {
      const apparent: Equatorial = { raHours: hms(2, 46, 14.39), decDeg: dms(49, 21, 7.45) };
      expect(arcsecApart(placeOf(theta, EARTH_CENTRE, utcMs).ofDate, apparent)).toBeLessThan(0.2);
    });
  });

  it('25.a and 25.b: the Sun on 1992 October 13 at 0 h TD', () => {
    const sun: SkyBody = { kind: 'solarSystem', body: 'Sun' };
    const { ofDate } = placeOf(sun, EARTH_CENTRE, ofJde(2_448_908.5, 59.184));
    // 25.a is the book's low-accuracy method, good to 0.01°; 25.b its high-accuracy one.
    expect(separationDeg(ofDate, { raHours: 198.38083 / 15, decDeg: -7.78507 })).toBeLessThan(0.01);
    expect(arcsecApart(ofDate, { raHours: hms(13, 13, 30.763), decDeg: -dms(7, 47, 1.74) })).toBeLessThan(4);
  });

  it('47.a: the Moon on 1992 April 12 at 0 h TD', () => {
    const { place } = moonAt(EARTH_CENTRE, ofJde(2_448_724.5, 58.184));
    expect(separationDeg(place.ofDate, { raHours: 134.68847 / 15, decDeg: 13.768368 })).toBeLessThan(0.002);
  });

  it("48.a: the Moon's lit fraction on 1992 April 12 at 0 h TD", () => {
    const { illuminatedFraction, phaseAngleDeg, waxing } = moonAt(EARTH_CENTRE, ofJde(2_448_724.5, 58.184));
    expect(illuminatedFraction).toBeCloseTo(0.6786, 3);
    expect(phaseAngleDeg).toBeCloseTo(69.0756, 1);
    expect(waxing).toBe(true);
  });
});
