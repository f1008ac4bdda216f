import { setTimeout as sleep } from 'node:timers/promises';
import type { APIInteraction } from 'discord-api-types/v10';
import { DiscordAPIError, type REST } from 'discord.js';
import { describe, expect, it } from 'vitest';
import { answerQuestion } from '../../bot/platforms/discord/answer/answer-question.js';
import { DEFAULT_TUNING, type Bot } from '../../bot/platforms/discord/connect/bot.js';
import type { Asker } from '../../bot/commands/core/command.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';

const expired = new DiscordAPIError({ code: 10062, message: 'Unknown interaction' }, 10062, 404, 'POST', '', {});

describe('a question that waits in a crowd until Discord gives it up', () => {
  it('is not carried out: the member has been told that nothing came of it', async () => {
    let runs = 0;
    // Only what this path touches.
    const bot = {
      answers: {
        post: async () => {
          throw expired;
        },
      } as unknown as REST,
      takeTurn: () => sleep(50),
      tuning: { ...DEFAULT_TUNING, deferAfterMs: 0 },
      context: {},
    } as unknown as Bot;
    const question = {
      command: 'site',
      ask: async () => {
        runs++;
        return reply({ pointsAt: NOWHERE, title: 'Saved', summary: 'Saved.' });
      },
    };
    await expect(
      answerQuestion(bot, { id: '1', token: 't', application_id: '2' } as APIInteraction, {} as Asker, question),
    ).rejects.toBe(expired);
    await sleep(100);
    expect(runs).toBe(0);
  });
});
