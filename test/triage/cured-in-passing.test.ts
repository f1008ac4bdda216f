/** What a walk makes of words that sound like a cure, like none, or like half of one. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

const OPENING =
  "triage Windows, usb adapter on the hand controller. It says could not open port 'COM3' and Device Manager lists COM8";
const REMEDY = { kind: 'try', id: 'port-number-moved' } as const;

const say = (name: string, text: string): Promise<Reply> => answer(deps, `triage ${text}`, NOW, member(name));
const atRemedy = async (name: string): Promise<Reply> => {
  const card = await answer(deps, OPENING, NOW, member(name));
  expect(stepOf(card)).toMatchObject(REMEDY);
  return card;
};

describe('at a remedy', () => {
  it.each([
    ['Cua', 'i put eight in the box and off she goes dear'],
    ['Cub', 'eight in, chart and scope walk together, the kids are at the eyepiece'],
    ['Cuk', 'typed 8 and the program talks to it, cheers'],
    ['Cul', 'its com8 now, changed it, we are in'],
  ])('what was done and its cure end it at once: %s “%s”', async (name, text) => {
    await atRemedy(name);
    expect(stepOf(await say(name, text))).toMatchObject({ kind: 'done', id: REMEDY.id });
  });

  it.each([
    ['Cum', 'closed the chat program that had the port and now it connects', 'port-held-by-program'],
    ['Cun', 'ran both of them as administrator, now it connects', 'privilege-mixed'],
  ])('another deed with its cure is credited, not the remedy that stands: %s “%s”', async (name, text, fault) => {
    await atRemedy(name);
    expect(stepOf(await say(name, text))).toMatchObject({ kind: 'done', id: fault });
  });

  it.each([
    ['Cuo', 'took the fridge magnet off the hand controller and now it connects'],
    ['Cup', 'my wife unplugged the pond pump and now it talks, who knew'],
  ])('a deed of no listed cause is asked for once, and kept in its own words: %s “%s”', async (name, text) => {
    await atRemedy(name);
    const which = await say(name, text);
    expect(which.summary).toBe('Good to hear. What was it?');
    expect(which.choices?.map(({ label }) => label).at(-1)).toBe('Something else');
    const end = await say(name, 'something else');
    expect(end.notes.join(' ')).toContain('Good to hear. I keep what it was with the walk');
    expect(JSON.stringify(end)).toContain(text);
  });

  it.each([
    ['Cuc', 'ah, my lad was still logged on with his'],
    ['Cuq', 'ok i put the 8 in'],
    ['Cur', 'changed it like you said'],
  ])(
    'what was done without what came of it leaves the remedy standing, and asks for no cure: %s “%s”',
    async (name, text) => {
      await atRemedy(name);
      const then = await say(name, text);
      expect(then.summary).toMatch(/^The last thing to try.*What came of it\?$/u);
      expect(stepOf(then)).toMatchObject(REMEDY);
    },
  );

  it('a cure that may be on its way is asked about once, and a no goes on', async () => {
    await atRemedy('Cud');
    expect((await say('Cud', 'eight it is, chart and scope walk together')).summary).toBe('Is it fixed?');
    expect(stepOf(await say('Cud', 'no'))).toMatchObject(REMEDY);
  });

  it('what is like a failure is asked back, and a yes takes it', async () => {
    await atRemedy('Cue');
    const back = await say('Cue', 'did as the card says. it sulks like before');
    expect(back.notes.join(' ')).toContain('Did you mean “No change”?');
    expect(stepOf(await say('Cue', 'yes'))).not.toMatchObject(REMEDY);
  });

  it.each([
    ['Cuf', 'gonna let it run overnight'],
    ['Cug', 'shall try it after tea'],
    ['Cuj', 'I will do it when the clouds go'],
  ])('who has yet to do it is waited for, and may say so twice: %s “%s”', async (name, text) => {
    await atRemedy(name);
    const once = await answer(deps, text, NOW, member(name));
    expect(once.notes.join(' ')).toContain('No hurry');
    expect(stepOf(await say(name, text))).toMatchObject(REMEDY);
  });

  it('what is left of a trouble half gone is said back', async () => {
    await atRemedy('Cuh');
    const then = await say('Cuh', 'the port error is gone, but it still drops after a while');
    expect(then.notes.join(' ')).toContain('on to what is left: “it still drops after a while”');
    expect(stepOf(then)).not.toMatchObject(REMEDY);
  });
});

describe('at a question', () => {
  it('a remedy told of with its cure, before it was shown, is credited', async () => {
    const first = await answer(
      deps,
      'triage my star program says it cannot open com3, windows, usb serial adapter at the hand controller',
      NOW,
      member('Cui'),
    );
    expect(stepOf(first).kind).toBe('ask');
    const told = await say('Cui', 'it says com7 now, i put 7 in the star program and off she goes, thank you my dear');
    expect(stepOf(told)).toMatchObject({ kind: 'done', id: REMEDY.id });
  });
});
