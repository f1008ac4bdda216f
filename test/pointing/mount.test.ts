import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  HOME,
  axesFor,
  directionOf,
  oppositeSide,
  pierSide,
  tubeVector,
  type MountKind,
} from '../../bot/pointing/mount/mount.js';
import { mountSky } from '../../bot/pointing/mount/mount-sky.js';
import { angleBetween, unitVector } from '../../bot/sky/angles.js';

const mounts = fc.constantFrom<MountKind>('german', 'fork', 'altaz');
const direction = fc.record({
  longitudeDeg: fc.double({ min: -179.9, max: 179.9, noNaN: true }),
  latitudeDeg: fc.double({ min: -89, max: 89, noNaN: true }),
});
const vectorOf = ({ longitudeDeg, latitudeDeg }: { longitudeDeg: number; latitudeDeg: number }) =>
  unitVector(longitudeDeg, latitudeDeg);

describe('axes of a mount', () => {
  it('point the tube at the direction they were asked for, on either side of the pier', () => {
    fc.assert(
      fc.property(
        mounts,
        direction,
        fc.constantFrom('east' as const, 'west' as const, undefined),
        (mount, wanted, side) => {
          const axes = axesFor(mount, wanted, side);
          expect(angleBetween(tubeVector(mount, axes), vectorOf(wanted))).toBeLessThan(1e-6);
          expect(angleBetween(vectorOf(directionOf(mount, axes)), vectorOf(wanted))).toBeLessThan(1e-6);
        },
      ),
    );
  });

  it("keep a German mount's counterweight at or below level on the usual side", () => {
    fc.assert(
      fc.property(direction, (wanted) => {
        expect(Math.abs(axesFor('german', wanted).primaryDeg)).toBeLessThanOrEqual(90 + 1e-9);
      }),
    );
  });

  it('put the tube east of the pier for targets in the west, and west of it for targets in the east (common practice, no source)', () => {
    expect(pierSide(3)).toBe('east');
    expect(pierSide(-3)).toBe('west');
    expect(axesFor('german', { longitudeDeg: 45, latitudeDeg: 20 }).secondaryDeg).toBeLessThan(0);
    expect(axesFor('german', { longitudeDeg: -45, latitudeDeg: 20 }).secondaryDeg).toBeGreaterThan(0);
    expect(oppositeSide('east')).toBe('west');
  });

  it('flip at the meridian by half a turn of the polar axis, the tube swinging over the pole', () => {
    const before = axesFor('german', { longitudeDeg: -0.001, latitudeDeg: 30 });
    const after = axesFor('german', { longitudeDeg: 0.001, latitudeDeg: 30 });
    expect(before.primaryDeg - after.primaryDeg).toBeCloseTo(180, 2);
    expect(before.secondaryDeg - after.secondaryDeg).toBeCloseTo(120, 6);
  });

  it('stand at home with the tube at the pole, an alt-azimuth mount level and north', () => {
    expect(tubeVector('german', HOME)).toEqual([0, -0, 1]);
    expect(tubeVector('fork', HOME)).toEqual([0, 0, 1]);
    expect(directionOf('altaz', HOME)).toEqual({ longitudeDeg: 0, latitudeDeg: 0 });
  });
});

describe("the sky in a mount's frame", () => {
  it('is for a southern site the mirror image of a northern one', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<MountKind>('german', 'fork'),
        fc.double({ min: 1, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 23.99, noNaN: true }),
        fc.double({ min: -80, max: 80, noNaN: true }),
        (mount, latitudeDeg, raHours, decDeg) => {
          const at = (sign: 1 | -1) =>
            mountSky(
              mount,
              { latitudeDeg: sign * latitudeDeg, longitudeDeg: 12, elevationM: 0 },
              Date.UTC(2026, 10, 25, 20),
            );
          const north = at(1).directionAt({ raHours, decDeg }, 30);
          const south = at(-1).directionAt({ raHours, decDeg: -decDeg }, 30);
          expect(south.longitudeDeg).toBeCloseTo(north.longitudeDeg, 9);
          expect(south.latitudeDeg).toBeCloseTo(north.latitudeDeg, 9);
        },
      ),
    );
  });
});
