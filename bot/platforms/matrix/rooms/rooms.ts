/** What the bot knows of each room it is in: members, powers, encryption; asked for once, then kept up from the sync. */
import type { Content, MatrixEvent } from '../answer/matrix-event.js';
import { eventsIn, recordAt, textAt } from '../answer/matrix-event.js';
import type { Homeserver } from '../connect/homeserver-call.js';

/** The present state events that matter here, by type and state key. */
export type RoomState = ReadonlyMap<string, MatrixEvent>;

export interface Rooms {
  readonly state: (roomId: string) => Promise<RoomState>;
  /** Takes in a state event that the sync brought. */
  readonly apply: (roomId: string, event: MatrixEvent) => void;
  readonly forget: (roomId: string) => void;
}

const KEPT = new Set([
  'm.room.create',
  'm.room.encryption',
  'm.room.history_visibility',
  'm.room.join_rules',
  'm.room.member',
  'm.room.power_levels',
]);
const keyOf = (type: string, stateKey: string): string => `${type}\n${stateKey}`;

/** Asked again this often where a room changes while its state is on the way. */
const MOST_ASKS = 5;

export const createRooms = (homeserver: Homeserver): Rooms => {
  const known = new Map<string, Map<string, MatrixEvent>>();
  const asking = new Map<string, Promise<Map<string, MatrixEvent>>>();
  /** Rooms that changed, or were forgotten, while their state was on the way. */
  const changed = new Map<string, MatrixEvent[]>();

  const snapshot = async (roomId: string): Promise<Map<string, MatrixEvent>> => {
    const answer = await homeserver.call({
      method: 'GET',
      path: `/_matrix/client/v3/rooms/${encodeURIComponent(roomId)}/state`,
    });
    const state = new Map<string, MatrixEvent>();
    for (const event of eventsIn(answer)) {
      if (KEPT.has(event.type) && event.state_key !== undefined) state.set(keyOf(event.type, event.state_key), event);
    }
    return state;
  };

  /** Until nothing changed meanwhile: what the sync brought is in an answer that was asked for after it, and may be missing in an earlier one. */
  const ask = async (roomId: string): Promise<Map<string, MatrixEvent>> => {
    for (let asks = 1; ; asks++) {
      changed.delete(roomId);
      const state = await snapshot(roomId);
      const missed = changed.get(roomId);
      if (missed !== undefined && asks < MOST_ASKS) continue;
      for (const event of missed ?? []) state.set(keyOf(event.type, event.state_key ?? ''), event);
      known.set(roomId, state);
      return state;
    }
  };

  return {
    state: async (roomId) => {
      const here = known.get(roomId);
      if (here !== undefined) return here;
      const under =
        asking.get(roomId) ??
        ask(roomId).finally(() => {
          asking.delete(roomId);
          changed.delete(roomId);
        });
      asking.set(roomId, under);
      return under;
    },
    apply: (roomId, event) => {
      if (event.state_key === undefined || !KEPT.has(event.type)) return;
      known.get(roomId)?.set(keyOf(event.type, event.state_key), event);
      if (asking.has(roomId)) changed.set(roomId, [...(changed.get(roomId) ?? []), event]);
    },
    forget: (roomId) => {
      known.delete(roomId);
      if (asking.has(roomId)) changed.set(roomId, changed.get(roomId) ?? []);
    },
  };
};

const single = (state: RoomState, type: string): MatrixEvent | undefined => state.get(keyOf(type, ''));

export const isEncrypted = (state: RoomState): boolean => single(state, 'm.room.encryption') !== undefined;

/** Members joined or invited. */
export const presentMembers = (state: RoomState): readonly string[] =>
  [...state.values()]
    .filter(
      ({ type, content }) =>
        type === 'm.room.member' && ['join', 'invite'].includes(textAt(content, 'membership') ?? ''),
    )
    .map(({ state_key: userId }) => userId ?? '');

/** Who may read what is sent now: members joined, and invited where they may read from the invitation on (Matrix specification, history visibility). */
export const readersIn = (state: RoomState): readonly string[] =>
  textAt(single(state, 'm.room.history_visibility')?.content, 'history_visibility') === 'joined'
    ? presentMembers(state).filter(
        (userId) => textAt(state.get(keyOf('m.room.member', userId))?.content, 'membership') === 'join',
      )
    : presentMembers(state);

/** Nobody but the asker and the bot is in or invited, and nobody can walk in or look in. */
export const isPrivateBetween = (state: RoomState, botId: string, userId: string): boolean => {
  const members = presentMembers(state);
  return (
    members.length === 2 &&
    members.includes(botId) &&
    members.includes(userId) &&
    ['invite', 'private'].includes(textAt(single(state, 'm.room.join_rules')?.content, 'join_rule') ?? 'invite') &&
    textAt(single(state, 'm.room.history_visibility')?.content, 'history_visibility') !== 'world_readable'
  );
};

export const displayNameIn = (state: RoomState, userId: string): string | null =>
  textAt(state.get(keyOf('m.room.member', userId))?.content, 'displayname');

const level = (record: Content, key: string, otherwise: number): number => {
  const value = record[key];
  const number = typeof value === 'string' ? Number(value) : value;
  return typeof number === 'number' && Number.isFinite(number) ? number : otherwise;
};

/** Room versions whose creators stand above all levels (Matrix specification, room version 12). */
const creatorsAboveAll = (version: string): boolean => /^\d+$/u.test(version) && Number(version) >= 12;

/** Who may change the room's settings may change the club's: at or above `state_default` (Matrix specification, m.room.power_levels). */
export const mayManage = (state: RoomState, userId: string): boolean => {
  const create = single(state, 'm.room.create');
  const more = create?.content['additional_creators'];
  const isCreator = create?.sender === userId || (Array.isArray(more) && more.includes(userId));
  if (isCreator && creatorsAboveAll(textAt(create?.content, 'room_version') ?? '1')) return true;
  const powers = single(state, 'm.room.power_levels')?.content;
  if (powers === undefined) return isCreator;
  const own = level(recordAt(powers, 'users'), userId, level(powers, 'users_default', 0));
  return own >= level(powers, 'state_default', 50);
};
