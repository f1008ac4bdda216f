/** Small commands for tests of what the real ones seldom do. */
import { setTimeout as sleep } from 'node:timers/promises';
import { problem } from '../../bot/ground/problem.js';
import { defineCommand, number, optional, text, type Command } from '../../bot/commands/core/command.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';

/** Longer than the tests' `deferAfterMs`. */
const SLOWLY_MS = 250;

/** Says back what was said, after a while; `private` in the words keeps it to the asker. */
export const echo = (slow: boolean): Command =>
  defineCommand({
    name: slow ? 'slowly' : 'echo',
    summary: 'Says it back',
    options: {
      words: text('What', { maxLength: 500, complete: 'own' }),
      wait: optional(number('Milliseconds', { min: 0, max: 5000 })),
    },
    examples: ['echo hello'],
    completeOwn: async (_deps, _option, partial) => {
      if (partial === 'late') await sleep(400);
      if (partial === 'broken') throw new Error('completion broke');
      return Array.from({ length: 60 }, (_, i) => ({
        label: `${partial} ${i} ${'l'.repeat(150)}`,
        value: `${partial} ${i}`,
      }));
    },
    run: async (_deps, { options }) => {
      await sleep(Math.max(options.wait ?? 0, slow ? SLOWLY_MS : 0));
      return options.words.includes('problem')
        ? problem('made-up', `no: ${options.words}`)
        : reply({
            pointsAt: NOWHERE,
            title: options.words,
            summary: `You said ${options.words}`,
            audience: options.words.includes('private') ? 'asker' : 'everyone',
          });
    },
  });

export const broken = defineCommand({
  name: 'broken',
  summary: 'Fails',
  options: {},
  examples: ['broken'],
  run: async () => {
    throw new Error('secret inner detail');
  },
});

export const offers = defineCommand({
  name: 'offers',
  summary: 'Offers choices',
  options: { count: number('How many', { min: 1, max: 25 }) },
  examples: ['offers 3'],
  run: async (_deps, { options }) =>
    reply({
      pointsAt: NOWHERE,
      title: 'Choose',
      summary: 'Which?',
      choices: Array.from({ length: options.count }, (_, i) => ({
        label: `Say ${i}`,
        run: `echo words:"number ${i}"`,
      })),
    }),
});

export const clubOnly = defineCommand({
  name: 'clubonly',
  summary: 'For managers',
  access: 'manager',
  options: {},
  examples: ['clubonly'],
  run: async () => reply({ pointsAt: NOWHERE, title: 'Done', summary: 'Changed.' }),
});

export const sampleCommands: readonly Command[] = [echo(false), echo(true), broken, offers, clubOnly];
