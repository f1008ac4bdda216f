/** The shipped catalogue, read once for all tests of a file. */
import { isProblem } from '../../bot/ground/problem.js';
import { resolveTarget, type Target } from '../../bot/catalogue/index.js';
import { shippedCatalogue } from '../shipped.js';

export const catalogue = shippedCatalogue();

/** The target a text resolves to; fails the test where it resolves to none. */
export const found = (text: string): Target => {
  const result = resolveTarget(catalogue, text);
  if (isProblem(result)) throw new Error(`"${text}" gave ${result.problem}`);
  return result.target;
};

/** Degrees on the sky between two directions given in degrees. */
export const separationDeg = (ra1: number, dec1: number, ra2: number, dec2: number): number => {
  const [a, b, c, d] = [ra1, dec1, ra2, dec2].map((deg) => (deg * Math.PI) / 180) as [number, number, number, number];
  const half = Math.sin((d - b) / 2) ** 2 + Math.cos(b) * Math.cos(d) * Math.sin((c - a) / 2) ** 2;
  return (2 * Math.asin(Math.min(1, Math.sqrt(half))) * 180) / Math.PI;
};

/** Where a fixed target is, in degrees. */
export const placeDeg = (target: Target): readonly [raDeg: number, decDeg: number] => {
  if (target.body.kind !== 'fixed') throw new Error(`${target.name} is not fixed`);
  return [target.body.raHoursJ2000 * 15, target.body.decDegJ2000];
};
