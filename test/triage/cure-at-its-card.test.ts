/**
 * A cure said at its card ends the walk; a remedy that was only done does not; what else it was is heard; a question in the same breath
 * takes nothing away. The sentences are invented, in the voices of members at night.
 */
import { describe, expect, it } from 'vitest';
import { outcomeSaid } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

const { reading } = deps.triage();
const OPENING =
  "triage Windows, usb adapter on the hand controller. It says could not open port 'COM3' and Device Manager lists COM8";
const REMEDY = 'port-number-moved';

const atCard = async (name: string, text: string): Promise<Reply> => {
  const card = await answer(deps, OPENING, NOW, member(name));
  expect(stepOf(card)).toMatchObject({ kind: 'try', id: REMEDY });
  return answer(deps, `triage ${text}`, NOW, member(name));
};

describe('a cure at its card', () => {
  it.each([
    'yes!! picked 8 and its there',
    'works, put it to 8',
    'slews all the way now',
    'works! it was com8',
    'closed the box and opened it with 8, there it is, connected straight away',
    'that was it',
    'its moving!!',
    'hurra it connects',
  ])('“%s” ends it, and nothing is asked', async (text) => {
    expect(stepOf(await atCard(`Ceol ${text}`, text))).toMatchObject({ kind: 'done', id: REMEDY });
  });

  it.each([
    'set to 8 as you said',
    'com8 is set now',
    'date, time and place all correct',
    'polar scope done',
    'installer said success',
    'does that mean its fixed',
    'my friend said that fixed it',
    'thank you',
    'azimuth cured, altitude as bad as ever',
    'dec moves now',
  ])('“%s” is taken for none', (text) => {
    const { isCureAtRemedy, what, how } = outcomeSaid(reading, text);
    expect(isCureAtRemedy === true || (what === 'cured' && how === 'outright')).toBe(false);
  });
});

describe('something else that cured it', () => {
  it.each([
    'something else, a fake gps app was still on. works now',
    'works now but not from that, it woke up by itself',
  ])('“%s” is kept, and put down to no cause here', async (text) => {
    const end = await atCard(`Ceowulf ${text}`, text);
    expect(end.notes.join(' ')).toContain('I keep what it was');
  });

  it('another cause that is named is taken or asked, never the card', async () => {
    const end = await atCard('Ceolwen', 'something else, a new usb cable did it. works now');
    expect(stepOf(end)).toMatchObject({ kind: 'done', id: 'usb-cable-broken' });
  });
});

describe('a question in the same breath', () => {
  it.each([
    ['did that, same. so is it the cable or the port?', 'unchanged'],
    ['no change. could it be the lead or the driver', 'unchanged'],
    ['yes that fixed it! was it the number or the cable?', 'cured'],
  ])('“%s” keeps what came of it', (text, what) => {
    expect(outcomeSaid(reading, text)).toMatchObject({ what, asks: expect.stringContaining(' or ') as string });
  });

  it('is answered shortly', async () => {
    const next = await atCard('Ceadda', 'did that, same. so is it the cable or the port?');
    expect(stepOf(next)).not.toMatchObject({ kind: 'try', id: REMEDY });
    expect(next.notes.join(' ')).toMatch(/Of the two rather|cannot tell yet/u);
  });
});
