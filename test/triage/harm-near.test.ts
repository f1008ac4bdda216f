/** What hurts gear or people if it is done, asked of in passing. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { harmNear } from '../../bot/commands/triage/terms.js';
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

it.each([
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
