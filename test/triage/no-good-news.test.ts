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
