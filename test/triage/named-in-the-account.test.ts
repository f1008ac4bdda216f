/** Causes that a member names in passing come first, and amounts are read for what they say. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { startWalk, tellText } from '../../bot/triage/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

let members = 0;
const talk = async (...lines: readonly string[]): Promise<Reply> => {
  members += 1;
  const who = member(`Wystan${members}`);
  const [first = '', ...rest] = lines;
  let reply = await answer(deps, `triage ${first}`, NOW, who);
  const id = idOf(reply);
  for (const line of rest) reply = await answer(deps, `triage walk:${id} text:"${line}"`, NOW, who);
  return reply;
};
const pressed = (reply: Reply, picked: string): Promise<Reply> =>
  answer(deps, `triage walk:${idOf(reply)} answer:${picked}`, NOW, member(`Wystan${members}`));
const factsOf = (text: string): readonly string[] =>
  tellText(deps.triage(), startWalk({ member: null, helper: null }), text, 'member').read.facts.map(
    ({ what, answer: own }) => `${what}.${own}`,
  );

describe('a cause named in the account', () => {
  it.each([
    // USB 2.0 Specification, 7.1.16: about 5 m without a repeater.
    ['usb-cable-too-long', 'windows, usb straight into the mount, not seen, it hangs on a 10 m passive extension'],
    ['usb-cable-too-long', 'usb adapter at the hand controller, linux, drops at random, 5 m lead plus a 3 m extension'],
    // Common practice, no source.
    ['wrong-socket', 'windows, usb adapter, the lead sits in the socket marked autoguide, the program times out'],
    ['mount-parked', 'usb into the mount, windows, it connects and will not move. I pressed Park when I packed up'],
    ['site-of-another-place', 'it moves but lands beside every target; the country of the last owner is still in it'],
  ])('is tried first: %s: %s', async (fault, opening) => {
    const told = await talk(opening);
    const { kind, id } = stepOf(told);
    const asked = kind === 'ask' && id === 'path';
    const reply = asked ? await pressed(told, 'path.controller-serial') : told;
    expect(stepOf(reply)).toMatchObject({ kind: 'try', id: fault });
  });

  it.each([
    ['other-cable.same', 'the lead is fine, I used a borrowed one as well'],
    ['message.denied', 'could not open COM5, access denied'],
    ['port-holder.service', 'the port is in use by ModemManager'],
    // 15° of longitude, and an hour of clock, are an hour of sidereal time.
    ['sidereal-gap.one-hour', 'the sidereal time is one hour off'],
    ['sidereal-gap.whole-hours', 'its lst differs by 5 hours 1 min'],
    ['sidereal-gap.four-minutes', 'lst is 8 minutes off'],
    ['sidereal-gap.another', 'there is an offset of 47 minutes between its clock and the site'],
  ])('%s is heard of “%s”', (fact, text) => {
    expect(factsOf(text)).toContain(fact);
  });

  it.each([
    ['works-with-handset.none', 'usb adapter handset windows port missing'],
    ['socket-used.look-alike', 'the guide camera goes into the ST4 port'],
    ['site-entries.another-place', 'I bought the mount in Germany'],
    ['message.not-found', 'bash: usermod: command not found'],
    ['cable-length.short', 'it is a 5m usb lead into a 3m usb lead'],
  ])('%s is not heard of “%s”', (fact, text) => {
    expect(factsOf(text)).not.toContain(fact);
  });

  it('names no way by words that only tell how it goes', async () => {
    const { notes } = await talk('the mount connects but the goto is bad');
    expect(notes.join(' ')).toContain('I take it: it moves, but not to the right place.');
  });
});

describe('what a remedy could not be done for', () => {
  it.each(['the landlord will not give me the login', 'there is no button for that, i cannot get into the router'])(
    'brings the other way: %s',
    async (words) => {
      const reply = await talk(
        'windows, the laptop is on the guest wifi of the holiday house, bridge not found',
        words,
      );
      expect(reply.summary).toMatch(/^Another way/u);
    },
  );
});

describe('a tablet', () => {
  it('is called one, and a phone a phone', async () => {
    const shown = async (device: string): Promise<string> => {
      const opened = await talk(`my ${device} is on the mount's own wifi, the app cannot connect`);
      const reply = await pressed(opened, 'phone-allows.refused');
      return [reply.summary, ...reply.facts.map(({ value }) => value), ...reply.notes].join(' ');
    };
    expect(await shown('ipad')).toMatch(/the tablet does not let/iu);
    expect(await shown('iphone')).toMatch(/the phone does not let/iu);
  });
});
