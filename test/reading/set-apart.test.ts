/**
 * What members say at a remedy and at a question that asks after several things: a failure stated outright, a cure that held for a time, an
 * entry that was only set, the one thing that is not as the others, another thing's screen. The sentences are ours, in members' voices (invented; no
 * source), each with what a helper would take it for.
 */
import { describe, expect, it } from 'vitest';
import { curedByDeed, oddOne, outcomeSaid, withoutOtherThings } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();

describe('what came of a remedy', () => {
  it.each([
    'no change. backlash still there, i can rock the dec axis, guide rate 0.5 in both',
    'did it, still permission denied. rest of it works fine',
    'I tightened both. it did not help, works the same as before',
    'tried 9600 and 19200 and all of them. zilch',
  ])('“%s” is no change, whatever else is good', (text) => {
    expect(outcomeSaid(model.reading, text)).toMatchObject({ what: 'unchanged', how: 'outright' });
    expect(curedByDeed(text).isCured).toBe(false);
  });

  it.each([
    'set never, been 45 min and still conected',
    'was on lunar. sidereal now, 20 minutes and vega hasnt moved a hair',
    'tied it with velcro. two hours and not a drop',
    'same error. wait now it connects',
  ])('“%s” is a cure', (text) => {
    expect(outcomeSaid(model.reading, text)).toMatchObject({ what: 'cured', isCureAtRemedy: true });
  });

  it.each([
    'entered the coordinates again, they are right now',
    'date fixed, reads 27 november now',
    'its in the one marked guide, i see it now',
    'been 10 minutes, every 5 it drops but still connected',
    '20 minutes and the mount hasnt moved',
  ])('“%s” is none', (text) => {
    expect(outcomeSaid(model.reading, text).isCureAtRemedy).toBeUndefined();
    expect(curedByDeed(text).isCured).toBe(false);
  });
});

describe('the one of several', () => {
  it.each([
    ['entries-screen', 'all match now except it says E next to 003 42, madrid is west isnt it', 'longitude'],
    ['entries-screen', 'date ok time ok zone ok. it has 40 S and i live in spain', 'latitude'],
    ['entries-screen', 'all good but the date', 'date'],
    ['settings-screen', 'they are all fine only the speed reads 115200', 'speed'],
    ['port-settings', 'speed matches. parity not, its even', 'other-frame'],
    ['bridge-entry', 'all the same except address ends in 44 there and 43 here', 'other-address'],
    ['arrow-keys', 'left right fine, up down nothing', 'one'],
  ])('%s: “%s” is %s', (check, text, answer) => {
    const { answers = [], good } = model.check(check) ?? {};
    expect(oddOne(model.reading.sayings.lexicon, text, answers, good)).toMatchObject({ id: answer });
  });

  it.each([
    ['entries-screen', 'all good thanks'],
    ['entries-screen', 'not sure, date is ok'],
    ['entries-screen', 'all fine, i do not see a wrong one'],
    ['power-walk', 'switch ok, supply ok, nothing loose'],
    ['usb-plugs', 'both were in, not loose'],
  ])('%s: “%s” sets none apart', (check, text) => {
    const { answers = [], good } = model.check(check) ?? {};
    expect(oddOne(model.reading.sayings.lexicon, text, answers, good)).toBeNull();
  });
});

describe('another thing', () => {
  it.each([
    ['no the LAPTOP screen is black not the handset. it goes to sleep', ''],
    ['my mates scope next to me only moves one way, mine moves both', 'mine moves both'],
    ['camera light is off, mount light steady red', 'mount light steady red'],
  ])('“%s” leaves “%s”', (text, left) => {
    expect(withoutOtherThings(text)).toBe(left);
  });

  it.each(['the mount stays dark', 'the computer does not see the mount', 'handset screen is black'])(
    '“%s” is of the mount',
    (text) => {
      expect(withoutOtherThings(text) ?? text).toBe(text);
    },
  );
});
