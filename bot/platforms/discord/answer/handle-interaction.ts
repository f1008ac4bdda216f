/** Every interaction that arrives, to what answers it; each is answered once, and nothing that goes wrong with one escapes. */
import { ApplicationCommandType, ComponentType, InteractionType, type APIInteraction } from 'discord-api-types/v10';
import { runCommand } from '../../../commands/core/dispatch.js';
import { unknownCommand } from '../../../commands/core/grammar.js';
import type { Command } from '../../../commands/core/command.js';
import { ANSWER_WITHIN_MS } from './age.js';
import { filesOf } from './attachment.js';
import { answerCompletion } from './answer-completion.js';
import { menuQuestion } from './answer-menu.js';
import { formQuestion, formToShow } from './answer-form.js';
import { pressedId, pressQuestion, type PressInteraction } from './answer-press.js';
import { answerQuestion, type Question } from './answer-question.js';
import { errorSink, tooMany, type Bot } from '../connect/bot.js';
import { WALK_COMMAND } from '../connect/command-payloads.js';
import { askerOf, displayName, keyOf, rawOptions } from './read-interaction.js';
import { answerNow, isExpired, openForm } from './respond.js';
import type { ThreadFor } from './walk-thread.js';
import { formOn } from '../write/write-choices.js';
import { writeNotice } from '../write/write-reply.js';

type SlashInteraction = Extract<
  APIInteraction,
  { type: InteractionType.ApplicationCommand; data: { type: ApplicationCommandType.ChatInput } }
>;

/** Whose walk a typed command starts: the member named in it, else the asker. */
const threadOf = (
  interaction: SlashInteraction,
  command: Command,
  raw: ReadonlyMap<string, unknown>,
): { thread?: ThreadFor } => {
  if (command.name !== WALK_COMMAND) return {};
  const asker = askerOf(interaction);
  for (const [name, spec] of Object.entries(command.options)) {
    const memberId = raw.get(name);
    if (spec.type !== 'member' || typeof memberId !== 'string') continue;
    const user = interaction.data.resolved?.users?.[memberId.slice('discord:'.length)];
    return { thread: { memberId, memberName: user === undefined ? 'a member' : displayName(user) } };
  }
  return { thread: { memberId: asker.memberId, memberName: asker.displayName } };
};

const slashQuestion = (bot: Bot, interaction: SlashInteraction): Question => {
  const { deps, now } = bot.context;
  const command = deps.commands.find(({ name }) => name === interaction.data.name);
  if (command === undefined) {
    return { command: 'unknown', ask: async () => unknownCommand(interaction.data.name, deps.commands) };
  }
  const asker = askerOf(interaction);
  const raw = rawOptions(interaction, filesOf(bot, asker.memberId));
  return {
    command: command.name,
    ask: () => runCommand(deps, command, raw, { asker, nowUtcMs: now(), onError: errorSink(bot) }),
    ...threadOf(interaction, command, raw),
  };
};

const isPress = (interaction: APIInteraction): interaction is PressInteraction =>
  interaction.type === InteractionType.MessageComponent &&
  (interaction.data.component_type === ComponentType.Button ||
    interaction.data.component_type === ComponentType.StringSelect);

/** What is asked, or a plain line to say instead. */
const questionOf = (bot: Bot, interaction: APIInteraction): Question | string => {
  if (interaction.type === InteractionType.ApplicationCommand) {
    switch (interaction.data.type) {
      case ApplicationCommandType.ChatInput:
        return slashQuestion(bot, interaction as SlashInteraction);
      case ApplicationCommandType.User:
      case ApplicationCommandType.Message:
        return menuQuestion(bot, interaction);
      default:
        return 'I do not know that kind of command.';
    }
  }
  if (isPress(interaction)) return pressQuestion(bot, interaction);
  if (interaction.type === InteractionType.ModalSubmit) return formQuestion(bot, interaction);
  return 'I do not know that kind of question.';
};

/** The form that a press opens, or a line to say instead; undefined for all else. */
const formPressed = (bot: Bot, interaction: APIInteraction): ReturnType<typeof formToShow> | undefined => {
  const form = isPress(interaction) ? formOn(pressedId(interaction)) : undefined;
  return form === undefined ? undefined : formToShow(bot, form.name, form.run);
};

/** Never rejects. `isStopping`: new questions are turned away kindly. */
export const handleInteraction = async (bot: Bot, interaction: APIInteraction, isStopping: boolean): Promise<void> => {
  const { context, answers } = bot;
  try {
    if (interaction.type === InteractionType.Ping) return;
    if (bot.ageMs(interaction.id) > ANSWER_WITHIN_MS) {
      bot.onLate();
      return;
    }
    if (interaction.type === InteractionType.ApplicationCommandAutocomplete) {
      await answerCompletion(bot, interaction);
      return;
    }
    if ((await bot.once.claim(keyOf(interaction))) === 'again') {
      context.log.info({ interaction: interaction.id }, 'an interaction came again and was left alone');
      context.metrics.duplicate('discord');
      return;
    }
    const asker = askerOf(interaction);
    const refused = isStopping ? 'I am being restarted. Please ask again in a minute.' : tooMany(bot, asker);
    const opened = refused === undefined ? formPressed(bot, interaction) : undefined;
    if (opened !== undefined && typeof opened !== 'string') {
      await openForm(answers, interaction, opened);
      return;
    }
    const question = refused ?? opened ?? questionOf(bot, interaction);
    if (typeof question === 'string') {
      await answerNow(answers, interaction, writeNotice(question, true));
    } else {
      await answerQuestion(bot, interaction, asker, question);
    }
  } catch (error) {
    if (isExpired(error)) {
      context.log.warn({ interaction: interaction.id }, 'an interaction had expired before it was answered');
      context.metrics.failed('discord', 'expired');
    } else {
      context.log.warn({ err: error, interaction: interaction.id }, 'an interaction could not be answered');
      context.metrics.failed('discord', 'send');
    }
  }
};
