/** "How", "where" and "what now" said to the step in hand. The sentences are ours (invented; no source). */
import { describe, expect, it } from 'vitest';
import type { Asker } from '../../bot/commands/core/command.js';
import { asksOfTheStep } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, linesOn, member, NOW, stepOf } from './console-walk.js';

const say = (who: Asker, line: string): Promise<Reply> => answer(deps, line, NOW, who);

describe('a question about the step in hand', () => {
  it.each([
    ['where is this limit then?', 'settings of the driver or the program'],
    ['in which menu', 'settings of the driver or the program'],
    ['what I must do now?', 'a) '],
    ['sorry i dont know how to do that', 'a) '],
    ['please explain the first step', 'Cap the tube'],
  ])('is answered from its own lines, and what was asked is not asked in the same words: %s', async (words, told) => {
    const who = member(`Asks ${words}`);
    const shown = await say(
      who,
      'triage linux, goto to one star works, to the next it is refused: meridian limit reached',
    );
    expect(stepOf(shown)).toMatchObject({ kind: 'try', id: 'meridian-limit' });
    const reply = await say(who, words);
    expect(stepOf(reply)).toEqual(stepOf(shown));
    expect(linesOn(reply).join(' ').replace(/\s+/gu, ' ')).toContain(told);
    expect(reply.summary).not.toBe(shown.summary);
  });

  it('asked once more is told that there is no more, and what goes on', async () => {
    const who = member('Asks twice');
    await say(who, 'triage linux, goto to one star works, to the next it is refused: meridian limit reached');
    const first = await say(who, 'how do i do that');
    const second = await say(who, 'yes but how?');
    expect(second.notes).not.toEqual(first.notes);
    expect(second.notes.join(' ')).toContain('a person please');
  });

  it.each([
    "i don't know",
    'i dont know what it says',
    'how far is it off',
    'how can i stop windows putting the hub to sleep',
    'what now works is the hand controller',
    'which port, COM3 or COM4?',
    'what do you mean',
    'what should I look at tonight',
  ])('is none: %s', (words) => {
    expect(asksOfTheStep(words)).toBeNull();
  });
});
