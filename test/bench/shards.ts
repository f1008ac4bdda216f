/**
 * Four shards on one PostgreSQL: all of them in one process, then two in each of two. What is counted is processor time, since two
 * processes, the asking side and the database want more cores than a small machine has: as long as an answer costs the same in
 * either, the sum of what is answered grows with the processes.
 */
import { setTimeout as sleep } from 'node:timers/promises';
import { startDiscordDouble, type DiscordDouble } from '../doubles/discord/discord-double.js';
import { botOnDiscord, type BotOnDiscord } from '../load/bot-on-discord.js';
import { EVENING_MIX, warmUp, type Crowd } from '../load/discord-traffic.js';
import { single, type BenchRow } from './measure.js';

const SHARDS = 4;
const CLUBS = 40;
const WARM_QUESTIONS = 1500;
const QUESTIONS = 3000;
const START_MS = 60_000;

/** Servers made a few milliseconds apart, so that they fall on all shards. */
const spreadCrowd = async (double: DiscordDouble): Promise<Crowd> => {
  const channels = [];
  for (let i = 0; i < CLUBS; i++) {
    channels.push(double.addGuild(`Club ${i + 1}`).channel);
    await sleep(3);
  }
  return { channels, members: Array.from({ length: CLUBS }, (_, i) => double.member(`Member ${i + 1}`)) };
};

const rowsOf = async (name: string, databaseUrl: string, ranges: readonly string[]): Promise<BenchRow[]> => {
  const double = await startDiscordDouble({ checkEvery: 20 });
  const crowd = await spreadCrowd(double);
  const bots: BotOnDiscord[] = [];
  try {
    for (const range of ranges)
      bots.push(
        botOnDiscord(double, {
          DATABASE_URL: databaseUrl,
          DISCORD_SHARD_COUNT: String(SHARDS),
          DISCORD_SHARD_RANGE: range,
        }),
      );
    await double.waitFor(
      () =>
        bots.some((bot) => bot.ended()) || (double.world.commands.size > 0 && double.gateway.liveSessions() >= SHARDS),
      'all shards to connect',
      START_MS,
    );
    const ended = bots.find((bot) => bot.ended());
    if (ended !== undefined) throw new Error(`a bot ended: ${ended.logged()}`);
    await warmUp(crowd, EVENING_MIX, WARM_QUESTIONS);
    const before = bots.map((bot) => bot.cpuSeconds());
    const began = performance.now();
    const unanswered = await warmUp(crowd, EVENING_MIX, QUESTIONS);
    const seconds = (performance.now() - began) / 1000;
    const spent = bots.map((bot, i) => bot.cpuSeconds() - (before[i] ?? 0));
    const sum = spent.reduce((all, one) => all + one, 0);
    return [
      single(`${name}: processor time, each`, 'ms', (1000 * sum) / QUESTIONS, null),
      single(`${name}: answers per second of one core`, 'a second', QUESTIONS / sum, null),
      single(`${name}: answers a second, as this machine is`, 'a second', QUESTIONS / seconds, null),
      single(`${name}: share of the busiest process`, '', Math.max(...spent) / sum, null),
      single(`${name}: not answered, or told to ask again`, 'interactions', unanswered, null),
      single(`${name}: most resident, each`, 'MB', Math.max(...bots.map((bot) => bot.residentMb())), null),
    ];
  } finally {
    await Promise.all(bots.map((bot) => bot.stop()));
    await double.close();
  }
};

/** @throws where there is no PostgreSQL to start */
export const shardRows = async (): Promise<BenchRow[]> => {
  process.env['PIERHAND_TEST_POSTGRES'] = '1';
  const { postgresMissing, startCluster } = await import('../store/postgres-cluster.js');
  const missing = postgresMissing();
  if (missing !== null) throw new Error(missing);
  const cluster = await startCluster();
  try {
    return [
      ...(await rowsOf('four shards in one process', await cluster.database('one'), ['0-3'])),
      ...(await rowsOf('four shards in two processes', await cluster.database('two'), ['0-1', '2-3'])),
    ];
  } finally {
    await cluster.stop();
  }
};
