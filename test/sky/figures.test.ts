/** Figures of a direction that members ask for alone: constellation, parallactic angle, the lift of the air. */
import { describe, expect, it } from 'vitest';
import { constellationAt } from '../../bot/sky/constellation.js';
import { parallacticAngleDeg } from '../../bot/sky/parallactic-angle.js';
import { refractionAtApparentDeg } from '../../bot/sky/refraction.js';
import { unitFromEquatorial, type Vector3 } from '../../bot/sky/angles.js';
import { shippedCatalogue } from '../shipped.js';

describe('the constellation of a direction', () => {
  // OpenNGC names the constellation of each object (its column Const), reckoned by others from the same borders.
  it('is that of OpenNGC for nearly every object with a Messier or Caldwell number or a name', () => {
    const catalogue = shippedCatalogue();
    let compared = 0;
    const other: string[] = [];
    for (let i = 0; i < catalogue.sweep.length; i++) {
      const { body, constellation, name, kind } = catalogue.targetAt(i);
      if (body.kind !== 'fixed' || constellation === null || !/^(?:M|NGC) \d/u.test(name) || kind.endsWith('star'))
        continue;
      compared++;
      const found = constellationAt({ raHours: body.raHoursJ2000, decDeg: body.decDegJ2000 });
      if (found !== constellation) other.push(`${name}: ${found}, ${constellation}`);
    }
    console.log(`constellations: ${other.length} of ${compared} differ`, other.slice(0, 5));
    expect(compared).toBeGreaterThan(5000);
    expect(other.length / compared).toBeLessThan(0.005);
  });
});

const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const dot = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

describe('the parallactic angle', () => {
  // The same by vectors: in the plane across the line of sight, the angle from the pole's direction to the zenith's.
  it('is the angle between the ways to the pole and to the zenith, wherever the star stands', () => {
    const pole: Vector3 = [0, 0, 1];
    let compared = 0;
    for (const latitudeDeg of [52.71, 28.3, -33.9])
      for (let hour = -6; hour <= 6; hour += 0.5)
        for (const decDeg of [-40, -5.4, 24.1, 63]) {
          // Right ascension against a sidereal time of 0 h.
          const star = unitFromEquatorial({ raHours: -hour, decDeg });
          const zenith = unitFromEquatorial({ raHours: 0, decDeg: latitudeDeg });
          const north = cross(star, cross(pole, star));
          const east = cross(pole, star);
          const byVectors =
            (Math.atan2(
              dot(zenith, east) / Math.sqrt(dot(east, east)),
              dot(zenith, north) / Math.sqrt(dot(north, north)),
            ) *
              180) /
            Math.PI;
          const found = parallacticAngleDeg(hour, decDeg, { latitudeDeg, longitudeDeg: 0, elevationM: 0 });
          const apart = Math.abs(((found - byVectors + 540) % 360) - 180);
          expect(apart, `${latitudeDeg} ${hour} ${decDeg}: ${found}, ${byVectors}`).toBeLessThan(1e-6);
          compared++;
        }
    expect(compared).toBe(300);
  });

  it('is nought on the meridian south of the zenith, and negative before it', () => {
    const site = { latitudeDeg: 52.71, longitudeDeg: 0.12, elevationM: 0 };
    expect(parallacticAngleDeg(0, 24, site)).toBeCloseTo(0, 9);
    expect(parallacticAngleDeg(-3, 24, site)).toBeLessThan(0);
  });
});

describe('the lift of the air at a height that is seen', () => {
  // J. Meeus, Astronomical Algorithms (2nd ed.), example 16.a: at an apparent altitude of 30′, 28.754′. From memory.
  it('is that of Meeus, example 16.a', () => {
    expect(refractionAtApparentDeg(0.5) * 60).toBeCloseTo(28.754, 2);
    expect(refractionAtApparentDeg(90)).toBeLessThan(0.001);
  });
});
