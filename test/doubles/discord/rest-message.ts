/** Requests and answers of the double's REST side, and messages as they go through both. */
import type { APIEmbed } from 'discord-api-types/v10';
import type { Row } from '../../../bot/platforms/discord/write/write-choices.js';
import type { Json } from './request-rules.js';
import { snowflake } from './snowflake.js';
import type { Attachment, Message, World } from './world.js';

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
  /** Of so many requests one is held against the published schemas; 1: each. */
  readonly checkEvery: number;
}

export const EPHEMERAL = 64;
export const refusal = (status: number, code: number, message: string): RestAnswer => ({
  status,
  body: { code, message },
});
export const UNKNOWN_INTERACTION = refusal(404, 10062, 'Unknown interaction');
export const UNKNOWN_WEBHOOK = refusal(404, 10015, 'Unknown Webhook');
export const UNKNOWN_MESSAGE = refusal(404, 10008, 'Unknown Message');
export const UNKNOWN_CHANNEL = refusal(404, 10003, 'Unknown Channel');
export const MISSING_ACCESS = refusal(403, 50001, 'Missing Access');

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

export const contentOf = (request: RestRequest, data: Json) => ({
  content: typeof data.content === 'string' ? data.content : '',
  embeds: (data.embeds ?? []) as readonly APIEmbed[],
  components: (data.components ?? []) as readonly Row[],
  attachments: attachmentsOf(request, data),
});

/** Only the keys given change, as Discord has it. */
export const edit = (message: Message, request: RestRequest, data: Json): void => {
  if (data.content !== undefined) message.content = typeof data.content === 'string' ? data.content : '';
  if (data.embeds !== undefined) message.embeds = (data.embeds ?? []) as readonly APIEmbed[];
  if (data.components !== undefined) message.components = (data.components ?? []) as readonly Row[];
  if (data.attachments !== undefined || request.files.length > 0) message.attachments = attachmentsOf(request, data);
  message.isPending = false;
  message.edits++;
};
