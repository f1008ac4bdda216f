/** A walk's question that has been answered stands without its buttons, with what was chosen. */
import { MessageFlags, Routes, type APIInteraction } from 'discord-api-types/v10';
import { isProblem } from '../../../ground/problem.js';
import type { Outcome } from '../../../reply/reply.js';
import type { Bot } from '../connect/bot.js';
import { escapeWithin } from '../write/escape-text.js';
import { LIMITS } from '../write/limits.js';
import { NO_MENTIONS } from '../write/write-reply.js';
import { askerOf, isInServer } from './read-interaction.js';
import { LATER_DELAYS_MS, persist } from './respond.js';

/** Takes the buttons off an answered question and leaves what was chosen, where the bot may touch the message. */
export const settle = async (bot: Bot, interaction: APIInteraction, label: string, outcome: Outcome): Promise<void> => {
  const { message } = interaction;
  if (message === undefined || ((message.flags ?? 0) & MessageFlags.Ephemeral) !== 0) return;
  if (isProblem(outcome)) {
    bot.settled.delete(message.id);
    return;
  }
  if (!isInServer(interaction) && !askerOf(interaction).isPrivate) return;
  await persist(
    () =>
      bot.rest.patch(Routes.channelMessage(message.channel_id, message.id), {
        body: {
          content: escapeWithin(`Chosen: ${label}`, LIMITS.content),
          components: [],
          allowed_mentions: NO_MENTIONS,
        },
      }),
    LATER_DELAYS_MS,
  ).catch((error: unknown) =>
    bot.context.log.debug({ err: error }, 'the buttons of an answered question were left standing'),
  );
};
