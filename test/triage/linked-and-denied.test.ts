/** At a remedy: the link stands and another trouble is told in the same line, or what the remedy is for is denied. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { connectsAndFails, deniesPremise } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const say = (name: string, text: string): Promise<Reply> => answer(deps, `triage ${text}`, NOW, member(name));
const PORT =
  "Windows, usb adapter on the hand controller. It says could not open port 'COM3' and Device Manager lists COM8";
const CLUTCH = 'motor runs but the RA axis does not turn';

const atRemedy = async (name: string, opening: string, fault: string): Promise<Reply> => {
  let reply = await say(name, opening);
  for (let left = 20; left > 0 && stepOf(reply).kind === 'ask'; left--)
    reply = await answer(deps, `triage walk:${idOf(reply)} answer:${stepOf(reply).id}.unsure`, NOW, member(name));
  expect(stepOf(reply)).toMatchObject({ kind: 'try', id: fault });
  return reply;
};

describe('linked now, and wrong', () => {
  it.each([
    ['Jva', 'it got talking thank you, only now it points down at the lawn', 'elsewhere'],
    ['Jvb', 'COM8 it is, connected. But nothing moves when I press the arrows', 'no-move'],
    ['Jvc', 'great, it connects, then it drops out after a minute', 'drops'],
  ])('goes on with what is wrong, and asks for no cure: %s %s', async (name, text, shows) => {
    await atRemedy(name, PORT, 'port-number-moved');
    const then = await say(name, text);
    expect(then.summary).not.toMatch(/is it fixed/iu);
    expect(then.notes.join(' ')).toMatch(/helped in part/iu);
    expect(connectsAndFails(text)?.shows).toBe(shows);
    expect(stepOf(then)).not.toMatchObject({ id: 'how-far' });
  });

  it.each([
    'it connects now, no more drops',
    'connected and it goes straight to Vega',
    'still says it could not open, nothing moves',
    'if it connects it will point at the ground',
    'it never connects and nothing moves',
  ])('takes no second trouble from: %s', (text) => {
    expect(connectsAndFails(text)).toBeNull();
  });
});

describe('the premise denied', () => {
  it.each([
    ['Jvd', 'they ARE tight!!! how often must i say it'],
    ['Jve', 'clutches are tight, both, looked at them first thing. do you think i am daft'],
    ['Jvf', 'no no, the clutch is not loose'],
    ['Jvg', 'the levers are locked, i always lock them'],
  ])('goes on to the next cause: %s %s', async (name, text) => {
    await atRemedy(name, CLUTCH, 'clutch-loose');
    const then = await say(name, text);
    expect(then.summary).not.toMatch(/still the likeliest|which of these/iu);
    expect(stepOf(then).id).not.toBe('clutch-loose');
    expect(stepOf(then).id).not.toBe('clutches');
  });

  it.each([
    ['the limit is 5 and i never touched it', "The mount's lowest altitude refuses the target"],
    ['it is not parked', 'The mount is parked'],
    ['can not be that, it is set to 0', "The mount's lowest altitude refuses the target"],
  ])('is denied by: %s', (text, title) => {
    expect(deniesPremise(text, title)).toBe(true);
  });

  it.each([
    'clutches are tight now',
    'which clutch do you mean?',
    'i will check both in a moment',
    'one was loose, it works',
    'it turned out that the clutch was not tight, tightened it',
    'the axis does not turn',
    'i cannot change that, the lever is missing',
  ])('is not denied by: %s', (text) => {
    expect(deniesPremise(text, 'A clutch is loose')).toBe(false);
  });
});
