/** The Discord platform against the double, with a real store in memory and the real commands unless others are given. */
import { PassThrough } from 'node:stream';
import { vi } from 'vitest';
import type { Command, Deps } from '../../bot/commands/core/command.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { createLog } from '../../bot/app/log.js';
import { createPictureReader } from '../../bot/pictures/picture-reader.js';
import { createMetrics, type Metrics } from '../../bot/app/metrics.js';
import { startDiscord } from '../../bot/platforms/discord/index.js';
import { DEFAULT_TUNING, type Tuning } from '../../bot/platforms/discord/connect/bot.js';
import type { RunningPlatform } from '../../bot/app/platform.js';
import { loadSettings, secretsOf, type Environment } from '../../bot/app/settings.js';
import { openStore } from '../../bot/store/open-store.js';
import type { Store } from '../../bot/store/store.js';
import { startDiscordDouble, type DiscordDouble, type DoubleOptions } from '../doubles/discord/discord-double.js';
import { shippedCatalogue, shippedModel, shippedPlaces } from '../shipped.js';

// A busy machine may be many times slower; nothing here is about its speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });
/** Nor does a crowd turn questions away here, but where a test says so. */
const UNHURRIED: Partial<Tuning> = {
  busyAfterMs: 60_000,
  busyAfterMsWhenOverrun: 60_000,
  pictureWithinMs: 60_000,
  pictureWithinMsInCrowd: 60_000,
};
const PATIENT: DoubleOptions = { firstResponseMs: 60_000 };

/** A January evening at the club's site, whatever the calendar says. */
export const NOW_UTC_MS = Date.UTC(2027, 0, 8, 20, 0);

export interface Started {
  readonly double: DiscordDouble;
  readonly bot: RunningPlatform;
  readonly store: Store;
  readonly metrics: Metrics;
  /** Every line logged so far. */
  readonly logged: () => string;
  readonly stop: () => Promise<void>;
}

export interface BotOptions {
  readonly commands?: readonly Command[];
  readonly env?: Environment;
  readonly tuning?: Partial<Tuning>;
  readonly store?: Store;
  readonly now?: () => number;
  readonly clubSiteText?: string;
}

/** One bot process on a double. */
export const startBot = async (
  double: DiscordDouble,
  options: BotOptions = {},
): Promise<Omit<Started, 'double' | 'stop'>> => {
  const settings = loadSettings({
    DISCORD_TOKEN: double.token,
    DISCORD_API_URL: double.apiUrl,
    LOG_LEVEL: 'debug',
    ...options.env,
  });
  const store = options.store ?? (await openStore({ memory: true }));
  const lines: string[] = [];
  const sink = new PassThrough();
  sink.on('data', (chunk: Buffer) => lines.push(chunk.toString('utf8')));
  const metrics = createMetrics();
  const commands = options.commands ?? allCommands;
  const deps: Deps = {
    catalogue: shippedCatalogue(),
    places: shippedPlaces,
    store,
    triage: shippedModel,
    pictures: createPictureReader(),
    clubSiteText: options.clubSiteText ?? '52.71,0.12',
    sunLimits: settings.sunLimits,
    commands,
  };
  const bot = await startDiscord(
    {
      deps,
      settings,
      log: createLog(settings.logLevel, secretsOf(settings), sink),
      metrics,
      now: options.now ?? (() => NOW_UTC_MS),
    },
    { ...DEFAULT_TUNING, ...UNHURRIED, connectDelaysMs: [100], ...options.tuning },
  );
  return { bot, store, metrics, logged: () => lines.join('') };
};

/** A double and one bot on it, registered and connected. */
export const start = async (options: BotOptions = {}, doubleOptions: DoubleOptions = {}): Promise<Started> => {
  const double = await startDiscordDouble({ ...PATIENT, ...doubleOptions });
  const started = await startBot(double, options);
  await double.ready(doubleOptions.recommendedShards ?? 1);
  return {
    double,
    ...started,
    stop: async () => {
      await started.bot.stop();
      await double.close();
      await started.store.close();
    },
  };
};
