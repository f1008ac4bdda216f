/** A pressed button or a picked option runs the line it carries, as if it had been typed. */
import {
  ComponentType,
  MessageFlags,
  type APIMessageComponentButtonInteraction,
  type APIMessageStringSelectInteractionData,
  type APIMessageComponentSelectMenuInteraction,
} from 'discord-api-types/v10';
import { isProblem } from '../../../ground/problem.js';
import { runLine } from '../../../commands/core/dispatch.js';
import { parseLine, type ParsedLine } from '../../../commands/core/grammar.js';
import { type Outcome } from '../../../reply/reply.js';
import type { Question } from './answer-question.js';
import { errorSink, type Bot } from '../connect/bot.js';
import { WALK_COMMAND } from '../connect/command-payloads.js';
import { askerOf } from './read-interaction.js';
import { remember } from '../../../ground/remember.js';
import { settle } from './settle-question.js';
import { joinOnAnswer } from './walk-thread.js';
import { offeredOn, runOf } from '../write/write-choices.js';

export type PressInteraction = APIMessageComponentButtonInteraction | APIMessageComponentSelectMenuInteraction;

const MOST_SETTLED = 5000;

export const pressedId = ({ data }: PressInteraction): string =>
  data.component_type === ComponentType.Button
    ? data.custom_id
    : ((data as APIMessageStringSelectInteractionData).values[0] ?? '');

/** Moves a walk on, unlike looking at its reasons or its summary. */
const answersWalk = ({ command, raw }: ParsedLine): boolean =>
  command.name === WALK_COMMAND && (raw.has('answer') || raw.get('do') === 'back' || raw.get('do') === 'end');

/** What the press asks, or a plain line to say instead. */
export const pressQuestion = (bot: Bot, interaction: PressInteraction): Question | string => {
  const { deps, now } = bot.context;
  const id = pressedId(interaction);
  const line = runOf(id);
  if (line === undefined) return 'That button is from an older version of me. Please ask again.';
  const { message } = interaction;
  const parsed = parseLine(line, deps.commands);
  // A walk's question is answered once. Only the asker sees an ephemeral message, and may press what is there again.
  const goesOn = !isProblem(parsed) && answersWalk(parsed);
  const settles = ((message.flags ?? 0) & MessageFlags.Ephemeral) === 0 && goesOn;
  if (settles && bot.settled.has(message.id)) return 'That question has just been answered; see the newest message.';
  if (settles) remember(bot.settled, message.id, MOST_SETTLED);
  const label = offeredOn(message).find((offer) => offer.id === id)?.label ?? '';
  return {
    command: isProblem(parsed) ? 'unknown' : parsed.command.name,
    ask: () => runLine(deps, line, { asker: askerOf(interaction), nowUtcMs: now(), onError: errorSink(bot) }),
    goesOn,
    ...(settles
      ? {
          afterwards: async (outcome: Outcome) => {
            await settle(bot, interaction, label, outcome);
            await joinOnAnswer(bot, interaction, outcome);
          },
          undo: () => void bot.settled.delete(message.id),
        }
      : {}),
  };
};
