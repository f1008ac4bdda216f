/** A thread for a walk, where the bot may open one: the channel gets one line, the walk goes on inside. */
import {
  ChannelType,
  PermissionFlagsBits,
  Routes,
  ThreadAutoArchiveDuration,
  type APIInteraction,
  type APIThreadChannel,
} from 'discord-api-types/v10';
import { isProblem } from '../../../ground/problem.js';
import { type Outcome } from '../../../reply/reply.js';
import type { Bot } from '../connect/bot.js';
import { plainWithin } from '../write/escape-text.js';
import { LIMITS } from '../write/limits.js';
import { askerOf, bareId, botMay, isInServer, memberMay } from './read-interaction.js';
import { answerNow, editAnswer, persist } from './respond.js';
import { writeNotice, type DiscordMessage } from '../write/write-reply.js';

/** Whose walk it is. */
export interface ThreadFor {
  readonly memberId: string;
  readonly memberName: string;
}

const THREAD_DELAYS_MS = [500, 2000];

const walkIdOf = (outcome: Outcome): string | undefined => {
  if (isProblem(outcome) || outcome.audience === 'asker') return undefined;
  const { walkId } = outcome.data;
  return typeof walkId === 'string' ? walkId : undefined;
};

/**
 * The thread to open for this outcome: when it is a walk that has none yet, in a text channel where the bot, and the
 * asker too, may open one, and not the fourth in a few minutes. Says so once a walk, over restarts and processes.
 */
export const threadToOpen = async (
  { context, threads, tuning }: Bot,
  interaction: APIInteraction,
  outcome: Outcome,
  thread: ThreadFor | undefined,
): Promise<ThreadFor | undefined> => {
  const walkId = walkIdOf(outcome);
  const type = interaction.channel?.type;
  const possible =
    thread !== undefined &&
    walkId !== undefined &&
    isInServer(interaction) &&
    (type === ChannelType.GuildText || type === ChannelType.GuildAnnouncement) &&
    botMay(
      interaction,
      PermissionFlagsBits.ViewChannel,
      PermissionFlagsBits.CreatePublicThreads,
      PermissionFlagsBits.SendMessagesInThreads,
      PermissionFlagsBits.EmbedLinks,
    ) &&
    memberMay(interaction, PermissionFlagsBits.CreatePublicThreads);
  if (!possible) return undefined;
  if (threads.take(askerOf(interaction).memberId, tuning.ticksMs()) !== null) return undefined;
  const isFirst = await context.deps.store.events
    .claim(`discord:thread:${walkId}`, context.now())
    .catch((error: unknown) => {
      context.log.warn({ err: error }, 'the store could not say whether a walk has a thread');
      return false;
    });
  return isFirst ? thread : undefined;
};

export const openWalkThread = async (
  bot: Bot,
  interaction: APIInteraction,
  ready: { readonly outcome: Outcome; readonly message: DiscordMessage },
  thread: ThreadFor,
  acknowledged: boolean,
): Promise<void> => {
  const { rest, answers, context } = bot;
  const channelId = interaction.channel?.id ?? '';
  const name = plainWithin(`Connection help: ${thread.memberName}`, LIMITS.threadName);
  const notice = writeNotice(
    `Connection help for ${thread.memberName}. One step at a time, in the thread below.`,
    false,
  );
  const messageId = acknowledged
    ? await editAnswer(answers, interaction, notice)
    : (await answerNow(answers, interaction, notice, true)).messageId;
  try {
    if (messageId === null) throw new Error('Discord did not say which message it made');
    const opened = (await persist(
      () =>
        rest.post(Routes.threads(channelId, messageId), {
          body: { name, auto_archive_duration: ThreadAutoArchiveDuration.OneDay },
        }),
      THREAD_DELAYS_MS,
    )) as APIThreadChannel;
    const { flags: _none, ...body } = ready.message.body;
    // The nonce: sent again after a lost response, the step is shown once.
    await persist(
      () =>
        rest.post(Routes.channelMessages(opened.id), {
          body: { ...body, nonce: interaction.id, enforce_nonce: true },
          files: ready.message.files.map(({ name: fileName, data, contentType }) => ({
            name: fileName,
            data,
            contentType,
          })),
        }),
      THREAD_DELAYS_MS,
    );
    // Whom another's walk is about comes by themselves, and is added once they have answered in it.
    await addToThread(bot, opened.id, askerOf(interaction).memberId);
  } catch (error) {
    // No thread then: the step stands where the notice stood.
    context.log.warn({ err: error }, 'no thread could be opened for a walk');
    await editAnswer(answers, interaction, ready.message);
  }
};

/** Shows the thread in a member's list; nobody is pinged by a mention. */
export const addToThread = async ({ rest, context }: Bot, threadId: string, memberId: string): Promise<void> => {
  await persist(() => rest.put(Routes.threadMembers(threadId, bareId(memberId))), THREAD_DELAYS_MS).catch(
    (error: unknown) => context.log.debug({ err: error }, 'a member could not be added to a thread'),
  );
};

/** Who answers in a walk's thread is in it from then on. */
export const joinOnAnswer = async (bot: Bot, interaction: APIInteraction, outcome: Outcome): Promise<void> => {
  const threadId = interaction.channel?.id;
  if (threadId === undefined || interaction.channel?.type !== ChannelType.PublicThread) return;
  if (!isInServer(interaction) || isProblem(outcome) || outcome.data['agreed'] !== true) return;
  await addToThread(bot, threadId, askerOf(interaction).memberId);
};
