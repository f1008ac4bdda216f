/** The composition root: settings → store → knowledge → platforms; with neither Discord nor Matrix set it is the console. */
import './app/small-heap.js';
import { StartError } from './ground/start-error.js';
import { openDeps } from './app/compose.js';
import type { HealthPart } from './app/health.js';
import { leaveWithReader } from './app/leave-with-reader.js';
import { createLog } from './app/log.js';
import { createMetrics } from './app/metrics.js';
import { type PlatformContext, type RunningPlatform } from './app/platform.js';
import { loadSettings, secretsOf, unknownSettings, type Settings } from './app/settings.js';
import { ownVersion } from './app/version.js';

interface Served {
  readonly name: string;
  readonly isSet: (settings: Settings) => boolean;
  readonly start: (context: PlatformContext) => Promise<RunningPlatform>;
}

/** Every chat server that can be set; where none is, the console answers. Each is loaded only where it is used. */
const PLATFORMS: readonly Served[] = [
  {
    name: 'discord',
    isSet: ({ discord }) => discord !== null,
    start: async (context) => (await import('./platforms/discord/index.js')).startDiscord(context),
  },
  {
    name: 'matrix',
    isSet: ({ matrix }) => matrix !== null,
    start: async (context) => (await import('./platforms/matrix/index.js')).startMatrix(context),
  },
];

/** Answers under way get this long to finish after a signal; then the process leaves all the same. */
const STOP_WITHIN_MS = 10_000;

const main = async (): Promise<void> => {
  if (process.argv.slice(2).join(' ') === '--version') {
    process.stdout.write(`${ownVersion()}\n`);
    return;
  }
  const settings = loadSettings(process.env);
  const served = PLATFORMS.filter(({ isSet }) => isSet(settings));
  const onConsole = served.length === 0;
  // On the console the log would run through the conversation: only what went wrong is shown, unless asked for.
  const log = createLog(
    onConsole && process.env['LOG_LEVEL'] === undefined ? 'warn' : settings.logLevel,
    secretsOf(settings),
  );
  for (const line of unknownSettings(process.env)) log.warn(line);
  const { deps, warm, close } = await openDeps(settings, (message) => log.warn(message), {
    onAnswered: (line) => log.debug(line, 'answered'),
  });
  log.info(
    {
      version: ownVersion(),
      node: process.versions.node,
      store: settings.databaseUrl === null ? `SQLite in ${settings.dataFolder}` : 'PostgreSQL',
      site: settings.clubSiteText ?? 'none',
      platforms: served.map(({ name }) => name),
    },
    'Pierhand starts',
  );
  const context: PlatformContext = {
    deps,
    settings,
    log,
    metrics: createMetrics(settings.http !== null),
    now: () => Date.now(),
  };
  const running: RunningPlatform[] = [];
  const healthParts: HealthPart[] = [];
  const toStop: { stop: () => Promise<void> }[] = [];

  let stopping: Promise<void> | undefined;
  const stop = (): Promise<void> =>
    (stopping ??= (async () => {
      setTimeout(() => process.exit(process.exitCode ?? 0), STOP_WITHIN_MS).unref();
      for (const part of toStop.reverse())
        await part.stop().catch((error: unknown) => log.error({ err: error }, 'a part did not stop cleanly'));
      await close();
    })());
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop());
  process.on('unhandledRejection', (error) => log.error({ err: error }, 'unhandled rejection'));

  try {
    if (settings.http !== null) {
      const { startHealthServer } = await import('./app/health.js');
      toStop.push(await startHealthServer(settings.http, () => healthParts, context.metrics));
    }
    let consoleEnded: Promise<{ readonly asked: number }> | undefined;
    for (const { start } of served) running.push(await start(context));
    if (onConsole) {
      const { startConsole } = await import('./platforms/console/index.js');
      const words = process.argv.slice(2).join(' ').trim();
      const { platform, ended } = startConsole(context, process, words === '' ? null : words);
      running.push(platform);
      consoleEnded = ended;
    }
    toStop.push(...running);
    if (!onConsole)
      void warm().catch((error: unknown) => log.error({ err: error }, 'knowledge could not be read ahead'));
    const { startReminders } = await import('./reminders/start-reminders.js');
    const reminders = startReminders(context, running);
    toStop.push(reminders);
    healthParts.push(...running, reminders);
    if (consoleEnded !== undefined) {
      const { asked } = await consoleEnded;
      // An operator who forgot the token sees why the service ended at once.
      if (asked === 0 && !process.stdin.isTTY) {
        process.stderr.write(
          'No chat server is set: set DISCORD_TOKEN or MATRIX_HOMESERVER_URL (see deploy/README.md). Without them I answer questions typed here, and none was.\n',
        );
        process.exitCode = 2;
      }
      await stop();
    }
  } catch (error) {
    await stop();
    throw error;
  }
};

leaveWithReader();
await main().catch((error: unknown) => {
  process.stderr.write(
    `${error instanceof StartError ? error.message : `Pierhand cannot start: ${error instanceof Error ? error.message : String(error)}`}\n`,
  );
  // At once: what a failed start left open must not keep a supervisor waiting.
  process.exit(error instanceof StartError ? 2 : 1);
});
