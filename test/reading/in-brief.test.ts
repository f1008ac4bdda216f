/** What strangers write in a sentence or two, as they might type it; invented before the vocabulary was looked at. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const stageOf = (text: string): string | undefined =>
  readText(reading, text).facts.find(({ what }) => what === 'how-far')?.answer;

describe('how far they get, in a sentence or two', () => {
  it.each([
    ['yo my laptop doesnt even know the telescope exists lol', 'not-seen'],
    ['plugged it into the laptop. nothing.', 'not-seen'],
    ['USB-C dock, adapter, serial cable. The mac will not show any port.', 'not-seen'],
    ['I click connect: nada', 'no-connect'],
    ['moved to another laptop, handset shows up but the program just says failed. Some special driver??', 'no-connect'],
    ['It says connected. I press slew, nothing.', 'no-move'],
    ['handset says connected. sky map crosshair stays at polaris while mount tracks something else', 'elsewhere'],
  ])('%s', (text, stage) => expect(stageOf(text)).toBe(stage));

  it.each([
    'It never lands in the wrong place, pointing is spot on',
    'plugged the camera in, nothing else',
    'I could not connect with the younger members at first, but now it is great.',
    'There is no power at the far end of the garden. How long may a 12 V lead be?',
  ])('is not told by: %s', (text) => expect(stageOf(text)).toBeUndefined());
});
