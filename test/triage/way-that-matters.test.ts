/** Whether the way to the mount, and how far one gets, are asked of members whose words have told as much. */
import { describe, expect, it } from 'vitest';
import { assess, startWalk } from '../../bot/triage/walk/walk.js';
import { tellText } from '../../bot/triage/walk/tell-text.js';
import { shippedModel } from '../shipped.js';

const MODEL = shippedModel();
const firstAsked = (words: string): string => {
  const { state } = tellText(MODEL, startWalk({ member: 'Ottoline', helper: null }), words, 'member');
  return assess(MODEL, state).step.id;
};

describe('the way to the mount', () => {
  // What a power lead or a battery does is the same on every way: common practice, no source.
  it.each([
    'the power plug is loose in the mount, if i hold it the light is on, let go and it is off',
    'the red light dips when i slew and the hand controller restarts, old battery',
  ])('is not asked where it cannot bear: %s', (words) => {
    expect(firstAsked(words)).not.toBe('path');
  });

  it.each(['it does not connect', 'the program says it cannot open the port', 'it was fine last week'])(
    'is asked where it bears: %s',
    (words) => {
      expect(firstAsked(words)).toBe('path');
    },
  );
});

describe('how far one gets', () => {
  it.each([
    'guiding: dec does nothing for six seconds of pulses and then jumps, only when the correction changes direction',
  ])('is not asked of who has told it more closely: %s', (words) => {
    expect(firstAsked(words)).not.toBe('how-far');
  });
});
