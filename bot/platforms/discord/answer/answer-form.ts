/** A form that a button opens, and what comes back from it: the button's line with the typed values added. */
import {
  ComponentType,
  type APIModalInteractionResponseCallbackData,
  type APIModalSubmitInteraction,
} from 'discord-api-types/v10';
import type { Command } from '../../../commands/core/command.js';
import { runCommand } from '../../../commands/core/dispatch.js';
import type { Form } from '../../../commands/core/form.js';
import { parseLine, type ParsedLine } from '../../../commands/core/grammar.js';
import { isProblem } from '../../../ground/problem.js';
import { errorSink, type Bot } from '../connect/bot.js';
import { formIn, writeForm } from '../write/write-form.js';
import type { Question } from './answer-question.js';
import { settle } from './settle-question.js';
import { filesOf } from './attachment.js';
import { askerOf } from './read-interaction.js';

const OLD_FORM = 'That form is from an older version of me. Please ask again.';

interface Found {
  readonly parsed: ParsedLine;
  readonly form: Form;
}

const find = (commands: readonly Command[], name: string, run: string): Found | undefined => {
  const parsed = parseLine(run, commands);
  if (isProblem(parsed)) return undefined;
  const { forms } = parsed.command;
  const form = forms !== undefined && Object.hasOwn(forms, name) ? forms[name] : undefined;
  return form === undefined ? undefined : { parsed, form };
};

/** What a button that opens a form shows, or a plain line to say instead. */
export const formToShow = (bot: Bot, name: string, run: string): APIModalInteractionResponseCallbackData | string => {
  const found = find(bot.context.deps.commands, name, run);
  return found === undefined ? OLD_FORM : writeForm(found.form, name, run);
};

/** What was put into the form's fields, by field id: text, or the id of an attachment. */
const submitted = ({ data }: APIModalSubmitInteraction): ReadonlyMap<string, string> => {
  const values = new Map<string, string>();
  for (const part of data.components) {
    if (part.type !== ComponentType.Label) continue;
    const { component } = part;
    if (component.type === ComponentType.TextInput) values.set(component.custom_id, component.value.trim());
    if (component.type === ComponentType.FileUpload) values.set(component.custom_id, component.values[0] ?? '');
  }
  return values;
};

const withValues = (
  bot: Bot,
  interaction: APIModalSubmitInteraction,
  { parsed, form }: Found,
): Map<string, unknown> => {
  const raw = new Map<string, unknown>(parsed.raw);
  const joined: string[] = [];
  for (const [id, value] of submitted(interaction)) {
    const field = form.fields.find((candidate) => candidate.id === id);
    if (field === undefined || value === '') continue;
    if (field.kind === 'file') {
      const attachment = interaction.data.resolved?.attachments?.[value];
      if (attachment !== undefined && field.option !== undefined)
        raw.set(field.option, filesOf(bot, askerOf(interaction).memberId)(attachment));
    } else if (field.option === undefined) joined.push(`${id} ${value}`);
    else raw.set(field.option, value);
  }
  if (form.into !== undefined && joined.length > 0) raw.set(form.into, joined.join('; '));
  return raw;
};

export const formQuestion = (bot: Bot, interaction: APIModalSubmitInteraction): Question | string => {
  const { deps, now } = bot.context;
  const named = formIn(interaction.data.custom_id);
  const found = named === undefined ? undefined : find(deps.commands, named.name, named.run);
  if (found === undefined) return OLD_FORM;
  const { command } = found.parsed;
  const raw = withValues(bot, interaction, found);
  return {
    command: command.name,
    ask: () =>
      runCommand(deps, command, raw, { asker: askerOf(interaction), nowUtcMs: now(), onError: errorSink(bot) }),
    afterwards: (outcome) => settle(bot, interaction, found.form.title, outcome),
  };
};
