/** An hour of many clubs' questions, pressed into a minute and a half, with the memory watched; then everything going wrong at once. */
import { setTimeout as sleep } from 'node:timers/promises';
import path from 'node:path';
import { DatabaseSync as Sqlite } from '@photostructure/sqlite';
import { startDiscordDouble, type DiscordDouble } from '../doubles/discord/discord-double.js';
import { percentile } from '../bench/measure.js';
import { botOnDiscord, type BotOnDiscord } from './bot-on-discord.js';
import { createCrowd, drive, EVENING_MIX, type Crowd, type Traffic } from './discord-traffic.js';
import { heapTrend } from './heap-trend.js';

export interface Report {
  readonly lines: readonly string[];
  readonly failures: readonly string[];
}

export const latencyLines = (answeredMs: readonly number[]): string => {
  const sorted = [...answeredMs].sort((a, b) => a - b);
  return [0.5, 0.9, 0.99, 0.999, 1]
    .map((share) => `${share === 1 ? 'worst' : `${share * 100} %`} ${percentile(sorted, share).toFixed(0)} ms`)
    .join(', ');
};

const HOUR_QUESTIONS = 12_000;
const PER_SECOND = 120;
const SAMPLE_EVERY_S = 8;
const CALM_MIX = EVENING_MIX.filter(({ name }) => !name.includes('picture') && name !== 'tonight');

const connected = async (double: DiscordDouble, bot: BotOnDiscord): Promise<void> => {
  await double.waitFor(
    () => bot.ended() || (double.world.commands.size > 0 && double.gateway.liveSessions() >= 1),
    'the bot to connect',
    30_000,
  );
  if (bot.ended()) throw new Error(`the bot ended: ${bot.logged()}`);
};

const hour = async (double: DiscordDouble, bot: BotOnDiscord, crowd: Crowd): Promise<Report> => {
  await drive(crowd, EVENING_MIX, 40, 5);
  const heaps: number[] = [await bot.heapMb()];
  const resident: number[] = [bot.residentMb()];
  const cpuBefore = bot.cpuSeconds();
  const seconds = HOUR_QUESTIONS / PER_SECOND;
  const traffic = await drive(crowd, EVENING_MIX, PER_SECOND, seconds, async (second) => {
    resident.push(bot.residentMb());
    if (second % SAMPLE_EVERY_S === 0) heaps.push(await bot.heapMb());
  });
  const trend = heapTrend(heaps, PER_SECOND * SAMPLE_EVERY_S);
  return {
    lines: [
      `Discord, an hour's ${HOUR_QUESTIONS} questions of ${crowd.channels.length} clubs in ${seconds} s (${traffic.perSecond.toFixed(0)} a second${bot.isOnOneCore ? ', the bot on one core' : ''}): ${traffic.answeredMs.length} answered, ${traffic.unanswered} not within 3 s`,
      `  from asking to readable: ${latencyLines(traffic.answeredMs)}; ${((100 * (bot.cpuSeconds() - cpuBefore)) / seconds).toFixed(0)} % of a core`,
      `  alive on the heap after collection: ${heaps.map((mb) => mb.toFixed(0)).join(' ')} MB; slope of the later half ${trend.slopeMbPer10k.toFixed(2)} MB per 10,000 questions`,
      `  resident: ${(resident[0] ?? 0).toFixed(0)} MB at first, ${Math.max(...resident).toFixed(0)} at most, ${(resident.at(-1) ?? 0).toFixed(0)} at last`,
    ],
    failures: [
      ...(trend.isUnbounded
        ? [`the heap grows without end: ${trend.growthMb.toFixed(0)} MB over the later three quarters`]
        : []),
      ...double.rest.violations.slice(0, 3),
      ...(bot.ended() ? ['the bot ended'] : []),
    ],
  };
};

