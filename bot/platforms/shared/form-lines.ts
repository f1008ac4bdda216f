/** Choices that open a form, for platforms that have none: the invitation stands as a line, the rest stay choices. */
import type { Choice } from '../../ground/problem.js';

export interface SplitChoices {
  /** To be numbered, in their order. */
  readonly picks: readonly Choice[];
  /** To be printed as they are, each once. */
  readonly invitations: readonly string[];
}

export const splitForms = (choices: readonly Choice[] = []): SplitChoices => ({
  picks: choices.filter(({ form }) => form === undefined),
  invitations: [...new Set(choices.flatMap(({ form, invitation }) => (form === undefined ? [] : (invitation ?? []))))],
});
