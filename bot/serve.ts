/** The composition root: settings → store → knowledge → platforms; with neither Discord nor Matrix set it is the console. */
import { preferQuickOverSmall } from './app/small-heap.js';
import type { PlatformName } from './ground/platform-name.js';
import { StartError } from './ground/start-error.js';
import { openDeps } from './app/compose.js';
import type { HealthPart } from './app/health-part.js';
import { leaveWithReader } from './app/leave-with-reader.js';
import { createLog } from './app/log.js';
import { createMetrics } from './app/metrics.js';
import { type PlatformContext, type RunningPlatform } from './app/platform.js';
import { loadSettings, secretsOf, type Settings } from './app/settings.js';
import { unknownSettings } from './app/unknown-settings.js';
import { usage } from './app/usage.js';
import { ownVersion } from './app/version.js';
import { lastBackupUtcMs } from './app/backup-mark.js';

interface Served {
  readonly name: PlatformName;
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

const STARTING = { ok: false, detail: 'starting' };

/** Answers under way get this long to finish after a signal; then the process leaves all the same. */
const STOP_WITHIN_MS = 10_000;

interface Opened {
  readonly context: PlatformContext;
  /** The platforms that are set; none: the console. */
  readonly served: readonly Served[];
  readonly warm: () => Promise<void>;
  readonly close: () => Promise<void>;
}

const open = async (): Promise<Opened> => {
  const settings = loadSettings(process.env);
  const served = PLATFORMS.filter(({ isSet }) => isSet(settings));
  if (served.length > 0) preferQuickOverSmall();
  // On the console the log would run through the conversation: only what went wrong is shown, unless asked for.
  const isQuiet = served.length === 0 && process.env['LOG_LEVEL'] === undefined;
  const log = createLog(isQuiet ? 'warn' : settings.logLevel, secretsOf(settings));
  for (const line of unknownSettings(process.env)) log.warn(line);
  const { deps, clubEntries, warm, close } = await openDeps(
    settings,
    (message, isGrave = false) => log[isGrave ? 'error' : 'warn'](message),
    { onAnswered: (line) => log.debug(line, 'answered') },
  );
  log.info(
    {
      version: ownVersion(),
      node: process.versions.node,
      store: settings.databaseUrl === null ? `SQLite in ${settings.dataFolder}` : 'PostgreSQL',
      // Where the club meets is nobody's business but its own.
      site: settings.clubSiteText === null ? 'none: members say theirs' : 'set',
      ...(clubEntries === null ? {} : { knowledge: { folder: settings.knowledgeFolder, ...clubEntries } }),
      platforms: served.map(({ name }) => name),
    },
    'Pierhand starts',
  );
  const metrics = createMetrics(
    settings.http !== null,
    served.map(({ name }) => name),
  );
  return { context: { deps, settings, log, metrics, now: () => Date.now() }, served, warm, close };
};

interface Stopper {
  /** What was started last is stopped first. */
  readonly add: (...parts: readonly { readonly stop: () => Promise<void> }[]) => void;
  /** Stops all of it, once; before `isServing` the process then ends, whatever is still being waited for. */
  readonly stop: () => Promise<void>;
  readonly isServing: () => void;
  readonly isStopping: () => boolean;
}

const createStopper = ({ context: { log }, close }: Opened): Stopper => {
  const parts: { readonly stop: () => Promise<void> }[] = [];
  const stopPart = (part: { readonly stop: () => Promise<void> }): Promise<void> =>
    part.stop().catch((error: unknown) => log.error({ err: error }, 'a part did not stop cleanly'));
  let serving = false;
  const stopAll = async (): Promise<void> => {
    setTimeout(() => process.exit(process.exitCode ?? 0), STOP_WITHIN_MS).unref();
    for (const part of parts.reverse()) await stopPart(part);
    await close();
    if (!serving) process.exit(process.exitCode ?? 0);
  };
  let stopping: Promise<void> | undefined;
  return {
    add: (...more) => {
      // What was still starting when the signal came.
      if (stopping === undefined) parts.push(...more);
      else for (const part of more) void stopPart(part);
    },
    stop: () => (stopping ??= stopAll()),
    isServing: () => {
      serving = true;
    },
    isStopping: () => stopping !== undefined,
  };
};

const openConsole = async (context: PlatformContext) => {
  const { startConsole } = await import('./platforms/console/index.js');
  const words = process.argv.slice(2).join(' ').trim();
  return startConsole(context, process, words === '' ? null : words);
};

/** An operator who forgot the token sees why the service ended at once. */
const tellIfNothingAsked = ({ asked }: { readonly asked: number }): void => {
  if (asked > 0 || process.stdin.isTTY) return;
  process.stderr.write(
    'No chat server is set: set DISCORD_TOKEN or MATRIX_HOMESERVER_URL (see deploy/README.md). Without them I answer questions typed here, and none was.\n',
  );
  process.exitCode = 2;
};

/** Starts every part; returns when a console has ended, or at once where platforms run on. */
const serve = async (
  { context, served, warm }: Opened,
  { add, stop, isServing, isStopping }: Stopper,
): Promise<void> => {
  const { settings, log, metrics } = context;
  // Each part is there from the beginning: what has not started yet is not well.
  const parts = new Map<string, HealthPart>(
    [...served.map(({ name }) => name), 'store'].map((name) => [name, { name, health: () => STARTING }]),
  );
  if (settings.http !== null) {
    const { startHealthServer } = await import('./app/health.js');
    metrics.watch(
      () => [...parts.values()],
      () => lastBackupUtcMs(settings.dataFolder),
    );
    add(await startHealthServer(settings.http, () => [...parts.values()], metrics));
  }
  const running: RunningPlatform[] = [];
  // Side by side: one that keeps the bot waiting holds up no other.
  await Promise.all(
    served.map(async ({ start }) => {
      const platform = await start(context);
      running.push(platform);
      parts.set(platform.name, platform);
      add(platform);
    }),
  );
  const shown = served.length === 0 ? await openConsole(context) : null;
  if (shown === null) {
    void warm().catch((error: unknown) => log.error({ err: error }, 'knowledge could not be read ahead'));
  } else {
    running.push(shown.platform);
    parts.set(shown.platform.name, shown.platform);
    add(shown.platform);
  }
  const { startReminders } = await import('./reminders/start-reminders.js');
  // A signal may have come while all this was starting.
  if (isStopping()) return;
  isServing();
  const reminders = startReminders(context, running);
  add(reminders);
  parts.set(reminders.name, reminders);
  if (shown === null) return;
  tellIfNothingAsked(await shown.ended);
  await stop();
};

const main = async (): Promise<void> => {
  const [first = ''] = process.argv.slice(2);
  if (first === '--version' || first === '--help' || first === '-h') {
    process.stdout.write(first === '--version' ? `${ownVersion()}\n` : usage());
    return;
  }
  // A question may begin with a sign ("-5°"), never with an option's name.
  if (/^--?[a-z]/iu.test(first)) throw new StartError(`There is no option ${first}: --version, --help, or a question.`);
  const opened = await open();
  const stopper = createStopper(opened);
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      opened.context.log.info({ signal }, 'Pierhand stops');
      void stopper.stop();
    });
  process.on('unhandledRejection', (error) => opened.context.log.error({ err: error }, 'unhandled rejection'));
  try {
    await serve(opened, stopper);
  } catch (error) {
    stopper.isServing();
    await stopper.stop();
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
