/** Answers one question within Discord's three seconds: at once when it is ready, else acknowledged first and filled in after. */
import type { APIInteraction } from 'discord-api-types/v10';
import { problem } from '../../../ground/problem.js';
import type { Asker } from '../../../commands/core/command.js';
import { type Outcome } from '../../../reply/reply.js';
import { outcomeLabel } from '../../../app/metrics.js';
import { errorSink, prepare, type Bot } from '../connect/bot.js';
import { acknowledge, answerNow, editAnswer, followUp, removeAnswer } from './respond.js';
import { openWalkThread, threadToOpen, type ThreadFor } from './walk-thread.js';
import { within } from '../../../ground/within.js';
import { writeNotice, type DiscordMessage } from '../write/write-reply.js';

export interface Question {
  /** For metrics and the log: one of our own command names, or "unknown". */
  readonly command: string;
  readonly ask: () => Promise<Outcome>;
  /** It goes on with a walk. */
  readonly goesOn?: boolean;
  /** A walk started by this question may get a thread of its own, about this member. */
  readonly thread?: ThreadFor;
  /** Runs beside the answer once it is accepted. */
  readonly afterwards?: (outcome: Outcome) => Promise<void>;
  /** Runs where the answer could not be said: the member presses again. */
  readonly undo?: () => void;
}

interface Ready {
  readonly outcome: Outcome;
  readonly message: DiscordMessage;
}

const LATE: unique symbol = Symbol('late');

/** As `answerWhole`; a question whose answer could not be said may be asked again. */
export const answerQuestion = async (...given: Parameters<typeof answerWhole>): Promise<Outcome> => {
  try {
    return await answerWhole(...given);
  } catch (error) {
    given[3].undo?.();
    throw error;
  }
};

/** Returns when everything is said. Rejects with what Discord answered when it could not be said. */
const answerWhole = async (
  bot: Bot,
  interaction: APIInteraction,
  asker: Asker,
  question: Question,
): Promise<Outcome> => {
  const { context, answers, tuning } = bot;
  const startedMs = performance.now();
  let isGivenUp = false;
  const work: Promise<Ready> = bot
    .takeTurn(asker.memberId, question.goesOn)
    // Discord has told the member that nothing came of it; then nothing is done either.
    .then(async () => (isGivenUp ? problem('expired', 'Too late.') : await question.ask()))
    .catch((error: unknown) => {
      errorSink(bot)(error, question.command);
      return problem(
        'internal',
        'Sorry, that failed through a fault of mine. It is in the log; please try again or ask a helper.',
      );
    })
    .then(async (outcome) => ({ outcome, message: await prepare(bot, outcome, asker.memberId) }));

  const first = await within(work, tuning.deferAfterMs, LATE);

  let ready: Ready;
  if (first === LATE) {
    const { accepted } = await acknowledge(answers, interaction).catch((error: unknown) => {
      isGivenUp = true;
      throw error;
    });
    ready = await work;
    if (accepted) await fillIn(bot, interaction, asker, question, ready);
  } else {
    ready = first;
    const thread = await threadToOpen(bot, interaction, ready.outcome, question.thread);
    if (thread !== undefined) {
      await openWalkThread(bot, interaction, ready, thread, false);
    } else {
      await answerNow(answers, interaction, ready.message);
    }
  }
  const { outcome } = ready;
  context.metrics.answered({
    platform: 'discord',
    command: question.command,
    outcome: outcomeLabel(outcome),
    seconds: (performance.now() - startedMs) / 1000,
  });
  await question.afterwards?.(outcome);
  return outcome;
};

const fillIn = async (
  bot: Bot,
  interaction: APIInteraction,
  asker: Asker,
  question: Question,
  ready: Ready,
): Promise<void> => {
  const { answers } = bot;
  const thread = await threadToOpen(bot, interaction, ready.outcome, question.thread);
  if (thread !== undefined) {
    await openWalkThread(bot, interaction, ready, thread, true);
  } else if (ready.message.isPrivate && !asker.isPrivate) {
    // The acknowledgement stands where all can read, and a first follow-up would take its place and its openness.
    // So it is filled with a plain line, the answer goes beside it to the asker alone, and the line is taken away.
    await editAnswer(answers, interaction, writeNotice('Answered to the one who asked.', false));
    await followUp(answers, interaction, ready.message);
    await removeAnswer(answers, interaction).catch((error: unknown) =>
      bot.context.log.debug({ err: error }, 'a line was left standing'),
    );
  } else {
    await editAnswer(answers, interaction, ready.message);
  }
};
