/** Words at the end of a mended walk: it stays mended unless they plainly say that it is broken again. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

let names = 0;
const FAULTS = ['wrong-port-picked', 'serial-lead-broken'];

const said = async (text: string): Promise<Reply> => {
  names += 1;
  const who = member(`Kester${names}`);
  const first = await answer(deps, 'triage USB-serial adapter at the handset, Windows, it will not connect', NOW, who);
  const fault = FAULTS[names % FAULTS.length] ?? '';
  await answer(deps, `triage walk:${idOf(first)} answer:${fault}.works`, NOW, who);
  return answer(deps, `triage ${text}`, NOW, who);
};

/** Still the page that says "Fixed", or the walk has ended. */
const staysMended = (reply: Reply): boolean =>
  stepOf(reply)?.kind === 'done' || /This walk has ended/u.test(reply.summary);

const MENDED = [
  'thanks so much',
  'brilliant, off to observe now',
  'which one was it in the end?',
  'so what was the cause?',
  'the old cable was dead, the new one does it',
  'i think the driver did it, then i had to pick the other port',
  'turns out the plug was only half in',
  'no honestly all good here',
  'the fuse had gone, i put a new one in and then com7',
  'it was really my laptop that was asleep',
  'first the wifi then the firewall',
  'my brother fixed it, he pulled the plug and put it back',
  'nothing else wrong, it runs',
  'ok good night all',
  'wow that took a while, i had been at it for three hours',
  'it could not open the port because the other program had it',
  'it dropped out before because the lead was loose, now it holds',
  'finally connected, the light blinks and all',
  'no it was not that, the power was low',
  'both of them i guess',
  'it used to time out, not any more',
  'can i use it tomorrow too?',
  'really appreciate it, you saved my evening',
  'no joke it took me two weeks before this',
  'it was both, the hub and then the driver',
  'aye the socket was the wrong one',
  'jupiter is in the eyepiece at last',
  'what should i do so it stays that way?',
  'nice one',
  'the error message is gone and the light is on',
  'sorry, it was me, i had the wrong box ticked',
  'my wife says hello',
];

const BROKEN = [
  'it stopped working again',
  'oh no, its gone again',
  'now it times out again',
  'it lost the connection just now',
  'hm it dropped again after five minutes',
  'same trouble is back',
  'spoke too soon, it does not connect any more',
  'it no longer connects',
  'not working after all',
  'it connects but now it goes to the wrong star',
  'damn, dead again',
  'and now the program has lost it',
  'it lasted two minutes',
  'hm no, it still drops',
  'it is not fixed after all',
  'now the clock is wrong',
];

describe('at the end of a mended walk', () => {
  it.each(MENDED)('“%s” leaves it mended', async (text) => {
    const reply = await said(text);
    expect(staysMended(reply), JSON.stringify(reply.summary)).toBe(true);
    expect(reply.notes.join(' ')).not.toMatch(/could not read|Did you mean/u);
  });

  it.each(BROKEN)('“%s” says that it is broken again', async (text) => {
    expect(staysMended(await said(text))).toBe(false);
  });
});
