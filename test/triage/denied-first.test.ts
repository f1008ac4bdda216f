/** What a walk reads of words that deny what it read, of a time or place where all was well, and of a word said first. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, linesOn, member, NOW, stepOf } from './console-walk.js';

const say = (name: string, text: string): Promise<Reply> => answer(deps, `triage ${text}`, NOW, member(name));
const all = async (name: string, lines: readonly string[]): Promise<Reply> => {
  let reply: Reply | undefined;
  for (const line of lines) reply = await say(name, line);
  if (reply === undefined) throw new Error('nothing was said');
  return reply;
};

it('what was read is taken back by its own words, and the rest is heard', async () => {
  const shown = await all('Deno', [
    'guider on the laptop, usb to the mount. the program gets no reply',
    'No reply is wrong. The link is fine, only the guide corrections have no effect',
  ]);
  expect(linesOn(shown).join(' ')).toMatch(/Taken back/u);
});

describe('well at another time or place is no cure', () => {
  it.each([
    ['Demi', 'yesterday in the mountains it worked perfect, today i am at home'],
    ['Deri', 'last week at the dark site it connected fine'],
    ['Desa', 'works fine with my mates laptop'],
  ])('%s: “%s”', async (name, text) => {
    const shown = await all(name, ['the phone can not connect to the mount, over the wifi of the mount', text]);
    expect(stepOf(shown).kind).not.toBe('done');
    expect(linesOn(shown).join(' ')).not.toMatch(/Is it fixed|Good to hear|Fixed/u);
  });
});

it('a question why it came is asked beside the cure, and takes no credit from it', async () => {
  const cured = await all('Dita', [
    "Windows, usb adapter on the hand controller. It says could not open port 'COM3' and Device Manager lists COM8",
    'ha changed it to 8 and its straight in, slews fine. why did it change on its own tho',
  ]);
  expect(stepOf(cured)).toMatchObject({ kind: 'done', id: 'port-number-moved' });
});

it('a word said first is the answer', async () => {
  const shown = await all('Doro', [
    'mac does not see the usb serial adapter on the hand controllers socket',
    'Neither. The list shows the mouse and the hub, not the serial lead',
  ]);
  expect(linesOn(shown).join(' ')).toMatch(/I take it: in neither/u);
});

it('a small computer that goes down is fed better', async () => {
  const shown = await all('Dula', [
    'little computer on the mount keeps rebooting when we slew, usb into the mounts own socket',
    'there is a lightning bolt in the corner of its screen',
  ]);
  expect(stepOf(shown)).toMatchObject({ kind: 'try', id: 'computer-undervolted' });
});

it('what is put to rights stays so though it is told with a slip of the pen', async () => {
  const cured = await all('Dyre', [
    'windows laptop, usb into the mounts own socket. it drops after the screen has gone black, i wiggle the mouse and it is lost',
    'set it to never in power settings. left it a hour and a bit, still going and still conected, that was it. cheers',
  ]);
  expect(stepOf(cured)).toMatchObject({ kind: 'done', id: 'computer-slept' });
});

describe('what is asked behind a cure takes nothing from it', () => {
  it.each([
    ['Duna', 'changed it to 8, all working. when does the moon come up'],
    ['Dvor', 'picked 8, connected, slews fine. is jupiter up yet'],
    ['Dwyn', 'set it to 8 and it connects now thanks. also whats the best target for tonight'],
    ['Dyla', 'put 8 in and bingo we are in. does it matter that mars is up later'],
  ])('%s: “%s”', async (name, text) => {
    const cured = await all(name, [
      "Windows, usb adapter on the hand controller. It says could not open port 'COM3' and Device Manager lists COM8",
      text,
    ]);
    expect(stepOf(cured)).toMatchObject({ kind: 'done', id: 'port-number-moved' });
  });
});
