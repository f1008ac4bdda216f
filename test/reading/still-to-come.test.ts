/** What a remedy wants and is still on its way is nothing done. The sentences are our own; the days are of no weight. */
import { describe, expect, it } from 'vitest';
import { isStillToCome } from '../../bot/reading/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, linesOn, member, NOW, stepOf } from '../triage/console-walk.js';

describe('what is on its way', () => {
  it.each([
    'ordered a real rs-232 adapter, comes friday',
    'i have ordered the right lead',
    'its on its way',
    'bought one online, arrives in two days',
    'will buy another supply',
    'we have to order that',
    'a club mate brings me one, due next week',
    'the new cable is in the post',
    'gonna borrow one from the club',
    'i orderd the cable (comes thursday)',
    'bought a new lead online, not here yet',
    'my mate lends me his adapter next week',
    'a friend brings one on sunday',
    'replacement comes in 3 days',
    'it hasnt arrived yet',
  ])('is still to come: %s', (text) => {
    expect(isStillToCome(text)).toBe(true);
  });

  it.each([
    'ordered a ttl cable, now it talks and slews',
    'the lead I ordered arrived, no change',
    'ordered another one, same thing',
    'it comes on and the screen is dark',
    'should I order one?',
    'tomorrow i try again',
    'we must align it first',
    'the driver is not there',
    'the new cable i ordered came yesterday, it drops since',
    'i checked the wires in order, all there',
  ])('is not: %s', (text) => {
    expect(isStillToCome(text)).toBe(false);
  });

  it('leaves the remedy where it is, whatever part it names', async () => {
    const who = member('Eadgyth');
    const opening = 'linux, usb adapter to the handset port, ttyUSB0 there, times out. home made lead';
    let reply = await answer(deps, `triage ${opening}`, NOW, who);
    const said = async (text: string): Promise<void> => {
      reply = await answer(deps, `triage walk:${idOf(reply)} text:"${text}"`, NOW, who);
    };
    await said('pins measured, all as drawn');
    await said('the board is one of those 5v usb to ttl things. port is rs-232. is that bad?');
    expect(stepOf(reply)).toMatchObject({ kind: 'try', id: 'logic-on-rs232-port' });
    await said('ordered a real rs-232 adapter, comes friday');
    expect(stepOf(reply)).toMatchObject({ kind: 'try', id: 'logic-on-rs232-port' });
    expect(linesOn(reply).join(' ')).toContain('No hurry');
    await said('it came. now the mount answers');
    expect(linesOn(reply).join(' ')).toContain('Fixed: A 5 V logic adapter on an RS-232 port');
  });

  it('answers no question, and no new lead stands there for it', async () => {
    const who = member('Wynflaed');
    const first = await answer(deps, 'triage windows, usb adapter to hand controller, connects and drops', NOW, who);
    const reply = await answer(deps, `triage walk:${idOf(first)} i orderd the cable (comes thursday)`, NOW, who);
    expect(stepOf(reply)).toEqual(stepOf(first));
    expect(reply.notes.join(' ')).toContain('still to come');
    expect(JSON.stringify(reply.notes)).not.toContain('new here');
  });
});
