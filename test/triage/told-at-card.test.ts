/** What a member tells at a remedy without naming its outcome, and at the end of a walk. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { closingMeant } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const OPENING =
  "triage Windows, usb adapter on the hand controller. It says could not open port 'COM3' and Device Manager lists COM8";

const atCard = async (name: string): Promise<Reply> => {
  const card = await answer(deps, OPENING, NOW, member(name));
  expect(stepOf(card)).toMatchObject({ kind: 'try', id: 'port-number-moved' });
  return card;
};
const say = (name: string, text: string): Promise<Reply> => answer(deps, `triage ${text}`, NOW, member(name));

describe('told at a card', () => {
  it.each([
    ['Iva', 'it opens COM8 now and the mount does not answer'],
    ['Ivb', 'chose COM8, now it times out instead'],
    ['Ivc', 'set to 8, it connects and then drops after a minute'],
  ])('another trouble than before is a change, and is not asked about: %s %s', async (name, text) => {
    await atCard(name);
    const then = await say(name, text);
    expect(then.notes.join(' ')).toMatch(/something changed/iu);
    expect(stepOf(then)).not.toMatchObject({ kind: 'try', id: 'port-number-moved' });
    expect(['how-far', 'message']).not.toContain(stepOf(then).id);
  });

  it.each([
    ['Ivd', 'did that, it still could not open the port'],
    ['Ive', 'i had it on the same already, could not open port again'],
  ])('the trouble as it was is no change: %s %s', async (name, text) => {
    await atCard(name);
    expect((await say(name, text)).notes.join(' ')).toMatch(/no change/iu);
  });

  it('asks once what came of it, and goes on where that is not told', async () => {
    await atCard('Ivf');
    const once = await say('Ivf', 'the laptop is a bit slow tonight');
    expect(once.summary).toMatch(/What came of it/u);
    const twice = await say('Ivf', 'it has the blue cover on and the fan runs');
    expect(twice.summary).not.toMatch(/What came of it/u);
    expect(twice.notes.join(' ')).toMatch(/no change/iu);
  });

  it.each([
    ['Ivg', 'one moment please'],
    ['Ivh', 'where do i find that list?'],
  ])('waits for one who has not done it yet: %s %s', async (name, text) => {
    const card = await atCard(name);
    expect(stepOf(await say(name, text))).toEqual(stepOf(card));
  });
});

describe('told at the end', () => {
  const fixed = async (name: string): Promise<Reply> => {
    await atCard(name);
    const done = await say(name, 'it works now, thank you');
    expect(stepOf(done).kind).toBe('done');
    return done;
  };

  it.each([
    ['Jda', 'it was two things, first the driver then the number'],
    ['Jdb', 'it was something else, the loose knob'],
  ])('that it was another cause ends the walk: %s %s', async (name, text) => {
    await fixed(name);
    expect((await say(name, text)).summary).toContain('This walk has ended');
  });

  it.each([
    ['Jdc', 'no it works, all is fixed'],
    ['Jdd', 'the clouds are coming in though'],
  ])('does not tear a mended walk open: %s %s', async (name, text) => {
    await fixed(name);
    expect(stepOf(await say(name, text)).kind).toBe('done');
  });

  it('hears that another trouble stands behind it', async () => {
    const done = await fixed('Jde');
    const then = await say('Jde', 'hm, but now it moves to the wrong place in the sky');
    expect(idOf(then)).toBe(idOf(done));
    expect(['done', 'handOn']).not.toContain(stepOf(then).kind);
  });

  it.each([
    ['yes please', 'yes'],
    ['sure, go ahead', 'yes'],
    ['no thanks', 'no'],
    ['rather not', 'no'],
    ['no really, it was the clutch', 'cause'],
    ['it stopped again', null],
    ['it was the mount again', 'cause'],
    ['lovely evening', null],
  ])('“%s” says %s to being counted', (text, meant) => expect(closingMeant(text)).toBe(meant));
});
