/** Choices carried by the bot's own messages, and the keycaps that pick them. */
import { describe, expect, test } from 'vitest';
import { choicesContent, keycap, numberOfKeycap, offeredIn } from '../../bot/platforms/matrix/answer/choices.js';
import { BOT, event, ODALYS, TAMSIN } from './events.js';

describe('keycaps', () => {
  // Code points: Unicode emoji-sequences.txt, Emoji_Keycap_Sequence "0031 FE0F 20E3"; "1F51F" is KEYCAP TEN.
  test('are written as Unicode lists them', () => {
    expect(Array.from(keycap(1), (c) => c.codePointAt(0)?.toString(16))).toEqual(['31', 'fe0f', '20e3']);
    expect(Array.from(keycap(10), (c) => c.codePointAt(0)?.toString(16))).toEqual(['1f51f']);
  });
  test('are read back with or without the variation selector', () => {
    for (let number = 1; number <= 10; number++) {
      expect(numberOfKeycap(keycap(number))).toBe(number);
      expect(numberOfKeycap(keycap(number).replace('\uFE0F', ''))).toBe(number);
    }
    for (const other of ['👍', '0\uFE0F\u20E3', '#\uFE0F\u20E3', '1', '', '12\u20E3'])
      expect(numberOfKeycap(other)).toBeNull();
  });
});

describe('offers', () => {
  const content = {
    msgtype: 'm.notice',
    body: 'x',
    ...choicesContent([{ label: 'Cold Ridge', run: 'dark site:"Cold Ridge"' }], ODALYS),
  };
  test("are read from the bot's own message", () => {
    expect(offeredIn(event('m.room.message', content, { sender: BOT }), BOT)).toEqual({
      askerId: ODALYS,
      runs: ['dark site:"Cold Ridge"'],
    });
  });
  test('of anyone else count for nothing', () => {
    expect(offeredIn(event('m.room.message', content, { sender: TAMSIN }), BOT)).toBeNull();
  });
  test('that are damaged count for nothing', () => {
    for (const damaged of [
      {},
      { 'pierhand.choices': 7 },
      { 'pierhand.choices': { asker: ODALYS, run: 'dark' } },
      { 'pierhand.choices': { asker: ODALYS, run: [7] } },
    ]) {
      expect(offeredIn(event('m.room.message', damaged, { sender: BOT }), BOT)).toBeNull();
    }
  });
  test('take no room where there are none', () => {
    expect(choicesContent([], ODALYS)).toEqual({});
  });
});
