/** What members find while a question or a remedy waits. The sentences are our own; what each is a sign of is common practice, no source. */
import { describe, expect, it } from 'vitest';
import { tellsFinding } from '../../bot/reading/index.js';
import { startWalk, tellText } from '../../bot/triage/index.js';
import { numberLed } from '../../bot/platforms/shared/number-said.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

let members = 0;

const say = async (opening: string, ...lines: readonly string[]) => {
  members += 1;
  const who = member(`Wenda${members}`);
  let reply = await answer(deps, `triage ${opening}`, NOW, who);
  for (const line of lines) reply = await answer(deps, `triage walk:${idOf(reply)} text:"${line}"`, NOW, who);
  return reply;
};

const factsOf = (text: string): readonly string[] => {
  const begun = startWalk({ member: 'Wenda', helper: null });
  return tellText(deps.triage(), begun, text, 'member').read.facts.map(({ what, answer: own }) => `${what}.${own}`);
};

describe('a finding', () => {
  it.each([
    ['hold on, when i twist the coiled lead the screen lights again', true],
    ['drove it to the dark site in the boot', true],
    ['squeezing the plug brings it back for a moment', true],
    ['hang on, i fetch a torch', false],
    ['it is raining, i will try when it stops', false],
    ['one moment, the laptop is booting', false],
  ])('is told from what is put off: “%s”', (text, isFinding) => expect(tellsFinding(text)).toBe(isFinding));

  it.each([
    ['squeezing the coiled lead lights it again', 'when-drops.touched'],
    ['our gear sits on OakRowGuest', 'guest-network.guest'],
    ['the gps sets the old year again', 'date-entries.reset'],
    ['the cursor goes wild once it is plugged in', 'port-holder.service'],
    ['the power bank charges over this lead but pictures do not copy', 'usb-cable.charge-only'],
    ['on my aunts old laptop it appeared at once', 'other-computer.works'],
    ['in the router list it is 192.168.7.20, i have .9 in the program', 'bridge-entry.other-address'],
  ])('is read whatever is in hand: “%s”', (text, fact) => expect(factsOf(text)).toContain(fact));

  it('of another address is none where both ends are one', () => {
    expect(factsOf('in the router list it is 192.168.7.20, i have .20 in the program')).not.toContain(
      'bridge-entry.other-address',
    );
  });
});

const DEAD_KEYS = 'hand controller alone, no computer. it says no response and the arrow keys move nothing';
const MISSES = 'goto lands far off, hand controller alone, no computer';
const DENIED = 'windows, usb serial adapter at the hand controller, the program says access denied';

describe('said while something waits', () => {
  it('it is never met with “No hurry” or “Good”', async () => {
    const reply = await say(DEAD_KEYS, 'hold on, if i squeeze the coiled lead at the handset it comes back');
    expect(reply.notes.join(' ')).not.toMatch(/No hurry|^Good|nothing of a mount/u);
    expect(reply.notes.join(' ')).toContain("the hand controller's own lead");
  });

  it('a year long past is the date, whatever is asked', async () => {
    const reply = await say(MISSES, 'the wrong half of the sky', 'it shows 2 august 2006');
    expect(reply.notes.join(' ')).toContain('date of years ago');
  });

  it('a screen that the USB feeds leads to the mount’s own light', async () => {
    const opening = 'windows, connected by usb at the hand controller, it connects but the mount does not move';
    const reply = await say(opening, 'with the base switched off the handset stays lit');
    expect(stepOf(reply).id).toBe('power-light');
  });

  it('a line that names nothing of a mount is kept, and asked once more in other words', async () => {
    const reply = await say(DENIED, 'aunt mabel would know but she is in peru');
    expect(reply.notes.join(' ')).toContain('Kept, in your words');
    expect(reply.notes.join(' ')).not.toContain('nothing of a mount');
  });

  it('a remedy that would wipe settings is refused where all is well there', async () => {
    const reply = await say(DENIED, 'no, not touching that, it is fine there');
    expect(reply.notes.join(' ')).toContain('in order');
  });
});

describe('a number with words', () => {
  it.each([
    ['4 nothing, not a whirr', 4, 'nothing, not a whirr'],
    ['2 there is no light on it', 2, 'there is no light on it'],
    ['3 windows took it for something else', 3, 'windows took it for something else'],
  ])('counts: “%s”', (text, number, rest) => expect(numberLed(text)).toEqual({ number, rest }));

  it.each(['4 degrees to the left', '3 windows are open', '5 volts at the plug', '20 minutes and it drops'])(
    'is none where something is counted: “%s”',
    (text) => expect(numberLed(text)).toBeNull(),
  );
});

describe('the hand controller alone', () => {
  it('is among the ways where only its own screen was spoken of', async () => {
    const reply = await say('my handset says no response 17');
    expect(reply.choices?.map(({ label }) => label)).toContain('No computer: the hand controller alone');
  });
});
