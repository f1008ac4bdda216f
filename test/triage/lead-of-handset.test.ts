/** A hand controller's lead is another at the motor board, and the very lead at the hand controller. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { assess, startWalk, tellText } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const MODEL = shippedModel();
const NAMES = { member: 'Odalys', helper: null };

const BOARD = 'linux, usb adapter with cable straight to the motor board';
const HANDSET = 'windows, usb adapter at the hand controller, times out';

const told = (opening: string, words: string) => {
  const { state } = tellText(MODEL, startWalk(NAMES), opening, 'member');
  const next = tellText(MODEL, state, words, 'member');
  const lead = next.read.facts.find(({ what }) => what === 'same-lead')?.answer ?? null;
  return { lead, step: assess(MODEL, next.state).step.id };
};

const USED = [
  'its the lead i always used on the hand controller',
  'no write on it. is same cable what I was use before with hand control',
  "i've used this cable for years with my old hand controller, never a problem",
  'been using it with the hand paddle since 2019',
];

describe('at the motor board', () => {
  it('the level is looked at for want of anything said', () => {
    expect(assess(MODEL, tellText(MODEL, startWalk(NAMES), BOARD, 'member').state).step.id).toBe('lead-level');
  });

  it.each([...USED, 'this lead came with the handset', 'its my old hand controller lead'])(
    '"%s" proves nothing, and the look at its level stands',
    (words) => {
      expect(told(BOARD, words)).toEqual({ lead: 'other-socket', step: 'lead-level' });
    },
  );

  it('a lead that has worked in this very socket has', () => {
    expect(told(BOARD, 'its the same cable as always').lead).toBe('worked');
  });
});

describe('at the hand controller', () => {
  it.each(USED)('"%s" is the very lead', (words) => {
    expect(told(HANDSET, words).lead).toBe('worked');
  });

  it('where it came from tells nothing of what it did', () => {
    expect(told(HANDSET, 'this lead came with the handset').lead).toBeNull();
  });
});
