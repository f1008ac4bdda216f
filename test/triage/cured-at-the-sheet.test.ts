/** What is said at the sheet for a helper, and after a cure, of how it is now. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { cureGrade, saysBrokenAgain } from '../../bot/reading/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';

const atSheet = async (name: string): Promise<{ readonly reply: Reply; readonly who: ReturnType<typeof member> }> => {
  const who = member(name);
  const opening = 'triage windows, usb adapter at the hand controller, connects then drops after ten minutes';
  const first = await answer(deps, opening, NOW, who);
  return { who, reply: await goOn(who, first, (one) => stepOf(one).kind === 'handOn', 30) };
};

describe('at the sheet for a helper', () => {
  it.each(['its fixed', 'it works now', 'fixed!', 'sorted 👍'])('“%s” is asked what it was', async (words) => {
    const { who, reply } = await atSheet(`Frideswide ${words}`);
    expect(stepOf(reply).kind).toBe('handOn');
    const next = await answer(deps, `triage walk:${idOf(reply)} text:"${words}"`, NOW, who);
    expect(next.summary).toBe('Good to hear. What was it?');
    const then = await answer(deps, `triage walk:${idOf(reply)} text:"it was the new battery"`, NOW, who);
    expect(stepOf(then)).toMatchObject({ kind: 'done', id: 'battery-low' });
  });

  it('more of the trouble is none', async () => {
    const { who, reply } = await atSheet('Frithestan');
    const next = await answer(deps, `triage walk:${idOf(reply)} text:"it dropped again just now"`, NOW, who);
    expect(next.summary).not.toContain('What was it?');
  });
});

describe('after a cure', () => {
  it.each([
    'hmm no, second and third one off again, short like before',
    'no, second and third one off again',
    'hmm no, still short',
    'the next target misses again',
    'stars are trailing again',
  ])('the trouble is back: %s', (text) => {
    expect(saysBrokenAgain(text)).toBe(true);
  });

  it.each(['no thanks, just end it', 'off to bed, good night', 'all the stars in view again'])(
    'it is not: %s',
    (text) => {
      expect(saysBrokenAgain(text)).toBe(false);
    },
  );

  it('a first star is no cure of the rest', () => {
    expect(cureGrade('first star was bang on! yay').grade).not.toBe('sure');
  });
});
