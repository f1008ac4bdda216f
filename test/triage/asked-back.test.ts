/** "Did you mean …?" in a walk: the answer asked back is one press away, and it is not asked back twice. The members are invented. */
import type { Choice } from '../../bot/ground/problem.js';
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';

const isAt = (check: string) => (reply: Parameters<typeof stepOf>[0]) => stepOf(reply).id === check;

describe('an answer asked back', () => {
  it('is among the choices, which stay as they stood, and one press takes it', async () => {
    const who = member('Ingram');
    const began = await goOn(who, await answer(deps, 'triage something is wrong', NOW, who), isAt('how-far'), 4);
    expect(stepOf(began).id).toBe('how-far');
    const label =
      deps
        .triage()
        .check('how-far')
        ?.answers.find(({ id }) => id === 'guiding')?.label ?? 'none';
    const reply = await answer(deps, `triage walk:${idOf(began)} text:"the guider sulks"`, NOW, who);
    expect(reply.notes.join(' ')).toContain(`Did you mean “${label}”?`);
    const asked = reply.choices?.filter((choice) => choice.label === label) ?? [];
    expect(asked).toHaveLength(1);
    const answersIn = (choices: readonly Choice[] = []): readonly string[] =>
      choices.flatMap(({ run }) => (run.includes('answer:how-far.') ? [run] : []));
    expect(answersIn(reply.choices).slice(0, answersIn(began.choices).length)).toEqual(answersIn(began.choices));
    const taken = await answer(deps, asked[0]?.run ?? '', NOW, who);
    expect(stepOf(taken).id).not.toBe('how-far');
  });

  it('is not asked back a second time: the walk goes on without', async () => {
    const who = member('Perpetua');
    const began = await goOn(who, await answer(deps, 'triage something is wrong', NOW, who), isAt('how-far'), 4);
    const first = await answer(deps, `triage walk:${idOf(began)} text:"the guider sulks"`, NOW, who);
    expect(stepOf(first).id).toBe('how-far');
    const second = await answer(deps, `triage walk:${idOf(began)} text:"that guider just sulks"`, NOW, who);
    expect(stepOf(second).id).not.toBe('how-far');
  });
});
