/** Discord's registration of every command, made from its one definition. */
import {
  ApplicationCommandOptionType,
  ApplicationCommandType,
  ApplicationIntegrationType,
  InteractionContextType,
  PermissionFlagsBits,
} from 'discord-api-types/v10';
import type { Command, OptionSpec } from '../../../commands/core/command.js';
import { plainWithin } from '../write/escape-text.js';
import { LIMITS } from '../write/limits.js';

/** The entry in the menus of a member and of a message. */
export const HELP_ENTRY = 'Help with connection';
/** The command those entries run. */
export const WALK_COMMAND = 'triage';

export interface OptionPayload {
  readonly type: ApplicationCommandOptionType;
  readonly name: string;
  readonly description: string;
  readonly required: boolean;
  readonly choices?: readonly { readonly name: string; readonly value: string }[];
  readonly autocomplete?: boolean;
  readonly min_value?: number;
  readonly max_value?: number;
  readonly min_length?: number;
  readonly max_length?: number;
}

export interface CommandPayload {
  readonly type: ApplicationCommandType;
  readonly name: string;
  readonly description?: string;
  readonly options?: readonly OptionPayload[];
  readonly integration_types: readonly ApplicationIntegrationType[];
  readonly contexts: readonly InteractionContextType[];
  readonly default_member_permissions?: number;
}

const EVERYWHERE = {
  integration_types: [ApplicationIntegrationType.GuildInstall, ApplicationIntegrationType.UserInstall],
  contexts: [InteractionContextType.Guild, InteractionContextType.BotDM, InteractionContextType.PrivateChannel],
};
// What changes a club's settings is offered in servers alone, to those with Manage Server; the server may grant it to others.
const MANAGERS = {
  integration_types: [ApplicationIntegrationType.GuildInstall],
  contexts: [InteractionContextType.Guild],
  default_member_permissions: Number(PermissionFlagsBits.ManageGuild),
};

/** Of more words than Discord offers none is: they are typed, and checked when they come. */
const offered = (words: readonly string[]): Partial<OptionPayload> =>
  words.length > LIMITS.optionChoices ? {} : { choices: words.map((word) => ({ name: word, value: word })) };

const optionPayload = (name: string, spec: OptionSpec): OptionPayload => {
  const base = { name, description: plainWithin(spec.description, LIMITS.commandDescription), required: spec.required };
  const range = {
    ...(spec.min === undefined ? {} : { min_value: spec.min }),
    ...(spec.max === undefined ? {} : { max_value: spec.max }),
  };
  switch (spec.type) {
    case 'number':
      return { ...base, type: ApplicationCommandOptionType.Number, ...range };
    case 'integer':
      return { ...base, type: ApplicationCommandOptionType.Integer, ...range };
    case 'flag':
      return { ...base, type: ApplicationCommandOptionType.Boolean };
    case 'member':
      return { ...base, type: ApplicationCommandOptionType.User };
    case 'file':
      return { ...base, type: ApplicationCommandOptionType.Attachment };
    case 'choice':
      return {
        ...base,
        type: ApplicationCommandOptionType.String,
        ...offered(spec.choices ?? []),
      };
    case 'text':
      return {
        ...base,
        type: ApplicationCommandOptionType.String,
        min_length: 1,
        max_length: Math.min(spec.maxLength ?? 200, LIMITS.textOption),
        ...(spec.complete === undefined ? {} : { autocomplete: true }),
      };
  }
};

const slashPayload = (command: Command): CommandPayload => {
  const options = Object.entries(command.options).map(([name, spec]) => optionPayload(name, spec));
  return {
    type: ApplicationCommandType.ChatInput,
    name: command.name,
    description: plainWithin(command.summary, LIMITS.commandDescription),
    // Discord wants the required ones first.
    ...(options.length === 0
      ? {}
      : { options: [...options.filter(({ required }) => required), ...options.filter(({ required }) => !required)] }),
    ...(command.access === 'manager' ? MANAGERS : EVERYWHERE),
  };
};

/** Everything that is registered, in the order of the list. */
export const commandPayloads = (commands: readonly Command[]): readonly CommandPayload[] => [
  ...commands.map(slashPayload),
  ...(commands.some(({ name }) => name === WALK_COMMAND)
    ? [
        { type: ApplicationCommandType.User, name: HELP_ENTRY, ...EVERYWHERE },
        { type: ApplicationCommandType.Message, name: HELP_ENTRY, ...EVERYWHERE },
      ]
    : []),
];
