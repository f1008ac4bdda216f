/** Choices that open a form, for platforms that have none: the form's invitation stands as a line, the rest stay choices. */
import { parseLine } from '../../commands/core/grammar.js';
import type { Command } from '../../commands/core/command.js';
import type { Form } from '../../commands/core/form.js';
import { isProblem } from '../../ground/problem.js';
import type { Choice } from '../../reply/reply.js';

/** The form a choice opens, or undefined where it opens none. */
export const formOf = (commands: readonly Command[], { run, form }: Choice): Form | undefined => {
  if (form === undefined) return undefined;
  const parsed = parseLine(run, commands);
  return isProblem(parsed) ? undefined : parsed.command.forms?.[form];
};

export interface SplitChoices {
  /** To be numbered, in their order. */
  readonly picks: readonly Choice[];
  /** To be printed as they are, each once. */
  readonly invitations: readonly string[];
}

export const splitForms = (commands: readonly Command[], choices: readonly Choice[]): SplitChoices => ({
  picks: choices.filter(({ form }) => form === undefined),
  invitations: [...new Set(choices.flatMap((choice) => formOf(commands, choice)?.invitation ?? []))],
});
