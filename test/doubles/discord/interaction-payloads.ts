/** Interactions as Discord sends them, made from what was registered; what Discord's own client would refuse is refused here. */
import { randomBytes } from 'node:crypto';
import {
  ApplicationCommandOptionType as Kind,
  ComponentType,
  InteractionContextType,
  type ApplicationCommandType,
} from 'discord-api-types/v10';
import type { CommandPayload, OptionPayload } from '../../../bot/platforms/discord/connect/command-payloads.js';
import { messagePayload } from './rest-routes.js';
import { snowflake } from './snowflake.js';
import type { Attachment, Channel, Guild, Interaction, Message, Person, World } from './world.js';

/** A file from a member's device. */
export interface SentFile {
  readonly filename: string;
  readonly contentType: string;
  readonly bytes: Buffer;
}

export type OptionValue = string | number | boolean | Person | SentFile;

const isFile = (value: OptionValue): value is SentFile => typeof value === 'object' && 'bytes' in value;
const isPerson = (value: OptionValue): value is Person => typeof value === 'object' && !('bytes' in value);

/** Puts a file where the double hands it out. */
export const upload = (world: World, { filename, contentType, bytes }: SentFile): Attachment => {
  const attachment = { id: snowflake(), filename, description: '', contentType, bytes };
  world.files.set(attachment.id, attachment);
  return attachment;
};

const attachmentPayload = (world: World, { id, filename, contentType, bytes }: Attachment): object => ({
  id,
  filename,
  content_type: contentType,
  size: bytes.length,
  url: `${world.mediaUrl}/${id}/${filename}`,
  proxy_url: `${world.mediaUrl}/${id}/${filename}`,
});

const MANAGE_SERVER = 1n << 5n;
const CREATE_PUBLIC_THREADS = 1n << 35n;
const USUAL_MEMBER = (1n << 10n) | (1n << 11n) | (1n << 31n);

const userPayload = ({ id, name, isBot }: Person): object => ({
  id,
  username: name.toLowerCase(),
  global_name: name,
  discriminator: '0',
  avatar: null,
  bot: isBot,
});
const memberPayload = (person: Person): object => ({
  nick: null,
  roles: [],
  joined_at: '2026-01-01T00:00:00.000Z',
  deaf: false,
  mute: false,
  flags: 0,
  avatar: null,
  premium_since: null,
  pending: false,
  permissions: (
    USUAL_MEMBER |
    (person.isManager ? MANAGE_SERVER : 0n) |
    (person.mayNotOpenThreads === true ? 0n : CREATE_PUBLIC_THREADS)
  ).toString(),
});

/** Whom the bot was installed by: the server, or the person on their own account. */
const installedBy = (guild: Guild, person: Person): Record<string, string> =>
  guild.hasBot ? { 0: guild.id } : { 1: person.id };

/** An interaction's common parts; `isUserInstall`: the bot is on the asker's account, not in the server. */
export const commonParts = (
  world: World,
  person: Person,
  channel: Channel,
  interaction: Interaction,
): Record<string, unknown> => {
  const guild = channel.guildId === null ? undefined : world.guilds.get(channel.guildId);
  return {
    id: interaction.id,
    application_id: world.applicationId,
    token: interaction.token,
    version: 1,
    channel_id: channel.id,
    channel: {
      id: channel.id,
      type: channel.type,
      name: channel.name,
      ...(channel.guildId === null ? {} : { guild_id: channel.guildId }),
      ...(channel.parentId === null ? {} : { parent_id: channel.parentId }),
    },
    app_permissions: channel.appPermissions.toString(),
    locale: 'en-GB',
    entitlements: [],
    attachment_size_limit: 10_485_760,
    authorizing_integration_owners: guild === undefined ? { 0: '0' } : installedBy(guild, person),
    context: guild === undefined ? 1 : 0,
    ...(guild === undefined
      ? { user: userPayload(person) }
      : {
          guild_id: guild.id,
          guild: { id: guild.id, locale: 'en-GB', features: [] },
          guild_locale: 'en-GB',
          member: { ...memberPayload(person), user: userPayload(person) },
        }),
  };
};

