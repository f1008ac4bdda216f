/** What the double does for each REST request the bot may make. */
import type { APIEmbed } from 'discord-api-types/v10';
import type { CommandPayload } from '../../../bot/platforms/discord/connect/command-payloads.js';
import type { Row } from '../../../bot/platforms/discord/write/write-choices.js';
import type { Json } from './request-rules.js';
import { snowflake } from './snowflake.js';
import {
  addChannel,
  addMessage,
  directChannel,
  type Attachment,
  type Interaction,
  type Message,
  type World,
} from './world.js';

export interface RestRequest {
  readonly method: string;
  readonly path: string;
  readonly query: URLSearchParams;
  readonly body: unknown;
  readonly files: readonly { readonly name: string; readonly contentType: string; readonly bytes: Buffer }[];
}
export interface RestAnswer {
  readonly status: number;
  readonly body?: unknown;
}

export interface RestOptions {
  readonly firstResponseMs: number;
  readonly gatewayUrl: () => string;
  readonly recommendedShards: number;
}

const EPHEMERAL = 64;
const refusal = (status: number, code: number, message: string): RestAnswer => ({ status, body: { code, message } });
const UNKNOWN_INTERACTION = refusal(404, 10062, 'Unknown interaction');
const UNKNOWN_WEBHOOK = refusal(404, 10015, 'Unknown Webhook');
const UNKNOWN_MESSAGE = refusal(404, 10008, 'Unknown Message');
const UNKNOWN_CHANNEL = refusal(404, 10003, 'Unknown Channel');
const MISSING_ACCESS = refusal(403, 50001, 'Missing Access');

export const messagePayload = (world: World, message: Message): object => ({
  id: message.id,
  channel_id: message.channelId,
  type: 0,
  tts: false,
  pinned: false,
  mention_everyone: false,
  mentions: [],
  mention_roles: [],
  author: {
    id: world.applicationId,
    username: 'pierhand',
    discriminator: '0',
    global_name: null,
    avatar: null,
    bot: true,
  },
  timestamp: new Date().toISOString(),
  edited_timestamp: null,
  flags: message.onlyFor === null ? 0 : EPHEMERAL,
  content: message.content,
  embeds: message.embeds,
  components: message.components,
  attachments: message.attachments.map(({ id, filename, description, bytes }) => ({
    id,
    filename,
    description,
    size: bytes.length,
    url: `${world.mediaUrl}/${id}/${filename}`,
    proxy_url: `${world.mediaUrl}/${id}/${filename}`,
  })),
});

const attachmentsOf = ({ files }: RestRequest, data: Json): readonly Attachment[] =>
  ((data.attachments ?? []) as readonly Json[]).flatMap((listed) => {
    const file = files[Number(listed.id)];
    return file === undefined
      ? []
      : [
          {
            id: snowflake(),
            filename: typeof listed.filename === 'string' ? listed.filename : file.name,
            description: typeof listed.description === 'string' ? listed.description : '',
            contentType: file.contentType,
            bytes: file.bytes,
          },
        ];
  });

const contentOf = (request: RestRequest, data: Json) => ({
  content: typeof data.content === 'string' ? data.content : '',
  embeds: (data.embeds ?? []) as readonly APIEmbed[],
  components: (data.components ?? []) as readonly Row[],
  attachments: attachmentsOf(request, data),
});

/** Only the keys given change, as Discord has it. */
const edit = (message: Message, request: RestRequest, data: Json): void => {
  if (data.content !== undefined) message.content = typeof data.content === 'string' ? data.content : '';
  if (data.embeds !== undefined) message.embeds = (data.embeds ?? []) as readonly APIEmbed[];
  if (data.components !== undefined) message.components = (data.components ?? []) as readonly Row[];
  if (data.attachments !== undefined || request.files.length > 0) message.attachments = attachmentsOf(request, data);
  message.isPending = false;
  message.edits++;
};

