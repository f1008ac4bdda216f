/** A walk's question and its list: they stand again under the answer to something else, and keep their places. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import type { Choice } from '../../bot/ground/problem.js';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { ask } from '../commands/real-deps.js';
import { deps, member, NOW } from './console-walk.js';

const said = async (name: string, ...lines: readonly string[]): Promise<readonly Outcome[]> => {
  const outcomes: Outcome[] = [];
  for (const line of lines) outcomes.push(await ask(deps, line, NOW, member(name)));
  return outcomes;
};
const textOf = (outcome: Outcome | undefined): string => {
  if (outcome === undefined) return '';
  return isProblem(outcome) ? outcome.message : [outcome.summary, ...outcome.notes].join('\n');
};
const answersIn = (outcome: Outcome | undefined): readonly string[] =>
  (outcome?.choices ?? []).flatMap(({ run }: Choice) => / answer:(\S+)/u.exec(run)?.[1] ?? []);

describe('under the answer to something else', () => {
  it.each([
    ['which place is asked for', 'my site is Ely'],
    ['the sky is asked about', 'how high is Vega now from Lincoln'],
    ['a command is typed', 'site add shed 52.71,0.12'],
    ['help is asked for', 'help'],
  ])('the question stands, where %s', async (kind, aside) => {
    const [, answered] = await said(`Barnaby ${kind}`, 'triage my laptop does not see the mount, usb lead', aside);
    expect(textOf(answered)).toContain('How does the computer reach the mount?');
    // Its list stands above, and under its own question again.
    expect(answersIn(answered)).toEqual([]);
    expect(answered?.choices?.at(-1)?.label).toBe('Back to the walk');
  });

  it('the list comes back with the question, in its order', async () => {
    const [opened, , again] = await said(
      'Barnabas',
      'triage my laptop does not see the mount, usb lead',
      'help',
      'back',
    );
    expect(answersIn(opened)).not.toEqual([]);
    expect(answersIn(again)).toEqual(answersIn(opened));
  });

  it('a remedy stands', async () => {
    const [, answered] = await said(
      'Bettina',
      'triage linux, permission denied on /dev/ttyUSB0, serial adapter at the hand controller',
      'remind me tomorrow at 18:00 to charge the battery',
    );
    expect(textOf(answered)).toContain('you may not open the port');
  });

  it('no number beside "forget" is an answer of the walk, and the first removes nothing', async () => {
    const [, beside] = await said('Brunhild', 'triage my laptop does not see the mount, usb lead', 'forget me');
    expect((beside?.choices ?? []).map(({ label }) => label)).toEqual([
      'Show me what you keep',
      'Yes, forget me',
      'Back to the walk',
    ]);
    expect((beside?.choices ?? []).map(({ run }) => run).filter((run) => run.includes('confirm'))).toHaveLength(1);
  });

  it('nothing does where no walk waits, or the walk itself answered', async () => {
    const [alone] = await said('Bruno', 'my site is Lincoln');
    expect(textOf(alone)).not.toContain('still waits');
    const [, own] = await said('Benno', 'triage the port is not in the list, usb lead', 'windows');
    expect(textOf(own)).not.toContain('still waits');
  });
});

describe('asked again, a list', () => {
  it('stands as it stood, and what is asked back comes behind it or is in it', async () => {
    const [opened, again] = await said(
      'Clement',
      'triage hand controller with a usb serial adapter, windows 10, cannot connect',
      'the grass is wet',
    );
    expect(answersIn(opened)).toContain('message.no-reply');
    expect(answersIn(again).slice(0, answersIn(opened).length)).toEqual(answersIn(opened));
  });
});

describe('the groups of a session', () => {
  it.each([
    ['nils adm cdrom sudo dip plugdev', 'not in the group'],
    ['uid=1000(nils) gid=1000(nils) groups=1000(nils),4(adm),27(sudo)', 'not in the group'],
    ['my groups are users wheel audio', 'not in the group'],
    ['nils adm dialout sudo plugdev', 'in the group that owns the port'],
  ])('typed or pasted, are heard: %s', async (list, heard) => {
    const [, reply] = await said(
      `Nils ${list.slice(0, 9)}`,
      'triage linux, permission denied on /dev/ttyUSB0, serial adapter at the hand controller',
      list,
    );
    expect(textOf(reply)).toContain(heard);
  });

  it.each(['sudo usermod -aG dialout $USER', 'the power is on and the network too', 'i added myself to dialout'])(
    'are none in: %s',
    async (words) => {
      const [, reply] = await said(
        `Nora ${words.slice(0, 9)}`,
        'triage linux, permission denied on /dev/ttyUSB0, serial adapter at the hand controller',
        words,
      );
      expect(textOf(reply)).not.toContain('not in the group');
    },
  );
});

describe('a walk just begun', () => {
  it('ends at "stop", though nothing has been said in it', async () => {
    const [, ended, after] = await said('Sigrun', 'triage', 'stop', 'how high is Vega now from Lincoln');
    expect(textOf(ended)).toContain('This walk has ended');
    expect(textOf(after)).not.toContain('still waits');
  });
});
