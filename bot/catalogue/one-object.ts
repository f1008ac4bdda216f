/** What stands so close together that it is one target at the eyepiece. */
import type { Catalogue } from './catalogue.js';
import type { TargetResolution } from './target-resolution.js';

/** Parts closer than this (5′: ε Lyr and closer) are one target at the eyepiece. */
const ONE_TARGET_COS = Math.cos((5 / 60) * (Math.PI / 180));

export const closeTogether = (catalogue: Catalogue, positions: readonly number[]): boolean => {
  const { unitX, unitY, unitZ } = catalogue.sweep;
  const first = positions[0];
  if (first === undefined) return false;
  return positions.every(
    (p) =>
      (unitX[p] ?? 0) * (unitX[first] ?? 0) +
        (unitY[p] ?? 0) * (unitY[first] ?? 0) +
        (unitZ[p] ?? 0) * (unitZ[first] ?? 0) >=
      ONE_TARGET_COS,
  );
};

/** Parts of one object that bear its name (the Rosette's NGC 2237 and 2238), none of them a star: the first in its catalogue, the others told of. */
export const asOneObject = (catalogue: Catalogue, positions: readonly number[]): TargetResolution | null => {
  const [target, ...others] = [...positions].sort((a, b) => a - b).map((p) => catalogue.targetAt(p));
  if (target === undefined || !closeTogether(catalogue, positions)) return null;
  if ([target, ...others].some(({ kind }) => kind.endsWith('star'))) return null;
  return { target, note: `${target.name}; ${others.map(({ name }) => name).join(' and ')} beside it.` };
};
