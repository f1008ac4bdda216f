/** A number with a doubt beside it, at a look that keeps gear from harm. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

describe('a guess by number', () => {
  it('is not enough where a wrong one destroys gear, and a plain pick is', async () => {
    const who = member('Wystan');
    const asked = await answer(
      deps,
      'triage made my own cable straight to the motor board, Linux, no answer',
      NOW,
      who,
    );
    const at = async (picked: string) =>
      answer(deps, `triage walk:${idOf(asked)} answer:lead-level.${picked}`, NOW, who);
    let reply = asked;
    for (let turn = 0; turn < 6 && stepOf(reply).id !== 'lead-level'; turn++)
      reply = await answer(deps, `triage walk:${idOf(asked)} answer:${stepOf(reply).id}.unsure`, NOW, who);
    expect(stepOf(reply).id).toBe('lead-level');
    const guessed = await at('logic text:"1 maybe"');
    expect(guessed.notes.join(' ')).toContain('A guess is not enough here');
    expect(stepOf(guessed).id).toBe('lead-level');
    expect(stepOf(await at('logic')).id).not.toBe('lead-level');
  });
});