const callback = (
  world: World,
  request: RestRequest,
  [id = '', token = '']: readonly string[],
  { firstResponseMs }: RestOptions,
): RestAnswer => {
  const interaction = world.interactions.get(id);
  if (interaction?.token !== token) return UNKNOWN_INTERACTION;
  if (interaction.firstResponse !== null) return refusal(400, 40060, 'Interaction has already been acknowledged.');
  const afterMs = Date.now() - interaction.sentMs;
  if (afterMs > firstResponseMs) return UNKNOWN_INTERACTION;
  const { type, data = {} } = request.body as { type: number; data?: Json };
  interaction.firstResponse = { type, afterMs, data };
  if (type === 8) {
    interaction.suggestions = (data.choices ?? []) as { name: string; value: string }[];
    return { status: 204 };
  }
  if (type === 9) return { status: 204 };
  if (type === 4 || type === 5) {
    const message = addMessage(world, {
      channelId: interaction.channelId,
      authorId: world.applicationId,
      interactionId: id,
      onlyFor: (Number(data.flags ?? 0) & EPHEMERAL) === 0 ? null : interaction.personId,
      ...contentOf(request, data),
      isPending: type === 5,
    });
    interaction.originalId = message.id;
    return request.query.get('with_response') === 'true'
      ? {
          status: 200,
          body: { interaction: { id, type: 2 }, resource: { type, message: messagePayload(world, message) } },
        }
      : { status: 204 };
  }
  const pressed = interaction.pressedMessageId === null ? undefined : world.messages.get(interaction.pressedMessageId);
  interaction.originalId = interaction.pressedMessageId;
  if (type === 7 && pressed !== undefined) edit(pressed, request, data);
  return { status: 204 };
};

/** The double's tokens begin with their interaction's id. */
const byToken = (world: World, token: string): Interaction | undefined => {
  const interaction = world.interactions.get(token.split('.')[0] ?? '');
  return interaction?.token === token ? interaction : undefined;
};

const webhook = (
  world: World,
  request: RestRequest,
  [, token = '', which]: readonly (string | undefined)[],
): RestAnswer => {
  const interaction = byToken(world, token);
  if (interaction?.firstResponse == null || Date.now() - interaction.sentMs > 15 * 60_000) return UNKNOWN_WEBHOOK;
  const original = interaction.originalId === null ? undefined : world.messages.get(interaction.originalId);
  const data = (request.body ?? {}) as Json;
  if (request.method === 'POST') {
    // The first follow-up to an acknowledgement takes its place, and its openness, whatever its own flags say.
    if (original?.isPending === true) {
      edit(original, request, { content: null, ...data });
      return { status: 200, body: messagePayload(world, original) };
    }
    const message = addMessage(world, {
      channelId: interaction.channelId,
      authorId: world.applicationId,
      interactionId: interaction.id,
      onlyFor: (Number(data.flags ?? 0) & EPHEMERAL) === 0 ? null : interaction.personId,
      ...contentOf(request, data),
    });
    return { status: 200, body: messagePayload(world, message) };
  }
  const message = which === '@original' ? original : world.messages.get(which ?? '');
  if (message === undefined || message.isDeleted) return UNKNOWN_MESSAGE;
  if (request.method === 'PATCH') edit(message, request, data);
  if (request.method !== 'DELETE') return { status: 200, body: messagePayload(world, message) };
  message.isDeleted = true;
  return { status: 204 };
};

const channelMessage = (
  world: World,
  request: RestRequest,
  [channelId = '', messageId]: readonly (string | undefined)[],
): RestAnswer => {
  const channel = world.channels.get(channelId);
  if (channel === undefined) return UNKNOWN_CHANNEL;
  if (!channel.isOpen) return MISSING_ACCESS;
  const recipient = channel.recipientId === null ? undefined : world.people.get(channel.recipientId);
  if (recipient?.takesDirectMessages === false) return refusal(403, 50007, 'Cannot send messages to this user');
  const data = (request.body ?? {}) as Json;
  if (messageId !== undefined) {
    const message = world.messages.get(messageId);
    if (message === undefined || message.isDeleted || message.onlyFor !== null) return UNKNOWN_MESSAGE;
    edit(message, request, data);
    return { status: 200, body: messagePayload(world, message) };
  }
  const nonce = data.enforce_nonce === true ? String(data.nonce) : null;
  const before =
    nonce === null
      ? undefined
      : [...world.messages.values()].find((message) => message.nonce === nonce && message.channelId === channelId);
  const message =
    before ?? addMessage(world, { channelId, authorId: world.applicationId, nonce, ...contentOf(request, data) });
  return { status: 200, body: messagePayload(world, message) };
};

