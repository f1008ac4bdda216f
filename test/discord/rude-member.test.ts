/**
 * One member floods in every way Discord allows; another asks one plain thing. What the flood costs is bounded, the other is answered
 * within a second by the bot's own clock, and health stays good. (Matrix: test/matrix/flood.test.ts.)
 */
import { ButtonStyle, ComponentType } from 'discord-api-types/v10';
import { afterEach, describe, expect, it } from 'vitest';
import { defineCommand, optional, text } from '../../bot/commands/core/command.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';
import type { Message } from '../doubles/discord/world.js';
import { formId } from '../../bot/platforms/discord/write/write-form.js';
import type { Member } from '../doubles/discord/members.js';
import { start, type Started } from './start-bot.js';

let ran = 0;
let suggested = 0;
const rudely = defineCommand({
  name: 'rudely',
  summary: 'Counts',
  options: { words: optional(text('What', { complete: 'own' })) },
  examples: ['rudely'],
  completeOwn: async (_deps, _option, partial) => {
    suggested++;
    return [{ label: partial, value: partial }];
  },
  run: async () => {
    ran++;
    return reply({
      pointsAt: NOWHERE,
      title: 'Again?',
      summary: 'Press.',
      choices: [
        { label: 'Again', run: 'rudely' },
        { label: 'More', run: 'rudely words:more' },
      ],
    });
  },
});
const kindly = defineCommand({
  name: 'kindly',
  summary: 'Answers',
  options: {},
  examples: ['kindly'],
  run: async () => reply({ pointsAt: NOWHERE, title: 'Hello', summary: 'Here I am.' }),
});

const FLOOD = 120;
const BURST = 10;
let at: Started | undefined;
afterEach(async () => {
  const violations = at?.double.rest.violations ?? ['nothing was started'];
  await at?.stop();
  at = undefined;
  expect(violations).toEqual([]);
});

/** Seconds the bot took over `kindly`, by its own clock. */
const kindSeconds = async ({ metrics }: Started): Promise<number> => {
  const { body } = await metrics.expose();
  const line = body
    .split('\n')
    .find((each) => each.startsWith('pierhand_answer_seconds_sum') && each.includes('"kindly"'));
  return Number(line?.split(' ').at(-1) ?? NaN);
};

const times = <T>(count: number, work: (i: number) => Promise<T>): Promise<PromiseSettledResult<T>[]> =>
  Promise.allSettled(Array.from({ length: count }, (_, i) => work(i)));

const LOG = {
  filename: 'kernel.log',
  contentType: 'text/plain',
  bytes: Buffer.from('usb 1-1: error -71\n'.repeat(5000)),
};
/** The message with another id on its button, as a changed client might send it. */
const buttonOn = (message: Message, customId: string): Message => ({
  ...message,
  components: [
    {
      type: ComponentType.ActionRow,
      components: [{ type: ComponentType.Button, style: ButtonStyle.Secondary, label: 'Again', custom_id: customId }],
    },
  ],
});

type Kind = readonly [string, (rude: Member, started: Started) => Promise<unknown>];
const KINDS: readonly Kind[] = [
  ['questions', (rude) => times(FLOOD, () => rude.slash('rudely', {}, { until: 'first' }))],
  [
    'presses',
    async (rude) => {
      const { message } = await rude.slash('rudely');
      await times(FLOOD, () => rude.press(message, 'Again', { until: 'first' }));
    },
  ],
  [
    'pastes',
    (rude) =>
      times(FLOOD, () => rude.slash('triage', { text: 'no port '.repeat(480) }, { until: 'first', in: 'direct' })),
  ],
  ['walks', (rude) => times(FLOOD, () => rude.slash('triage', { do: 'new' }, { until: 'first', in: 'direct' }))],
  [
    'forms',
    async (rude) => {
      const { message } = await rude.slash('rudely');
      await times(FLOOD, () =>
        rude.fillIn(
          buttonOn(message, `0:?${formId('paste', 'triage')}`),
          'Again',
          { text: 'no port' },
          { until: 'first' },
        ),
      );
    },
  ],
  ['files', (rude) => times(FLOOD, () => rude.slash('triage', { file: LOG }, { until: 'first', in: 'direct' }))],
  [
    'threads about others',
    (rude, { double }) =>
      times(FLOOD, (i) => rude.menu('Help with connection', double.member(`Subject ${i}`), { until: 'first' })),
  ],
  ['suggestions', (rude) => times(FLOOD, (i) => rude.complete('rudely', 'words', `w${i}`))],
];

describe('one member floods', () => {
  it.each(KINDS)('with %s: the others do not notice', async (kind, flood) => {
    ran = 0;
    suggested = 0;
    const started = (at = await start({ commands: [...allCommands, rudely, kindly], tuning: { ticksMs: () => 0 } }));
    const { double, bot, store } = started;
    const rude = double.member('Ingo');
    // The fault model is read before a flood, as a running bot has.
    await double.member('Ravi').slash('triage', { text: 'no port' }, { in: 'direct' });
    const flooding = flood(rude, started);
    const heard = await double.member('Tamsin').slash('kindly', {}, { in: double.addChannel('beginners') });
    expect(heard.message.embeds[0]?.title).toBe('Hello');
    expect(bot.health().ok).toBe(true);
    const seconds = await kindSeconds(started);
    console.log(`${kind}: the other was answered in ${Math.round(seconds * 1000)} ms by the bot's clock`);
    // Discord's own limit for a first answer (its documentation, "Interaction Callback"), whatever else the machine has to do.
    expect(seconds).toBeLessThan(3);
    await flooding;
    expect(bot.health().ok).toBe(true);
    expect(ran).toBeLessThanOrEqual(BURST);
    expect(suggested).toBeLessThanOrEqual(40);
    const kept = (await store.exportMember(`discord:${rude.person.id}`)) as { readonly walks: readonly unknown[] };
    expect(kept.walks.length).toBeLessThanOrEqual(BURST);
    expect([...double.world.channels.values()].filter(({ type }) => type === 11).length).toBeLessThanOrEqual(3);
  });
});
