/** A remedy that cured and whose trouble came back: no card twice; what makes it last, else a second cause. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, linesOn, member, NOW, stepOf } from './console-walk.js';

const cured = async (name: string, fault: string) => {
  const who = member(name);
  const first = await answer(deps, 'triage USB-serial adapter at the handset, Linux, it will not connect', NOW, who);
  const done = await answer(deps, `triage walk:${idOf(first)} answer:${fault}.works`, NOW, who);
  expect(stepOf(done)).toEqual({ kind: 'done', id: fault });
  return { who, done };
};

const linesOfStep = (reply: Awaited<ReturnType<typeof answer>>): readonly string[] =>
  (reply.data['step'] as { lines?: readonly string[] }).lines ?? [];

describe('a trouble that came back', () => {
  it('is given what makes the cure last, once, pressed or told', async () => {
    const { who, done } = await cured('Thessaly', 'wrong-port-picked');
    const { steps } = deps.triage().fault('wrong-port-picked')?.remedy ?? {};
    const run = done.choices?.find(({ label }) => label === 'It stopped working again')?.run ?? '';
    const kept = await answer(deps, run, NOW, who);
    expect(stepOf(kept)).toMatchObject({ kind: 'try', id: 'wrong-port-picked' });
    expect(linesOfStep(kept).join(' ')).toContain('/dev/serial/by-id/');
    expect(linesOfStep(kept)).not.toEqual(steps);
    await answer(deps, 'triage works now', NOW, who);
    const again = await answer(deps, 'triage after a restart it is wrong again', NOW, who);
    expect(stepOf(again)).toMatchObject({ kind: 'ask', id: 'how-far' });
    expect(linesOn(again).join(' ')).toContain('What is different now');
  });

  it('has a second cause where the cure needs nothing to last', async () => {
    expect(deps.triage().fault('serial-lead-broken')?.remedy.lasting).toBeUndefined();
    const { who } = await cured('Corisande', 'serial-lead-broken');
    const told = await answer(deps, 'triage it came back after an hour', NOW, who);
    expect(stepOf(told)).toMatchObject({ kind: 'ask', id: 'how-far' });
    expect(linesOn(told).join(' ')).toContain('What is different now');
  });

  it('is not heard in thanks', async () => {
    const { who } = await cured('Anselma', 'wrong-port-picked');
    const thanks = await answer(deps, 'triage it works again, thank you', NOW, who);
    expect(linesOn(thanks).join(' ')).not.toContain('It came back');
  });
});
