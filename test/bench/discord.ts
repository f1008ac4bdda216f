/**
 * The bot's own process on one core under many interactions a second, through the real client and Discord's protocol on loopback. The
 * questions come from this process, which keeps to another core where there is one; what it uses itself is told apart.
 */
import { execFileSync } from 'node:child_process';
import os from 'node:os';
import { setTimeout as sleep } from 'node:timers/promises';
import { startDiscordDouble } from '../doubles/discord/discord-double.js';
import { botOnDiscord, type BotOnDiscord } from '../load/bot-on-discord.js';
import { createCrowd, drive, EVENING_MIX, warmUp, type Crowd } from '../load/discord-traffic.js';
import { single, spread, type BenchRow } from './measure.js';

/** The last is what the targets are for. */
const RATES = [100, 200, 400] as const;
const SECONDS = 20;
const WARM_QUESTIONS = 3000;
const PAUSE_MS = 4000;
/** Each request held against the published schemas costs the double more than all else it does. */
const CHECK_EVERY = 20;

/** The bot has core 1; without a second core, or without taskset, both share what there is. */
const keepOffTheBotsCore = ({ isOnOneCore }: BotOnDiscord): void => {
  if (isOnOneCore && os.cpus().length > 1)
    execFileSync('taskset', ['-a', '-c', '-p', '0', String(process.pid)], { stdio: 'ignore' });
};

const ownCpuMs = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

const rowsAt = async (perSecond: number, crowd: Crowd, bot: BotOnDiscord): Promise<BenchRow[]> => {
  const isTarget = perSecond === RATES.at(-1);
  const botBefore = bot.cpuSeconds();
  const ownBefore = ownCpuMs();
  let peakMb = bot.residentMb();
  const traffic = await drive(crowd, EVENING_MIX, perSecond, SECONDS, () => {
    peakMb = Math.max(peakMb, bot.residentMb());
  });
  const asked = traffic.answeredMs.length + traffic.toldBusyMs.length + traffic.unanswered;
  const cpuMs = (bot.cpuSeconds() - botBefore) * 1000;
  const ownMs = ownCpuMs() - ownBefore;
  const name = (what: string): string => `Discord, ${perSecond}/s for ${SECONDS} s: ${what}`;
  return [
    single(name('asked'), 'a second', traffic.perSecond, null),
    single(name('unanswered at 3 s'), 'interactions', traffic.unanswered, isTarget ? 0 : null),
    single(name('told kindly to ask again'), 'interactions', traffic.toldBusyMs.length, null),
    single(name('"up" answered without its picture'), 'interactions', traffic.withoutPicture, null),
    spread(name('from asking to readable'), 'ms', traffic.answeredMs, isTarget ? 150 : null),
    single(name("the bot's processor time, each"), 'ms', cpuMs / asked, null),
    single(name("the asking side's, each"), 'ms', ownMs / asked, null),
    single(name('most resident'), 'MB', peakMb, isTarget ? 256 : null),
    ...(isTarget
      ? [...traffic.byQuestion].map(([question, values]) =>
          spread(name(question), 'ms', values, question === 'triage, a turn' ? 60 : null),
        )
      : []),
  ];
};

export const discordRows = async (): Promise<BenchRow[]> => {
  const double = await startDiscordDouble({ checkEvery: CHECK_EVERY });
  const crowd = createCrowd(double, 200, 5);
  const bot = botOnDiscord(double);
  keepOffTheBotsCore(bot);
  try {
    await double.waitFor(
      () => bot.ended() || (double.world.commands.size > 0 && double.gateway.liveSessions() >= 1),
      'the bot to connect',
      30_000,
    );
    if (bot.ended()) throw new Error(`the bot ended: ${bot.logged()}`);
    await warmUp(crowd, EVENING_MIX, WARM_QUESTIONS);
    const rows: BenchRow[] = [];
    for (const perSecond of RATES) {
      await sleep(PAUSE_MS);
      rows.push(...(await rowsAt(perSecond, crowd, bot)));
    }
    if (double.rest.violations.length > 0)
      throw new Error(`Discord's schemas were broken: ${double.rest.violations.slice(0, 3).join('; ')}`);
    return rows;
  } finally {
    await bot.stop();
    await double.close();
  }
};
