import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  CENTRING_SIGMA_ARCMIN,
  chooseAlignmentStars,
  expectedErrorArcmin,
  type AlignmentCandidate,
} from '../../bot/pointing/stars/alignment-stars.js';
import { faintestVisibleMagnitude, unfitReason } from '../../bot/pointing/stars/star-visibility.js';
import { add, cross, normalized, scale, unitFromHorizontal, type Vector3 } from '../../bot/sky/angles.js';
import { tangents } from '../../bot/pointing/miss/observation-misfit.js';
import { seededRandom } from '../../scripts/astray/simulate-misses.js';

const at = (altitudeDeg: number, azimuthDeg: number): Vector3 => unitFromHorizontal({ altitudeDeg, azimuthDeg });
const star = (name: string, altitudeDeg: number, azimuthDeg: number, magnitude = 1): AlignmentCandidate => ({
  name,
  magnitude,
  direction: at(altitudeDeg, azimuthDeg),
  inMountFrame: { longitudeDeg: azimuthDeg - 180, latitudeDeg: altitudeDeg },
});

/** Draws centring errors, fits the small rotation by least squares (TRIAD-like: solved by iteration), and measures the error over the sky. */
const simulatedErrorArcmin = (directions: readonly Vector3[], draws: number): number => {
  const random = seededRandom(6);
  const gaussian = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  let sum = 0;
  let count = 0;
  for (let draw = 0; draw < draws; draw++) {
    const offsets = directions.map((u) => {
      const [a, b] = tangents(u);
      return add(scale(a, CENTRING_SIGMA_ARCMIN * gaussian()), scale(b, CENTRING_SIGMA_ARCMIN * gaussian()));
    });
    // Least squares for w in w × u = offset, by plain gradient descent, to share nothing with the closed form.
    let w: Vector3 = [0, 0, 0];
    for (let turn = 0; turn < 1500; turn++) {
      let step: Vector3 = [0, 0, 0];
      directions.forEach((u, i) => {
        step = add(step, cross(u, add(offsets[i]!, scale(cross(w, u), -1))));
      });
      w = add(w, scale(step, 0.3));
    }
    for (let k = 0; k < 20; k++) {
      const z = Math.sin((20 * Math.PI) / 180) + random() * (1 - Math.sin((20 * Math.PI) / 180));
      const phi = 2 * Math.PI * random();
      const e = cross(w, normalized([Math.sqrt(1 - z * z) * Math.cos(phi), Math.sqrt(1 - z * z) * Math.sin(phi), z]));
      sum += e[0] ** 2 + e[1] ** 2 + e[2] ** 2;
      count++;
    }
  }
  return Math.sqrt(sum / count);
};

describe('the expected pointing error after an alignment', () => {
  it('is what drawing centring errors and fitting the rotation gives', () => {
    for (const directions of [
      [at(30, 90), at(40, 180)],
      [at(50, 20), at(35, 140), at(45, 260)],
      [at(60, 100), at(55, 130)],
    ]) {
      const simulated = simulatedErrorArcmin(directions, 1200);
      expect(Math.abs(expectedErrorArcmin(directions) / simulated - 1), `${simulated}`).toBeLessThan(0.06);
    }
  });

  it('grows as two stars draw together, is least near a right angle, and has no bound for one direction', () => {
    const apart = (deg: number): number => expectedErrorArcmin([at(40, 100), at(40, 100 + deg)]);
    expect(apart(20)).toBeGreaterThan(apart(40));
    expect(apart(40)).toBeGreaterThan(apart(100));
    expect(expectedErrorArcmin([at(40, 100), at(40, 100)])).toBe(Infinity);
    expect(expectedErrorArcmin([at(40, 100)])).toBe(Infinity);
  });

  it('never grows by a further star', () => {
    const direction = fc
      .record({ a: fc.double({ min: 20, max: 75, noNaN: true }), z: fc.double({ min: 0, max: 360, noNaN: true }) })
      .map(({ a, z }) => at(a, z));
    fc.assert(
      fc.property(direction, direction, direction, (a, b, c) => {
        expect(expectedErrorArcmin([a, b, c])).toBeLessThanOrEqual(expectedErrorArcmin([a, b]) + 1e-9);
      }),
    );
  });
});

describe('the choice of alignment stars', () => {
  const stars = [star('A', 40, 90), star('B', 42, 95), star('C', 35, 200), star('D', 50, 300), star('E', 40, 94, 2.4)];
  it('takes stars well apart, the brighter of two neighbours, and leaves out what it is told to', () => {
    const chosen = chooseAlignmentStars('german', stars, 3)!;
    expect(chosen.stars.map(({ name }) => name).sort()).toEqual(expect.arrayContaining(['C', 'D']));
    expect(chosen.stars.map(({ name }) => name)).not.toContain('E');
    const without = chooseAlignmentStars(
      'german',
      stars.filter(({ name }) => name !== 'C'),
      2,
    )!;
    expect(without.stars.map(({ name }) => name)).toContain('D');
    expect(chooseAlignmentStars('german', [stars[0]!, stars[1]!], 2)).toBeNull();
    expect(chooseAlignmentStars('german', [stars[0]!], 2)).toBeNull();
  });

  it("goes through a German mount's western stars without crossing the meridian more than once", () => {
    const { stars: order } = chooseAlignmentStars(
      'german',
      [star('W1', 40, 250), star('E1', 45, 80), star('W2', 40, 310)],
      3,
    )!;
    const sides = order.map(({ inMountFrame }) => inMountFrame.longitudeDeg > 0);
    expect(sides.filter((side, i) => i > 0 && side !== sides[i - 1]).length).toBe(1);
  });
});

describe('stars fit to align on', () => {
  const fit = {
    magnitude: 1,
    altitudeDeg: 45,
    decDeg: 20,
    horizonDeg: 0,
    moonSeparationDeg: null,
    moonIlluminatedFraction: 0.9,
    sunAltitudeDeg: -20,
  };
  it('stand clear of horizon, trees, zenith, pole and Moon', () => {
    expect(unfitReason(fit)).toBeNull();
    expect(unfitReason({ ...fit, altitudeDeg: 19 })).toBe('low');
    expect(unfitReason({ ...fit, horizonDeg: 44 })).toBe('hidden');
    expect(unfitReason({ ...fit, altitudeDeg: 76 })).toBe('high');
    expect(unfitReason({ ...fit, decDeg: -71 })).toBe('pole');
    expect(unfitReason({ ...fit, moonSeparationDeg: 10 })).toBe('moon');
    expect(unfitReason({ ...fit, moonSeparationDeg: 10, moonIlluminatedFraction: 0.05 })).toBeNull();
  });
  it('show in the twilight there is: none by day, the brightest first', () => {
    expect(faintestVisibleMagnitude(-2)).toBeNull();
    expect(unfitReason({ ...fit, sunAltitudeDeg: -6.5, magnitude: 1.5 })).toBe('twilight');
    expect(unfitReason({ ...fit, sunAltitudeDeg: -6.5, magnitude: 0 })).toBeNull();
    const depths = [-3, -5, -6, -8, -9, -11, -13, -17, -30].map((deg) => faintestVisibleMagnitude(deg)!);
    expect(depths).toEqual([...depths].sort((a, b) => a - b));
  });
});
