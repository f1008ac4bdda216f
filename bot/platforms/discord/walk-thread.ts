/** A thread for a walk, where the bot may open one: the channel gets one line, the walk goes on inside. */
import { createHash } from 'node:crypto';
import { ChannelType, PermissionFlagsBits, Routes, ThreadAutoArchiveDuration, type APIInteraction, type APIThreadChannel } from 'discord-api-types/v10';
import type { Asker } from '../../commands/command.js';
import { isProblem, type Outcome } from '../../reply/reply.js';
import { remember, type Bot } from './bot.js';
import { plainWithin } from './escape-text.js';
import { LIMITS } from './limits.js';
import { bareId, botMay, isInServer } from './read-interaction.js';
import { answerNow, editAnswer, persist } from './respond.js';
import { writeNotice, type DiscordMessage } from './write-reply.js';

/** Whose walk it is. */
export interface ThreadFor { readonly memberId: string; readonly memberName: string }

const MOST_THREADS = 1000;
const THREAD_DELAYS_MS = [500, 2000];

const walkIdOf = (outcome: Outcome): string | undefined => {
  if (isProblem(outcome) || outcome.audience === 'asker') return undefined;
  const { walkId } = outcome.data;
  return typeof walkId === 'string' ? walkId : undefined;
};

/** True when the outcome is the start of a walk without a thread, in a text channel where the bot may open one and write in it. */
export const wantsThread = (bot: Bot, interaction: APIInteraction, outcome: Outcome, thread: ThreadFor | undefined): thread is ThreadFor => {
  const walkId = walkIdOf(outcome);
  const type = interaction.channel?.type;
  return thread !== undefined && walkId !== undefined && !bot.walkThreads.has(walkId) && isInServer(interaction)
    && (type === ChannelType.GuildText || type === ChannelType.GuildAnnouncement)
    && botMay(interaction, PermissionFlagsBits.ViewChannel, PermissionFlagsBits.CreatePublicThreads, PermissionFlagsBits.SendMessagesInThreads, PermissionFlagsBits.EmbedLinks);
};

/** The same message sent again after a lost response is shown once (Discord compares the nonce). */
export const nonceOf = (...parts: readonly (string | number)[]): string =>
  createHash('sha256').update(parts.join('\n')).digest('hex').slice(0, 24);

export const openWalkThread = async (
  bot: Bot, interaction: APIInteraction, asker: Asker, ready: { readonly outcome: Outcome; readonly message: DiscordMessage }, thread: ThreadFor, acknowledged: boolean,
): Promise<void> => {
  const { rest, context } = bot;
  const channelId = interaction.channel?.id ?? '';
  const name = plainWithin(`Connection help: ${thread.memberName}`, LIMITS.threadName);
  const notice = writeNotice(`Connection help for ${thread.memberName}. One step at a time, in the thread below.`, false);
  const messageId = acknowledged ? await editAnswer(rest, interaction, notice) : (await answerNow(rest, interaction, notice, true)).messageId;
  try {
    if (messageId === null) throw new Error('Discord did not say which message it made');
    const opened = await persist(() => rest.post(Routes.threads(channelId, messageId), {
      body: { name, auto_archive_duration: ThreadAutoArchiveDuration.OneDay },
    }), THREAD_DELAYS_MS) as APIThreadChannel;
    const { flags: _none, ...body } = ready.message.body;
    await persist(() => rest.post(Routes.channelMessages(opened.id), {
      body: { ...body, nonce: nonceOf(interaction.id), enforce_nonce: true },
      files: ready.message.files.map(({ name: fileName, data, contentType }) => ({ name: fileName, data, contentType })),
    }), THREAD_DELAYS_MS);
    const walkId = walkIdOf(ready.outcome);
    if (walkId !== undefined) remember(bot.walkThreads, walkId, opened.id, MOST_THREADS);
    await invite(bot, opened.id, [asker.memberId, thread.memberId]);
  } catch (error) {
    // No thread then: the step stands where the notice stood.
    context.log.warn({ err: error }, 'no thread could be opened for a walk');
    await editAnswer(rest, interaction, ready.message);
  }
};

/** Shows the thread to those it is about; nobody is pinged by a mention. */
const invite = async ({ rest, context }: Bot, threadId: string, memberIds: readonly string[]): Promise<void> => {
  for (const memberId of new Set(memberIds)) {
    await rest.put(Routes.threadMembers(threadId, bareId(memberId)))
      .catch((error: unknown) => context.log.debug({ err: error }, 'a member could not be added to a thread'));
  }
};
