import { InteractionType, type APIInteraction } from 'discord-api-types/v10';
import { afterEach, describe, expect, it } from 'vitest';
import { createAge } from '../../bot/platforms/discord/answer/age.js';
import type { Bot } from '../../bot/platforms/discord/connect/bot.js';
import { handleInteraction } from '../../bot/platforms/discord/answer/handle-interaction.js';
import { BUSY_WORDS } from '../../bot/platforms/shared/busy-words.js';
import { defineCommand, optional, text } from '../../bot/commands/core/command.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';
import { snowflake } from '../doubles/discord/snowflake.js';
import { start, type Started } from './start-bot.js';

describe('how old an interaction is when it is taken up', () => {
  // Made at these milliseconds by Discord's clock, which is an hour ahead of the bot's.
  const aheadMs = 3_600_000;
  const idOf = (madeMs: number): string => snowflake(1_800_000_000_000 + aheadMs + madeMs);

  it('is how much longer it was on its way than the quickest of the last minutes', () => {
    let ticksMs = 0;
    const ageMs = createAge(() => ticksMs);
    ticksMs = 100;
    expect(ageMs(idOf(0))).toBe(0);
    ticksMs = 5200;
    expect(ageMs(idOf(1000))).toBe(4100);
    ticksMs = 6050;
    expect(ageMs(idOf(6000))).toBe(0);
    expect(ageMs(idOf(5000))).toBe(1000);
  });

  it('is nothing for one that comes after a long silence, however the clocks have drifted', () => {
    let ticksMs = 0;
    const ageMs = createAge(() => ticksMs);
    expect(ageMs(idOf(0))).toBe(0);
    ticksMs = 30 * 86_400_000;
    expect(ageMs(idOf(ticksMs - 60_000))).toBe(0);
  });
});

describe('an interaction that Discord has given up before it is taken up', () => {
  it('is told to the operator, and nothing is done for it', async () => {
    let late = 0;
    // Only what this path may touch: claiming it in the store or answering it would fail.
    const bot = {
      ageMs: () => 3001,
      onLate: () => void late++,
      context: {},
    } as unknown as Bot;
    await handleInteraction(bot, { id: '1', type: InteractionType.ApplicationCommand } as APIInteraction, false);
    expect(late).toBe(1);
  });
});

describe('more questions than can be answered in time', () => {
  let started: Started | undefined;
  afterEach(async () => started?.stop());

  it('are turned away kindly, counted, and told to the operator in one line; suggestions come all the same', async () => {
    let runs = 0;
    const counts = defineCommand({
      name: 'counting',
      summary: 'Counts its runs',
      options: { target: optional(text('What to count', { complete: 'target' })) },
      examples: ['counting'],
      run: async () => {
        runs++;
        return reply({ title: 'Done', summary: 'All done.', pointsAt: NOWHERE });
      },
    });
    // However short the wait would be, it is too long here.
    started = await start({ commands: [counts], tuning: { busyAfterMs: -1 } });
    const { double, metrics, logged } = started;
    for (let i = 0; i < 5; i++) {
      const { message } = await double.member(`Member ${i}`).slash('counting');
      expect(message.content).toBe(BUSY_WORDS);
    }
    expect(runs).toBe(0);
    expect((await double.member('Ada').complete('counting', 'target', 'jup')).choices[0]?.value).toBe('Jupiter');
    expect((await metrics.expose()).body).toContain('pierhand_limited_total{platform="discord",scope="all"} 5');
    expect(logged().split('more is asked than can be answered in time').length - 1).toBe(1);
  });

  it('get their answers with words in place of the picture', async () => {
    started = await start({ tuning: { pictureWithinMs: -1 } });
    const { message } = await started.double.member('Ada').slash('up', { target: 'M 31' });
    expect(message.attachments).toEqual([]);
    expect(message.embeds[0]?.image).toBeUndefined();
    expect(message.embeds[0]?.description).toMatch(/altitude/iu);
  });
});
