/** "Help with connection", from the menu of a member or of a message: starts a walk for that member. */
import {
  ApplicationCommandType,
  type APIApplicationCommandInteraction,
  type APIAttachment,
  type APIUser,
} from 'discord-api-types/v10';
import type { Command } from '../../../commands/core/command.js';
import { runCommand } from '../../../commands/core/dispatch.js';
import type { Question } from './answer-question.js';
import { filesOf } from './attachment.js';
import { errorSink, type Bot } from '../connect/bot.js';
import { WALK_COMMAND } from '../connect/command-payloads.js';
import { askerOf, displayName, PREFIX } from './read-interaction.js';

const memberOption = (command: Command): string | undefined =>
  Object.entries(command.options).find(([, { type }]) => type === 'member')?.[0];

/** The option that takes pasted text, by what it may hold: far the longest text the command reads. */
const pastedOption = (command: Command): { readonly name: string; readonly limit: number } | undefined => {
  const [found] = Object.entries(command.options)
    .filter(([, { type, maxLength }]) => type === 'text' && (maxLength ?? 0) >= 500)
    .map(([name, { maxLength }]) => ({ name, limit: maxLength ?? 0 }))
    .sort((a, b) => b.limit - a.limit);
  return found;
};

interface Subject {
  readonly user: APIUser;
  readonly pasted: string;
  /** The first of the message's files: long pastes are turned into one by Discord. */
  readonly attachment: APIAttachment | undefined;
}

const subjectOf = ({ data }: APIApplicationCommandInteraction): Subject | undefined => {
  if (data.type === ApplicationCommandType.User) {
    const user = data.resolved.users[data.target_id];
    return user === undefined ? undefined : { user, pasted: '', attachment: undefined };
  }
  if (data.type === ApplicationCommandType.Message) {
    const message = data.resolved.messages[data.target_id];
    return message === undefined
      ? undefined
      : { user: message.author, pasted: message.content, attachment: message.attachments[0] };
  }
  return undefined;
};

export const menuQuestion = (bot: Bot, interaction: APIApplicationCommandInteraction): Question | string => {
  const { deps, now } = bot.context;
  const command = deps.commands.find(({ name }) => name === WALK_COMMAND);
  const subject = subjectOf(interaction);
  if (command === undefined || subject === undefined) return 'I cannot help with that just now.';
  if (subject.user.bot === true) return 'That is a bot; choose a member, or a message of theirs.';
  const asker = askerOf(interaction);
  const memberId = `${PREFIX}${subject.user.id}`;
  const raw = new Map<string, unknown>();
  const about = memberOption(command);
  if (about !== undefined && memberId !== asker.memberId) raw.set(about, memberId);
  const pasted = pastedOption(command);
  const text = subject.pasted.trim();
  if (pasted !== undefined && text !== '') raw.set(pasted.name, text.slice(0, pasted.limit));
  const fileOption = Object.entries(command.options).find(([, { type }]) => type === 'file')?.[0];
  if (fileOption !== undefined && subject.attachment !== undefined)
    raw.set(fileOption, filesOf(bot, asker.memberId)(subject.attachment));
  return {
    command: command.name,
    ask: () => runCommand(deps, command, raw, { asker, nowUtcMs: now(), onError: errorSink(bot) }),
    thread: { memberId, memberName: memberId === asker.memberId ? asker.displayName : displayName(subject.user) },
  };
};
