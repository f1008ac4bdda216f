/**
 * Four shards on one PostgreSQL: all of them in one process, then two in each of two, each process on a core of its own, as warm as the
 * other and asked nothing twice. Where the machine has no more cores, the asking side and the database share the bots', so that what is
 * answered a second says little; the processor time says it all the same: a process can answer no faster than its core lets it, so the
 * busiest process's time is what bounds the sum.
 */
import { availableParallelism } from 'node:os';
import { setTimeout as sleep } from 'node:timers/promises';
import { startDiscordDouble, type DiscordDouble } from '../doubles/discord/discord-double.js';
import { botOnDiscord, type BotOnDiscord } from '../load/bot-on-discord.js';
import { FRESH_MIX, warmUp, type Crowd } from '../load/discord-traffic.js';
import { single, type BenchRow } from './measure.js';

const SHARDS = 4;
const CLUBS = 40;
/** For each process. */
const WARM_QUESTIONS = 1500;
const QUESTIONS = 3000;
const UNDER_WAY = 4;
/** Two cores for the bots; the others, where there are any, for the asking side and the database. */
const BOT_CORES = availableParallelism() >= 4 ? [2, 3] : [1, 0];
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

interface Measured {
  /** How many a second the busiest process's core allows. */
  readonly bound: number;
  readonly rows: readonly BenchRow[];
}

const measured = async (name: string, databaseUrl: string, ranges: readonly string[]): Promise<Measured> => {
  const double = await startDiscordDouble({ checkEvery: 20 });
  const crowd = await spreadCrowd(double);
  const bots: BotOnDiscord[] = [];
  const [warm, asked, underWay] = [WARM_QUESTIONS, QUESTIONS, UNDER_WAY].map((each) => each * ranges.length) as [
    number,
    number,
    number,
  ];
  try {
    for (const [i, range] of ranges.entries()) {
      const env = { DATABASE_URL: databaseUrl, DISCORD_SHARD_COUNT: String(SHARDS), DISCORD_SHARD_RANGE: range };
      bots.push(botOnDiscord(double, env, BOT_CORES[i]));
    }
    await double.waitFor(
      () =>
        bots.some((bot) => bot.ended()) || (double.world.commands.size > 0 && double.gateway.liveSessions() >= SHARDS),
      'all shards to connect',
      START_MS,
    );
    const ended = bots.find((bot) => bot.ended());
    if (ended !== undefined) throw new Error(`a bot ended: ${ended.logged()}`);
    await warmUp(crowd, FRESH_MIX, warm, { underWay });
    const before = bots.map((bot) => bot.cpuSeconds());
    const began = performance.now();
    const unanswered = await warmUp(crowd, FRESH_MIX, asked, { from: warm, underWay });
    const seconds = (performance.now() - began) / 1000;
    const spent = bots.map((bot, i) => bot.cpuSeconds() - (before[i] ?? 0));
    const sum = spent.reduce((all, one) => all + one, 0);
    const bound = asked / Math.max(...spent);
    return {
      bound,
      rows: [
        single(`${name}: processor time, each`, 'ms', (1000 * sum) / asked, null),
        single(`${name}: answers a second that their cores allow`, 'a second', bound, null),
        single(`${name}: answers a second, as this machine is`, 'a second', asked / seconds, null),
        single(`${name}: share of the busiest process`, '', Math.max(...spent) / sum, null),
        single(`${name}: not answered, or told to ask again`, 'interactions', unanswered, null),
        single(`${name}: most resident, each`, 'MB', Math.max(...bots.map((bot) => bot.residentMb())), null),
      ],
    };
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
    const one = await measured('four shards in one process', await cluster.database('one'), ['0-3']);
    const two = await measured('four shards in two processes', await cluster.database('two'), ['0-1', '2-3']);
    return [
      ...one.rows,
      ...two.rows,
      single('two processes for one: answers that their cores allow', 'times', two.bound / one.bound, null),
    ];
  } finally {
    await cluster.stop();
  }
};
