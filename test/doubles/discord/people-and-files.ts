/** Members and their files, as Discord describes them in what it sends. */
import { snowflake } from './snowflake.js';
import type { Attachment, Person, World } from './world.js';

/** A file from a member's device. */
export interface SentFile {
  readonly filename: string;
  readonly contentType: string;
  readonly bytes: Buffer;
}

export type OptionValue = string | number | boolean | Person | SentFile;

export const isFile = (value: OptionValue): value is SentFile => typeof value === 'object' && 'bytes' in value;
export const isPerson = (value: OptionValue): value is Person => typeof value === 'object' && !('bytes' in value);

/** Puts a file where the double hands it out. */
export const upload = (world: World, { filename, contentType, bytes }: SentFile): Attachment => {
  const attachment = { id: snowflake(), filename, description: '', contentType, bytes };
  world.files.set(attachment.id, attachment);
  return attachment;
};

export const attachmentPayload = (world: World, { id, filename, contentType, bytes }: Attachment): object => ({
  id,
  filename,
  content_type: contentType,
  size: bytes.length,
  url: `${world.mediaUrl}/${id}/${filename}`,
  proxy_url: `${world.mediaUrl}/${id}/${filename}`,
});

export const MANAGE_SERVER = 1n << 5n;
const CREATE_PUBLIC_THREADS = 1n << 35n;
export const USUAL_MEMBER = (1n << 10n) | (1n << 11n) | (1n << 31n);

export const userPayload = ({ id, name, isBot }: Person): object => ({
  id,
  username: name.toLowerCase(),
  global_name: name,
  discriminator: '0',
  avatar: null,
  bot: isBot,
});
export const memberPayload = (person: Person): object => ({
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