export const newInteraction = (
  world: World,
  person: Person,
  channel: Channel,
  pressedMessageId: string | null = null,
): Interaction => {
  const id = snowflake();
  const interaction: Interaction = {
    id,
    token: `${id}.${randomBytes(24).toString('base64url')}`,
    personId: person.id,
    channelId: channel.id,
    sentMs: Date.now(),
    pressedMessageId,
    firstResponse: null,
    originalId: null,
    messageIds: [],
    suggestions: null,
  };
  world.interactions.set(id, interaction);
  return interaction;
};

/** What a member is offered where they are: the server's own commands and the global ones. */
export const offeredCommand = (
  world: World,
  person: Person,
  channel: Channel,
  type: ApplicationCommandType,
  name: string,
): CommandPayload => {
  const guild = channel.guildId === null ? undefined : world.guilds.get(channel.guildId);
  const all = [...(world.commands.get(channel.guildId ?? '') ?? []), ...(world.commands.get('everywhere') ?? [])];
  const command = all.find((candidate) => candidate.type === type && candidate.name === name);
  if (command === undefined) throw new Error(`nothing named ${name} is registered here`);
  const context = guild === undefined ? InteractionContextType.BotDM : InteractionContextType.Guild;
  if (!command.contexts.includes(context))
    throw new Error(
      `${name} is not offered in ${context === InteractionContextType.BotDM ? 'direct messages' : 'servers'}`,
    );
  if (!command.integration_types.includes(guild?.hasBot === false ? 1 : 0))
    throw new Error(`${name} is not offered by this kind of installation`);
  const needed = BigInt(command.default_member_permissions ?? 0);
  const held = person.isManager ? USUAL_MEMBER | MANAGE_SERVER : USUAL_MEMBER;
  if (guild !== undefined && (held & needed) !== needed) throw new Error(`${name} is not offered to ${person.name}`);
  return command;
};

const checkValue = (option: OptionPayload, value: OptionValue): void => {
  const wrong = (what: string): never => {
    throw new Error(`Discord would not send ${option.name}: ${what}`);
  };
  switch (option.type) {
    case Kind.String:
      if (typeof value !== 'string') wrong('text is wanted');
      else if (value.length > (option.max_length ?? 6000) || value.length < (option.min_length ?? 0))
        wrong(`${value.length} characters`);
      else if (option.choices !== undefined && !option.choices.some((choice) => choice.value === value))
        wrong('not one of the choices');
      break;
    case Kind.Integer:
    case Kind.Number:
      if (typeof value !== 'number' || (option.type === Kind.Integer && !Number.isInteger(value)))
        wrong('a number is wanted');
      else if (value < (option.min_value ?? -Infinity) || value > (option.max_value ?? Infinity)) wrong('out of range');
      break;
    case Kind.Boolean:
      if (typeof value !== 'boolean') wrong('yes or no is wanted');
      break;
    case Kind.Attachment:
      if (!isFile(value)) wrong('a file is wanted');
      break;
    case Kind.User:
      if (!isPerson(value)) wrong('a member is wanted');
      break;
    default:
      wrong('an unknown kind');
  }
};

/** `focused` names the option being typed; it and those missing are then not checked. */
export const slashData = (
  world: World,
  command: CommandPayload,
  values: Readonly<Record<string, OptionValue>>,
  focused?: string,
): object => {
  const options = command.options ?? [];
  for (const name of Object.keys(values)) {
    if (!options.some((option) => option.name === name)) throw new Error(`${command.name} has no option ${name}`);
  }
  if (focused === undefined) {
    for (const option of options) {
      if (option.required && values[option.name] === undefined) throw new Error(`${command.name} needs ${option.name}`);
    }
  } else if (options.find(({ name }) => name === focused)?.autocomplete !== true) {
    throw new Error(`${focused} offers no suggestions`);
  }
  const people = Object.values(values).filter(isPerson);
  const attachments = new Map(
    Object.entries(values).flatMap(([name, value]) => (isFile(value) ? [[name, upload(world, value)] as const] : [])),
  );
  return {
    id: snowflake(),
    type: 1,
    name: command.name,
    options: options.flatMap((option) => {
      const value = values[option.name];
      if (value === undefined) return [];
      if (option.name !== focused) checkValue(option, value);
      return [
        {
          name: option.name,
          type: option.type,
          value: attachments.get(option.name)?.id ?? (isPerson(value) ? value.id : value),
          ...(option.name === focused ? { focused: true } : {}),
        },
      ];
    }),
    ...(people.length === 0 && attachments.size === 0
      ? {}
      : {
          resolved: {
            attachments: Object.fromEntries(
              [...attachments.values()].map((file) => [file.id, attachmentPayload(world, file)]),
            ),
            users: Object.fromEntries(people.map((person) => [person.id, userPayload(person)])),
            members: Object.fromEntries(people.map((person) => [person.id, memberPayload(person)])),
          },
        }),
  };
};

