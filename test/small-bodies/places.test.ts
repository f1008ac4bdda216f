import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readElements } from '../../bot/small-bodies/read-elements.js';
import { separationDeg } from '../../bot/sky/angles.js';
import { orbitMagnitude } from '../../bot/sky/orbit.js';
import { horizontalOf, placeOf } from '../../bot/sky/place.js';
import type { Observer } from '../../bot/sky/types.js';

interface Case {
  readonly name: string;
  readonly utcMs: number;
  readonly raHoursJ2000: number;
  readonly decDegJ2000: number;
  readonly altitudeDeg: number;
  readonly azimuthDeg: number;
  readonly distanceAu: number;
  readonly sunDistanceAu: number;
}
const reference = JSON.parse(readFileSync('test/reference/small-bodies.json', 'utf8')) as {
  readonly observer: Observer;
  readonly cases: readonly Case[];
};
const { bodies, skippedLines } = readElements(readFileSync('test/small-bodies/elements.txt', 'utf8'));
const named = (name: string) => {
  const body = bodies.find((b) => b.name === name);
  if (!body) throw new Error(name);
  return body;
};

describe('comets and minor planets stand where skyfield has them, from the same elements', () => {
  it('reads every line of both formats', () => {
    expect(skippedLines).toBe(0);
    expect(bodies.map((b) => b.name)).toEqual([
      '1P/Halley',
      '2P/Encke',
      '12P/Pons-Brooks',
      'C/2023 A3 (Tsuchinshan-ATLAS)',
      '2I/Borisov',
      'C/2026 Z1 (Fenwold)',
      'C/2025 Y2 (Fenwold)',
      'Ceres',
      'Vesta',
      'Eros',
      'Pallas',
    ]);
  });

  it('within 10″, ellipse, parabola and hyperbola, over four years', () => {
    let worst = { arcsec: 0, name: '' };
    for (const { name, utcMs, ...their } of reference.cases) {
      const body = { kind: 'orbit', elements: named(name).elements } as const;
      const { j2000 } = placeOf(body, reference.observer, utcMs);
      const arcsec = 3600 * separationDeg(j2000, { raHours: their.raHoursJ2000, decDeg: their.decDegJ2000 });
      if (arcsec > worst.arcsec) worst = { arcsec, name };
      expect(arcsec, `${name} at ${utcMs}`).toBeLessThan(10);
      const seen = horizontalOf(body, reference.observer, utcMs);
      expect(Math.abs(seen.altitudeDeg - their.altitudeDeg), name).toBeLessThan(0.003);
    }
    console.log(`worst of ${reference.cases.length}: ${worst.arcsec.toFixed(2)}″ (${worst.name})`);
    expect(reference.cases.length).toBeGreaterThan(80);
  });

  it('as bright as the comet law makes them of skyfield’s distances', () => {
    // m = H + 5 log Δ + 2.5 K log r (Minor Planet Center, description of the comet format).
    for (const { name, utcMs, distanceAu, sunDistanceAu } of reference.cases) {
      const { elements, kind } = named(name);
      if (kind !== 'comet' || elements.magnitude === null) continue;
      const { absolute, slope } = elements.magnitude;
      const expected = absolute + 5 * Math.log10(distanceAu) + 2.5 * slope * Math.log10(sunDistanceAu);
      expect(Math.abs((orbitMagnitude(elements, utcMs) ?? 99) - expected), name).toBeLessThan(0.01);
    }
  });

  // Ceres is of magnitude 6.7 to 9.3, Vesta of 5.1 to 8.5, as seen from the Earth (handbooks, from memory), to 0.2.
  it.each([
    ['Ceres', 6.5, 9.5],
    ['Vesta', 4.9, 8.7],
  ])('%s keeps between magnitude %d and %d for five years', (name, brightest, faintest) => {
    for (let day = 0; day < 1800; day += 10) {
      const magnitude = orbitMagnitude(named(name).elements, 1_795_000_000_000 + day * 86_400_000) ?? 99;
      expect(magnitude).toBeGreaterThan(brightest);
      expect(magnitude).toBeLessThan(faintest);
    }
  });
});
