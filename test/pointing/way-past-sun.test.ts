import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SEPARATION_TOLERANCE_DEG, leastByBounds } from '../../bot/pointing/way/least-separation.js';
import { HOME, axesFor, tubeVector, type AxisAngles, type MountKind } from '../../bot/pointing/mount/mount.js';
import { mountSky } from '../../bot/pointing/mount/mount-sky.js';
import { EVEN_MOTION, legMotion, type Motion } from '../../bot/pointing/way/slew.js';
import { saferWay, straightWay, type WayRequest } from '../../bot/pointing/way/way-past-sun.js';
import { angleBetween } from '../../bot/sky/angles.js';
import { ofDateFromHorizontal, placeOf } from '../../bot/sky/place.js';

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
    motion: EVEN_MOTION,
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
        motion: EVEN_MOTION,
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
      const { x, value } = leastByBounds((s) => Math.min(40, Math.abs(s - dip) * 3), [0, 60], 3, 0.005);
      expect(Math.abs(x - dip)).toBeLessThan(0.005);
      expect(value).toBeLessThan(0.01);
    }
  });
});

/**
 * Replays a slew by small steps of its own: each axis ordered to its goal at its own speed, or after the other, and the tube
 * turned by rotation matrices from home (no code of the mount model's).
 */
const replayed = (request: WayRequest, goal: AxisAngles, motion: Motion): number => {
  const sky = mountSky(request.mount, request.observer, request.utcMs);
  const at = { primary: 0, secondary: 0 };
  const wrapped = request.mount === 'altaz' ? ((((goal.primaryDeg + 180) % 360) + 360) % 360) - 180 : goal.primaryDeg;
  const step = 0.1;
  let least = 180;
  for (let s = 0; s < 2000; s += step) {
    const [cp, sp] = [Math.cos((at.primary * Math.PI) / 180), Math.sin((at.primary * Math.PI) / 180)];
    const [cs, ss] = [Math.cos((at.secondary * Math.PI) / 180), Math.sin((at.secondary * Math.PI) / 180)];
    const start: Record<MountKind, readonly [number, number, number]> = {
      // The secondary axis's turn of the home direction, in the plane it turns in.
      german: [0, -ss, cs],
      fork: [ss, 0, cs],
      altaz: [cs, 0, ss],
    };
    const [x, y, z] = start[request.mount];
    const tube: [number, number, number] = [x * cp - y * sp, x * sp + y * cp, z];
    const [a, b, c] = sky.sunAt(s);
    least = Math.min(least, (Math.acos(Math.min(1, tube[0] * a + tube[1] * b + tube[2] * c)) * 180) / Math.PI);
    const left = { primary: wrapped - at.primary, secondary: goal.secondaryDeg - at.secondary };
    if (Math.abs(left.primary) < 1e-9 && Math.abs(left.secondary) < 1e-9) return least;
    const go = (axis: 'primary' | 'secondary', degPerS: number): void => {
      at[axis] += Math.sign(left[axis]) * Math.min(Math.abs(left[axis]), degPerS * step);
    };
    if (motion.order !== 'secondary-first' || Math.abs(left.secondary) < 1e-9) go('primary', motion.primaryDegPerS);
    if (motion.order !== 'primary-first' || Math.abs(left.primary) < 1e-9) go('secondary', motion.secondaryDegPerS);
  }
  throw new Error('never arrived');
};

const atRatio = (ratio: number): Motion => ({
  primaryDegPerS: 3 * Math.min(1, ratio),
  secondaryDegPerS: 3 * Math.min(1, 1 / ratio),
  order: 'together',
});

