/** The direct room with a member: found in the account's own list, or made. */
import { createInTurn } from '../../../ground/in-turn.js';
import { isRecord } from '../answer/matrix-event.js';
import type { Content } from '../answer/matrix-event.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import { isEncrypted, isPrivateBetween, type Rooms } from './rooms.js';
import { MatrixError } from '../connect/sdk.js';

export interface DirectRooms {
  /** The direct room with the member. `invited`: they still have to accept. Rejects where the server or the member does not allow one. */
  readonly with: (userId: string) => Promise<{ readonly roomId: string; readonly isNew: boolean }>;
  /** A direct room that exists already, or null. */
  readonly existing: (userId: string) => Promise<string | null>;
  /** Enters a room in the account's list of direct rooms. */
  readonly remember: (userId: string, roomId: string) => Promise<void>;
}

/** Our own key in a room's creation: lets a room be recognised whose making was cut short before it was written down. */
export const DIRECT_WITH_KEY = 'pierhand.direct_with';

/**
 * Whoever comes later reads nothing from before their invitation; the member themself reads from theirs on, so that the answer that
 * comes with it is there (Matrix specification, m.room.history_visibility).
 */
const OWN_PAST_ONLY = {
  type: 'm.room.history_visibility',
  state_key: '',
  content: { history_visibility: 'invited' },
};

export const createDirectRooms = (client: PierhandMatrixClient, botId: string, rooms: Rooms): DirectRooms => {
  const inTurn = createInTurn();
  /** One change at a time: the list is one document. */
  const LIST = 'list';

  const path = `/_matrix/client/v3/user/${encodeURIComponent(botId)}/account_data/m.direct`;
  const list = async (): Promise<Content> => {
    try {
      const found = await client.homeserver.call({ method: 'GET', path });
      return isRecord(found) ? found : {};
    } catch (error) {
      if (error instanceof MatrixError && error.statusCode === 404) return {};
      throw error;
    }
  };
  const roomsOf = (direct: Content, userId: string): readonly string[] => {
    const own = direct[userId];
    return Array.isArray(own) ? own.filter((id) => typeof id === 'string') : [];
  };
  const addInTurn = async (userId: string, roomId: string): Promise<void> => {
    const direct = await list();
    if (roomsOf(direct, userId)[0] === roomId) return;
    const others = roomsOf(direct, userId).filter((id) => id !== roomId);
    await client.homeserver.call({
      method: 'PUT',
      path,
      body: { ...direct, [userId]: [roomId, ...others].slice(0, 20) },
    });
  };

  const add = (userId: string, roomId: string): Promise<void> => inTurn(LIST, () => addInTurn(userId, roomId));

  const find = async (userId: string): Promise<string | null> => {
    // After what is being written to it: that may be the very room.
    const candidates = roomsOf(await inTurn(LIST, list), userId);
    if (candidates.length === 0) return null;
    const joined = new Set(await client.getJoinedRooms());
    for (const roomId of candidates) {
      if (!joined.has(roomId)) continue;
      try {
        const state = await rooms.state(roomId);
        // What cannot be read or written there is no place for an answer.
        if (isPrivateBetween(state, botId, userId) && (client.encryption !== null || !isEncrypted(state)))
          return roomId;
      } catch (error) {
        if (!(error instanceof MatrixError)) throw error;
      }
    }
    return null;
  };

  const hasKeys = async (userId: string): Promise<boolean> => {
    if (client.encryption === null) return false;
    const { device_keys: keys } = await client.getUserDevices([userId]);
    return Object.keys(keys[userId] ?? {}).length > 0;
  };

  const make = async (userId: string): Promise<string> => {
    const roomId = await client.createRoom({
      preset: 'private_chat',
      invite: [userId],
      is_direct: true,
      creation_content: { [DIRECT_WITH_KEY]: userId },
      initial_state: [
        OWN_PAST_ONLY,
        ...((await hasKeys(userId))
          ? [{ type: 'm.room.encryption', state_key: '', content: { algorithm: 'm.megolm.v1.aes-sha2' } }]
          : []),
      ],
    } as never);
    await add(userId, roomId);
    return roomId;
  };

  return {
    with: (userId) =>
      // A member whose server dawdles keeps nobody else waiting.
      inTurn(userId, async () => {
        const found = await find(userId);
        return found === null ? { roomId: await make(userId), isNew: true } : { roomId: found, isNew: false };
      }),
    existing: (userId) => inTurn(userId, () => find(userId)),
    remember: add,
  };
};
