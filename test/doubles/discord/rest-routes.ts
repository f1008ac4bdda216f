/** What the double does for each REST request the bot may make. */
import type { CommandPayload } from '../../../bot/platforms/discord/connect/command-payloads.js';
import { callback, webhook } from './interaction-routes.js';
import type { Json } from './request-rules.js';
import {
  contentOf,
  edit,
  messagePayload,
  MISSING_ACCESS,
  refusal,
  UNKNOWN_CHANNEL,
  UNKNOWN_MESSAGE,
  type RestAnswer,
  type RestOptions,
  type RestRequest,
} from './rest-message.js';
import { snowflake } from './snowflake.js';
import { addChannel, addMessage, directChannel, type Message, type World } from './world.js';

const editInChannel = (world: World, request: RestRequest, messageId: string): RestAnswer => {
  const message = world.messages.get(messageId);
  if (message === undefined || message.isDeleted || message.onlyFor !== null) return UNKNOWN_MESSAGE;
  edit(message, request, (request.body ?? {}) as Json);
  return { status: 200, body: messagePayload(world, message) };
};

/** A message sent again under its nonce is shown once. */
const addToChannel = (world: World, request: RestRequest, channelId: string): RestAnswer => {
  const data = (request.body ?? {}) as Json;
  const nonce = data.enforce_nonce === true ? String(data.nonce) : null;
  const isSame = (message: Message): boolean => message.nonce === nonce && message.channelId === channelId;
  const before = nonce === null ? undefined : [...world.messages.values()].find(isSame);
  const message =
    before ?? addMessage(world, { channelId, authorId: world.applicationId, nonce, ...contentOf(request, data) });
  return { status: 200, body: messagePayload(world, message) };
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
  return messageId === undefined ? addToChannel(world, request, channelId) : editInChannel(world, request, messageId);
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
