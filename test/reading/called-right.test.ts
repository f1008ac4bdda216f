/** What members call right is told to be amiss by none of their words. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { entriesRight, readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const AMISS =
  /^(?:date-entries|entries-screen|zone-entries|site-entries|program-clock)\.(?!right|match|all-match|right-or-none)/u;
const amissIn = (text: string): readonly string[] => {
  const { facts, perhaps } = readText(reading, text);
  return [...facts, ...perhaps].map(({ what, answer }) => `${what}.${answer}`).filter((name) => AMISS.test(name));
};

describe('an entry that is called right', () => {
  it.each([
    ['the clock on the hand controller is correct, 3 minutes past 9', 'clock'],
    ["I don't understand. what is sidereal? the clock on the hand controller is correct", 'clock'],
    ['windows. but the clock is NOT wrong, it is correct!', 'clock'],
    ['the date isnt wrong it says 27 nov 2026', 'date'],
    ['the longitude is not wrong i checked twice', 'place'],
    ['the time is right, the date is 20 years off', 'clock'],
  ])('%s', (text, entry) => {
    expect([...entriesRight(text)]).toEqual([entry]);
    expect(amissIn(text).filter((name) => !/date-entries\.(?:day-off|reset)|entries-screen\.date/u.test(name))).toEqual(
      [],
    );
  });

  it.each([
    'the time is right only after i set it, next day it is 2000 again',
    'the clock is correct, then an hour later its off',
    'the clock is not right',
    'the time is right, and the clock is an hour off',
    'its right of the star',
  ])('%s: not called so', (text) => {
    expect([...entriesRight(text)]).toEqual([]);
  });
});
