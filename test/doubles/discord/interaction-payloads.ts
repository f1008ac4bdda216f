/** Interactions as Discord sends them, made from what was registered; what Discord's own client would refuse is refused here. */
import { randomBytes } from 'node:crypto';
import {
  ApplicationCommandOptionType as Kind,
  InteractionContextType,
  type ApplicationCommandType,
} from 'discord-api-types/v10';
import type { CommandPayload, OptionPayload } from '../../../bot/platforms/discord/connect/command-payloads.js';
import { messagePayload } from './rest-message.js';
import { snowflake } from './snowflake.js';
import {
  attachmentPayload,
  isFile,
  isPerson,
  MANAGE_SERVER,
  memberPayload,
  upload,
  userPayload,
  USUAL_MEMBER,
  type OptionValue,
} from './people-and-files.js';
import type { Attachment, Channel, Guild, Interaction, Message, Person, World } from './world.js';

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
  checkOffered(command, person, guild);
  return command;
};

const checkOffered = (command: CommandPayload, person: Person, guild: Guild | undefined): void => {
  const { name } = command;
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
};

/** What is wrong with a value for an option of its kind; undefined where Discord would send it. */
type Check = (option: OptionPayload, value: OptionValue) => string | undefined;

const textFault: Check = ({ min_length: least = 0, max_length: most = 6000, choices }, value) => {
  if (typeof value !== 'string') return 'text is wanted';
  if (value.length > most || value.length < least) return `${value.length} characters`;
  const isChoice = choices === undefined || choices.some((choice) => choice.value === value);
  return isChoice ? undefined : 'not one of the choices';
};

const numberFault: Check = ({ type, min_value: least = -Infinity, max_value: most = Infinity }, value) => {
  if (typeof value !== 'number' || (type === Kind.Integer && !Number.isInteger(value))) return 'a number is wanted';
  return value < least || value > most ? 'out of range' : undefined;
};

const CHECKS: ReadonlyMap<number, Check> = new Map<number, Check>([
  [Kind.String, textFault],
  [Kind.Integer, numberFault],
  [Kind.Number, numberFault],
  [Kind.Boolean, (_option, value) => (typeof value === 'boolean' ? undefined : 'yes or no is wanted')],
  [Kind.Attachment, (_option, value) => (isFile(value) ? undefined : 'a file is wanted')],
  [Kind.User, (_option, value) => (isPerson(value) ? undefined : 'a member is wanted')],
]);

const checkValue = (option: OptionPayload, value: OptionValue): void => {
  const check = CHECKS.get(option.type);
  const fault = check === undefined ? 'an unknown kind' : check(option, value);
  if (fault !== undefined) throw new Error(`Discord would not send ${option.name}: ${fault}`);
};

type Values = Readonly<Record<string, OptionValue>>;

const checkNames = ({ name: command, options = [] }: CommandPayload, values: Values, focused?: string): void => {
  for (const name of Object.keys(values)) {
    if (!options.some((option) => option.name === name)) throw new Error(`${command} has no option ${name}`);
  }
  if (focused === undefined) {
    const missing = options.find(({ name, required }) => required && values[name] === undefined);
    if (missing !== undefined) throw new Error(`${command} needs ${missing.name}`);
  } else if (options.find(({ name }) => name === focused)?.autocomplete !== true) {
    throw new Error(`${focused} offers no suggestions`);
  }
};

/** The people and files that the values speak of, in full. */
const resolvedParts = (world: World, people: readonly Person[], files: readonly Attachment[]): object =>
  people.length === 0 && files.length === 0
    ? {}
    : {
        resolved: {
          attachments: Object.fromEntries(files.map((file) => [file.id, attachmentPayload(world, file)])),
          users: Object.fromEntries(people.map((person) => [person.id, userPayload(person)])),
          members: Object.fromEntries(people.map((person) => [person.id, memberPayload(person)])),
        },
      };

/** `focused` names the option being typed; it and those missing are then not checked. */
export const slashData = (world: World, command: CommandPayload, values: Values, focused?: string): object => {
  checkNames(command, values, focused);
  const attachments = new Map(
    Object.entries(values).flatMap(([name, value]) => (isFile(value) ? [[name, upload(world, value)] as const] : [])),
  );
  const sentValue = (name: string, value: OptionValue): unknown =>
    attachments.get(name)?.id ?? (isPerson(value) ? value.id : value);
  return {
    id: snowflake(),
    type: 1,
    name: command.name,
    options: (command.options ?? []).flatMap((option) => {
      const { name, type } = option;
      const value = values[name];
      if (value === undefined) return [];
      if (name !== focused) checkValue(option, value);
      return [{ name, type, value: sentValue(name, value), ...(name === focused ? { focused: true } : {}) }];
    }),
    ...resolvedParts(world, Object.values(values).filter(isPerson), [...attachments.values()]),
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
