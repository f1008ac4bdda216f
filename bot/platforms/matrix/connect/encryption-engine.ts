/**
 * Drives the native encryption library for the SDK's CryptoClient, in place of the SDK's own engine. That one asks for members' sessions
 * before it has asked for their devices, which makes the library wait five seconds for nothing with each new member; gives keys to joined
 * members alone, so that an answer sent along with an invitation could never be read; hands over a week as ten minutes (the library counts
 * microseconds); gives up at a request it does not know; and holds the sync up while other servers are asked for keys.
 */
import { MS_PER_HOUR } from '../../../ground/durations.js';
import type { DeviceLists, OlmMachine, UserId } from '@matrix-org/matrix-sdk-crypto-nodejs';
import { createInTurn, type InTurn } from '../../../ground/in-turn.js';
import type { Content } from '../answer/matrix-event.js';
import { isRecord, recordAt, textAt } from '../answer/matrix-event.js';
import type { Homeserver } from './homeserver-call.js';
import type { NativeCrypto } from './native-crypto.js';
import { MatrixError } from './sdk.js';
import { tableOf } from '../../../ground/table-of.js';

/** The library's numbers for its requests; its own enum is a type only. */
const REQUEST = { keysUpload: 0, keysQuery: 1, keysClaim: 2, toDevice: 3, signatureUpload: 4 } as const;
/** The library's numbers for who may read a room's past. */
const VISIBILITY = tableOf({ invited: 0, joined: 1, shared: 2, world_readable: 3 });
const MEGOLM = 1;

/** What may stand in the way of other servers' members: a claim or a query gives them this long. */
const OTHER_SERVERS_MS = 10_000;
/** Bounds for what a room's own settings may ask for (Matrix specification, m.room.encryption: a week, 100 messages by default). */
const ROTATION = {
  leastMs: MS_PER_HOUR,
  usualMs: 604_800_000,
  leastMessages: 1,
  usualMessages: 100,
  mostMessages: 10_000,
};

interface Request {
  readonly id: string;
  readonly type: number;
  readonly body: string;
}

/** The server holds other keys for this device than those in the key folder, and nobody would believe a change. */
export class KeysLost extends Error {}

/** So many one-time keys the library keeps at the server. */
const ENOUGH_KEYS = 50;

export interface Lock {
  readonly acquire: InTurn;
}

/** The shape that the SDK's CryptoClient expects of its engine. */
export interface EncryptionEngine {
  readonly machine: OlmMachine;
  readonly lock: Lock;
  readonly run: () => Promise<void>;
  readonly addTrackedUsers: (userIds: readonly string[]) => Promise<void>;
  readonly prepareEncrypt: (roomId: string, room: Content) => Promise<void>;
}

const bounded = (value: unknown, least: number, usual: number, most: number): bigint => {
  const number = typeof value === 'number' && Number.isInteger(value) ? value : usual;
  return BigInt(Math.min(most, Math.max(least, number)));
};

/** The body of a request as the server wants it; a signature upload comes wrapped once too often. */
const bodyOf = (request: Request): Content => {
  const body = JSON.parse(request.body) as Content;
  if (request.type !== REQUEST.signatureUpload) return body;
  return isRecord(body['signed_keys']) ? body['signed_keys'] : body;
};

const PATHS: Readonly<Record<number, string>> = {
  [REQUEST.keysUpload]: '/_matrix/client/v3/keys/upload',
  [REQUEST.keysQuery]: '/_matrix/client/v3/keys/query',
  [REQUEST.keysClaim]: '/_matrix/client/v3/keys/claim',
  [REQUEST.signatureUpload]: '/_matrix/client/v3/keys/signatures/upload',
};

export interface EngineParts {
  readonly native: NativeCrypto;
  readonly machine: OlmMachine;
  readonly homeserver: Homeserver;
  /** The members of a room who may read what is sent to it now: joined, and invited where the room's past is theirs to read. */
  readonly readersOf: (roomId: string) => Promise<readonly string[]>;
}

