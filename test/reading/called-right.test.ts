/** What members call right is told to be amiss by none of their words. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { allWell, entriesRight, readText } from '../../bot/reading/index.js';
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

describe('a list of entries that are right', () => {
  it.each([
    'I look. Time is correct, date 12/11/26 is that evening correct, longitude E 25 correct, latitude N 62',
    'Zone is +2, summer time off, so yes they match',
    'date ok, time ok, longitude ok, latitude ok',
    'But I said latitude is correct',
  ])('%s: none is amiss', (text) => {
    expect(amissIn(text)).toEqual([]);
  });

  it.each([
    'date ok, time ok, longitude wrong',
    'lat ok, long is 1 E should be 1 W',
    'date ok, time ok, long 1 E instead of 1 W',
    'date ok, time ok, summer time is on in november',
  ])('%s: one is amiss', (text) => {
    expect(amissIn(text)).not.toEqual([]);
  });
});

describe('an answer on all at once', () => {
  const entries = [
    { id: 'all-match', label: 'All of them match' },
    { id: 'date', label: 'The date differs' },
  ];
  const causes = [
    { id: 'wind', label: 'Wind' },
    { id: 'none', label: 'None of them' },
  ];

  it.each([
    'all match, just checked',
    'date ok, time ok, longitude ok, latitude ok',
    'everything is right, i looked twice',
  ])('%s: all match', (text) => {
    expect(allWell(text, entries, 'all-match')?.id).toBe('all-match');
  });

  it.each([
    'date ok, time ok, longitude wrong',
    'all match but the date',
    'lat ok, long is 1 E should be 1 W',
    'not ok, time ok, zone ok, place ok',
    'date not ok, time ok, zone ok, place ok',
    'date ok, time ok',
  ])('%s: not all', (text) => {
    expect(allWell(text, entries, 'all-match')).toBeNull();
  });

  it.each(['none, look it moves while nobody tells it to', 'none. is there fog tmrw btw'])('%s: none', (text) => {
    expect(allWell(text, causes, undefined)?.id).toBe('none');
  });

  it('none but one is not none', () => {
    expect(allWell('none, except the wind', causes, undefined)).toBeNull();
  });
});
