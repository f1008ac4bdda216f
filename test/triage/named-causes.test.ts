/** A cause that a member names is looked at next, wherever in the walk it is named. The sentences are ours (invented; no source). */
import { describe, expect, it } from 'vitest';
import { suspectedCause } from '../../bot/reading/index.js';
import type { Asker } from '../../bot/commands/core/command.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, linesOn, member, NOW, stepOf } from './console-walk.js';

const say = (who: Asker, line: string): Promise<Reply> => answer(deps, line, NOW, who);

describe('a cause named at the opening', () => {
  it.each([
    ['goto lands half a field off always to the left. could the diagonal itself be off?', 'diagonal-turned'],
    ['goto goes off at times, maybe a lead catches on the tripod leg in the east', 'leads-free'],
    ['i set north with a compass app, now everything lands in the wrong place', 'north-by'],
    ['its minus 12 and RA groans and stalls, the grease must be stiff', 'axes-light'],
    ['could it be the mirror flopping', 'tube-firm'],
    ['maybe i aligned with the finder only and not in the eyepiece', 'aligned-through'],
    ['5 m 12 V extension lead to the battery since last week, mount resets when slewing', 'power-lead'],
  ])('is looked at first: %s', async (words, check) => {
    const reply = await say(member(`Names ${check}`), `triage ${words}`);
    expect(stepOf(reply)).toMatchObject({ kind: 'ask', id: check });
    // An extension of the supply is no USB run.
    expect(reply.notes.join(' ')).not.toContain('USB run');
  });

  it.each([
    ['mount stops tracking when the camera lead catches on the tripod leg in the east', 'lead-holds-tube'],
    ['i set north with a compass app beside the steel pier, now everything lands in the wrong place', 'compass-misled'],
  ])('is mended first where its look is told as well: %s', async (words, fault) => {
    const reply = await say(member(`Tells ${fault}`), `triage ${words}`);
    expect(stepOf(reply)).toMatchObject({ kind: 'try', id: fault });
  });

  it('is not taken from what keeps gear from harm: that look stands first', async () => {
    const reply = await say(
      member('Names beside harm'),
      'triage my soldered cable goes straight into the motor board, no reply. maybe it is the clutch?',
    );
    expect(stepOf(reply).id).not.toBe('clutches');
  });
});

describe('a cause that no list holds', () => {
  it('is tried without, kept for the helper in the member’s words, and ends the walk where it was that', async () => {
    const who = member('Suspects');
    await say(who, 'triage windows, usb adapter at the handset, it connects and then drops after an hour');
    const asked = await say(who, 'triage could it be the heated gloves?');
    expect(stepOf(asked).id).toBe('own-suspicion');
    expect(asked.notes.join(' ')).toContain('heated gloves');
    const sheet = await say(who, `triage walk:${idOf(asked)} answer:own-suspicion.gone`);
    expect(stepOf(sheet).kind).toBe('handOn');
    expect(linesOn(sheet).join('\n')).toContain('heated gloves');
  });

  it.each([
    ['I wonder whether the pasture fence could be doing it?', 'the pasture fence', 'another place'],
    ['suspect the sauna oven tbh', 'the sauna oven', 'taken away'],
    ['could the fish tank pump have something to do with this?', 'the fish tank pump', 'taken away'],
    ['my brother thinks it is the tram line', 'the tram line', 'another place'],
  ])('is heard however it is put, with a test that fits it: %s', async (words, said, test) => {
    const who = member(`Suspects ${said}`);
    await say(who, 'triage windows, usb adapter at the handset, it connects and then drops after an hour');
    const asked = await say(who, words);
    expect(stepOf(asked).id).toBe('own-suspicion');
    expect(asked.notes.join(' ')).toContain(`“${said}”`);
    expect(asked.notes.join(' ')).toContain(test);
  });

  it('asks for another computer where it is a part of the computer, which nobody takes away', async () => {
    const who = member('Suspects a processor');
    await say(who, 'triage new laptop with windows 11, usb adapter at the handset, it says no driver');
    const asked = await say(who, 'is it because of the motherboard of this laptop?');
    expect(stepOf(asked).id).toBe('other-computer');
    expect(asked.notes.join(' ')).toContain('motherboard');
  });

  it.each([['could the GPS time service be opening it? it starts with windows', 'port-holder']])(
    'known to the guide after all is looked at, and said how likely it is: %s',
    async (words, check) => {
      const who = member(`Suspects ${words}`);
      await say(who, 'triage windows 11, usb adapter into the hand controller, program says access to COM7 is denied');
      const asked = await say(who, words);
      expect(stepOf(asked).id).toBe(check);
      expect(asked.notes.join(' ')).toMatch(/\d+ %\. This look tells/u);
    },
  );

  it.each([
    'I suspect nothing',
    'i guess the cable is fine',
    'it was the first one I think',
    'maybe the second one',
    'could be 15 degrees',
    'could it be 15 degrees',
    'is it safe to unplug it now?',
    'maybe it is better tomorrow',
    'could you help me',
  ])('is not in: %s', (words) => {
    expect(suspectedCause(words)).toBeNull();
  });
});
