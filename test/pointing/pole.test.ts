import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { magneticNorth } from '../../bot/pointing/pole/magnetic-north.js';
import { allowedPolarErrorArcmin, greatestDeclinationDriftArcsec } from '../../bot/pointing/pole/polar-drift.js';
import { clockFaceText, poleClockHours } from '../../bot/pointing/pole/pole-clock.js';
import { wrapHours12 } from '../../bot/sky/angles.js';
import { placeOf } from '../../bot/sky/place.js';

const read = <T>(name: string): T =>
  JSON.parse(readFileSync(new URL(`../reference/${name}`, import.meta.url), 'utf8')) as T;
const yearStart = (year: number): number => Date.UTC(year, 0, 1);
const utcOf = (decimalYear: number): number => {
  const year = Math.floor(decimalYear);
  return yearStart(year) + (decimalYear - year) * (yearStart(year + 1) - yearStart(year));
};

describe('magnetic declination', () => {
  // NOAA/NCEI and BGS, WMM2025 test values (WMM2025_TEST_VALUES.txt): decimal year, height km, latitude, longitude, D, H from X and Y.
  const published: readonly (readonly [number, number, number, number, number])[] = [
    [2025, 0, 80, 0, 1.28],
    [2025, 0, 0, 120, -0.16],
    [2025, 0, -80, 240, 68.78],
    [2025, 100, 80, 0, 0.85],
    [2025, 100, 0, 120, -0.15],
    [2025, 100, -80, 240, 68.21],
    [2027.5, 0, 80, 0, 2.59],
    [2027.5, 0, 0, 120, -0.24],
    [2027.5, 0, -80, 240, 68.49],
    [2027.5, 100, 80, 0, 2.16],
    [2027.5, 100, 0, 120, -0.23],
    [2027.5, 100, -80, 240, 67.93],
  ];
  it.each(published)(
    'is the published test value for year %f, %f km, latitude %f, longitude %f: %f°',
    (year, km, latitudeDeg, longitudeDeg, declinationDeg) => {
      expect(
        magneticNorth({ latitudeDeg, longitudeDeg, elevationM: km * 1000 }, utcOf(year))?.declinationDeg,
      ).toBeCloseTo(declinationDeg, 2);
    },
  );

  it('agrees with another program of the same model (pygeomag 1.1.0) at 60 places and dates', () => {
    const { cases } = read<{
      cases: {
        year: number;
        latitudeDeg: number;
        longitudeDeg: number;
        altitudeKm: number;
        declinationDeg: number;
        horizontalNt: number;
      }[];
    }>('pointing-magnetic.json');
    let worst = 0;
    for (const at of cases) {
      const found = magneticNorth(
        { latitudeDeg: at.latitudeDeg, longitudeDeg: at.longitudeDeg, elevationM: at.altitudeKm * 1000 },
        utcOf(at.year),
      );
      worst = Math.max(worst, Math.abs(found!.declinationDeg - at.declinationDeg));
      expect(found!.horizontalNt).toBeCloseTo(at.horizontalNt, -1);
    }
    expect(cases.length).toBe(60);
    console.info(`magnetic declination: worst difference ${worst.toFixed(4)}°`);
    expect(worst).toBeLessThan(0.012);
  });

  it('is not given outside the years the model is published for', () => {
    const site = { latitudeDeg: 52.71, longitudeDeg: 0.12, elevationM: 0 };
    expect(magneticNorth(site, Date.UTC(2024, 11, 31))).toBeNull();
    expect(magneticNorth(site, Date.UTC(2030, 0, 1))).toBeNull();
    expect(magneticNorth(site, Date.UTC(2029, 11, 31))).not.toBeNull();
  });
});

describe('the pole star', () => {
  // The catalogue's values for HIP 11767 and HIP 104382 (Hipparcos, the New Reduction).
  const stars = {
    Polaris: {
      kind: 'fixed',
      raHoursJ2000: 37.954561 / 15,
      decDegJ2000: 89.264109,
      pmRaCosDecMasPerYear: 44.48,
      pmDecMasPerYear: -11.86,
      parallaxMas: 7.54,
    },
    'sigma Octantis': {
      kind: 'fixed',
      raHoursJ2000: 317.195164 / 15,
      decDegJ2000: -88.956499,
      pmRaCosDecMasPerYear: 25.75,
      pmDecMasPerYear: 4.98,
      parallaxMas: 11.61,
    },
  } as const;

  it('stands where pyerfa puts it, north and south, from 2020 to 2035', () => {
    const { places } = read<{
      places: {
        star: keyof typeof stars;
        utc: string;
        longitudeDeg: number;
        separationArcmin: number;
        hourAngleHours: number;
      }[];
    }>('pointing-pole-stars.json');
    expect(places.length).toBe(12);
    let worstArcsec = 0;
    for (const at of places) {
      const place = placeOf(
        stars[at.star],
        { latitudeDeg: at.star === 'Polaris' ? 52.71 : -45.87, longitudeDeg: at.longitudeDeg, elevationM: 0 },
        Date.parse(at.utc),
      );
      const separationArcmin = (90 - Math.abs(place.ofDate.decDeg)) * 60;
      worstArcsec = Math.max(worstArcsec, Math.abs(separationArcmin - at.separationArcmin) * 60);
      // An hour of hour angle is 0.17° on the sky here; 0.002 h is under half a minute of the clock face.
      expect(Math.abs(wrapHours12(place.hourAngleHours - at.hourAngleHours))).toBeLessThan(0.002);
    }
    console.info(`pole stars: worst difference in distance from the pole ${worstArcsec.toFixed(2)}″`);
    // Diurnal aberration, which the reference leaves out, is 0.3″.
    expect(worstArcsec).toBeLessThan(0.8);
  });

  it('turns anticlockwise round the north pole and clockwise round the south pole (W. M. Smart, ch. II: the diurnal motion)', () => {
    // Above the pole: at the top. Six hours later it is due west of the pole: left of it facing north, right of it facing south.
    expect(clockFaceText(poleClockHours(0, false, false))).toBe('12:00');
    expect(clockFaceText(poleClockHours(6, false, false))).toBe('9:00');
    expect(clockFaceText(poleClockHours(6, true, false))).toBe('3:00');
    expect(clockFaceText(poleClockHours(-2, false, false))).toBe('1:00');
  });

  it('is seen turned by half a circle in an inverting telescope', () => {
    expect(clockFaceText(poleClockHours(0, false, true))).toBe('6:00');
    expect(clockFaceText(poleClockHours(6, false, true))).toBe('3:00');
    expect(clockFaceText(poleClockHours(-11.999, true, true))).toBe('12:00');
  });
});

describe('how good polar alignment must be', () => {
  it('gives the published example: 2′ off for 30 minutes drift 15.7″ (M. A. Covington, Astrophotography for the Amateur, as quoted on the APML list, January 2002)', () => {
    // The example uses the solar day; the sidereal one adds 0.3 %.
    expect(Math.abs(greatestDeclinationDriftArcsec(2, 30) - 15.7)).toBeLessThan(0.1);
    expect(greatestDeclinationDriftArcsec(60, 1)).toBeCloseTo(15.7, 0);
  });

  it('turns back into the error allowed for a drift: 3.82′ per arcsecond a minute with the solar day (F. Barrett, Measuring Polar Axis Alignment Error; value from memory)', () => {
    expect(allowedPolarErrorArcmin(1, 1)).toBeCloseTo(3.81, 2);
    expect(greatestDeclinationDriftArcsec(allowedPolarErrorArcmin(2, 5), 5)).toBeCloseTo(2, 9);
  });
});
