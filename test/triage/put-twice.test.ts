/** A question that finds no answer is put twice and no more, whatever is said in between. The lines are invented. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

const LINES = [
  'windows, network bridge on the house network, something is off with the connection',
  'the sky is lovely and the cat sits on the chair',
  'my neighbour has a red one',
  'we had soup',
  'the chair is wet now',
  'somebody sings next door',
  'a fox went by',
  'the kettle is on',
  'my hat fell in the pond',
  'the moon was nice last week',
  'grandma rang and she is well',
  'two owls in the oak',
];

describe('the same question', () => {
  it('is put twice at most', async () => {
    const who = member('Cynfael');
    const put = new Map<string, number>();
    for (const line of LINES) {
      const reply = await answer(deps, `triage ${line}`, NOW, who);
      const step = reply.data['step'] === undefined ? undefined : stepOf(reply);
      if (step?.kind === 'ask') put.set(step.id, (put.get(step.id) ?? 0) + 1);
    }
    put.delete('path');
    expect(put.size).toBeGreaterThan(3);
    expect([...put].filter(([, times]) => times > 2)).toEqual([]);
  });

  it('comes again where the member goes back to it', async () => {
    const who = member('Cynog');
    await answer(deps, `triage ${LINES[0] ?? ''}`, NOW, who);
    const first = await answer(deps, 'triage we had soup', NOW, who);
    const { id } = stepOf(first);
    const next = await answer(deps, 'triage not sure', NOW, who);
    expect(stepOf(next).id).not.toBe(id);
    expect(stepOf(await answer(deps, 'triage do:back', NOW, who)).id).toBe(id);
  });
});
