/** `npm run backup -- FILE`: copies the bot's memory into one file, while it runs. */
import { existsSync } from 'node:fs';
import { StartError } from './ground/start-error.js';
import { loadSettings } from './app/settings.js';
import { backUp } from './store/back-up.js';
import { markBackedUp } from './app/backup-mark.js';

const main = async (): Promise<void> => {
  const words = process.argv.slice(2);
  const replaces = words.includes('--replace');
  const [file, ...more] = words.filter((word) => word !== '--replace');
  if (file === undefined || file.startsWith('-') || more.length > 0)
    throw new StartError('Say where to: npm run backup -- FILE');
  if (existsSync(file) && !replaces)
    throw new StartError(`${file} exists already. Give another name, or add --replace.`);
  // The chat servers' settings may well be incomplete here: their tokens are the bot's alone.
  const env = Object.fromEntries(
    Object.entries(process.env).filter(([name]) => /^(?:PIERHAND_DATA|DATABASE_URL(?:_FILE)?)$/u.test(name)),
  );
  const { databaseUrl, dataFolder } = loadSettings(env);
  const done = await backUp(databaseUrl === null ? { dataFolder } : { databaseUrl }, file);
  markBackedUp(dataFolder, Date.now());
  process.stdout.write(`Backed up to ${done.file}, ${done.bytes} bytes.\n`);
};

await main().catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  process.exitCode = error instanceof StartError ? 2 : 1;
});
