/** What shines brightest in the sky, with how bright it is then: the planets, and the stars that have names. */
import { brightNamedStars, resolveTarget, type Target } from '../../catalogue/index.js';
import { isProblem } from '../../ground/problem.js';
import { apparentMagnitude } from '../../sky/brightness.js';
import type { UtcMs } from '../../sky/types.js';
import type { Deps } from '../core/command.js';

const PLANETS = ['Venus', 'Jupiter', 'Mars', 'Saturn', 'Mercury'] as const;

export interface Bright {
  readonly target: Target;
  readonly magnitude: number;
}

const withMagnitude = (
  { catalogue }: Deps,
  names: readonly ('Moon' | (typeof PLANETS)[number])[],
  utcMs: UtcMs,
): readonly Bright[] =>
  names.flatMap((name) => {
    const found = resolveTarget(catalogue, name);
    return isProblem(found) ? [] : [{ target: found.target, magnitude: apparentMagnitude(name, utcMs) }];
  });

export const brightPlanets = (deps: Deps, utcMs: UtcMs): readonly Bright[] => withMagnitude(deps, PLANETS, utcMs);

/** The Moon and the planets. */
export const wanderers = (deps: Deps, utcMs: UtcMs): readonly Bright[] =>
  withMagnitude(deps, ['Moon', ...PLANETS], utcMs);

export const brightStars = ({ catalogue }: Deps): readonly Bright[] =>
  brightNamedStars(catalogue).map((target) => ({ target, magnitude: target.magnitude }));
