/** What hurts gear or people if it is done, asked of in passing. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { harmNear } from '../../bot/commands/triage/harm-near.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW } from './console-walk.js';

describe('a bigger fuse', () => {
  it.each([
    'new fuse burns too when it is wet. can i put a bigger one?',
    'is a bigger fuse ok?',
    'what if i put foil in place of the fuse',
    'can I run it without the fuse for tonight',
    'should i try a fuse with more amps',
  ])('is refused: %s', (words) => {
    expect(harmNear(words)).toMatch(/^No\. Never a bigger fuse/u);
  });
});

describe('what is wet', () => {
  it.each(['the plug is wet, green and black inside', 'can i use it though the power brick got soaked?'])(
    'stays off: %s',
    (words) => {
      expect(harmNear(words)).toMatch(/^What is wet stays off/u);
    },
  );
});

describe('too many volts', () => {
  it.each([
    'I use the one from my laptop, 19v',
    'is 19 volt maybe too much? the mount says 12V and mine gives 19',
    'ok to try my 19v laptop charger on a 12v mount?',
    'my supply is a 24 v one, is that bad',
  ])('are taken off: %s', (words) => {
    expect(harmNear(words)).toMatch(/unplug it now/u);
  });
});

describe('plus and minus the wrong way round', () => {
  it.each(['i think i swapped plus and minus on the new lead', 'the polarity was reversed when I plugged it in'])(
    'are taken off: %s',
    (words) => {
      expect(harmNear(words)).toMatch(/^Take that supply off at once/u);
    },
  );
});

describe('smoke, sparks and burnt smells', () => {
  it.each([
    'smoke came out. battery is still on',
    'smells burnt since i swapped plus and minus',
    'the board smells of hot plastic',
    'the power tank is swollen',
    'it sparked when i plugged it',
    "There's a smell?? Not burnt toast, like the inside of an old radio. RA is silent after the shower",
    'rain got under the cover, the ra motor makes a funny smell now',
  ])('come before all else: %s', (words) => {
    expect(harmNear(words)).toMatch(/^Stop: take the power off now/u);
  });
});

describe('what else harms gear or people', () => {
  it.each([
    [/^Switch it off and let it cool/u, 'is it ok if the box where the cables go gets hot? can’t keep my hand on it'],
    [/^Switch it off and let it cool/u, 'the dec motor gets too hot to touch after an hour'],
    [/^Switch off, and do not use that lead/u, '10 metres of speaker wire from the van. lead gets warm'],
    [/^Switch off, and do not use that lead/u, 'the power cord feels warm along its whole length'],
    [/^Pull that lead out/u, 'I put the guide cable into the hole marked HC, there was a tick, now the light is off'],
    [/^Pull that lead out/u, 'laptop’s network lead into the RJ45, no link. Is it perhaps not ethernet'],
    [/^Not safe like that/u, 'the mount does not stop when I let go of the arrow. Is it safe?'],
    [/^Not safe like that/u, 'i let go of the key and it keeps going until i pull the plug'],
    [/^Not safe like that/u, 'on connect it shoots off at full tilt and will not stop at the star'],
    [/^Before it slews again/u, 'it takes the long way round, the leads got nearly ripped off'],
    [/^Before it slews again/u, 'goto goes the contrary side and it hit the tripod'],
    [/^What is wet stays off/u, 'water got into the motor cover in the shower'],
  ])('is told first: %s', (says, words) => {
    expect(harmNear(words)).toMatch(says);
  });
});

it.each([
  'mine smoked. That was spring. This one is a proper one, and it does not talk',
  'my last mount smoked years ago, the new one will not connect',
  'A bit of smoke drifts over from the bonfire next door',
  'the house smells of curry, the mount does not connect',
  'the dew heater lead is warm as it should be',
  'hot day, 35 C, the mount does well',
  'the battery does not get warm',
  'It stops the moment I let go of the arrow',
  'it keeps moving until I let go of the key',
  'it goes at full speed to the star and stops there',
  'i pulled the leads off to carry it in',
  'the network cable goes in the ethernet socket, the link light is on, no ping',
  'my finger slips off the edge and it keeps slewing. Solved that with the stop button',
  'dog hit the tripod, alignment lost',
  '3.28 volts idle on the lead',
  'no smoke, no smell, all fine',
  'is the polarity right?',
  '12.4 V at the battery, 11.8 V at the mount',
  'the label says 24 V and the supply is 24 V, mount wants 24',
  'RS-232 goes from 0 to 15 V',
  'we look through smoked glass',
  'the fuse is blown',
  'the fuse looks whole',
  'the plug is not wet',
  'nothing is damp, the sockets are dry',
  'grass is wet here, the mount does not connect',
  'can you see the bigger lead',
])('nothing is said to: %s', (words) => {
  expect(harmNear(words)).toBeNull();
});

it('is said first, whatever else is in hand', async () => {
  const who = member('Godgifu');
  await answer(deps, 'triage the mount stays dark, no light at all', NOW, who);
  const { notes } = await answer(deps, 'triage the fuse went again, is a bigger fuse ok?', NOW, who);
  expect(notes[0]).toMatch(/^No\. Never a bigger fuse/u);
});
