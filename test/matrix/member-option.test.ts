/** Members named in a command, as people write them. */
import { describe, expect, test } from 'vitest';
import { defineCommand, member, text } from '../../bot/commands/core/command.js';
import { withMemberIds } from '../../bot/platforms/matrix/answer/member-option.js';
import { createRooms } from '../../bot/platforms/matrix/rooms/rooms.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';
import { BOT, state, TAMSIN } from './events.js';

const command = defineCommand({
  name: 'x',
  summary: 'x',
  options: { for: member('Whom'), note: text('Note') },
  examples: ['x'],
  run: async () => reply({ pointsAt: NOWHERE, title: '', summary: '' }),
});
const joined = (userId: string, displayname: string, membership = 'join') =>
  state('m.room.member', userId, { membership, displayname });
const room = await createRooms({
  call: async () => [
    joined(BOT, 'Pierhand'),
    joined(TAMSIN, 'Tamsin'),
    joined('@ravi:fenwold.test', 'Ravi'),
    joined('@ravi2:fenwold.test', 'ravi'),
    joined('@ingo:fenwold.test', 'Quarry keeper'),
    joined('@mallory:fenwold.test', 'Mallory of Cold Ridge'),
    joined('@stranger:example.net', 'mallory'),
    joined('@mbali:fenwold.test', 'Mbali', 'leave'),
  ],
}).state('!r');
const forWhom = (value: string): unknown => {
  const result = withMemberIds(
    command,
    new Map([
      ['for', value],
      ['note', 'Tamsin'],
    ]),
    room,
  );
  return 'problem' in result ? result.problem : result.get('for');
};

describe('a member', () => {
  test.each([TAMSIN, `matrix:${TAMSIN}`, 'Tamsin', 'tamsin', '@tamsin', ' Tamsin '])('%j is found', (value) => {
    expect(forWhom(value)).toBe(`matrix:${TAMSIN}`);
  });
  test("is found by the id's first part where no name says it", () => {
    expect(forWhom('ingo')).toBe('matrix:@ingo:fenwold.test');
  });
  test.each(['Odalys', '@odalys:fenwold.test', '@mbali:fenwold.test', 'tamsin:example.org', '', '@'])(
    '%j is not here',
    (value) => {
      expect(forWhom(value)).toBe('unknown-member');
    },
  );
  test('whose user name another took as a display name is asked for again, not mistaken', () => {
    expect(forWhom('mallory')).toBe('which-member');
  });
  test('that two are called is asked for again', () => {
    expect(forWhom('Ravi')).toBe('which-member');
  });
  test('in another option is plain text', () => {
    const result = withMemberIds(command, new Map([['note', 'Tamsin']]), room);
    expect('problem' in result ? null : result.get('note')).toBe('Tamsin');
  });
});
