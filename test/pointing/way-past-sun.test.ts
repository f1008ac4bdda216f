import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SEPARATION_TOLERANCE_DEG, leastByBounds } from '../../bot/pointing/way/least-separation.js';
import { HOME, axesFor, tubeVector, type AxisAngles, type MountKind } from '../../bot/pointing/mount/mount.js';
import { mountSky } from '../../bot/pointing/mount/mount-sky.js';
import { legMotion } from '../../bot/pointing/way/slew.js';
import { saferWay, straightWay, type WayRequest } from '../../bot/pointing/way/way-past-sun.js';
import { angleBetween } from '../../bot/sky/angles.js';
import { placeOf } from '../../bot/sky/index.js';

const COMMON = { latitudeDeg: 52.71, longitudeDeg: 0.12, elevationM: 5 };
const separationsAlong = (request: WayRequest, points: readonly AxisAngles[], stepS: number): number[] => {
  const sky = mountSky(request.mount, request.observer, request.utcMs);
  const found: number[] = [];
  let startS = 0;
  points.slice(1).forEach((to, i) => {
    const motion = legMotion(request.mount, { from: points[i]!, to });
    for (let s = 0; s < motion.durationS; s += stepS)
      found.push(angleBetween(tubeVector(request.mount, motion.axesAt(s)), sky.sunAt(startS + s)));
    startS += motion.durationS;
    found.push(angleBetween(tubeVector(request.mount, to), sky.sunAt(startS)));
  });
  return found;
};

const requests = fc
  .record({
    mount: fc.constantFrom<MountKind>('german', 'fork', 'altaz'),
    latitudeDeg: fc.double({ min: -65, max: 65, noNaN: true }),
    longitudeDeg: fc.double({ min: -180, max: 180, noNaN: true }),
    utcMs: fc.integer({ min: Date.UTC(2024, 0, 1), max: Date.UTC(2030, 0, 1) }),
    raHours: fc.double({ min: 0, max: 23.99, noNaN: true }),
    decDeg: fc.double({ min: -80, max: 85, noNaN: true }),
  })
  .map(({ mount, latitudeDeg, longitudeDeg, utcMs, raHours, decDeg }): WayRequest => ({
    mount,
    observer: { latitudeDeg, longitudeDeg, elevationM: 0 },
    utcMs,
    target: { raHours, decDeg },
    from: 'home',
  }));

describe('the least Sun separation on the way', () => {
  it('agrees with a way walked in small steps by rotation matrices (numpy, Sun from astropy; see generate_pointing.py)', () => {
    const { ways } = JSON.parse(readFileSync(new URL('../reference/pointing-ways.json', import.meta.url), 'utf8')) as {
      ways: {
        utc: string;
        latitudeDeg: number;
        longitudeDeg: number;
        mount: MountKind;
        target: [number, number];
        durationS: number;
        minimumSeparationDeg: number;
        closestAtS: number;
      }[];
    };
    expect(ways.length).toBe(60);
    let worst = 0;
    for (const way of ways) {
      const found = straightWay({
        mount: way.mount,
        observer: { latitudeDeg: way.latitudeDeg, longitudeDeg: way.longitudeDeg, elevationM: 0 },
        utcMs: Date.parse(way.utc),
        target: { raHours: way.target[0], decDeg: way.target[1] },
        from: 'home',
      });
      worst = Math.max(worst, Math.abs(found.minimumSeparationDeg - way.minimumSeparationDeg));
      expect(found.durationS, JSON.stringify(way)).toBeCloseTo(way.durationS, 2);
    }
    console.info(`least separation on 60 ways: worst difference ${worst.toFixed(4)}°`);
    expect(worst).toBeLessThan(0.015);
  });

  it('is never more than at either end, nor than anywhere sampled between', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const way = straightWay(request);
        const sky = mountSky(request.mount, request.observer, request.utcMs);
        const goal = axesFor(request.mount, sky.directionAt(request.target, way.durationS));
        const sampled = Math.min(...separationsAlong(request, [HOME, goal], 0.05));
        expect(way.minimumSeparationDeg).toBeLessThanOrEqual(sampled + SEPARATION_TOLERANCE_DEG + 1e-3);
        expect(way.minimumSeparationDeg).toBeGreaterThan(sampled - 0.2);
      }),
      { numRuns: 150 },
    );
  });

  it('is found in a dip far narrower than the first samples', () => {
    for (const dip of [1.2345, 17.77, 59.999, 33.3]) {
      const { x, value } = leastByBounds((s) => Math.min(40, Math.abs(s - dip) * 3), 0, 60, 3, 0.005);
      expect(Math.abs(x - dip)).toBeLessThan(0.005);
      expect(value).toBeLessThan(0.01);
    }
  });
});

describe('a way round the Sun', () => {
  it('keeps its promise at every point of every leg, and ends at the target', () => {
    let offered = 0;
    fc.assert(
      fc.property(requests, (request) => {
        const straight = straightWay(request);
        if (straight.minimumSeparationDeg > 30) return;
        const way = saferWay(request, 15, 45);
        if (way === null) return;
        offered++;
        const separations = separationsAlong(request, [HOME, ...way.legs.map(({ to }) => to)], 0.1);
        expect(Math.min(...separations)).toBeGreaterThan(15 - 0.01);
        expect(Math.min(...separations)).toBeGreaterThan(way.minimumSeparationDeg - 0.01);
        const sky = mountSky(request.mount, request.observer, request.utcMs);
        const goal = tubeVector(request.mount, axesFor(request.mount, sky.directionAt(request.target, way.durationS)));
        expect(angleBetween(tubeVector(request.mount, way.legs.at(-1)!.to), goal)).toBeLessThan(0.1);
      }),
      { numRuns: 250 },
    );
    expect(offered).toBeGreaterThan(10);
  });

  it('is found for a target opposite the way where the straight sweep would cross within 3° of the Sun', () => {
    const utcMs = Date.UTC(2026, 5, 20, 10);
    const sun = placeOf({ kind: 'solarSystem', body: 'Sun' }, COMMON, utcMs).ofDate;
    let caught = 0;
    for (const mount of ['german', 'fork'] as const) {
      for (let decDeg = -15; decDeg <= 5; decDeg += 1) {
        for (let away = -3; away <= 3; away += 0.05) {
          const request: WayRequest = {
            mount,
            observer: COMMON,
            utcMs,
            target: { raHours: (sun.raHours + away + 24) % 24, decDeg },
            from: 'home',
          };
          if (straightWay(request).minimumSeparationDeg >= 3) continue;
          caught++;
          const way = saferWay(request, 15, 45);
          expect(way, `${mount} ${away} ${decDeg}`).not.toBeNull();
          expect(way!.minimumSeparationDeg).toBeGreaterThan(15);
        }
      }
    }
    expect(caught).toBeGreaterThan(20);
  });

  it('is not made up where the target itself is too near the Sun', () => {
    const utcMs = Date.UTC(2026, 5, 20, 10);
    const sun = placeOf({ kind: 'solarSystem', body: 'Sun' }, COMMON, utcMs).ofDate;
    expect(
      saferWay(
        {
          mount: 'german',
          observer: COMMON,
          utcMs,
          target: { raHours: sun.raHours, decDeg: sun.decDeg - 10 },
          from: 'home',
        },
        15,
        45,
      ),
    ).toBeNull();
  });
});
