/** A thing that is not there, or not seen, is not a thing that stays dark. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { saysNone } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const lights = model.check('adapter-light')?.noneIsUnsure ?? [];

const NONE = [
  'dont see no light on it',
  'there is no light on the adapter',
  'it has no lights',
  'i cant find any led on it',
  'mine has no light',
  'no lamp on mine',
  'there isnt a light',
  'no light to be seen on this thing',
  "hm there's no light at all",
  'i see no light on it',
  "it doesn't have a light",
  'this one has got no led',
  "I can't see any lights here",
  'sorry, there are no lights on it',
  'the adapter has no lamp',
  'theres no led i could see',
  'not a single light on this adapter',
  'mine came without a light',
  'there are none on it',
  'no lights whatsoever',
  'it doesnt have any',
  'cant see one',
  'no LEDs on that cable',
  'i dont see a lamp anywhere',
  'it has none',
];
const DARK = [
  'no light when i press connect',
  'the light does not come on',
  'stays dark',
  'no light comes on',
  'no, nothing lights up',
  'it does not blink',
  'the light is off',
  'there is a light',
  'i see the light blink',
  'the light on it is dark',
];

describe('a light that is not there', () => {
  it.each(NONE)('“%s” cannot tell', (text) => expect(saysNone(lights, text)).toBe(true));
  it.each(DARK)('“%s” tells', (text) => expect(saysNone(lights, text)).toBe(false));
  it('is not looked for where the question needs none', () => {
    expect(model.check('power-light')?.noneIsUnsure).toBeUndefined();
    expect(saysNone([], 'there is no light on it')).toBe(false);
  });
  it.each([
    ['lead-at-rest', 'i have no meter'],
    ['lead-at-rest', "I don't own a multimeter"],
    ['other-computer', 'we have no other laptop here'],
  ])('nor a thing that is not at hand: %s %s', (id, text) =>
    expect(saysNone(model.check(id)?.noneIsUnsure ?? [], text)).toBe(true),
  );
});
