import type { Target } from './target.js';
import type { TargetProblem } from './target-resolution.js';

/** "NGC 7331 · spiral galaxy in Pegasus", at most 100 characters. */
export function targetLabel(target: Target): string {
  return `${target.name} · ${target.kindText}`.slice(0, 100);
}

/** One sentence or two, ≤ 400 characters, that says what was wrong and what would be right. */
export function targetProblemMessage(problem: TargetProblem): string {
  throw new Error(`not yet: ${problem.problem}`);
}
