/** Encrypted rooms: opens what was said, locks what is answered, knows which rooms are encrypted and never forgets that one was. */
import type { OlmMachine, StoreType } from '@matrix-org/matrix-sdk-crypto-nodejs';
import type { Content, MatrixEvent } from '../answer/matrix-event.js';
import { asEvent, isRecord, textAt } from '../answer/matrix-event.js';
import { createEncryptionEngine, takeInSync } from './encryption-engine.js';
import type { Homeserver } from './homeserver-call.js';
import type { NativeCrypto } from './native-crypto.js';
import { MatrixError, RustSdkCryptoStorageProvider } from './sdk.js';

/** Content of an encrypted file (Matrix specification, "Extensions to m.room.message msgtypes"), without its address. */
export interface LockedFile {
  readonly bytes: Buffer;
  readonly file: Content;
}

export interface Encryption {
  /** A sync's device messages, changed devices and key counts. What follows from them is sent without holding the sync up. */
  readonly takeIn: (sync: Content) => Promise<void>;
  /** State that a sync brought for a room. */
  readonly sawState: (roomId: string, state: readonly MatrixEvent[]) => Promise<void>;
  /** Rejects where it cannot be found out: nothing may be said in the clear on a guess. */
  readonly isRoomEncrypted: (roomId: string) => Promise<boolean>;
  readonly lock: (roomId: string, type: string, content: Content) => Promise<Content>;
  /** The event in the clear; null where its key is not there (yet). */
  readonly open: (roomId: string, event: MatrixEvent) => Promise<MatrixEvent | null>;
  readonly lockFile: (bytes: Uint8Array) => LockedFile;
  /** @throws where the file is not what its key and hash say */
  readonly openFile: (bytes: Uint8Array, file: Content) => Uint8Array;
  /** Waits for what is under way, then closes the keys; nothing may be asked of it after that. */
  readonly close: () => Promise<void>;
}

export interface EncryptionParts {
  readonly native: NativeCrypto;
  readonly homeserver: Homeserver;
  readonly userId: string;
  readonly deviceId: string;
  /** Keys of this one device. */
  readonly keyFolder: string;
  readonly readersOf: (roomId: string) => Promise<readonly string[]>;
  /** Told of what failed on the side; the next sync tries again. */
  readonly onError: (error: unknown) => void;
}

/** The library's own enum is a type only. */
const SQLITE = 0 as StoreType;

const openMachine = ({ native, userId, deviceId }: EncryptionParts, storagePath: string): Promise<OlmMachine> =>
  native.OlmMachine.initialize(new native.UserId(userId), new native.DeviceId(deviceId), storagePath, '', SQLITE);

const memberIds = (state: readonly MatrixEvent[]): readonly string[] =>
  state
    .filter(
      ({ type, content }) =>
        type === 'm.room.member' && ['join', 'invite'].includes(textAt(content, 'membership') ?? ''),
    )
    .map(({ state_key: userId }) => userId ?? '');

/**
 * Opens the keys of the bot's device, or makes them.
 * @throws KeysLost; another error where the key folder cannot be used
 */
export const openEncryption = async (parts: EncryptionParts): Promise<Encryption> => {
  const { native, homeserver, keyFolder, onError } = parts;
  const store = new RustSdkCryptoStorageProvider(keyFolder, SQLITE);
  const machine = await openMachine(parts, store.storagePath);
  const engine = createEncryptionEngine({ native, machine, homeserver, readersOf: parts.readersOf });
  try {
    await engine.run();
  } catch (error) {
    machine.close();
    throw error;
  }
  const underWay = new Set<Promise<void>>();
  const aside = (work: Promise<void>): void => {
    const watched = work.catch(onError).finally(() => underWay.delete(watched));
    underWay.add(watched);
  };

  const stateOf = async (roomId: string, type: string): Promise<Content | null> => {
    try {
      const path = `/_matrix/client/v3/rooms/${encodeURIComponent(roomId)}/state/${type}/`;
      const content = await homeserver.call({ method: 'GET', path });
      return isRecord(content) ? content : {};
    } catch (error) {
      if (error instanceof MatrixError && error.statusCode === 404) return null;
      throw error;
    }
  };
  /** How a room is encrypted, or null. Once encrypted, always encrypted (Matrix specification, m.room.encryption). */
  const settingsOf = async (roomId: string): Promise<Content | null> => {
    const known = (await store.getRoom(roomId)) as Content | undefined;
    if (known !== undefined && textAt(known, 'algorithm') !== null) return known;
    const found = await stateOf(roomId, 'm.room.encryption');
    if (found === null) return null;
    const visibility = await stateOf(roomId, 'm.room.history_visibility');
    const settings = {
      ...found,
      algorithm: textAt(found, 'algorithm') ?? 'unknown',
      historyVisibility: textAt(visibility ?? undefined, 'history_visibility') ?? 'shared',
    };
    await store.storeRoom(roomId, settings);
    return settings;
  };

  return {
    takeIn: async (sync) => {
      await takeInSync(native, machine, sync);
      aside(engine.run());
    },
    sawState: async (roomId, state) => {
      const visibility = state.findLast(({ type }) => type === 'm.room.history_visibility');
      const known = (await store.getRoom(roomId)) as Content | undefined;
      if (visibility !== undefined && known !== undefined)
        await store.storeRoom(roomId, {
          ...known,
          historyVisibility: textAt(visibility.content, 'history_visibility') ?? 'shared',
        });
      const isEncrypted = known !== undefined || state.some(({ type }) => type === 'm.room.encryption');
      if (isEncrypted && known === undefined) aside(settingsOf(roomId).then(() => undefined));
      const members = memberIds(state);
      if (isEncrypted && members.length > 0) aside(engine.addTrackedUsers(members));
    },
    isRoomEncrypted: async (roomId) => (await settingsOf(roomId)) !== null,
    lock: async (roomId, type, content) => {
      await engine.prepareEncrypt(roomId, (await settingsOf(roomId)) ?? {});
      const locked = JSON.parse(
        await machine.encryptRoomEvent(new native.RoomId(roomId), type, JSON.stringify(content)),
      ) as Content;
      aside(engine.run());
      return locked;
    },
    open: async (roomId, event) => {
      try {
        const opened = await machine.decryptRoomEvent(JSON.stringify(event), new native.RoomId(roomId));
        const inner: unknown = JSON.parse(opened.event);
        return isRecord(inner) ? asEvent({ ...event, type: inner['type'], content: inner['content'] }) : null;
      } catch {
        return null;
      }
    },
    lockFile: (bytes) => {
      const locked = native.Attachment.encrypt(bytes);
      return {
        file: JSON.parse(locked.mediaEncryptionInfo ?? '{}') as Content,
        bytes: Buffer.from(locked.encryptedData),
      };
    },
    close: async () => {
      await Promise.all(underWay);
      machine.close();
    },
    openFile: (bytes, file) => native.Attachment.decrypt(new native.EncryptedAttachment(bytes, JSON.stringify(file))),
  };
};
