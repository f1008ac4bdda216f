/** Who is in a room, who may change its settings, and which rooms are private. */
import { describe, expect, test } from 'vitest';
import { createLog } from '../../bot/app/log.js';
import { createRateLimit } from '../../bot/platforms/shared/rate-limit.js';
import { createDirectRooms } from '../../bot/platforms/matrix/rooms/direct-rooms.js';
import { createMembership, isAllowed } from '../../bot/platforms/matrix/rooms/membership.js';
import {
  createRooms,
  displayNameIn,
  isEncrypted,
  isPrivateBetween,
  mayManage,
  presentMembers,
  type RoomState,
} from '../../bot/platforms/matrix/rooms/rooms.js';
import type { MatrixEvent } from '../../bot/platforms/matrix/answer/matrix-event.js';
import { BOT, ODALYS, state, TAMSIN } from './events.js';
import { clientOf } from './fake-homeserver.js';

const stateOf = async (...events: readonly MatrixEvent[]): Promise<RoomState> =>
  createRooms({ call: async () => events }).state('!room:fenwold.test');
const create = state('m.room.create', '', { room_version: '10' });
const joined = (userId: string, membership = 'join') =>
  state('m.room.member', userId, { membership, displayname: 'Name' });

describe('powers', () => {
  // Defaults: Matrix specification, "m.room.power_levels": users_default 0, state_default 50; without the event the creator has 100.
  test.each([
    ['an equal level', { users: { [TAMSIN]: 50 } }, true],
    ['a lower level', { users: { [TAMSIN]: 49 } }, false],
    ['nothing said', {}, false],
    ['a default for users', { users_default: 50 }, true],
    ['a lower need', { users: { [TAMSIN]: 10 }, state_default: 10 }, true],
    ['a higher need', { users: { [TAMSIN]: 50 }, state_default: 100 }, false],
    ['a level written as text (room versions before 10)', { users: { [TAMSIN]: '50' } }, true],
    ['a level that is none', { users: { [TAMSIN]: {} } }, false],
  ])('%s', async (_name, powers, expected) => {
    expect(mayManage(await stateOf(create, state('m.room.power_levels', '', powers)), TAMSIN)).toBe(expected);
  });
  test('without the event, the creator alone', async () => {
    const bare = await stateOf(create);
    expect(mayManage(bare, ODALYS)).toBe(true);
    expect(mayManage(bare, TAMSIN)).toBe(false);
  });
  test('creators stand above all from room version 12 on', async () => {
    const of = (room_version: string) =>
      stateOf(
        state('m.room.create', '', { room_version, additional_creators: [TAMSIN] }),
        state('m.room.power_levels', '', { users: {} }),
      );
    expect(mayManage(await of('12'), ODALYS)).toBe(true);
    expect(mayManage(await of('12'), TAMSIN)).toBe(true);
    expect(mayManage(await of('11'), ODALYS)).toBe(false);
  });
});

describe('private rooms', () => {
  const invite = state('m.room.join_rules', '', { join_rule: 'invite' });
  test('are those with the member and the bot alone', async () => {
    expect(isPrivateBetween(await stateOf(create, invite, joined(BOT), joined(ODALYS)), BOT, ODALYS)).toBe(true);
    expect(isPrivateBetween(await stateOf(create, invite, joined(BOT), joined(ODALYS, 'invite')), BOT, ODALYS)).toBe(
      true,
    );
    expect(
      isPrivateBetween(
        await stateOf(create, invite, joined(BOT), joined(ODALYS), joined(TAMSIN, 'leave')),
        BOT,
        ODALYS,
      ),
    ).toBe(true);
  });
  test('are not those that another may read', async () => {
    expect(
      isPrivateBetween(await stateOf(create, invite, joined(BOT), joined(ODALYS), joined(TAMSIN)), BOT, ODALYS),
    ).toBe(false);
    expect(
      isPrivateBetween(
        await stateOf(create, invite, joined(BOT), joined(ODALYS), joined(TAMSIN, 'invite')),
        BOT,
        ODALYS,
      ),
    ).toBe(false);
    expect(
      isPrivateBetween(
        await stateOf(create, state('m.room.join_rules', '', { join_rule: 'public' }), joined(BOT), joined(ODALYS)),
        BOT,
        ODALYS,
      ),
    ).toBe(false);
    expect(
      isPrivateBetween(
        await stateOf(
          create,
          invite,
          state('m.room.history_visibility', '', { history_visibility: 'world_readable' }),
          joined(BOT),
          joined(ODALYS),
        ),
        BOT,
        ODALYS,
      ),
    ).toBe(false);
    expect(isPrivateBetween(await stateOf(create, invite, joined(BOT), joined(TAMSIN)), BOT, ODALYS)).toBe(false);
  });
});