const openThread = (
  world: World,
  request: RestRequest,
  [channelId = '', messageId = '']: readonly string[],
): RestAnswer => {
  const channel = world.channels.get(channelId);
  const message = world.messages.get(messageId);
  if (channel === undefined) return UNKNOWN_CHANNEL;
  if (message === undefined || message.onlyFor !== null) return UNKNOWN_MESSAGE;
  if ((channel.appPermissions & (1n << 35n)) === 0n) return refusal(403, 50013, 'Missing Permissions');
  if ([...world.channels.values()].some(({ id }) => id === messageId))
    return refusal(400, 160004, 'A thread has already been created for this message');
  // A thread made from a message has that message's id.
  const thread = addChannel(world, {
    id: messageId,
    name: String((request.body as Json).name),
    type: 11,
    guildId: channel.guildId,
    parentId: channelId,
    appPermissions: channel.appPermissions,
  });
  return {
    status: 201,
    body: { id: thread.id, type: 11, name: thread.name, guild_id: thread.guildId, parent_id: channelId },
  };
};

const gatewayBot = ({ gatewayUrl, recommendedShards }: RestOptions): RestAnswer => ({
  status: 200,
  body: {
    url: gatewayUrl(),
    shards: recommendedShards,
    session_start_limit: { total: 1000, remaining: 999, reset_after: 14_400_000, max_concurrency: 16 },
  },
});

const register = (world: World, request: RestRequest, [, , guildId]: readonly (string | undefined)[]): RestAnswer => {
  if (guildId !== undefined && world.guilds.get(guildId)?.hasBot !== true) return MISSING_ACCESS;
  world.commands.set(guildId ?? 'everywhere', request.body as readonly CommandPayload[]);
  return {
    status: 200,
    body: (request.body as readonly CommandPayload[]).map((command) => ({
      ...command,
      id: snowflake(),
      application_id: world.applicationId,
      version: snowflake(),
    })),
  };
};

type Handler = (world: World, request: RestRequest, parts: readonly string[], options: RestOptions) => RestAnswer;
const ROUTES: readonly (readonly [RegExp, Handler])[] = [
  [/^GET \/gateway\/bot$/u, (_world, _request, _parts, options) => gatewayBot(options)],
  [/^PUT \/applications\/(\d+)(\/guilds\/(\d+))?\/commands$/u, register],
  [/^POST \/interactions\/(\d+)\/([^/]+)\/callback$/u, callback],
  [/^POST \/webhooks\/(\d+)\/([^/]+)$/u, webhook],
  [/^(?:GET|PATCH|DELETE) \/webhooks\/(\d+)\/([^/]+)\/messages\/([^/]+)$/u, webhook],
  [/^POST \/channels\/(\d+)\/messages$/u, channelMessage],
  [/^PATCH \/channels\/(\d+)\/messages\/(\d+)$/u, channelMessage],
  [/^POST \/channels\/(\d+)\/messages\/(\d+)\/threads$/u, openThread],
  [
    /^PUT \/channels\/(\d+)\/thread-members\/(\d+)$/u,
    (world, _request, [threadId = '', personId = '']) => {
      world.channels.get(threadId)?.threadMembers.add(personId);
      return { status: 204 };
    },
  ],
  [
    /^POST \/users\/@me\/channels$/u,
    (world, request) => {
      const { recipient_id: personId } = request.body as { recipient_id: string };
      if (!world.people.has(personId)) return refusal(404, 10013, 'Unknown User');
      return { status: 200, body: { id: directChannel(world, personId).id, type: 1 } };
    },
  ],
];

export const carryOut = (world: World, request: RestRequest, options: RestOptions): RestAnswer => {
  const line = `${request.method} ${request.path}`;
  for (const [pattern, handler] of ROUTES) {
    const match = pattern.exec(line);
    if (match !== null) return handler(world, request, match.slice(1), options);
  }
  return refusal(404, 0, '404: Not Found');
};