/** What goes wrong, second by second, while members go on asking. */
const troubles = (double: DiscordDouble, bot: BotOnDiscord): ReadonlyMap<number, () => void | Promise<void>> => {
  const { misbehave, gateway } = double;
  const holdStore = async (forMs: number): Promise<void> => {
    const other = new Sqlite(path.join(bot.dataFolder, 'pierhand.sqlite'));
    other.exec('begin exclusive');
    await sleep(forMs);
    other.exec('rollback');
    other.close();
  };
  return new Map<number, () => void | Promise<void>>([
    [
      2,
      () => {
        misbehave.rest({ status: 500, times: 40, on: /callback/u });
      },
    ],
    [
      4,
      () => {
        misbehave.rest({ status: 429, times: 20, retryAfterSeconds: 0.3 });
      },
    ],
    [
      6,
      () => {
        misbehave.duplicateDispatches = 60;
      },
    ],
    [
      8,
      () => {
        gateway.dropSockets();
      },
    ],
    [
      11,
      () => {
        gateway.askToReconnect();
      },
    ],
    [
      13,
      () => {
        misbehave.rest({ status: 502, times: 20, on: /callback/u, afterProcessing: true });
      },
    ],
    // Another process holds the database for longer than the bot waits for a mark.
    [
      15,
      () => {
        void holdStore(3000);
      },
    ],
    [
      20,
      () => {
        misbehave.refuseResumes = 1;
        gateway.dropSockets();
      },
    ],
    [
      23,
      () => {
        gateway.invalidateSessions(false);
      },
    ],
    [
      26,
      () => {
        misbehave.duplicateDispatches = 60;
        misbehave.rest({ status: 503, times: 30 });
      },
    ],
  ]);
};

const answeredTwice = (double: DiscordDouble): number =>
  [...double.world.interactions.values()].filter(
    ({ messageIds }) => messageIds.filter((id) => double.world.messages.get(id)?.isDeleted === false).length > 1,
  ).length;

const storm = async (double: DiscordDouble, bot: BotOnDiscord, crowd: Crowd): Promise<Report> => {
  const seconds = 32;
  const perSecond = 40;
  const planned = troubles(double, bot);
  const during = await drive(crowd, EVENING_MIX, perSecond, seconds, (second) => planned.get(second)?.());
  await double.waitFor(() => bot.ended() || double.gateway.liveSessions() >= 1, 'the bot to come back', 30_000);
  await sleep(3000);
  const after: Traffic = await drive(crowd, CALM_MIX, 20, 8);
  const twice = answeredTwice(double);
  const share = during.unanswered / (during.unanswered + during.answeredMs.length);
  return {
    lines: [
      `Discord, ${seconds} s of faults under ${perSecond} questions a second (500, 502, 429, 503, said twice, sockets cut, resumes refused, the store held for 3 s): ${during.answeredMs.length} answered, ${during.unanswered} not (${(100 * share).toFixed(1)} %; most were asked while cut off)`,
      `  from asking to readable: ${latencyLines(during.answeredMs)}`,
      `  afterwards, ${after.answeredMs.length + after.unanswered} more: ${after.unanswered} not answered; ${latencyLines(after.answeredMs)}; ${twice} answered twice`,
    ],
    failures: [
      ...(bot.ended() ? [`the bot ended: ${bot.logged().slice(-500)}`] : []),
      ...(after.unanswered > 0 ? [`${after.unanswered} not answered after all faults were over`] : []),
      ...(twice > 0 ? [`${twice} questions were answered twice`] : []),
      ...(share > 0.35 ? [`${(100 * share).toFixed(0)} % of the questions went unanswered in the storm`] : []),
      ...double.rest.violations.slice(0, 3),
      ...(bot.logged().includes(double.token) ? ['the token is in the log'] : []),
    ],
  };
};

export const discordEvening = async (): Promise<Report> => {
  const double = await startDiscordDouble();
  const crowd = createCrowd(double, 300, 5);
  const bot = botOnDiscord(double);
  try {
    await connected(double, bot);
    const reports = [await hour(double, bot, crowd), await storm(double, bot, crowd)];
    return { lines: reports.flatMap(({ lines }) => lines), failures: reports.flatMap(({ failures }) => failures) };
  } finally {
    await bot.stop();
    await double.close();
  }
};
