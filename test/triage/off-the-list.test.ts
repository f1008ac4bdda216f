/** What is said to "Which of these is not so?" and is no word on the list goes where it would go. The sentences are ours (invented; no source). */
import { describe, expect, it } from 'vitest';
import type { Asker } from '../../bot/commands/core/command.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, answer } from '../commands/real-deps.js';
import { deps, member, NOW } from './console-walk.js';

const said = (outcome: Outcome): string => (isProblem(outcome) ? outcome.message : outcome.title);

const atTheList = async (name: string): Promise<Asker> => {
  const who = member(name);
  await answer(deps, 'my mount wont connect, usb lead to the handset', NOW, who);
  const list = await answer(deps, 'triage do:doubt', NOW, who);
  expect(list.title).toBe('What I read');
  return who;
};

describe('at the list of what was read', () => {
  it.each([
    ['is it going to be clear tonight', 'I cannot see the weather'],
    ['what can i see from Ripon England tonight', 'Worth seeing'],
    ['what do you know about me', 'What I keep about you'],
    ['stop the walk', 'What was said'],
    ['it says time out on com4', 'Step 2'],
  ])('%s', async (line, expected) => {
    const who = await atTheList(`Listed ${line.length}`);
    expect(said(await ask(deps, line, NOW, who))).toContain(expected);
  });

  it('a word on the list takes the item back', async () => {
    const who = await atTheList('Listed and taken back');
    const reply = await answer(deps, 'the handset one', NOW, who);
    expect(reply.title).not.toBe('What I read');
  });
});

describe('told at length where no site is known', () => {
  it.each([
    'It connects ok and moves when I click a star but it ends up miles off, like an hour to the side. Every star the same way. Handset alone gets it right?',
    'Hello, my telescope go to wrong place, always same side, after I buy new computer',
    "My mount keeps wandering off slowly to the left all by itself once the computer is connected, like it's haunted",
    'I dont want star positions, my site is near Leicester, its that the computer sends the scope to the wrong place',
  ])('begins a walk: %s', async (line) => {
    expect(said(await ask(deps, line, NOW, member(`Long ${line.slice(0, 12)}`)))).toBe('Finding the connection fault');
  });
});
