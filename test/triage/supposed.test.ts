/** What members wonder about is looked at next. The sentences are ours (invented; no source). */
import { describe, expect, it } from 'vitest';
import { supposition } from '../../bot/reading/index.js';
import type { Asker } from '../../bot/commands/core/command.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

const say = (who: Asker, line: string): Promise<Reply> => answer(deps, line, NOW, who);

const OPENING = 'my program says it cannot open com5, windows, a usb serial adapter at the handset';

describe('a cause that the member wonders about', () => {
  it.each([
    ['could it be the wrong socket, maybe the guide one?', 'socket-used'],
    ['is the gps program using the port?', 'port-holder'],
    ['could the lead be broken?', 'serial-lead'],
    ['should i check where the cable goes in the mount? there is 2 sockets that look the same', 'socket-used'],
    ['is it maybe the driver?', 'adapter-driver'],
  ])('%s', async (words, check) => {
    const who = member(`Wonders ${check} ${words.length}`);
    await say(who, OPENING);
    const reply = await say(who, words);
    expect(stepOf(reply).id).toBe(check);
    expect(reply.notes.join(' ')).toContain('This look tells');
  });

  it.each([
    'how do i see what uses it',
    'is it safe to unplug it now?',
    'can i do that tomorrow?',
    'it says it could not open the port',
    'could be 15 degrees',
  ])('is not in: %s', (words) => {
    expect(supposition(words)).toBeNull();
  });

  it('is not asked of again once it is answered', async () => {
    const who = member('Wonders twice');
    await say(who, OPENING);
    const asked = await say(who, 'could it be the wrong socket?');
    const next = await say(who, asked.choices?.[0]?.run ?? '');
    expect(stepOf(next).id).not.toBe('socket-used');
    expect(stepOf(await say(who, 'could it be the wrong socket?')).id).not.toBe('socket-used');
  });
});
