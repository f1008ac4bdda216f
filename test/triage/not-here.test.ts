/** What a member has not got is asked for by nothing: the ways of saying so are members', common practice, no source. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { answerStep, assess, startWalk, tellText, type TriageModel, type WalkState } from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const model: TriageModel = shippedModel();
const ODALYS = { member: 'Odalys', helper: null };

/** So many steps with every question unanswerable and every remedy in vain show what a walk can come to. */
const STEPS = 9;

const needsOf = (id: string): readonly string[] => {
  const entry = model.check(id) ?? model.fault(id);
  return entry === undefined ? [] : (entry.needs ?? model.stage(entry.stage)?.needs ?? []);
};

const stepsOf = (start: WalkState): readonly string[] => {
  const ids: string[] = [];
  let state = start;
  for (let i = 0; i < STEPS; i++) {
    const { step } = assess(model, state);
    ids.push(step.id);
    if (step.kind === 'handOn' || step.kind === 'done') break;
    const next = answerStep(model, state, step.id, step.kind === 'try' ? 'same' : 'unsure', 'member');
    if (isProblem(next)) throw new Error(`${step.id}: ${next.problem}`);
    state = next;
  }
  return ids;
};

const WITHOUT = [
  ['handset', 'there is no hand controller here'],
  ['handset', 'I have not hand controller'],
  ['computer', "I don't have a computer, just the hand controller"],
  ['bluetooth', 'there is no Bluetooth here'],
  ['adapter', 'there is no adapter'],
] as const;

const TROUBLES = ['it does not move', 'it will not connect', 'it goes to the wrong place'] as const;

describe('what the member has not got', () => {
  const walks = model.paths.flatMap((path) =>
    WITHOUT.filter(([part]) => part === 'computer' || path.needs?.includes(part) !== true).flatMap(([part, words]) =>
      // What only a computer can do is told of by one who has it.
      TROUBLES.filter((trouble) => part !== 'computer' || !trouble.includes('connect')).map((trouble) => ({
        path: path.id,
        part,
        said: `${trouble}, ${words}`,
      })),
    ),
  );

  it.each(walks)('leaves out all that needs it: $path, "$said"', ({ path, part, said }) => {
    const known = part === 'computer' ? {} : { path };
    const { state } = tellText(model, startWalk(ODALYS, known), said, 'member');
    const { context, situation } = assess(model, state);
    expect(context.lacks).toEqual([part]);
    const possible = [...situation.faults, ...situation.checks.map(({ entry }) => entry)];
    expect(possible.filter(({ id }) => needsOf(id).includes(part)).map(({ id }) => id)).toEqual([]);
    expect(stepsOf(state).filter((id) => needsOf(id).includes(part))).toEqual([]);
  });

  it('asks nobody without a computer how the computer reaches the mount, or which system it runs', () => {
    const { state } = tellText(model, startWalk(ODALYS), 'it does not move, no computer just the handset', 'member');
    expect(stepsOf(state).filter((id) => ['path', 'system', 'client'].includes(id))).toEqual([]);
  });

  it('takes a tablet for a computer', () => {
    const said = 'I have no computer, only an Android tablet, it will not connect';
    const { state } = tellText(model, startWalk(ODALYS), said, 'member');
    expect(assess(model, state).context).toMatchObject({ system: 'phone' });
    expect(assess(model, state).context.lacks).toBeUndefined();
  });

  it('brings a thing back that is spoken of later', () => {
    const { state } = tellText(model, startWalk(ODALYS), 'no hand controller here, it will not connect', 'member');
    const later = answerStep(model, state, 'path', 'controller-serial', 'member');
    if (isProblem(later)) throw new Error(later.problem);
    expect(assess(model, later).context).toMatchObject({ path: 'controller-serial' });
    expect(assess(model, later).context.lacks).toBeUndefined();
  });

  it.each([
    'the handset has no text',
    'I have no handset display',
    'it works without the laptop',
    'with only the handset it works',
    'no computer sees it',
    'I have no other computer',
    'the mount does not show up in bluetooth',
    'I have no bluetooth connection',
    'I have no adapter driver',
    'the adapter is not there any more',
  ])('is not read of "%s"', (said) => {
    const { state } = tellText(model, startWalk(ODALYS), said, 'member');
    const lacks = assess(model, state).context.lacks ?? [];
    // A second one is not what is asked of here.
    expect(lacks.filter((part) => !part.startsWith('other-'))).toEqual([]);
  });
});
