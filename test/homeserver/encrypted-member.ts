/**
 * A member at a client of their own that encrypts: matrix-js-sdk with its WebAssembly library, another implementation than the bot's.
 * Each call is a device of its own.
 */
import { createCipheriv, createDecipheriv, createHash, randomBytes } from 'node:crypto';
import { createClient, ClientEvent, SyncState, type MatrixClient, type MatrixEvent } from 'matrix-js-sdk';
import type { Account } from './dendrite.js';
import { memberOf, type Member, type SeenEvent } from './member.js';

/** What a member sees of an event: opened, or null content where their device cannot. */
export interface OpenedEvent extends SeenEvent {
  readonly isEncrypted: boolean;
  readonly isUnreadable: boolean;
}

export interface EncryptedMember {
  readonly userId: string;
  readonly deviceId: string;
  readonly client: MatrixClient;
  /** The same account over plain HTTP, for what needs no keys. */
  readonly plain: Member;
  readonly wait: Member['wait'];
  /** A room's events as this device shows them, oldest first. */
  readonly events: (roomId: string) => readonly OpenedEvent[];
  /** Waits until this device knows that a room is encrypted and who is in it or invited, as a person at a client would. */
  readonly knows: (roomId: string, userIds: readonly string[]) => Promise<void>;
  /** Encrypts where the room is encrypted; the event's id. */
  readonly say: (roomId: string, body: string, more?: object) => Promise<string>;
  readonly react: (roomId: string, eventId: string, key: string) => Promise<string>;
  readonly answers: (botId: string, roomId: string, eventId: string, count?: number) => Promise<readonly OpenedEvent[]>;
  readonly stop: () => void;
}

const quiet = {
  trace: () => undefined,
  debug: () => undefined,
  info: () => undefined,
  warn: () => undefined,
  error: () => undefined,
};
const logger = { ...quiet, getChild: () => logger };

const opened = (event: MatrixEvent): OpenedEvent => ({
  type: event.getType(),
  event_id: event.getId() ?? '',
  sender: event.getSender() ?? '',
  origin_server_ts: event.getTs(),
  ...(event.isState() ? { state_key: event.getStateKey() ?? '' } : {}),
  content: {
    ...event.getContent(),
    ...(event.getWireContent()['m.relates_to'] === undefined
      ? {}
      : { 'm.relates_to': event.getWireContent()['m.relates_to'] as object }),
  },
  isEncrypted: event.getWireType() === 'm.room.encrypted',
  isUnreadable: event.isDecryptionFailure(),
});

const repliesTo = (event: OpenedEvent): string | undefined =>
  (event.content['m.relates_to'] as { 'm.in_reply_to'?: { event_id?: string } } | undefined)?.['m.in_reply_to']
    ?.event_id;

/** A new device of the account's. */
export const logIn = async (
  url: string,
  account: Account,
): Promise<{ readonly accessToken: string; readonly deviceId: string }> => {
  const login = await fetch(`${url}/_matrix/client/v3/login`, {
    method: 'POST',
    body: JSON.stringify({
      type: 'm.login.password',
      identifier: { type: 'm.id.user', user: account.name },
      password: account.password,
    }),
  });
  const { access_token: accessToken, device_id: deviceId } = (await login.json()) as Record<string, string>;
  if (accessToken === undefined || deviceId === undefined) throw new Error(`no device for ${account.name}`);
  return { accessToken, deviceId };
};

export const encryptedMember = async (url: string, account: Account): Promise<EncryptedMember> => {
  const { accessToken, deviceId } = await logIn(url, account);
  const client = createClient({ baseUrl: url, userId: account.userId, accessToken, deviceId, logger });
  await client.initRustCrypto({ useIndexedDB: false });
  await client.startClient({ initialSyncLimit: 100 });
  await new Promise<void>((resolve) => {
    client.on(ClientEvent.Sync, (state) => {
      if (state === SyncState.Prepared) resolve();
    });
  });
  const plain = memberOf(url, { ...account, accessToken });
  const events = (roomId: string): readonly OpenedEvent[] =>
    client.getRoom(roomId)?.getLiveTimeline().getEvents().map(opened) ?? [];
  const send = async (roomId: string, type: string, content: object): Promise<string> =>
    (await client.sendEvent(roomId, type as never, content as never)).event_id;
  return {
    userId: account.userId,
    deviceId,
    client,
    plain,
    wait: plain.wait,
    events,
    knows: async (roomId, userIds) => {
      await plain.wait('the room on this device', async () => {
        const room = client.getRoom(roomId);
        return room?.hasEncryptionStateEvent() === true && userIds.every((userId) => room.getMember(userId) !== null);
      });
    },
    say: (roomId, body, more = {}) => send(roomId, 'm.room.message', { msgtype: 'm.text', body, ...more }),
    react: (roomId, eventId, key) =>
      send(roomId, 'm.reaction', { 'm.relates_to': { rel_type: 'm.annotation', event_id: eventId, key } }),
    answers: (botId, roomId, eventId, count = 1) =>
      plain.wait(`${count} answers to ${eventId}`, async () => {
        const found = events(roomId).filter(
          (event) => event.type === 'm.room.message' && event.sender === botId && repliesTo(event) === eventId,
        );
        return found.length >= count ? found : null;
      }),
    stop: () => {
      client.stopClient();
    },
  };
};

/**
 * An encrypted file as the specification opens it ("Sending encrypted attachments"): AES-256 in counter mode, and the hash of what was
 * uploaded must fit.
 */
export const openAttachment = async (
  member: Member,
  url: string,
  file: { url: string; iv: string; key: { k: string }; hashes: { sha256: string } },
): Promise<Buffer> => {
  const [, media = ''] = /^mxc:\/\/(.+)$/u.exec(file.url) ?? [];
  const response = await fetch(`${url}/_matrix/client/v1/media/download/${media}`, {
    headers: { Authorization: `Bearer ${member.accessToken}` },
  });
  const locked = Buffer.from(await response.arrayBuffer());
  const hash = createHash('sha256').update(locked).digest('base64').replace(/=+$/u, '');
  if (hash !== file.hashes.sha256) throw new Error('the hash does not fit');
  const opening = createDecipheriv('aes-256-ctr', Buffer.from(file.key.k, 'base64url'), Buffer.from(file.iv, 'base64'));
  return Buffer.concat([opening.update(locked), opening.final()]);
};

/** Uploads bytes locked as the specification has it; the `file` of the message that holds them. */
export const lockAttachment = async (member: Member, url: string, bytes: Buffer): Promise<object> => {
  // The lower eight bytes count blocks, and begin at zero.
  const [key, iv] = [randomBytes(32), Buffer.concat([randomBytes(8), Buffer.alloc(8)])];
  const locking = createCipheriv('aes-256-ctr', key, iv);
  const locked = Buffer.concat([locking.update(bytes), locking.final()]);
  const response = await fetch(`${url}/_matrix/media/v3/upload`, {
    method: 'POST',
    headers: { Authorization: `Bearer ${member.accessToken}`, 'Content-Type': 'application/octet-stream' },
    body: new Uint8Array(locked),
  });
  const { content_uri: uri } = (await response.json()) as { content_uri: string };
  const unpadded = (data: Buffer): string => data.toString('base64').replace(/=+$/u, '');
  return {
    v: 'v2',
    url: uri,
    iv: unpadded(iv),
    key: { alg: 'A256CTR', ext: true, k: key.toString('base64url'), key_ops: ['encrypt', 'decrypt'], kty: 'oct' },
    hashes: { sha256: unpadded(createHash('sha256').update(locked).digest()) },
  };
};
