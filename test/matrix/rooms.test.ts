/** Who is in a room, who may change its settings, and which rooms are private. */
import { describe, expect, test } from 'vitest';
import { isAllowed } from '../../bot/platforms/matrix/rooms/membership.js';
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

describe('invitations', () => {
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
