/** The Discord platform: connects, registers the commands, and hands every interaction to what answers it. */
import { setTimeout as sleep } from 'node:timers/promises';
import type { APIInteraction } from 'discord-api-types/v10';
import type { RateLimitData, REST } from 'discord.js';
import { StartError } from '../../ground/start-error.js';
import type { DiscordSettings } from '../../app/settings.js';
import { type PlatformContext, type RunningPlatform } from '../../app/platform.js';
import { DEFAULT_TUNING, type Bot, type Tuning } from './connect/bot.js';
import { createAnswersRest, createRest } from './connect/client.js';
import { commandPayloads } from './connect/command-payloads.js';
import { openConnection } from './connect/connection.js';
import { createAge } from './answer/age.js';
import { deliverReminder } from './answer/deliver-reminder.js';
import { handleInteraction } from './answer/handle-interaction.js';
import { createAnswerOnce } from '../shared/answer-once.js';
import { createRateLimit } from '../shared/rate-limit.js';
import { registerCommands } from './connect/register-commands.js';
import { createTurns } from '../shared/take-turns.js';
import { StoreError } from '../../store/store.js';

/** Of the three seconds that Discord gives a first response. */
const CLAIM_WITHIN_MS = 600;

/**
 * Connects to Discord. When Discord cannot be reached the platform is returned not well, and keeps trying.
 * @throws StartError when the token or the shard settings are refused
 */
export const startDiscord = async (
  given: PlatformContext,
  tuning: Tuning = DEFAULT_TUNING,
): Promise<RunningPlatform> => {
  const { discord } = given.settings;
  if (discord === null) throw new StartError('DISCORD_TOKEN is not set.');
  const log = given.log.child({ platform: 'discord' });
  const context: PlatformContext = { ...given, log };
  const rest = createRest(discord);
  const answers = createAnswersRest(discord);
  for (const one of [rest, answers]) watchRest(one, context);
  const turns = createTurns(tuning.ticksMs);
  const bot: Bot = {
    rest,
    answers,
    context,
    tuning,
    once: createAnswerOnce(context, { patienceMs: CLAIM_WITHIN_MS }),
    turns,
    takeTurn: turns.take,
    ageMs: createAge(tuning.ticksMs),
    onBusy: tellBusy(context),
    onLate: tellLate(context),
    perMember: createRateLimit(tuning.perMember),
    perChannel: createRateLimit(tuning.perChannel),
    threads: createRateLimit(tuning.threads),
    completions: createRateLimit(tuning.completions),
    settled: new Set(),
  };
  const stopping = new AbortController();
  const underWay = new Set<Promise<void>>();
  /** Why members have no commands here; null while nothing is known against it. */
  let unregistered: string | null = null;

  const connection = await openConnection(context, discord, tuning, {
    onInteraction: (interaction: APIInteraction) => {
      const answer = handleInteraction(bot, interaction, stopping.signal.aborted);
      underWay.add(answer);
      void answer.finally(() => underWay.delete(answer));
    },
    onReady: (applicationId) => {
      void keepRegistered(bot, discord, applicationId, stopping.signal, (why) => (unregistered = why));
    },
  });

  return {
    name: 'discord',
    deliver: (reminder, text) => deliverReminder(rest, reminder, text),
    health: () => {
      const state = connection.health();
      return state.ok && unregistered !== null ? { ok: false, detail: unregistered } : state;
    },
    stop: async () => {
      stopping.abort();
      await Promise.race([Promise.allSettled(underWay), sleep(tuning.stopWithinMs, undefined, { ref: false })]);
      await connection.close();
      for (const one of [rest, answers]) {
        one.clearHandlerSweeper();
        one.clearHashSweeper();
      }
    },
  };
};

/** What may come hundreds of times at once has one line in this time. */
const LINE_EVERY_MS = 10_000;

const seldom = <Told>(now: () => number, say: (told: Told) => void): ((told: Told) => void) => {
  let saidUtcMs = Number.NEGATIVE_INFINITY;
  return (told) => {
    if (now() - saidUtcMs < LINE_EVERY_MS) return;
    saidUtcMs = now();
    say(told);
  };
};

/** Counts each, and says so in the log seldom. */
const countedAndTold = ({ log, now }: PlatformContext, count: () => void, line: string): (() => void) => {
  const say = seldom<void>(now, () => log.warn(line));
  return () => {
    count();
    say();
  };
};

const tellBusy = (context: PlatformContext): (() => void) =>
  countedAndTold(
    context,
    () => context.metrics.limited('discord', 'all'),
    'more is asked than can be answered in time; some are asked to come again',
  );

const tellLate = (context: PlatformContext): (() => void) =>
  countedAndTold(
    context,
    () => context.metrics.failed('discord', 'expired'),
    'interactions came too late to be answered: after a lost connection, or a crowd',
  );

const watchRest = (rest: REST, { log, now }: PlatformContext): void => {
  rest.on(
    'rateLimited',
    seldom<RateLimitData>(now, ({ route, timeToReset, global }) =>
      log.warn({ route, waitMs: timeToReset, global }, 'Discord asks for patience'),
    ),
  );
  rest.on('invalidRequestWarning', ({ count, remainingTime }) =>
    log.error({ count, remainingMs: remainingTime }, 'many refused requests; Discord may shut us out'),
  );
};

const tellUnregistered = ({ log, metrics }: PlatformContext, error: unknown, guildId: string | null): void => {
  if (error instanceof StoreError) {
    log.error({ err: error }, 'the store could not say whether the commands are registered; trying again');
    metrics.failed('discord', 'store');
    return;
  }
  log.error(
    { err: error },
    guildId === null
      ? 'commands could not be registered; trying again'
      : 'commands could not be registered in the server DISCORD_GUILD_ID names (is the bot in it?); trying again',
  );
  metrics.failed('discord', 'register');
};

const REGISTER_DELAYS_MS = [5000, 30_000, 120_000, 600_000];

/** For the operator. Where the store alone is silent nothing is said: Discord may have the commands, and the store's own state tells. */
const unregisteredFor = (error: unknown): string | null => {
  if (error instanceof StoreError) return null;
  const status = error instanceof Error && 'status' in error ? error.status : null;
  return `commands not registered${typeof status === 'number' ? `: Discord answered ${status}` : ''}`;
};

/** Registers from the process that runs the first shard, and tries again while Discord or the store is unwell. */
const keepRegistered = async (
  bot: Bot,
  { apiUrl, guildId, shardIds }: DiscordSettings,
  applicationId: string,
  signal: AbortSignal,
  onState: (unregistered: string | null) => void,
): Promise<void> => {
  const { log, deps } = bot.context;
  if (shardIds !== null && !shardIds.includes(0)) return;
  const payloads = commandPayloads(deps.commands);
  for (let i = 0; !signal.aborted; i++) {
    try {
      const sent = await registerCommands(
        { rest: bot.rest, notes: deps.store.notes, applicationId, guildId, apiUrl },
        payloads,
      );
      log.info(
        { commands: payloads.length, where: guildId ?? 'everywhere' },
        sent ? 'commands registered' : 'commands unchanged',
      );
      onState(null);
      return;
    } catch (error) {
      tellUnregistered(bot.context, error, guildId);
      onState(unregisteredFor(error));
      await sleep(REGISTER_DELAYS_MS[Math.min(i, REGISTER_DELAYS_MS.length - 1)], undefined, {
        signal,
        ref: false,
      }).catch(() => undefined);
    }
  }
};
