/** An Outcome as the page shows it: plain data, each text put on the page as text. */
import type { Command } from '../../commands/core/command.js';
import type { Form } from '../../commands/core/form.js';
import { parseLine } from '../../commands/core/grammar.js';
import { isProblem, type Choice } from '../../ground/problem.js';
import { LEVEL_WORD } from '../../reply/palette.js';
import type { Fact, Level, Outcome } from '../../reply/reply.js';

export interface ShownChoice {
  readonly label: string;
  readonly run: string;
  readonly preferred: boolean;
  readonly form: { readonly name: string; readonly shape: Form } | null;
}

export interface ShownAnswer {
  readonly kind: 'answer';
  readonly level: Level | 'problem';
  /** Null where the level needs no word. */
  readonly levelWord: string | null;
  readonly title: string | null;
  readonly summary: string;
  readonly facts: readonly Fact[];
  readonly cautions: readonly string[];
  readonly notes: readonly string[];
  readonly picture: { readonly address: string; readonly altText: string } | null;
  readonly choices: readonly ShownChoice[];
}

/** The form of that name of the command that a choice's line names. */
export const formOf = (commands: readonly Command[], run: string, name: string): Form | undefined => {
  const parsed = parseLine(run, commands);
  if (isProblem(parsed)) return undefined;
  const { forms } = parsed.command;
  return forms !== undefined && Object.hasOwn(forms, name) ? forms[name] : undefined;
};

const shownChoices = (commands: readonly Command[], choices: readonly Choice[] = []): readonly ShownChoice[] =>
  choices.map(({ label, run, preferred, form: name }) => {
    const shape = name === undefined ? undefined : formOf(commands, run, name);
    return {
      label,
      run,
      preferred: preferred === true,
      form: name === undefined || shape === undefined ? null : { name, shape },
    };
  });

/** `pictureAddress`: where the drawn chart is to be had, or null. */
export const shownAnswer = (
  outcome: Outcome,
  commands: readonly Command[],
  pictureAddress: string | null,
): ShownAnswer => {
  const choices = shownChoices(commands, outcome.choices);
  if (isProblem(outcome)) {
    const nothing = { facts: [], cautions: [], notes: [], picture: null };
    return {
      kind: 'answer',
      level: 'problem',
      levelWord: null,
      title: null,
      summary: outcome.message,
      ...nothing,
      choices,
    };
  }
  const { level, title, summary, facts, cautions, notes, chart } = outcome;
  return {
    kind: 'answer',
    level,
    levelWord: level === 'info' ? null : LEVEL_WORD[level],
    title,
    summary,
    facts,
    cautions,
    notes,
    picture:
      chart === undefined || pictureAddress === null ? null : { address: pictureAddress, altText: chart.altText },
    choices,
  };
};
