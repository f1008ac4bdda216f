/** Suggestions while a member types: never late, at most 25 of 100 characters, empty rather than wrong. */
import { ApplicationCommandOptionType, type APIApplicationCommandAutocompleteInteraction } from 'discord-api-types/v10';
import type { Completion } from '../../../commands/core/command.js';
import { completeOption } from '../../../commands/core/complete.js';
import type { Bot } from '../connect/bot.js';
import { plainWithin } from '../write/escape-text.js';
import { LIMITS } from '../write/limits.js';
import { askerOf, focusedOption } from './read-interaction.js';
import { suggest } from './respond.js';
import { within } from '../../../ground/within.js';

/** As Discord takes them: bounded, none empty, none twice. */
export const suggestionsFrom = (completions: readonly Completion[]): { name: string; value: string }[] => {
  const seen = new Set<string>();
  return completions
    .filter(
      ({ label, value }) =>
        label.trim() !== '' &&
        value.trim() !== '' &&
        value.length <= LIMITS.completionText &&
        !seen.has(value) &&
        seen.add(value),
    )
    .slice(0, LIMITS.completions)
    .map(({ label, value }) => ({ name: plainWithin(label, LIMITS.completionText), value }));
};

const LATE: unique symbol = Symbol('late');

const find = async (
  bot: Bot,
  interaction: APIApplicationCommandAutocompleteInteraction,
): Promise<readonly Completion[]> => {
  const { deps } = bot.context;
  const command = deps.commands.find(({ name }) => name === interaction.data.name);
  const focused = focusedOption(interaction);
  if (command === undefined || focused === undefined) return [];
  const asker = askerOf(interaction);
  // Nobody types so fast: what comes faster is suggested nothing.
  if (bot.completions.take(asker.memberId, bot.tuning.ticksMs()) !== null) return [];
  return await completeOption(deps, command, focused.name, focused.partial, asker);
};

export const answerCompletion = async (
  bot: Bot,
  interaction: APIApplicationCommandAutocompleteInteraction,
): Promise<void> => {
  const { context, answers, tuning } = bot;
  const startedMs = performance.now();
  const found = find(bot, interaction).catch((error: unknown): readonly Completion[] => {
    context.log.error({ err: error, command: interaction.data.name }, 'suggestions failed');
    context.metrics.failed('discord', 'completion');
    return [];
  });
  const first = await within(found, tuning.completeWithinMs, LATE);
  const suggestions = first === LATE ? [] : suggestionsFrom(first);
  const focusedType = interaction.data.options.find((option) => 'focused' in option && option.focused === true)?.type;
  // Only text options are registered with suggestions; for any other kind there is nothing of ours to offer.
  await suggest(answers, interaction, focusedType === ApplicationCommandOptionType.String ? suggestions : []);
  context.metrics.completed({
    platform: 'discord',
    seconds: (performance.now() - startedMs) / 1000,
    late: first === LATE,
  });
};
