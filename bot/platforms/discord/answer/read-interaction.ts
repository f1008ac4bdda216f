/** What a Discord interaction says, in the terms of commands: who asks, and which option values came. */
import {
  ApplicationCommandOptionType,
  InteractionContextType,
  PermissionFlagsBits,
  type APIApplicationCommandAutocompleteInteraction,
  type APIChatInputApplicationCommandInteraction,
  type APIAttachment,
  type APIInteraction,
  type APIUser,
} from 'discord-api-types/v10';
import type { MemberFile } from '../../../ground/member-file.js';
import { tidy } from '../../../ground/tidy.js';
import type { Asker } from '../../../commands/core/command.js';

export const PREFIX = 'discord:';
/** "discord:123" → "123". */
export const bareId = (id: string): string => (id.startsWith(PREFIX) ? id.slice(PREFIX.length) : id);

/** Under which the store knows that an interaction has been taken. */
export const keyOf = ({ id }: Pick<APIInteraction, 'id'>): string => `${PREFIX}${id}`;

const DISPLAY_NAME_LIMIT = 40;

/** The name others see, made safe and short. */
export const displayName = (user: Pick<APIUser, 'username' | 'global_name'>, nick?: string | null): string =>
  tidy(nick ?? user.global_name ?? user.username, DISPLAY_NAME_LIMIT) || 'a member';

const hasPermission = (bits: string, permission: bigint): boolean => {
  const held = BigInt(bits);
  return (held & PermissionFlagsBits.Administrator) !== 0n || (held & permission) === permission;
};

/** Whether the bot itself holds all these permissions where the interaction came from. */
export const botMay = (interaction: APIInteraction, ...permissions: readonly bigint[]): boolean =>
  permissions.every((permission) => hasPermission(interaction.app_permissions, permission));

/** Whether the one who asks holds them there; nobody gets more through the bot than they have. */
export const memberMay = (interaction: APIInteraction, ...permissions: readonly bigint[]): boolean => {
  const held = interaction.member?.permissions;
  return held !== undefined && permissions.every((permission) => hasPermission(held, permission));
};

/** True where the bot is a member of the server, not only installed to the asker's account. */
export const isInServer = (interaction: APIInteraction): boolean => {
  const owner = (
    interaction.authorizing_integration_owners as Readonly<Record<string, string | undefined>> | undefined
  )?.['0'];
  return interaction.guild_id !== undefined && owner === interaction.guild_id;
};

export const askerOf = (interaction: APIInteraction): Asker => {
  const user = interaction.member?.user ?? interaction.user;
  if (user === undefined) throw new Error('an interaction without a user');
  const memberId = `${PREFIX}${user.id}`;
  const channelId = interaction.channel?.id;
  const inServer = interaction.guild_id !== undefined;
  return {
    platform: 'discord',
    memberId,
    displayName: displayName(user, interaction.member?.nick),
    clubId: inServer ? `${PREFIX}${interaction.guild_id}` : memberId,
    channelId: channelId === undefined ? memberId : `${PREFIX}${channelId}`,
    // Outside a server a member's club is the member alone.
    isManager:
      interaction.member === undefined ||
      hasPermission(interaction.member.permissions, PermissionFlagsBits.ManageGuild),
    // A group conversation may come without saying so: only what is surely between the two of us is private.
    isPrivate: !inServer && interaction.context === InteractionContextType.BotDM,
  };
};

/** Option values by name, typed as Discord typed them; a member becomes "discord:123", an attachment a MemberFile. */
export const rawOptions = (
  interaction: APIChatInputApplicationCommandInteraction,
  fileOf: (sent: APIAttachment) => MemberFile,
): ReadonlyMap<string, unknown> => {
  const raw = new Map<string, unknown>();
  for (const option of interaction.data.options ?? []) {
    if (!('value' in option)) continue;
    if (option.type === ApplicationCommandOptionType.Attachment) {
      const attachment = interaction.data.resolved?.attachments?.[option.value];
      if (attachment !== undefined) raw.set(option.name, fileOf(attachment));
      continue;
    }
    raw.set(option.name, option.type === ApplicationCommandOptionType.User ? `${PREFIX}${option.value}` : option.value);
  }
  return raw;
};

/** The option being typed, and what is typed so far. */
export const focusedOption = (
  interaction: APIApplicationCommandAutocompleteInteraction,
): { readonly name: string; readonly partial: string } | undefined => {
  for (const option of interaction.data.options ?? []) {
    if ('focused' in option && option.focused === true) return { name: option.name, partial: String(option.value) };
  }
  return undefined;
};
