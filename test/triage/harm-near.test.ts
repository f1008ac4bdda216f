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
  ])('come before all else: %s', (words) => {
    expect(harmNear(words)).toMatch(/^Stop: take the power off now/u);
  });
});

it.each([
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
  const who = member('Ottoline');
  await answer(deps, 'triage the mount stays dark, no light at all', NOW, who);
  const { notes } = await answer(deps, 'triage the fuse went again, is a bigger fuse ok?', NOW, who);
  expect(notes[0]).toMatch(/^No\. Never a bigger fuse/u);
});
