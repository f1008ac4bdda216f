/** A remedy done by halves: what ends it comes next, and nothing of another kind. Source of the two halves: credentials(7), usermod(8). */
import { expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { answerStep, assess, startWalk, tellText, type WalkState } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const MODEL = shippedModel();

const after = (state: WalkState, fault: string, outcome: string): WalkState => {
  const next = answerStep(MODEL, state, fault, outcome, 'member');
  if (isProblem(next)) throw new Error(next.problem);
  return next;
};

it('is to log out, once being added to the group has changed nothing', () => {
  const said = 'Ubuntu, usb socket in the mount, permission denied on /dev/ttyACM0';
  const { state } = tellText(MODEL, startWalk({ member: 'Odalys', helper: null }), said, 'member');
  expect(assess(MODEL, state).step).toMatchObject({ kind: 'try', id: 'no-permission' });
  const half = after(state, 'no-permission', 'same');
  expect(assess(MODEL, half).step).toMatchObject({ kind: 'try', id: 'group-not-yet-active' });
  expect(assess(MODEL, after(half, 'group-not-yet-active', 'same')).step.id).not.toBe('group-not-yet-active');
});
