/** Which rooms the bot goes into, what it says there first, and when it leaves. */
import type { Logger } from 'pino';
import type { Store } from '../../../store/store.js';
import type { RateLimit } from '../../shared/rate-limit.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import { DIRECT_WITH_KEY, type DirectRooms } from './direct-rooms.js';
import type { Content, MatrixEvent } from '../answer/matrix-event.js';
import { recordAt, textAt } from '../answer/matrix-event.js';
import type { Outbox } from '../connect/outbox.js';
import { isEncrypted, isPrivateBetween, presentMembers, type Rooms } from './rooms.js';
import { plainNotice } from '../answer/write-reply.js';

export interface MembershipParts {
  readonly client: PierhandMatrixClient;
  readonly botId: string;
  readonly rooms: Rooms;
  readonly direct: DirectRooms;
  readonly outbox: Outbox;
  readonly notes: Store['notes'];
  readonly log: Logger;
  /** Users and servers; empty: the bot's own server. */
  readonly allowed: readonly string[];
  readonly prefix: string;
  /** How often one member may invite the bot. */
  readonly invitations: RateLimit;
  readonly ticksMs: () => number;
  readonly stop: AbortSignal;
}

export interface Membership {
  readonly invited: (roomId: string, inviteState: readonly Content[]) => Promise<void>;
  /** A room of the bot's own making: if it is a direct room, it goes into the list before anybody asks for one. */
  readonly made: (roomId: string, create: MatrixEvent) => Promise<void>;
  /** The bot has come in: says hello, or why it cannot help here. */
  readonly joined: (roomId: string, join: MatrixEvent) => Promise<void>;
  /** Somebody left; if nobody stays, the bot goes too. */
  readonly leaveIfEmpty: (roomId: string) => Promise<void>;
  /** Says once in a room's life that the bot cannot read what is encrypted. */
  readonly tellUnreadable: (roomId: string) => Promise<void>;
  /** Follows a room to the one that replaces it. */
  readonly upgraded: (roomId: string, tombstone: MatrixEvent) => Promise<void>;
}

export const serverOf = (userId: string): string => userId.slice(userId.indexOf(':') + 1);

/** An invitation counts only from a member or a server that the operator named; by default from the bot's own server. */
export const isAllowed = (inviterId: string, botId: string, allowed: readonly string[]): boolean =>
  (allowed.length === 0 ? [serverOf(botId)] : allowed).some((entry) =>
    entry.startsWith('@') ? entry === inviterId : entry === serverOf(inviterId),
  );

export const UNREADABLE_WORDS =
  'This room is encrypted, and I was set up without encryption, so I cannot read what is said here. ' +
  'Ask me in a room without encryption; or the person who runs me can add the encryption package, as deploy/README.md says.';

export const createMembership = ({
  client,
  botId,
  rooms,
  direct,
  outbox,
  notes,
  log,
  allowed,
  prefix,
  invitations,
  ticksMs,
  stop,
}: MembershipParts): Membership => {
  const quietly = async (what: string, roomId: string, work: () => Promise<unknown>): Promise<void> => {
    try {
      await work();
    } catch (error) {
      if (!stop.aborted) log.warn({ err: error, room: roomId }, what);
    }
  };
  const telling = new Map<string, Promise<void>>();
  /** One after the other: a flood of invitations is no flood of requests, which a server would hold against all answers. */
  let declining: Promise<void> = Promise.resolve();
  const decline = (roomId: string): Promise<void> =>
    (declining = declining.then(() => quietly('cannot decline an invitation', roomId, () => client.leaveRoom(roomId))));

  const tellOnce = async (roomId: string): Promise<void> => {
    const noteKey = `matrix:${botId}:told-unreadable:${roomId}`;
    if ((await notes.get(noteKey)) !== null) return;
    await outbox.send({
      roomId,
      type: 'm.room.message',
      answersId: `unreadable ${roomId}`,
      askedUtcMs: 0,
      name: 'text',
      maybeSent: false,
      content: plainNotice(UNREADABLE_WORDS),
    });
    await notes.set(noteKey, '1');
  };
  const tellUnreadable = async (roomId: string): Promise<void> => {
    const under =
      telling.get(roomId) ??
      quietly('cannot say that a room is unreadable', roomId, () => tellOnce(roomId)).finally(() =>
        telling.delete(roomId),
      );
    telling.set(roomId, under);
    await under;
  };

  return {
    tellUnreadable,
    invited: async (roomId, inviteState) => {
      const invite = inviteState.find((event) => event['type'] === 'm.room.member' && event['state_key'] === botId);
      const inviterId = textAt(invite, 'sender');
      if (inviterId === null) return;
      if (!isAllowed(inviterId, botId, allowed)) {
        log.info({ server: serverOf(inviterId) }, 'declined an invitation from outside the allowed users and servers');
        await decline(roomId);
        return;
      }
      if (invitations.take(inviterId, ticksMs()) !== null) {
        log.info({ server: serverOf(inviterId) }, 'declined an invitation: too many from one member');
        await decline(roomId);
        return;
      }
      await quietly('cannot accept an invitation', roomId, async () => {
        await client.joinRoom(roomId, [serverOf(inviterId)]);
        if (recordAt(invite, 'content')['is_direct'] === true) await direct.remember(inviterId, roomId);
      });
    },
    made: (roomId, create) =>
      quietly('cannot write down a direct room', roomId, async () => {
        const userId = textAt(create.content, DIRECT_WITH_KEY);
        if (create.sender === botId && userId !== null) await direct.remember(userId, roomId);
      }),
    joined: (roomId, join) =>
      quietly('cannot greet a room', roomId, async () => {
        const state = await rooms.state(roomId);
        const create = [...state.values()].find(({ type }) => type === 'm.room.create');
        // A direct room of the bot's own making needs no greeting, and nobody talks in a space.
        if (create?.sender === botId || textAt(create?.content, 'type') === 'm.space') return;
        if (isEncrypted(state) && client.encryption === null) {
          await tellUnreadable(roomId);
          return;
        }
        const isDirect = presentMembers(state).some(
          (userId) => userId !== botId && isPrivateBetween(state, botId, userId),
        );
        await outbox.send({
          roomId,
          type: 'm.room.message',
          answersId: join.event_id,
          askedUtcMs: join.origin_server_ts,
          name: 'hello',
          maybeSent: true,
          content: plainNotice(
            isDirect
              ? 'Hello, I am here. Ask away; "help" shows what I can do.'
              : `Hello, I am here. Ask me with ${prefix} and a question; "${prefix} help" shows what I can do.`,
          ),
        });
      }),
    leaveIfEmpty: (roomId) =>
      quietly('cannot leave an empty room', roomId, async () => {
        if (presentMembers(await rooms.state(roomId)).some((userId) => userId !== botId)) return;
        await client.leaveRoom(roomId);
        await client.forgetRoom(roomId).catch(() => undefined);
        rooms.forget(roomId);
        log.info('left a room that was empty');
      }),
    upgraded: (roomId, tombstone) =>
      quietly('cannot follow a room to its replacement', roomId, async () => {
        const replacement = textAt(tombstone.content, 'replacement_room');
        if (replacement !== null && replacement !== '')
          await client.joinRoom(replacement, [serverOf(tombstone.sender)]);
      }),
  };
};
