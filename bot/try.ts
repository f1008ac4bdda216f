/** `npm run try`: the whole bot on one page of this machine, two members side by side; needs no account, keeps nothing unless told to. */
import { openDeps } from './app/compose.js';
import { createLog } from './app/log.js';
import { createMetrics } from './app/metrics.js';
import type { PlatformContext } from './app/platform.js';
import { loadSettings, secretsOf } from './app/settings.js';
import { StartError } from './ground/start-error.js';
import { startBrowser } from './platforms/browser/index.js';
import { startReminders } from './reminders/start-reminders.js';

const PORT = 8064;

const portIn = (args: readonly string[]): number => {
  const [given] = args;
  if (given === undefined) return PORT;
  if (/^\d{1,5}$/u.test(given) && Number(given) <= 65_535) return Number(given);
  throw new StartError('Give a port from 1 to 65535, or nothing: npm run try -- 8090');
};

const main = async (): Promise<void> => {
  const port = portIn(process.argv.slice(2));
  // Accounts are not for this: what they are set to does not matter.
  const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^(?:DISCORD|MATRIX)_/u.test(name)));
  const settings = loadSettings(env);
  const keeps = env['PIERHAND_DATA'] !== undefined || settings.databaseUrl !== null;
  const log = createLog(env['LOG_LEVEL'] === undefined ? 'warn' : settings.logLevel, secretsOf(settings));
  const { deps, warm, close } = await openDeps(
    settings,
    (message) => log.warn(message),
    keeps ? {} : { place: { memory: true } },
  );
  const context: PlatformContext = { deps, settings, log, metrics: createMetrics(), now: () => Date.now() };
  try {
    const { platform, address } = await startBrowser(context, port);
    const reminders = startReminders(context, [platform]);
    const stop = async (): Promise<void> => {
      await reminders.stop();
      await platform.stop();
      await close();
    };
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop());
    process.stdout.write(
      `Open ${address} in a browser on this machine. ${keeps ? 'What is saved is kept.' : 'Nothing is kept once you stop it.'} Stop with Ctrl-C.\n`,
    );
    await warm();
  } catch (error) {
    await close();
    throw error;
  }
};

await main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = error instanceof StartError ? 2 : 1;
});