export const menuOnPerson = (name: string, target: Person): object => ({
  id: snowflake(),
  type: 2,
  name,
  target_id: target.id,
  resolved: { users: { [target.id]: userPayload(target) }, members: { [target.id]: memberPayload(target) } },
});

export const menuOnMessage = (world: World, name: string, message: Message, author: Person): object => ({
  id: snowflake(),
  type: 3,
  name,
  target_id: message.id,
  resolved: { messages: { [message.id]: { ...messagePayload(world, message), author: userPayload(author) } } },
});

/** A button or select option on the message, by its label. */
export const pressData = (message: Message, label: string): object => {
  const offered: string[] = [];
  for (const component of message.components.flatMap((row) => row.components)) {
    if (component.type === ComponentType.Button && 'custom_id' in component) {
      if (component.label === label) return { custom_id: component.custom_id, component_type: 2 };
      offered.push(component.label ?? '');
    }
    if (component.type === ComponentType.StringSelect) {
      const option = component.options.find((candidate) => candidate.label === label);
      if (option !== undefined) return { custom_id: component.custom_id, component_type: 3, values: [option.value] };
      offered.push(...component.options.map((candidate) => candidate.label));
    }
  }
  throw new Error(`no choice "${label}" on that message; there are: ${offered.join(', ') || 'none'}`);
};

interface ShownForm {
  readonly custom_id: string;
  readonly components: readonly {
    readonly component: {
      readonly type: number;
      readonly custom_id: string;
      readonly max_length?: number;
      readonly required?: boolean;
    };
  }[];
}

/** A form filled in and sent; fields left out stay empty, as far as the form allows that. */
export const submitData = (
  world: World,
  shown: unknown,
  values: Readonly<Record<string, string | SentFile>>,
): object => {
  const form = shown as ShownForm;
  const known = form.components.map(({ component }) => component.custom_id);
  for (const name of Object.keys(values)) {
    if (!known.includes(name)) throw new Error(`the form has no field ${name}; there are: ${known.join(', ')}`);
  }
  const attachments: Attachment[] = [];
  const components = form.components.map(
    ({ component: { type, custom_id: id, max_length: most = 4000, required } }) => {
      const value = values[id] ?? '';
      if (required === true && value === '') throw new Error(`the form needs ${id}`);
      if (typeof value !== 'string') {
        if (type !== Number(ComponentType.FileUpload)) throw new Error(`${id} takes no file`);
        attachments.push(upload(world, value));
        return {
          type: ComponentType.Label,
          id: 1,
          component: { type, id: 2, custom_id: id, values: [attachments.at(-1)?.id] },
        };
      }
      if (type === Number(ComponentType.FileUpload))
        return { type: ComponentType.Label, id: 1, component: { type, id: 2, custom_id: id, values: [] } };
      if (value.length > most) throw new Error(`Discord would not take ${value.length} characters in ${id}`);
      return { type: ComponentType.Label, id: 1, component: { type, id: 2, custom_id: id, value } };
    },
  );
  return {
    custom_id: form.custom_id,
    components,
    resolved: { attachments: Object.fromEntries(attachments.map((file) => [file.id, attachmentPayload(world, file)])) },
  };
};
