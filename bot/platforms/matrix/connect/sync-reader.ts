/** Reads what a sync answer holds: keys first, gaps filled, what could not be opened kept until its keys have come. */
import type { UtcMs } from '../../../sky/types.js';
import type { Content, MatrixEvent } from '../answer/matrix-event.js';
import { eventsIn, isRecord, recordAt, textAt } from '../answer/matrix-event.js';
import { eventsBackwards } from '../rooms/history.js';
import type { PierhandMatrixClient } from './client.js';

export interface SyncedRoom {
  readonly roomId: string;
  /** Present state as far as it changed. */
  readonly state: readonly MatrixEvent[];
  /** In order; without what was there before the bot joined, and without anything on a first sync. */
  readonly events: readonly MatrixEvent[];
  /** What was said between the bot's invitation and its joining. */
  readonly firstWords: readonly MatrixEvent[];
  /** The bot's own joining, where this sync brings it. */
  readonly joined: MatrixEvent | null;
}

export interface SyncBatch {
  readonly rooms: readonly SyncedRoom[];
  readonly invites: readonly { readonly roomId: string; readonly state: readonly Content[] }[];
  readonly leftRoomIds: readonly string[];
}

export interface SyncReaderParts {
  readonly client: PierhandMatrixClient;
  readonly botId: string;
  readonly now: () => UtcMs;
  /** How far back gaps are filled. */
  readonly oldestMs: number;
}

/** `isFirst`: a first sync, of which only the present state counts. */
export type SyncReader = (raw: Content, isFirst: boolean) => Promise<SyncBatch>;

/** So many old events in a row end the look back: one server's wrong clock must not. */
const OLD_IN_A_ROW = 20;
const MOST_UNOPENED = 200;

const isOwnJoin = (event: MatrixEvent, botId: string): boolean =>
  event.type === 'm.room.member' &&
  event.state_key === botId &&
  textAt(event.content, 'membership') === 'join' &&
  // A new display name is a join event as well.
  textAt(recordAt(event.unsigned, 'prev_content'), 'membership') !== 'join';

const isOwnInvitation = (event: MatrixEvent, botId: string): boolean =>
  event.type === 'm.room.member' && event.state_key === botId && textAt(event.content, 'membership') === 'invite';

export const createSyncReader = ({ client, botId, now, oldestMs }: SyncReaderParts): SyncReader => {
  /** The newest event this process has had of each room. */
  const newest = new Map<string, string>();

  /** Back to what was had before: a room that is flooded is not read again and again while the others wait. */
  const gapBefore = async (roomId: string, from: string): Promise<readonly MatrixEvent[]> => {
    const missed: MatrixEvent[] = [];
    const had = newest.get(roomId);
    let old = 0;
    for await (const event of eventsBackwards(client, roomId, from)) {
      if (event.event_id === had) break;
      old = event.origin_server_ts < now() - oldestMs ? old + 1 : 0;
      if (old >= OLD_IN_A_ROW) break;
      missed.unshift(event);
      if (isOwnJoin(event, botId)) break;
    }
    return missed;
  };

  /** Encrypted events that came before their keys. */
  let unopened: { readonly roomId: string; readonly event: MatrixEvent; readonly isFirstWords: boolean }[] = [];
  const keepUnopened = (roomId: string, events: readonly MatrixEvent[], isFirstWords: boolean): void => {
    if (client.encryption === null) return;
    unopened.push(
      ...events
        .filter(({ type, sender }) => type === 'm.room.encrypted' && sender !== botId)
        .map((event) => ({ roomId, event, isFirstWords })),
    );
  };
  const openedSince = async (): Promise<readonly SyncedRoom[]> => {
    const before = unopened.filter(({ event }) => event.origin_server_ts >= now() - oldestMs).slice(-MOST_UNOPENED);
    unopened = [];
    const found: SyncedRoom[] = [];
    for (const waiting of before) {
      const { roomId, event, isFirstWords } = waiting;
      const opened = await client.opened(roomId, event);
      if (opened.type === 'm.room.encrypted') unopened.push(waiting);
      else {
        const [events, firstWords] = isFirstWords ? [[], [opened]] : [[opened], []];
        found.push({ roomId, state: [], events, firstWords, joined: null });
      }
    }
    return found;
  };

  const readRoom = async (roomId: string, raw: Content, isFirst: boolean): Promise<SyncedRoom> => {
    const timeline = recordAt(raw, 'timeline');
    const recent = eventsIn(timeline['events']);
    const state = [...eventsIn(recordAt(raw, 'state')['events']), ...recent].filter(
      (event) => event.state_key !== undefined,
    );
    await client.encryption?.sawState(roomId, state);
    if (isFirst) return { roomId, state, events: [], firstWords: [], joined: null };
    const opened: MatrixEvent[] = [];
    for (const event of recent) opened.push(await client.opened(roomId, event));
    const from = textAt(timeline, 'prev_batch');
    const isWhole = timeline['limited'] !== true || from === null || opened.some((event) => isOwnJoin(event, botId));
    const all = isWhole ? opened : [...(await gapBefore(roomId, from)), ...opened];
    const last = recent.at(-1);
    if (last !== undefined) newest.set(roomId, last.event_id);
    const joinedAt = all.findLastIndex((event) => isOwnJoin(event, botId));
    const joined = all[joinedAt] ?? null;
    const invitedAt = all.slice(0, Math.max(0, joinedAt)).findLastIndex((event) => isOwnInvitation(event, botId));
    const firstWords = invitedAt < 0 ? [] : all.slice(invitedAt + 1, joinedAt);
    const events = all.slice(joinedAt + 1);
    keepUnopened(roomId, firstWords, true);
    keepUnopened(roomId, events, false);
    return { roomId, state, events, firstWords, joined };
  };

  return async (raw, isFirst) => {
    // Keys first, so that what they open can be opened.
    await client.encryption?.takeIn(raw);
    const rooms = recordAt(raw, 'rooms');
    const joinedRooms: SyncedRoom[] = [...(await openedSince())];
    for (const [roomId, room] of Object.entries(recordAt(rooms, 'join'))) {
      if (isRecord(room)) joinedRooms.push(await readRoom(roomId, room, isFirst));
    }
    const invites = Object.entries(recordAt(rooms, 'invite')).map(([roomId, room]) => {
      const state = recordAt(isRecord(room) ? room : {}, 'invite_state')['events'];
      return { roomId, state: Array.isArray(state) ? state.filter(isRecord) : [] };
    });
    return { rooms: joinedRooms, invites, leftRoomIds: Object.keys(recordAt(rooms, 'leave')) };
  };
};
