import { isProblem } from '../../bot/ground/problem.js';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  clearSpans,
  horizonAltitudeDegAt,
  parseHorizonProfile,
  type ProfilePoint,
} from '../../bot/pointing/horizon/horizon-profile.js';

const points = (text: string): readonly ProfilePoint[] => {
  const read = parseHorizonProfile(text);
  if (isProblem(read)) throw new Error(read.problem);
  return read.points;
};

describe('reading a horizon profile', () => {
  it('takes pairs, pasted lines with comments, compass points and degree marks alike', () => {
    const expected = [
      { azimuthDeg: 90, altitudeDeg: 20 },
      { azimuthDeg: 112.5, altitudeDeg: 15.5 },
      { azimuthDeg: 200, altitudeDeg: -1 },
    ];
    expect(points('90:20, 112.5:15.5, 200:-1')).toEqual(expected);
    expect(points('# from the pier\n200 −1   # the marsh\n\n90 20 # barn\r\n112.5\t15.5')).toEqual(expected);
    expect(points('E:20°; ese:15.5 deg; 200 / -1')).toEqual(expected);
    expect(points('90 20 112.5 15.5 200 -1')).toEqual(expected);
  });

  it('reads 360 as north, given once or twice alike', () => {
    expect(points('360:12')).toEqual([{ azimuthDeg: 0, altitudeDeg: 12 }]);
    expect(points('0:12, 180:3, 360:12')).toHaveLength(2);
  });

  it.each([
    ['', 'empty'],
    ['# nothing but a comment', 'empty'],
    ['90:20, 120', 'odd-count'],
    ['90:trees', 'unreadable'],
    ['20:E', 'unreadable'],
    ['90:20!', 'unreadable'],
    ['361:4', 'azimuth-range'],
    ['-5:4', 'azimuth-range'],
    ['90:91', 'altitude-range'],
    ['90:-11', 'altitude-range'],
    ['90:20, 90:30', 'azimuth-twice'],
    ['0:5, 360:9', 'azimuth-twice'],
    [Array.from({ length: 361 }, (_, i) => `${i * 0.99}:5`).join(','), 'too-many'],
  ])('refuses %j as %s', (text, problem) => {
    expect(parseHorizonProfile(text)).toMatchObject({ problem });
  });

  it('never throws, whatever is pasted', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => {
        const read = parseHorizonProfile(text);
        if (!isProblem(read))
          for (const { azimuthDeg, altitudeDeg } of read.points)
            expect(azimuthDeg < 360 && altitudeDeg <= 90).toBe(true);
      }),
    );
  });
});

describe('the altitude of the horizon at an azimuth', () => {
  it('runs in straight lines between points, across north as well', () => {
    const profile = points('90:20, 120:14, 350:4, 10:8');
    expect(horizonAltitudeDegAt(profile, 90)).toBe(20);
    expect(horizonAltitudeDegAt(profile, 105)).toBeCloseTo(17, 9);
    expect(horizonAltitudeDegAt(profile, 355)).toBeCloseTo(5, 9);
    expect(horizonAltitudeDegAt(profile, 0)).toBeCloseTo(6, 9);
    expect(horizonAltitudeDegAt(profile, 360)).toBeCloseTo(6, 9);
    expect(horizonAltitudeDegAt(profile, 5)).toBeCloseTo(7, 9);
    expect(horizonAltitudeDegAt(profile, -10)).toBeCloseTo(4, 9);
    expect(horizonAltitudeDegAt(profile, 410)).toBeCloseTo(8 + (12 * 40) / 80, 9);
  });

  it('is level without a profile, and one height all round with one point', () => {
    expect(horizonAltitudeDegAt(null, 77)).toBe(0);
    expect(horizonAltitudeDegAt([], 77)).toBe(0);
    for (const azimuth of [0, 89, 90, 271, 359.9]) expect(horizonAltitudeDegAt(points('90:12'), azimuth)).toBe(12);
  });

  it('never leaves the span of the heights beside it', () => {
    const point = fc.record({
      azimuthDeg: fc.double({ min: 0, max: 359.999, noNaN: true }),
      altitudeDeg: fc.double({ min: -10, max: 90, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.uniqueArray(point, { minLength: 1, maxLength: 12, selector: (p) => p.azimuthDeg }),
        fc.double({ min: -720, max: 720, noNaN: true }),
        (list, azimuth) => {
          const sorted = [...list].sort((a, b) => a.azimuthDeg - b.azimuthDeg);
          const heights = sorted.map(({ altitudeDeg }) => altitudeDeg);
          const height = horizonAltitudeDegAt(sorted, azimuth);
          expect(height).toBeGreaterThanOrEqual(Math.min(...heights) - 1e-9);
          expect(height).toBeLessThanOrEqual(Math.max(...heights) + 1e-9);
        },
      ),
    );
  });
});

describe('when a body clears the profile', () => {
  // A body that climbs 1° a minute from the level while it moves from azimuth 80° to 110°.
  const direction = (utcMs: number) => ({ altitudeDeg: utcMs / 60_000, azimuthDeg: 80 + utcMs / 60_000 });
  const curve = Array.from({ length: 31 }, (_, i) => ({ utcMs: i * 60_000, ...direction(i * 60_000) }));

  it('is the instant it stands higher than what is in front of it', () => {
    // 20° high all along: cleared at minute 20. With a fall from 20° at 90° to 0° at 110° along its path: 20 − (t − 10) = t at minute 15.
    const firstClear = (profile: string): number | undefined => clearSpans(curve, points(profile))[0]?.startUtcMs;
    expect(firstClear('0:20')).toBeCloseTo(20 * 60_000, 3);
    expect(firstClear('70:20, 90:20, 110:0, 180:0')).toBeCloseTo(15 * 60_000, 3);
  });

  it('is the start when nothing hides it, never when it stays hidden', () => {
    expect(clearSpans(curve, points('0:-5'))).toEqual([{ startUtcMs: 0, endUtcMs: 1_800_000 }]);
    expect(clearSpans(curve, points('0:60'))).toEqual([]);
    expect(clearSpans([], null)).toEqual([]);
  });

  it('gives each stretch when a pole or tree hides it in between', () => {
    const spans = clearSpans(curve, points('0:5, 94:5, 95:40, 100:40, 101:5'));
    expect(spans).toHaveLength(2);
    expect(spans[0]?.startUtcMs).toBeCloseTo(5 * 60_000, 3);
    expect(spans[1]?.endUtcMs).toBe(30 * 60_000);
  });
});
