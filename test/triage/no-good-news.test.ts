/** "Is it fixed?" is asked of good news alone; what stands as told is not looked at again. The lines are invented. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const OPENING = 'triage usb in the handset, windows, own program, goto misses every star by a lot';
const begin = async (name: string) => {
  const who = member(name);
  const first = await answer(deps, OPENING, NOW, who);
  return (words: string) => answer(deps, `triage walk:${idOf(first)} text:"${words}"`, NOW, who);
};

describe('a part found in order, or the trouble itself', () => {
  it.each([
    'polar scope done. stars were right ones, capella and vega',
    'date, time and place all correct',
    'goto misses by loads and afterwards star leaves twice as quick',
    'summer time is off, zone 0, both correct',
    'polar alignment is good, spot on in the polar scope',
    'stars shoot out of the eyepiece, reinstalled everything',
  ])('is no cure: %s', async (words) => {
    const say = await begin(`Tamsin ${words.length}`);
    expect((await say(words)).summary).not.toBe('Is it fixed?');
    expect((await say(words)).summary).not.toBe('Is it fixed?');
  });
});

describe('a clutch told of', () => {
  it('is a cause that stands, and wondered about it is spoken for', async () => {
    const say = await begin('Ursula');
    const told = await say('could something be slipping? i can turn it by hand a bit even when locked');
    expect(told.notes.join(' ')).toContain('a clutch gives way');
    const asked = await say('so is it the clutch or not?');
    expect(asked.notes.join(' ')).toContain('That speaks for it');
    expect(stepOf(asked).id).not.toBe('balance');
  });
});

describe('stars that fly and places that are silly', () => {
  it.each([
    'reinstalled it all on new laptop and now stars fly out of view as fast. goto also goes to silly places. usb cable, windows 11, england',
    'the scope goes to daft spots and the stars fly away, cornwall',
  ])('are a trouble and no names: %s', async (words) => {
    const reply = await answer(deps, words, NOW, member(`Verity ${words.length}`));
    expect(reply.data['walkId']).toBeDefined();
  });
});

describe('what was not done', () => {
  it('is no change by nothing: the sheet says that it was in order', async () => {
    const who = member('Wilmot');
    const first = await answer(
      deps,
      'triage usb in handset, windows, own program, light dips and resets when both axes slew, battery nearly empty, cold',
      NOW,
      who,
    );
    expect(stepOf(first)).toMatchObject({ kind: 'try', id: 'battery-low' });
    const next = await answer(deps, `triage walk:${idOf(first)} text:"its a mains brick no battery"`, NOW, who);
    expect(next.notes.join(' ')).toContain('Then that is in order');
    const sheet = await answer(deps, `triage walk:${idOf(first)} a person please`, NOW, who);
    expect(sheet.facts.map(({ value }) => value).join(' ')).toContain('nearly empty: not done, in order');
  });
});

describe('the right entries', () => {
  it.each(['show me the right entries please', 'let me see the right entries', 'what right entries?'])(
    'are shown whenever they are asked for: %s',
    async (words) => {
      const who = member(`Xanthe ${words.length}`);
      await answer(deps, 'site add garden 52.71,0.12', NOW, who);
      await answer(deps, 'triage the mount does not connect, windows', NOW, who);
      const shown = await answer(deps, words, NOW, who);
      expect(shown.title).toBe('What to type into the controller');
      expect(shown.notes.join(' ')).toContain('Your walk still waits');
    },
  );
});

describe('a word of the trade', () => {
  it.each(['what is pass through?', 'whats a hemisphere'])(
    'is explained, and nothing is taken from it: %s',
    async (words) => {
      const say = await begin(`Yvette ${words.length}`);
      expect((await say(words)).notes.join(' ')).toMatch(/mode in the hand controller|north or south of the equator/u);
    },
  );
});

describe('what was taken back', () => {
  it('speaks for no cause that shows itself so', async () => {
    const who = member('Zenobia');
    const first = await answer(
      deps,
      'triage usb in handset, windows, own program, all gotos about 15 degrees off to the west',
      NOW,
      who,
    );
    expect(stepOf(first).id).toBe('summer-time-wrong');
    const next = await answer(deps, `triage walk:${idOf(first)} answer:not.miss`, NOW, who);
    expect(stepOf(next).id).not.toBe('summer-time-wrong');
  });
});
