/** The bot's own process on one core under 400 interactions a second, through the real client and Discord's protocol on loopback. */
import { startDiscordDouble } from '../doubles/discord/discord-double.js';
import { botOnDiscord } from '../load/bot-on-discord.js';
import { createCrowd, drive, EVENING_MIX } from '../load/discord-traffic.js';
import { single, spread, type BenchRow } from './measure.js';

const PER_SECOND = 400;
const WARM_SECONDS = 4;
const SECONDS = 20;

export const discordRows = async (): Promise<BenchRow[]> => {
  const double = await startDiscordDouble();
  const crowd = createCrowd(double, 200, 5);
  const bot = botOnDiscord(double);
  try {
    await double.waitFor(
      () => bot.ended() || (double.world.commands.size > 0 && double.gateway.liveSessions() >= 1),
      'the bot to connect',
      30_000,
    );
    if (bot.ended()) throw new Error(`the bot ended: ${bot.logged()}`);
    await drive(crowd, EVENING_MIX, 20, WARM_SECONDS);
    const cpuBefore = bot.cpuSeconds();
    const traffic = await drive(crowd, EVENING_MIX, PER_SECOND, SECONDS);
    const cpu = bot.cpuSeconds() - cpuBefore;
    if (double.rest.violations.length > 0)
      throw new Error(`Discord's schemas were broken: ${double.rest.violations.slice(0, 3).join('; ')}`);
    const where = bot.isOnOneCore ? 'one core' : 'not held to one core';
    return [
      single(
        `Discord, ${PER_SECOND} interactions a second for ${SECONDS} s, ${where}: unanswered at 3 s`,
        'interactions',
        traffic.unanswered,
        0,
      ),
      single('Discord, the same: told kindly to ask again', 'interactions', traffic.toldBusyMs.length, null),
      spread(
        `Discord, ${traffic.perSecond.toFixed(0)} a second: from asking to readable (half suggestions, 1 in 12 with a picture)`,
        'ms',
        traffic.answeredMs,
        150,
      ),
      ...[...traffic.byQuestion].map(([name, values]) =>
        spread(`Discord, the same: ${name}`, 'ms', values, name === 'triage, a turn' ? 60 : null),
      ),
      single('Discord, the same: share of the core', '%', (100 * cpu) / SECONDS, null),
      single('Discord, the same: resident', 'MB', bot.residentMb(), 256),
    ];
  } finally {
    await bot.stop();
    await double.close();
  }
};
