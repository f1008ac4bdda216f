/** "As I said": a question whose answer was told before does not come again. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { withoutSaidAlready } from '../../bot/reading/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';

describe('words for having said it', () => {
  it.each([
    ['it says could not open com3, as i said', 'it says could not open com3'],
    ["like I've said, timeout", 'timeout'],
    ['told you already, every time i slew', 'every time i slew'],
    ['already said that', ''],
    ['see above', ''],
    ['as mentioned it does not connect', 'it does not connect'],
  ])('“%s” leaves “%s”', (text, left) => {
    expect(withoutSaidAlready(text)).toBe(left);
  });

  it.each(['it said time-out', 'the program told me nothing', 'it is already in use', 'the screen says see page 4'])(
    '“%s” is none',
    (text) => {
      expect(withoutSaidAlready(text)).toBeNull();
    },
  );
});

let members = 0;
const OPENING = 'program does not connect, usb serial adapter to the handset, windows';
const said = async (words: string) => {
  members += 1;
  const who = member(`Ottilie${members}`);
  const began = await goOn(
    who,
    await answer(deps, `triage ${OPENING}`, NOW, who),
    (reply) => stepOf(reply).id === 'message',
    9,
  );
  expect(stepOf(began).id).toBe('message');
  return { who, reply: await answer(deps, `triage walk:${idOf(began)} text:"${words}"`, NOW, who) };
};

describe('a walk', () => {
  it.each(['as i said, it does not connect', 'i told you before', 'the box comes up red, as i said'])(
    'asks no more what “%s” answers',
    async (words) => {
      const { who, reply } = await said(words);
      expect(reply.notes.join(' ')).toContain('You told me already');
      const again = await goOn(who, reply, (one) => ['message', 'unexplained'].includes(stepOf(one).id), 12);
      expect(stepOf(again).id).not.toBe('message');
    },
  );

  it('takes what the program says for its answer, where it leaves open which of two it is', async () => {
    const { who, reply } = await said('it says could not open com3, as i said');
    expect(reply.notes.join(' ')).toContain('the port could not be opened');
    const again = await goOn(who, reply, (one) => ['message', 'unexplained'].includes(stepOf(one).id), 12);
    expect(stepOf(again).id).not.toBe('message');
  });

  it('takes what is said besides as the answer', async () => {
    const { reply } = await said('as i said, it timed out');
    expect(reply.notes.join(' ')).toContain('I take it');
    expect(reply.notes.join(' ')).not.toContain('You told me already');
  });
});