describe('a mount whose speeds are not known', () => {
  it('is judged by the worst of every axis order and speed ratio from 1:4 to 4:1, replayed in small steps', () => {
    let near = 0;
    const worstOfAll: number[] = [];
    fc.assert(
      fc.property(requests, fc.double({ min: -1, max: 1, noNaN: true }), (request, place) => {
        const worst = straightWay({ ...request, motion: null });
        const sky = mountSky(request.mount, request.observer, request.utcMs);
        const goal = axesFor(request.mount, sky.directionAt(request.target, 0));
        // Where half a turn either way, or the side of the pier, hangs on the second of arrival, there is no one way to replay.
        const later = axesFor(request.mount, sky.directionAt(request.target, 120));
        fc.pre(Math.abs(later.primaryDeg - goal.primaryDeg) < 5 && Math.abs(goal.primaryDeg) < 175);
        const ratio = 4 ** place;
        const motions: Motion[] = [
          { ...EVEN_MOTION, order: 'primary-first' },
          { ...EVEN_MOTION, order: 'secondary-first' },
          ...[0.25, 0.5, 3 / 4, 1, 4 / 3, 2, 4, ratio].map(atRatio),
        ];
        const least = Math.min(...motions.map((motion) => replayed(request, goal, motion)));
        if (least < 15) near++;
        // The goal moves with the sky while it is gone to: a degree in the slowest of these slews.
        expect(worst.minimumSeparationDeg).toBeLessThan(least + 1.2);
        worstOfAll.push(least - worst.minimumSeparationDeg);
      }),
      { numRuns: 120 },
    );
    expect(near).toBeGreaterThan(10);
    // Nor does it cry wolf: what it finds, some way between those tried does come to.
    expect(worstOfAll.filter((overDeg) => overDeg > 6).length / worstOfAll.length).toBeLessThan(0.1);
  });

  it('is sent round by legs that keep clear however it goes', () => {
    fc.assert(
      fc.property(requests, (request) => {
        const unknown = { ...request, motion: null };
        fc.pre(straightWay(unknown).minimumSeparationDeg <= 30);
        const way = saferWay(unknown, 15, 45);
        // Where none were offered, the runs would never come to their number, which fails.
        fc.pre(way !== null);
        for (const ratio of [0.25, 0.5, 1, 2, 4])
          for (const order of ['together', 'primary-first', 'secondary-first'] as const) {
            const sky = mountSky(request.mount, request.observer, request.utcMs);
            const motion: Motion = { ...atRatio(ratio), order };
            const points = [HOME, ...way.legs.map(({ to }) => to)];
            points.slice(1).forEach((to, i) => {
              const leg = legMotion(request.mount, { from: points[i]!, to }, motion);
              for (let s = 0; s <= leg.durationS; s += 1)
                expect(
                  angleBetween(tubeVector(request.mount, leg.axesAt(s)), sky.sunAt(way.legs[i]!.endsAtS)),
                ).toBeGreaterThan(15 - 0.6);
            });
          }
      }),
      { numRuns: 12 },
    );
  });
});

describe('an alt-azimuth base', () => {
  // 2026-06-20, 07:30 UTC at 52.71° N: the Sun about 33° high and east (from memory, to some degrees).
  const utcMs = Date.UTC(2026, 5, 20, 7, 30);
  const at = (altitudeDeg: number, azimuthDeg: number) =>
    ofDateFromHorizontal({ altitudeDeg, azimuthDeg }, COMMON, utcMs);
  const altazWay = (fromAzimuthDeg: number, toAzimuthDeg: number) =>
    straightWay({
      mount: 'altaz',
      observer: COMMON,
      utcMs,
      from: at(35, fromAzimuthDeg),
      target: at(35, toAzimuthDeg),
      motion: null,
    });

  it('that turns by nearly half a circle is reckoned to go by either side, so by the Sun as well', () => {
    // Short by the west, the other way through the east at the Sun's own height.
    expect(altazWay(5, 190).minimumSeparationDeg).toBeLessThan(5);
    expect(altazWay(5, 175).minimumSeparationDeg).toBeLessThan(5);
  });

  it('that turns by less goes the short way', () => {
    expect(altazWay(5, 230).minimumSeparationDeg).toBeGreaterThan(60);
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
            motion: EVEN_MOTION,
          };
          if (straightWay(request).minimumSeparationDeg >= 3) continue;
          caught++;
          const way = saferWay({ ...request, motion: null }, 15, 45);
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
          motion: null,
        },
        15,
        45,
      ),
    ).toBeNull();
  });
});