export const createEncryptionEngine = ({ native, machine, homeserver, readersOf }: EngineParts): EncryptionEngine => {
  const lock: Lock = { acquire: createInTurn() };
  const ids = (userIds: readonly string[]): UserId[] => userIds.map((userId) => new native.UserId(userId));

  const toDevice = async (transactionId: string, eventType: string, messages: unknown): Promise<void> => {
    const path = `/_matrix/client/v3/sendToDevice/${encodeURIComponent(eventType)}/${encodeURIComponent(transactionId)}`;
    const answer = await homeserver.call({ method: 'PUT', path, body: { messages } });
    await machine.markRequestAsSent(transactionId, REQUEST.toDevice, JSON.stringify(answer));
  };
  /**
   * Keys restored from a backup are behind those the server has, which takes each number once. What it refuses is passed over; the
   * library goes on with later numbers.
   */
  const uploadKeys = async (request: Request, body: Content): Promise<void> => {
    let answer: unknown;
    try {
      answer = await homeserver.call({ method: 'POST', path: PATHS[REQUEST.keysUpload] ?? '', body });
    } catch (error) {
      if (!(error instanceof MatrixError) || error.statusCode !== 400) throw error;
      if (body['device_keys'] !== undefined) throw new KeysLost();
      answer = { one_time_key_counts: { signed_curve25519: ENOUGH_KEYS } };
    }
    await machine.markRequestAsSent(request.id, request.type, JSON.stringify(answer));
  };
  const carryOut = async (request: Request): Promise<void> => {
    const body = bodyOf(request);
    if (request.type === REQUEST.toDevice) {
      await toDevice(textAt(body, 'txn_id') ?? request.id, textAt(body, 'event_type') ?? '', body['messages']);
      return;
    }
    const path = PATHS[request.type];
    // Room messages and backups are never asked for here.
    if (path === undefined) return;
    if (request.type === REQUEST.keysUpload) {
      await uploadKeys(request, body);
      return;
    }
    const isAsking = request.type === REQUEST.keysQuery || request.type === REQUEST.keysClaim;
    const answer = await homeserver.call({
      method: 'POST',
      path,
      body: isAsking ? { ...body, timeout: OTHER_SERVERS_MS } : body,
    });
    await machine.markRequestAsSent(request.id, request.type, JSON.stringify(answer));
  };
  const carryOutAll = async (wanted: (type: number) => boolean): Promise<void> => {
    for (const request of (await machine.outgoingRequests()) as unknown as readonly Request[])
      if (wanted(request.type)) await carryOut(request);
  };
  const claimSessions = async (users: UserId[]): Promise<void> => {
    const claim = await machine.getMissingSessions(users);
    if (claim !== null) await carryOut(claim);
  };

  return {
    machine,
    lock,
    run: () => lock.acquire('requests', () => carryOutAll(() => true)),
    addTrackedUsers: (userIds) =>
      lock.acquire('requests', async () => {
        await machine.updateTrackedUsers(ids(userIds));
        await carryOutAll((type) => type === REQUEST.keysQuery);
      }),
    prepareEncrypt: async (roomId, room) => {
      const readers = await readersOf(roomId);
      const settings = new native.EncryptionSettings();
      settings.algorithm = MEGOLM;
      settings.historyVisibility = (VISIBILITY.get(textAt(room, 'historyVisibility') ?? '') ??
        VISIBILITY.get('joined')) as never;
      settings.rotationPeriod =
        bounded(room['rotation_period_ms'], ROTATION.leastMs, ROTATION.usualMs, ROTATION.usualMs) * 1000n;
      settings.rotationPeriodMessages = bounded(
        room['rotation_period_msgs'],
        ROTATION.leastMessages,
        ROTATION.usualMessages,
        ROTATION.mostMessages,
      );
      await lock.acquire('requests', async () => {
        await machine.updateTrackedUsers(ids(readers));
        await carryOutAll((type) => type === REQUEST.keysQuery);
        await claimSessions(ids(readers));
      });
      await lock.acquire(roomId, async () => {
        const shares = await machine.shareRoomKey(new native.RoomId(roomId), ids(readers), settings);
        for (const { txnId, eventType, body } of shares)
          await toDevice(txnId, eventType, recordAt(JSON.parse(body) as Content, 'messages'));
      });
    },
  };
};

const texts = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((entry) => typeof entry === 'string') : [];

/** Gives the library a sync's device messages, changed devices and key counts. */
export const takeInSync = async (native: NativeCrypto, machine: OlmMachine, sync: Content): Promise<void> => {
  const lists = recordAt(sync, 'device_lists');
  const users = (key: string): UserId[] => texts(lists[key]).map((userId) => new native.UserId(userId));
  const changed: DeviceLists = new native.DeviceLists(users('changed'), users('left'));
  const messages = recordAt(sync, 'to_device')['events'];
  await machine.receiveSyncChanges(
    JSON.stringify(Array.isArray(messages) ? messages : []),
    changed,
    recordAt(sync, 'device_one_time_keys_count') as Record<string, number>,
    [...texts(sync['device_unused_fallback_key_types'])],
  );
};
