/** A note for somebody else, wished for in a walk. The sentences are ours (invented; no source). */
import { describe, expect, it } from 'vitest';
import type { Asker } from '../../bot/commands/core/command.js';
import { wantsNote } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW } from './console-walk.js';

const say = (who: Asker, line: string): Promise<Reply> => answer(deps, line, NOW, who);

describe('a note for somebody else', () => {
  it.each([
    'report please',
    'can i have a short summary for our treasurer at the club',
    'write it all up for my friend please',
    'have you something i can forward?',
    'hand over to a human please',
    'can you sum up everything so i can mail it',
    'what shall i tell the people in the shop',
    'i will ask somebody on Friday, please write down what we found',
  ])('is handed over at once, whatever stands before the member: %s', async (words) => {
    const who = member(`Wants ${words}`);
    await say(who, 'triage mac on the mount\u2019s own wifi, connection timed out, phone app steers it fine');
    expect((await say(who, words)).title).toContain('For a helper');
  });

  it.each([
    'the report in the event log says code 28',
    'i wrote the number on a note, it was COM4',
    'the driver gives me a report of error 5',
    'my friend gave me his summary of settings',
    'can i send the mount to the shop?',
    'it reports nothing',
  ])('is not wished for in: %s', (words) => {
    expect(wantsNote(words)).toBe(false);
  });
});
