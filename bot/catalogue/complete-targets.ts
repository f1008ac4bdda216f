import type { Catalogue } from './catalogue.js';

/** One suggestion: `value` resolves to the target; `label` (≤ 100 characters) is what a member sees. */
export interface TargetCompletion {
  readonly value: string;
  readonly label: string;
}

/** Suggestions for a partly typed name, best first; an empty `partial` suggests what is best known. Never throws. */
export function completeTargets(_catalogue: Catalogue, partial: string, _limit = 25): readonly TargetCompletion[] {
  throw new Error(`not yet: ${partial}`);
}
