/** What the Discord double remembers: servers, channels, members, messages, commands and interactions under way. */
import { EventEmitter } from 'node:events';
import type { APIEmbed } from 'discord-api-types/v10';
import type { CommandPayload } from '../../../bot/platforms/discord/connect/command-payloads.js';
import type { Row } from '../../../bot/platforms/discord/write/write-choices.js';
import { snowflake } from './snowflake.js';

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly isManager: boolean;
  readonly isBot: boolean;
  /** Their role lacks Create Public Threads, which members usually have. */
  readonly mayNotOpenThreads?: boolean;
  takesDirectMessages: boolean;
}
export interface Guild {
  readonly id: string;
  readonly name: string;
  readonly ownerId: string;
  hasBot: boolean;
}
export interface Channel {
  readonly id: string;
  readonly name: string;
  /** 0 text, 1 direct message, 11 public thread. */
  readonly type: number;
  readonly guildId: string | null;
  readonly parentId: string | null;
  readonly recipientId: string | null;
  /** What the bot may do here, as Discord's permission bits. */
  appPermissions: bigint;
  /** Whether the bot may look in at all. */
  isOpen: boolean;
  readonly threadMembers: Set<string>;
}
export interface Attachment {
  readonly id: string;
  readonly filename: string;
  readonly description: string;
  readonly contentType: string;
  readonly bytes: Buffer;
}
export interface Message {
  readonly id: string;
  readonly channelId: string;
  readonly authorId: string;
  readonly interactionId: string | null;
  readonly nonce: string | null;
  /** The one who alone sees it, or null. */
  readonly onlyFor: string | null;
  content: string;
  embeds: readonly APIEmbed[];
  components: readonly Row[];
  attachments: readonly Attachment[];
  /** "… is thinking". */
  isPending: boolean;
  isDeleted: boolean;
  edits: number;
}
export interface Interaction {
  readonly id: string;
  readonly token: string;
  readonly personId: string;
  readonly channelId: string;
  readonly sentMs: number;
  readonly pressedMessageId: string | null;
  firstResponse: { readonly type: number; readonly afterMs: number; readonly data?: unknown } | null;
  originalId: string | null;
  readonly messageIds: string[];
  suggestions: readonly { readonly name: string; readonly value: string }[] | null;
}

/** A map that forgets its oldest, so that hours of traffic do not fill the double. */
export class BoundedMap<V> extends Map<string, V> {
  constructor(private readonly most: number) {
    super();
  }
  override set(key: string, value: V): this {
    super.set(key, value);
    if (this.size > this.most) {
      const oldest = this.keys().next().value;
      if (oldest !== undefined) this.delete(oldest);
    }
    return this;
  }
}

export interface World {
  readonly token: string;
  readonly applicationId: string;
  readonly guilds: Map<string, Guild>;
  readonly channels: Map<string, Channel>;
  readonly people: Map<string, Person>;
  readonly messages: BoundedMap<Message>;
  readonly interactions: BoundedMap<Interaction>;
  /** By server id, or 'everywhere'. */
  readonly commands: Map<string, readonly CommandPayload[]>;
  /** Emits 'change' after every request, and the interaction's id after one that answers an interaction. */
  readonly changes: EventEmitter;
  /** Where members' files are handed out, with the port once it is known. */
  mediaUrl: string;
  readonly files: BoundedMap<Attachment>;
}

// View, send, embed links, attach files, create public threads, send in threads: what deploy/README.md asks for.
export const USUAL_PERMISSIONS = (1n << 10n) | (1n << 11n) | (1n << 14n) | (1n << 15n) | (1n << 35n) | (1n << 38n);

export const createWorld = (token: string): World => {
  const changes = new EventEmitter();
  changes.setMaxListeners(0);
  return {
    token,
    changes,
    applicationId: snowflake(),
    guilds: new Map(),
    channels: new Map(),
    people: new Map(),
    messages: new BoundedMap(20_000),
    interactions: new BoundedMap(20_000),
    commands: new Map(),
    mediaUrl: '',
    files: new BoundedMap(1000),
  };
};

export const addChannel = (world: World, parts: Pick<Channel, 'name' | 'type'> & Partial<Channel>): Channel => {
  const channel: Channel = {
    id: snowflake(),
    guildId: null,
    parentId: null,
    recipientId: null,
    appPermissions: USUAL_PERMISSIONS,
    isOpen: true,
    threadMembers: new Set(),
    ...parts,
  };
  world.channels.set(channel.id, channel);
  return channel;
};

export const addMessage = (
  world: World,
  parts: Pick<Message, 'channelId' | 'authorId'> & Partial<Message>,
): Message => {
  const message: Message = {
    id: snowflake(),
    interactionId: null,
    nonce: null,
    onlyFor: null,
    content: '',
    embeds: [],
    components: [],
    attachments: [],
    isPending: false,
    isDeleted: false,
    edits: 0,
    ...parts,
  };
  world.messages.set(message.id, message);
  if (message.interactionId !== null) world.interactions.get(message.interactionId)?.messageIds.push(message.id);
  return message;
};

export const directChannel = (world: World, personId: string): Channel =>
  [...world.channels.values()].find(({ recipientId }) => recipientId === personId) ??
  addChannel(world, { name: 'direct', type: 1, recipientId: personId });

/** What one person sees in a channel. */
export const visibleTo = (world: World, channelId: string, personId: string): readonly Message[] =>
  [...world.messages.values()].filter(
    (message) =>
      message.channelId === channelId &&
      !message.isDeleted &&
      (message.onlyFor === null || message.onlyFor === personId),
  );
