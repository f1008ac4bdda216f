/** What stands beside the answers of a walk, typed by its label. The lines are our own. */
import { describe, expect, it } from 'vitest';
import { choice, defineCommand, optional, text, type Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { consoleSession } from '../../bot/platforms/console/session.js';
import { labelPicked } from '../../bot/platforms/shared/label-picked.js';
import { NOWHERE, reply, type Outcome } from '../../bot/reply/reply.js';
import { answer, realDeps } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const SHOWN = [
  { label: 'No change', run: 'triage walk:ab1 answer:park.same' },
  { label: 'Something changed, still not right', run: 'triage walk:ab1 answer:park.changed' },
  { label: 'Why this?', run: 'triage walk:ab1 do:why' },
  { label: 'Back a step', run: 'triage walk:ab1 do:back' },
  { label: 'Something of this is wrong', run: 'triage walk:ab1 do:doubt' },
  { label: 'Not so: the light is on', run: 'triage walk:ab1 answer:not.light' },
  { label: 'All of it is right', run: 'triage walk:ab1 answer:read.right' },
  { label: 'Yes, let Ravi help', run: 'triage walk:ab1 do:accept answer:8f' },
  { label: 'No, go on', run: 'triage walk:ab1' },
  { label: 'Show the right entries', run: 'entries' },
  { label: 'Show the lines again', run: 'triage walk:ab1 do:lines' },
];
const PICKED = [
  ['show the right entries', 'entries'],
  ['Show me the right entries please', 'entries'],
  ['ok, show right entries', 'entries'],
  ['10. SHOW THE RIGHT ENTRIES!', 'entries'],
  ['all of it is right', 'triage walk:ab1 answer:read.right'],
  ['yes all of it is right, thanks', 'triage walk:ab1 answer:read.right'],
  ['please show the lines again', 'triage walk:ab1 do:lines'],
  ['go back a step', 'triage walk:ab1 do:back'],
  ['why this', 'triage walk:ab1 do:why'],
  ['something of this is wrong...', 'triage walk:ab1 do:doubt'],
] as const;
const WORDS = [
  'show me the right star',
  'back home it works',
  'something is wrong with it',
  'not all of it is right',
  'go back two steps',
  'why is it slow',
  'no go',
  'right',
  // Answers and consent are left to the walk.
  'no change',
  'something changed, still not right',
  'so the light is on',
  'yes let ravi help',
  'constructor',
];

describe('a label typed', () => {
  it.each(PICKED)('“%s” picks %s', (line, run) => expect(labelPicked(line, SHOWN)).toBe(run));
  it.each(WORDS)('“%s” picks nothing', (line) => expect(labelPicked(line, SHOWN)).toBeNull());

  it('picks nothing where no walk offers it, or where it might be either of two', () => {
    expect(labelPicked('show the right entries', [{ label: 'Show the right entries', run: 'entries' }])).toBeNull();
    const alike = [...SHOWN, { label: 'Show the night entries', run: 'entries night' }];
    expect(labelPicked('show the entries', alike)).toBeNull();
  });

  it('runs on the console before the words are read, and words still go where they went', async () => {
    const said = (outcome: Outcome): string => (isProblem(outcome) ? outcome.message : outcome.title);
    const stub = defineCommand({
      name: 'triage',
      summary: 'A walk',
      examples: ['triage x'],
      freeText: true,
      options: {
        text: optional(text('Words')),
        walk: optional(text('Which')),
        do: optional(choice('What', ['why'])),
      },
      run: async (_deps, { options }): Promise<Outcome> =>
        reply({ pointsAt: NOWHERE, title: options.text ?? options.do ?? 'step', summary: 'x', choices: SHOWN }),
    });
    const entries = defineCommand({
      name: 'entries',
      summary: 'Entries',
      examples: ['entries'],
      options: {},
      run: async (): Promise<Outcome> => reply({ pointsAt: NOWHERE, title: 'the entries', summary: 'x' }),
    });
    const { catalogue } = await realDeps();
    const session = consoleSession(
      { commands: [stub, entries], catalogue, store: { walks: {} } } as unknown as Deps,
      () => 0,
      () => undefined,
    );
    expect(said(await session.answer('triage text:"it lands off"'))).toBe('it lands off');
    expect(said(await session.answer('why this'))).toBe('why');
    expect(said(await session.answer('please show me the right entries'))).toBe('the entries');
  });

  it('is heard by the walk itself, on every platform', async () => {
    const who = member('Sunniva');
    const asked = await answer(deps, 'triage USB-serial adapter at the handset on Windows, it times out', NOW, who);
    const next = await answer(deps, `triage walk:${idOf(asked)} answer:${stepOf(asked).id}.unsure`, NOW, who);
    expect(stepOf(next)).not.toEqual(stepOf(asked));
    const back = await answer(deps, 'triage please go back a step', NOW, who);
    expect(back.notes.join(' ')).toContain('Taken back one step');
    expect(stepOf(back)).toEqual(stepOf(asked));
    expect((await answer(deps, 'triage ok, why this', NOW, who)).title).toBe(
      (await answer(deps, 'triage do:why', NOW, who)).title,
    );
  });
});