test('state is asked for once and kept up from the sync', async () => {
  let asked = 0;
  const rooms = createRooms({
    call: async () => {
      asked++;
      return [create, joined(BOT), joined(ODALYS)];
    },
  });
  const [first] = await Promise.all([rooms.state('!a'), rooms.state('!a')]);
  expect(presentMembers(first)).toEqual([BOT, ODALYS]);
  rooms.apply('!a', state('m.room.member', ODALYS, { membership: 'join', displayname: 'Odalys of Fenwold' }));
  rooms.apply('!a', state('m.room.encryption', '', { algorithm: 'm.megolm.v1.aes-sha2' }));
  const later = await rooms.state('!a');
  expect(asked).toBe(1);
  expect(displayNameIn(later, ODALYS)).toBe('Odalys of Fenwold');
  expect(isEncrypted(later)).toBe(true);
  rooms.forget('!a');
  expect(isEncrypted(await rooms.state('!a'))).toBe(false);
  expect(asked).toBe(2);
});

test('somebody who comes in while the state is on the way is seen: two are not taken for alone that are three', async () => {
  const invite = state('m.room.join_rules', '', { join_rule: 'invite' });
  const before = [create, invite, joined(BOT), joined(ODALYS)];
  const answers = [before, [...before, joined(TAMSIN)]];
  const rooms = createRooms({
    call: async () => {
      const answer = answers.shift();
      await Promise.resolve();
      // The server answers from before; the sync brings the join while the answer travels.
      if (answers.length === 1) rooms.apply('!a', joined(TAMSIN));
      return answer;
    },
  });
  const asked = rooms.state('!a');
  expect(isPrivateBetween(await asked, BOT, ODALYS)).toBe(false);
  expect(isPrivateBetween(await rooms.state('!a'), BOT, ODALYS)).toBe(false);
});

describe('invitations', () => {
  test('beyond a number, one member after another is declined for that member alone', async () => {
    const { client, calls } = clientOf(() => ({}));
    const membership = createMembership({
      client,
      botId: BOT,
      rooms: createRooms(client.homeserver),
      direct: {
        with: async () => ({ roomId: '', isNew: true }),
        existing: async () => null,
        remember: async () => undefined,
      },
      outbox: { send: async () => '', sentParts: async () => new Map<string, string>() },
      notes: {} as never,
      log: createLog('silent', []),
      allowed: [],
      prefix: '!pier',
      invitations: createRateLimit({ burst: 3, perSecond: 1 / 600 }),
      ticksMs: () => 0,
      stop: new AbortController().signal,
    });
    const invite = (inviter: string) => [
      { type: 'm.room.member', state_key: BOT, sender: inviter, content: { membership: 'invite' } },
    ];
    for (let i = 0; i < 50; i++) await membership.invited(`!r${i}:fenwold.test`, invite(ODALYS));
    await membership.invited('!other:fenwold.test', invite('@ravi:fenwold.test'));
    const joins = calls.filter(({ path }) => path.includes('/join/'));
    expect(joins).toHaveLength(4);
    expect(calls.filter(({ path }) => path.endsWith('/leave'))).toHaveLength(47);
    expect(joins.at(-1)?.path).toContain(encodeURIComponent('!other:fenwold.test'));
  });

  test.each([
    ["the bot's own server by default", ODALYS, [], true],
    ['another server by default', TAMSIN, [], false],
    ['a named server', TAMSIN, ['example.org'], true],
    ['the own server, once others are named', ODALYS, ['example.org'], false],
    ['a named member', TAMSIN, [TAMSIN], true],
    ['a namesake on another server', '@tamsin:example.net', [TAMSIN], false],
    ['a server that ends alike', '@x:evil-example.org', ['example.org'], false],
    ['a server with a port', '@x:example.org:8448', ['example.org:8448'], true],
  ])('%s', (_name, inviter, allowed, expected) => {
    expect(isAllowed(inviter, BOT, allowed)).toBe(expected);
  });
});

test('a direct room of its own making shows its past to nobody who comes later', async () => {
  const { client, calls } = clientOf(({ path }) => (path.endsWith('/createRoom') ? { room_id: '!new' } : {}));
  await createDirectRooms(client, BOT, createRooms(client.homeserver)).with(TAMSIN);
  // "invited" and "joined" keep earlier events from those who come later (Matrix specification, m.room.history_visibility).
  expect(calls.find(({ path }) => path.endsWith('/createRoom'))?.body).toMatchObject({
    preset: 'private_chat',
    initial_state: [{ type: 'm.room.history_visibility', content: { history_visibility: 'invited' } }],
  });
});
