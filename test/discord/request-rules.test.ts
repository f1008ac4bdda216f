import { describe, expect, it } from 'vitest';
import { requestFaults } from '../doubles/discord/request-rules.js';

const callback = (data: object, files = 0) =>
  requestFaults(
    'POST',
    '/interactions/1/token/callback',
    { type: 4, data: { allowed_mentions: { parse: [] }, ...data } },
    files,
  );
const embed = (parts: object) => callback({ embeds: [{ title: 'a', ...parts }] });
const button = (parts: object) =>
  callback({
    content: 'a',
    components: [{ type: 1, components: [{ type: 2, style: 1, label: 'a', custom_id: 'b', ...parts }] }],
  });
const register = (command: object) =>
  requestFaults('PUT', '/applications/1/commands', [{ name: 'up', description: 'Is it up?', type: 1, ...command }], 0);

describe('the double refuses what Discord would refuse', () => {
  it('takes a right message, embed, button and command', () => {
    expect([callback({ content: 'hello' }), embed({ description: 'b' }), button({}), register({})]).toEqual([
      [],
      [],
      [],
      [],
    ]);
  });

  it.each([
    ['an unknown key in the message', callback({ content: 'a', colour: 1 }), /colour/u],
    ['an unknown key deep inside', embed({ footer: { text: 'a', size: 3 } }), /size/u],
    ['an unknown key in a button', button({ colour: 1 }), /colour/u],
    ['2,001 characters', callback({ content: 'a'.repeat(2001) }), /2000/u],
    ['a description of 4,097', embed({ description: 'a'.repeat(4097) }), /4096/u],
    ['26 fields', embed({ fields: Array.from({ length: 26 }, () => ({ name: 'a', value: 'b' })) }), /25/u],
    [
      '6,001 characters over all',
      embed({
        description: 'a'.repeat(4096),
        fields: [
          { name: 'b'.repeat(256), value: 'c'.repeat(624) },
          { name: 'b', value: 'c'.repeat(1023) },
        ],
      }),
      /6001/u,
    ],
    ['a custom id of 101', button({ custom_id: 'a'.repeat(101) }), /100/u],
    ['a label of 81', button({ label: 'a'.repeat(81) }), /80/u],
    ['an empty message', callback({}), /empty/u],
    ['a picture that is not attached', embed({ image: { url: 'attachment://chart.png' } }), /names no attachment/u],
    [
      'an attachment without a file',
      callback({ content: 'a', attachments: [{ id: '0', filename: 'a.png' }] }),
      /has no file/u,
    ],
    [
      'permission to ping',
      requestFaults('POST', '/channels/1/messages', { content: 'a', allowed_mentions: { parse: ['everyone'] } }, 0),
      /allowed_mentions/u,
    ],
    ['a command name in capitals', register({ name: 'Up' }), /name/u],
    ['a description of 101', register({ description: 'a'.repeat(101) }), /100/u],
    [
      'a required option after an optional one',
      register({
        options: [
          { type: 3, name: 'a', description: 'a' },
          { type: 3, name: 'b', description: 'b', required: true },
        ],
      }),
      /required/u,
    ],
    [
      'permissions as text, which the schema has as a number',
      register({ default_member_permissions: '32' }),
      /default_member_permissions/u,
    ],
  ])('%s', (_what, faults, says) => {
    expect(faults?.join('\n')).toMatch(says);
  });

  it('knows the routes the bot uses and no others', () => {
    expect(requestFaults('DELETE', '/channels/1', undefined, 0)).toBeUndefined();
  });
});
