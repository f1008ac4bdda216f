/** Words of the trade in sentences about the rest of life tell nothing of the mount. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

/** Invented for this; half of them were never looked at while the vocabulary was made. */
const sentences = readFileSync('test/reading/corpus/rest-of-life.txt', 'utf8').split('\n').filter(Boolean);
const SET_UP = new Set(['system', 'path', 'client']);
const { reading } = shippedModel();

/** Between what a member says first and last: what it adds to what they say without it. */
const [BEFORE, AFTER] = [
  'Good evening, I have set up for the third time this week. The program says timeout. ',
  ' What should I look at first?',
];

const toldBy = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

/** How many of them make the reader believe something. */
const taken = (said: (sentence: string) => string): number => {
  const without = new Set(toldBy(said('')));
  return sentences.filter((sentence) =>
    toldBy(said(sentence)).some((fact) => !without.has(fact) && !SET_UP.has(fact.split('.')[0] ?? '')),
  ).length;
};

describe('sentences of the rest of life', () => {
  it('are taken for something of the mount in 1 of 9 at most where they stand alone', () => {
    expect(taken((sentence) => sentence) / sentences.length).toBeLessThanOrEqual(0.115);
  });

  it('are so in 1 of 15 at most where they stand in a message', () => {
    expect(taken((sentence) => `${BEFORE}${sentence}${AFTER}`) / sentences.length).toBeLessThanOrEqual(0.067);
  });

  it.each([
    'We flew to Paris and saw the old observatory.',
    'The date of purchase is on the receipt, is it still under warranty?',
    'Still no reply from the council on our lights petition.',
    'The Moon is half a degree wide, so it fits.',
    'After the update of the price list I can no longer afford it.',
    'My usb stick with the photos is missing, has anyone seen it?',
    'The windows of the dome face south.',
  ])('“%s” tells nothing at all', (sentence) => {
    expect(toldBy(sentence)).toEqual([]);
  });
});
