/** Pairs in quick orbits: by their elements as they were measured, and where others predict them. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { resolveTarget } from '../../bot/catalogue/index.js';
import { placeInOrbit } from '../../bot/sky/binary-orbit.js';
import { answer, realDeps } from '../commands/real-deps.js';
import { shippedCatalogue } from '../shipped.js';

const doubleOf = (name: string) => {
  const found = resolveTarget(shippedCatalogue(), name);
  if (isProblem(found) || found.target.double === null) throw new Error(name);
  return found.target.double;
};
const apartDeg = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

describe('a pair that moves', () => {
  // The measures of doubles.csv (Washington Double Star Catalog, from memory) were not what the orbits were made from.
  it.each(['Rigil Kentaurus', 'Sirius', 'Castor', 'Porrima', 'HIP 55203', '70 Oph', 'Achird'])(
    '%s: its orbit gives back what was measured',
    (name) => {
      const double = doubleOf(name);
      if (double.orbit === undefined) throw new Error('no orbit');
      const { separationArcsec, positionAngleDeg } = placeInOrbit(double.orbit, double.year);
      expect(Math.abs(separationArcsec / double.separationArcsec - 1)).toBeLessThan(0.04);
      expect(apartDeg(positionAngleDeg, double.positionAngleDeg)).toBeLessThan(6);
    },
  );

  it('alpha Centauri was closest, at 4.0″, in 2016 (Kervella et al., Astronomy and Astrophysics 594, A107, 2016, from memory)', () => {
    const { orbit } = doubleOf('Rigil Kentaurus');
    if (orbit === undefined) throw new Error('no orbit');
    expect(placeInOrbit(orbit, 2016).separationArcsec).toBeCloseTo(4.0, 1);
  });

  // Porrima at its closest: 0.4″ in 2005 (observers' reports, from memory).
  it('gamma Virginis closed up in 2005', () => {
    const { orbit } = doubleOf('Porrima');
    if (orbit === undefined) throw new Error('no orbit');
    expect(placeInOrbit(orbit, 2005.5).separationArcsec).toBeLessThan(0.5);
  });

  it('is told for the year that is asked about', async () => {
    const deps = await realDeps({ clubSiteText: '-33.9,18.4' });
    const { summary } = await answer(deps, 'alpha centauri separation in 2030', Date.UTC(2026, 10, 27, 20));
    expect(summary).toMatch(/Rigil Kentaurus: 10″ apart at 22° \(2030\)/u);
  });
});
