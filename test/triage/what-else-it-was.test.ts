/** “It was something else”: what it was is asked in one short question, and kept or counted. The lines are invented. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const OPENING =
  "triage Windows, usb adapter on the hand controller. could not open port 'COM3', Device Manager lists COM8";

const notThat = async (name: string, text?: string): Promise<Reply> => {
  const who = member(name);
  await answer(deps, OPENING, NOW, who);
  const done = await answer(deps, 'triage it works now, thank you', NOW, who);
  expect(stepOf(done).kind).toBe('done');
  return answer(deps, `triage ${text ?? `walk:${idOf(done)} answer:count.other`}`, NOW, who);
};

describe('it was something else', () => {
  it.each([
    ['Eadgar', undefined],
    ['Eadgifu', 'it was something else'],
  ])('asks what: %s %s', async (name, text) => {
    expect((await notThat(name, text)).summary).toMatch(/^What was it, then\?/u);
  });

  it('a cause that is named is the one to be counted', async () => {
    await notThat('Eadric');
    const named = await answer(deps, 'triage the polar alignment program had the port open', NOW, member('Eadric'));
    expect(stepOf(named)).toMatchObject({ kind: 'done', id: 'port-held-by-program' });
  });

  it('what stands in no list is kept in its own words, and the one shown is no cure', async () => {
    await notThat('Eadred');
    const end = await answer(deps, 'triage the cat had been sitting on it', NOW, member('Eadred'));
    expect(end.notes.join(' ')).toContain('I keep what it was');
    expect(JSON.stringify(end)).toContain('the cat had been sitting on it');
    expect(JSON.stringify(end)).not.toContain('it works\\"');
  });

  it('that it does not work after all goes on with the walk', async () => {
    await notThat('Eadwine');
    const next = await answer(deps, 'triage nothing, it still does not connect', NOW, member('Eadwine'));
    expect(next.summary).not.toMatch(/This walk has ended/u);
    expect(['ask', 'try', 'handOn']).toContain(stepOf(next).kind);
  });
});

describe('done at its own card, what failed mended', () => {
  it('is that card’s cure, in other words than its own', async () => {
    const who = member('Gisela');
    const card = await answer(deps, 'triage Connects but the position reads nonsense and gotos go nowhere.', NOW, who);
    expect(stepOf(card).kind).toBe('try');
    const end = await answer(
      deps,
      'triage set it from extended to classic. ra and dec are right now and goto moves!',
      NOW,
      who,
    );
    expect(stepOf(end)).toMatchObject({ kind: 'done', id: stepOf(card).id });
  });
});
