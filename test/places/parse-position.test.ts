import { isProblem } from '../../bot/ground/problem.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parsePosition, positionName, siteProblemMessage } from '../../bot/places/index.js';

const read = (text: string): readonly [number, number, number | null] => {
  const result = parsePosition(text);
  if (result === null || isProblem(result))
    throw new Error(`"${text}" gave ${result === null ? 'null' : result.fault}`);
  return [result.position.latitudeDeg, result.position.longitudeDeg, result.position.elevationM];
};

describe('positions as members write them', () => {
  it.each([
    ['51.05,-114.07', 51.05, -114.07],
    ['51.05 -114.07', 51.05, -114.07],
    ['51.05, -114.07', 51.05, -114.07],
    ['51.05; -114.07', 51.05, -114.07],
    ['+51.05, −114.07', 51.05, -114.07],
    ['51.05N 114.07W', 51.05, -114.07],
    ['51.05 N, 114.07 W', 51.05, -114.07],
    ['N51.05 W114.07', 51.05, -114.07],
    ['114.07W 51.05N', 51.05, -114.07],
    ['51.05° N, 114.07° W', 51.05, -114.07],
    ['51.05 north 114.07 west', 51.05, -114.07],
    ['lat 51.05 lon -114.07', 51.05, -114.07],
    ['latitude: 51.05, longitude: -114.07', 51.05, -114.07],
    ['51°03′N 114°04.2′W', 51.05, -114.07],
    ['51°03\'00" N, 114°04\'12" W', 51.05, -114.07],
    ['51 03 00 N 114 04 12 W', 51.05, -114.07],
    ['51d 3m 0s N 114d 4m 12s W', 51.05, -114.07],
    ['51:03:00 -114:04:12', 51.05, -114.07],
    ['51d03m, -114d04.2m', 51.05, -114.07],
    ['33°52′S 151°12′E', -33.866667, 151.2],
    ['s33 52 e151 12', -33.866667, 151.2],
    ['33.8667s,151.2e', -33.8667, 151.2],
    ['-0°30′, 0°15′', -0.5, 0.25],
    ['0,0', 0, 0],
    ['90N 0E', 90, 0],
    ['51N, -114', 51, -114],
    ['-33.9 18.4', -33.9, 18.4],
  ])('reads %s', (text, latitude, longitude) => {
    const [lat, lon, elevation] = read(text);
    expect(lat).toBeCloseTo(latitude, 5);
    expect(lon).toBeCloseTo(longitude, 5);
    expect(elevation).toBeNull();
  });

  // ISO 6709:2008, Annex H: representation of a point by a string. The standard's own form is a sign, degrees in two (latitude) or three
  // (longitude) digits, further pairs for minutes and seconds, an optional height, CRS and a solidus. Places: values from memory.
  it.each([
    ['+27.5916+086.5640+8850CRSWGS_84/', 27.5916, 86.564, 8850],
    ['+35.3606+138.7274+3776CRSWGS_84/', 35.3606, 138.7274, 3776],
    ['+48.8577+002.295/', 48.8577, 2.295, null],
    ['+40.6894-074.0447/', 40.6894, -74.0447, null],
    ['-90+000+2800CRSWGS_84/', -90, 0, 2800],
    ['+90+000/', 90, 0, null],
    ['+1234.56-09854.1/', 12.576, -98.901667, null],
    ['+123456.7-0985432.1/', 12.582417, -98.908917, null],
    ['+40-075/', 40, -75, null],
    ['+4012-07500/', 40.2, -75, null],
    ['+401213-0750015/', 40.203611, -75.004167, null],
    ['+40.20361-75.00417/', null, null, null],
  ])('reads the ISO 6709 string %s', (text, latitude, longitude, elevation) => {
    if (latitude === null) {
      // A longitude needs three digits of degrees; with two it is read as a decimal pair all the same.
      expect(read('+40.20361-75.00417')).toEqual([40.20361, -75.00417, null]);
      return;
    }
    const [lat, lon, height] = read(text);
    expect(lat).toBeCloseTo(latitude, 5);
    expect(lon).toBeCloseTo(longitude ?? NaN, 5);
    expect(height).toBe(elevation);
  });

  it('reads geo URIs (RFC 5870, section 6.1)', () => {
    expect(read('geo:48.2010,16.3695,183')).toEqual([48.201, 16.3695, 183]);
    expect(read('geo:66,30;u=6.500;FOo=this%2dthat')).toEqual([66, 30, null]);
    expect(read('geo:90,-22.43;crs=WGS84')).toEqual([90, -22.43, null]);
  });

  it.each([
    ['-114.07,51.05', 'maybe-swapped', /−114.07° is beyond ±90°. Did you swap/],
    ['95,10', 'maybe-swapped', /swap/],
    ['95,170', 'latitude-range', /Latitude 95° is beyond ±90°/],
    ['51,190', 'longitude-range', /write −170 for 190° east/],
    ['51,-181', 'longitude-range', /beyond ±180°/],
    ['51°60′N 1°E', 'sixtieths-range', /60 is too large/],
    ['+5160.0+00100/', 'sixtieths-range', /60 is too large/],
    ['51N 52N', 'same-axis', /one latitude \(N or S\) and one longitude/],
    ['51E 52W', 'same-axis', /one longitude/],
    ['51.05', 'unreadable', /latitude, then longitude/],
    ['1,2,3', 'unreadable', /latitude, then longitude/],
    ['-51S 114E', 'unreadable', /latitude, then longitude/],
    ['51.5 30 N 1 E', 'unreadable', /latitude, then longitude/],
    ['1 2 3 4 5 6 7 8', 'unreadable', /latitude, then longitude/],
    ['geo:91,10', 'maybe-swapped', /swap/],
  ])('refuses %s', (text, fault, message) => {
    const result = parsePosition(text);
    if (result === null || !isProblem(result)) throw new Error(`"${text}" was not refused`);
    expect(result.fault).toBe(fault);
    expect(siteProblemMessage(result)).toMatch(message);
    expect(siteProblemMessage(result).length).toBeLessThanOrEqual(400);
  });

  it.each(['Calgary', 'Essen', 'Wes', '', '   ', 'St. Johns', '東京', 'x'.repeat(10_000), '__proto__', '\u202e'])(
    'leaves what is no position to be a name (%#)',
    (text) => {
      expect(parsePosition(text)).toBeNull();
    },
  );

  it('come back from how they are shown, to four decimals', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -90, max: 90, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (latitudeDeg, longitudeDeg) => {
          const [lat, lon] = read(positionName({ latitudeDeg, longitudeDeg, elevationM: null }));
          expect(Math.abs(lat - latitudeDeg)).toBeLessThan(0.000051);
          expect(Math.abs(lon - longitudeDeg)).toBeLessThan(0.000051);
        },
      ),
    );
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...'0123456789.,+-NSEWnsew°′″ :dm/'), maxLength: 40 }), (text) => {
        const result = parsePosition(text);
        if (result !== null && !isProblem(result)) {
          expect(Math.abs(result.position.latitudeDeg)).toBeLessThanOrEqual(90);
          expect(Math.abs(result.position.longitudeDeg)).toBeLessThanOrEqual(180);
        } else if (result) expect(siteProblemMessage(result).length).toBeLessThanOrEqual(400);
      }),
      { numRuns: 2000 },
    );
  });
});
