/** What a sync brought, as work: one thing after another for a member in a room, members and rooms side by side. */
import type { Answerer } from '../answer/answer.js';
import type { MatrixEvent } from '../answer/matrix-event.js';
import { textAt } from '../answer/matrix-event.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import type { SyncBatch, SyncedRoom } from '../connect/sync-reader.js';
import type { Membership } from './membership.js';
import { isEncrypted, isPrivateBetween, type Rooms } from './rooms.js';

export interface BatchParts {
  readonly client: PierhandMatrixClient;
  readonly botId: string;
  readonly rooms: Rooms;
  readonly membership: Membership;
  readonly answer: Answerer;
  /** Takes note of a message that cannot be opened yet. */
  readonly missingKey: (roomId: string, event: MatrixEvent) => void;
  readonly onOwnName: (name: string) => void;
  readonly ticksMs: () => number;
  readonly stop: AbortSignal;
}

type Work = Promise<boolean>;

const isQuestion = ({ type }: MatrixEvent): boolean => type === 'm.room.message' || type === 'm.reaction';
const bringsFile = ({ content }: MatrixEvent): boolean =>
  ['m.file', 'm.image'].includes(textAt(content, 'msgtype') ?? '');
const isLocked = ({ type }: MatrixEvent): boolean => type === 'm.room.encrypted';

/** Each piece of work resolves to false where it was left undone because the bot stops. */
export const createBatchTaker = (parts: BatchParts): ((batch: SyncBatch) => readonly Work[]) => {
  const { client, botId, rooms, membership, answer, missingKey, onOwnName, ticksMs, stop } = parts;
  const queues = new Map<string, Work>();
  const inLane = (lane: string, before: Promise<unknown>, work: () => Work): Work => {
    const result = Promise.all([before, queues.get(lane)]).then(work);
    queues.set(lane, result);
    void result.finally(() => {
      if (queues.get(lane) === result) queues.delete(lane);
    });
    return result;
  };
  const inRoom = (roomId: string, work: () => Work): Work => inLane(roomId, Promise.resolve(), work);
  /** After what the room itself waits for, such as the bot's coming in; one member's slow file keeps nobody else waiting. */
  const ofMember = (roomId: string, memberId: string, work: () => Work): Work =>
    inLane(`${roomId} ${memberId}`, queues.get(roomId) ?? Promise.resolve(), work);
  /** After what the member asked before it; nothing they ask later waits for it. */
  const ofFile = (roomId: string, memberId: string, work: () => Work): Work =>
    inLane(
      `${roomId} ${memberId} file`,
      ofMember(roomId, memberId, async () => true),
      work,
    );
  const done = async (work: Promise<void>): Work => {
    await work;
    return !stop.aborted;
  };

  const takeState = ({ roomId, state, joined }: SyncedRoom): void => {
    if (joined !== null) rooms.forget(roomId);
    for (const event of state) {
      rooms.apply(roomId, event);
      const isOwn = event.type === 'm.room.member' && event.state_key === botId;
      const name = isOwn ? textAt(event.content, 'displayname') : null;
      if (name !== null) onOwnName(name);
    }
  };

  /** Clients make a direct room with its first message and do not wait for the bot to come in: that message counts. */
  const answerFirstWords = async (roomId: string, events: readonly MatrixEvent[], arrivedMs: number): Work => {
    for (const event of events) {
      const state = await rooms.state(roomId);
      if (!isPrivateBetween(state, botId, event.sender)) continue;
      if (isLocked(event)) missingKey(roomId, event);
      else if (!(await answer(roomId, event, arrivedMs))) return false;
    }
    return true;
  };
  const comeIn = async ({ roomId, joined, firstWords }: SyncedRoom, arrivedMs: number): Work => {
    const isSpokenTo = firstWords.some((event) => isQuestion(event) || isLocked(event));
    const wasPrivate = isSpokenTo && isPrivateBetween(await rooms.state(roomId), botId, firstWords[0]?.sender ?? '');
    if (joined !== null && !wasPrivate) await membership.joined(roomId, joined);
    return (await answerFirstWords(roomId, firstWords, arrivedMs)) && !stop.aborted;
  };
  const tellUnreadable = async (roomId: string): Promise<void> => {
    if (isEncrypted(await rooms.state(roomId))) await membership.tellUnreadable(roomId);
  };

  const workOf = (roomId: string, event: MatrixEvent, arrivedMs: number): readonly Work[] => {
    if (isQuestion(event)) {
      const inTurn = bringsFile(event) ? ofFile : ofMember;
      return [inTurn(roomId, event.sender, () => answer(roomId, event, arrivedMs))];
    }
    if (event.type === 'm.room.tombstone') return [inRoom(roomId, () => done(membership.upgraded(roomId, event)))];
    if (client.encryption === null && (isLocked(event) || event.type === 'm.room.encryption'))
      return [inRoom(roomId, () => done(tellUnreadable(roomId)))];
    if (isLocked(event) && event.sender !== botId) missingKey(roomId, event);
    return [];
  };
  const hasLeft = ({ type, content, state_key: who }: MatrixEvent): boolean =>
    type === 'm.room.member' && who !== botId && ['leave', 'ban'].includes(textAt(content, 'membership') ?? '');

  return (batch) => {
    const arrivedMs = ticksMs();
    for (const roomId of batch.leftRoomIds) rooms.forget(roomId);
    for (const room of batch.rooms) takeState(room);
    const invited = batch.invites.map(({ roomId, state }) =>
      inRoom(roomId, () => done(membership.invited(roomId, state))),
    );
    // Before any answer: one of them may be about to make the same direct room again.
    const made = batch.rooms.flatMap(({ roomId, state }) => {
      const create = state.find(({ type }) => type === 'm.room.create');
      return create === undefined ? [] : [done(membership.made(roomId, create))];
    });
    const inRooms = batch.rooms.flatMap((room) => {
      const { roomId, events, joined, firstWords } = room;
      return [
        ...(joined === null && firstWords.length === 0 ? [] : [inRoom(roomId, () => comeIn(room, arrivedMs))]),
        ...events.flatMap((event) => workOf(roomId, event, arrivedMs)),
        ...(events.some(hasLeft) ? [inRoom(roomId, () => done(membership.leaveIfEmpty(roomId)))] : []),
      ];
    });
    return [...invited, ...made, ...inRooms];
  };
};
