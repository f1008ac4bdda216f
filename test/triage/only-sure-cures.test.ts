/**
 * A walk ends on words only where they say that what failed works now; what else sounds so is asked once, and what is told of other gear
 * or of a part is heard. The sentences are our own; what ought to come of them is a club helper's judgement, no source.
 */
import { describe, expect, it } from 'vitest';
import { cureGrade } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

let members = 0;
const walking = (opening: string) => {
  members += 1;
  const who = member(`Hildelith${members}`);
  const say = (line: string): Promise<Reply> => answer(deps, line, NOW, who);
  return { begun: say(`triage ${opening}`), say };
};
const labels = ({ choices = [] }: Reply): readonly string[] => choices.map(({ label }) => label);

const HELD = 'windows says access is denied for com3, usb serial adapter to the hand controller';
const GROUP = 'raspberry pi linux permission denied ttyUSB0, cable straight to the motor board';
const DRIFT = 'after a goto the star drifts out of view, no computer';

describe('words alone', () => {
  it.each([
    ['works for my old printer', 'none'],
    ['my cousins tablet drives it fine, mine does not', 'none'],
    ['fine for a few minutes and then it drops', 'none'],
    ['in the list now. next it says no such device', 'none'],
    ['it seems to work', 'open'],
    ['put myself in the group and logged out and in', 'open'],
    ['pulled the adapter out and back in', 'open'],
    ['will it work now?', 'open'],
    ['swapped the lead, it connects', 'sure'],
    ['no more drops since', 'sure'],
    ['it works now, the port was wrong', 'sure'],
  ])('“%s” is %s', (text, grade) => expect(cureGrade(text).grade).toBe(grade));
});

describe('at a remedy', () => {
  it.each([
    [HELD, 'on the machine in my sons room everything works'],
    [GROUP, 'i am in the group. the same wire works for my weather logger'],
    [GROUP, 'i am in it now. next thing it says is time-out'],
    [DRIFT, 'perfect for two minutes, then it slides off again'],
  ])('%s: “%s” ends nothing, and is not asked about', async (opening, line) => {
    const { begun, say } = walking(opening);
    expect(stepOf(await begun).kind).toBe('try');
    const next = await say(line);
    expect(stepOf(next).kind).not.toBe('done');
    expect(next.summary).not.toBe('Is it fixed?');
  });

  it('another good than the one that failed is asked about, and only once', async () => {
    const { begun, say } = walking(DRIFT);
    await begun;
    const first = await say('gotos work great');
    expect(first.summary).toBe('Is it fixed?');
    expect(labels(first)).toContain('Only for now');
    const then = await say('gotos work great i said');
    expect(then.summary).not.toBe('Is it fixed?');
    expect(stepOf(then).kind).not.toBe('done');
  });

  it('“only for now” is none', async () => {
    const { begun, say } = walking(DRIFT);
    await begun;
    await say('gotos work great');
    expect(stepOf(await say('only for now')).kind).not.toBe('done');
  });
});

describe('what it is put down to', () => {
  it.each([
    [HELD, 'quit the camera program and it connects now'],
    [DRIFT, 'tracking switched on and the star stays now'],
  ])('%s: its own steps in other words, “%s”, are its own cure', async (opening, line) => {
    const { begun, say } = walking(opening);
    const { id } = stepOf(await begun);
    expect(stepOf(await say(line))).toMatchObject({ kind: 'done', id });
  });

  it.each(['plugged it in another socket, now it connects', 'brushed the spiders out of it and it connects now'])(
    '“%s”, which is not what was shown, is asked for',
    async (line) => {
      const { begun, say } = walking(HELD);
      await begun;
      const which = await say(line);
      expect(which.summary).toBe('Good to hear. What was it?');
      expect(labels(which)[0]).toBe('Another program holds the port');
      expect(labels(which).at(-1)).toBe('Something else');
    },
  );

  it('what was done in vain before is not credited for another deed', async () => {
    const { begun, say } = walking('handset only, no computer. arrows do nothing, it says no response from the motors');
    const { id } = stepOf(await begun);
    await say('no change');
    const end = await say('my aunt lent me her curly cord and it works now');
    expect(stepOf(end)).not.toMatchObject({ kind: 'done', id });
  });

  it('a number for “something else” is taken for it, whatever the words are near to', async () => {
    const { begun, say } = walking(HELD);
    await begun;
    const which = await say('brushed the spiders out of it and it connects now');
    const end = await say(`${labels(which).length} the port was full of spiders`);
    expect(stepOf(end).kind).not.toBe('done');
    expect(end.notes.join(' ')).toContain('count it for no cause');
  });

  it('a yes to the one that is offered alone takes it', async () => {
    const { begun, say } = walking(HELD);
    await begun;
    const which = await say('strange, it connects now');
    expect(labels(which)).toEqual(['Another program holds the port', 'Something else']);
    expect(stepOf(await say('yes'))).toMatchObject({ kind: 'done', id: 'port-held-by-program' });
  });
});
