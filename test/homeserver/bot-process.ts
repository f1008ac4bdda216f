/** The bot as operators run it: a process of its own, built, with settings in its environment. */
import { spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { BUILT } from './build-bot.js';
import { ended } from './dendrite.js';

export interface BotProcess {
  readonly dataFolder: string;
  /** Resolves when the bot says it follows the rooms; rejects with what it printed if it ends first. */
  readonly start: () => Promise<void>;
  /** SIGKILL: nothing is tidied. */
  readonly kill: () => Promise<void>;
  /** SIGTERM; the exit code. */
  readonly stop: () => Promise<number | null>;
  readonly output: () => string;
  /** A line on its standard input. */
  readonly tell: (line: string) => void;
  readonly remove: () => Promise<void>;
}

/** Loaded before the bot: its encryption library is as missing as where nobody added it. */
const WITHOUT_LIBRARY = path.resolve('test/homeserver/without-library.mjs');

/**
 * @param env `WITHOUT_LIBRARY: 'yes'`: as where the encryption library is not there
 * @param entry the real program, or the one with the tests' own commands
 */
export const botProcess = (
  env: Readonly<Record<string, string>>,
  entry: 'bot/main' | 'test/homeserver/bot-with-test-commands' = 'test/homeserver/bot-with-test-commands',
): BotProcess => {
  const dataFolder = env['PIERHAND_DATA'] ?? mkdtempSync(path.join(tmpdir(), 'pierhand-data-'));
  let child: ChildProcess | null = null;
  let output = '';
  const start = (): Promise<void> =>
    new Promise((resolve, reject) => {
      output = '';
      const { PATH = '', HOME = '' } = process.env;
      const before = env['WITHOUT_LIBRARY'] === 'yes' ? ['--import', WITHOUT_LIBRARY] : [];
      const started = spawn(process.execPath, [...before, '--enable-source-maps', path.join(BUILT, `${entry}.js`)], {
        env: { PATH, HOME, PIERHAND_SITE: '52.71,0.12', PIERHAND_DATA: dataFolder, LOG_LEVEL: 'debug', ...env },
        stdio: ['pipe', 'pipe', 'pipe'],
      });
      child = started;
      const take = (chunk: Buffer): void => {
        output += chunk.toString();
        if (output.includes('following the Matrix rooms')) resolve();
      };
      started.stdout.on('data', take);
      started.stderr.on('data', take);
      started.once('exit', (code) => {
        reject(new Error(`the bot ended with ${code}: ${output}`));
      });
    });
  const end = async (signal: 'SIGKILL' | 'SIGTERM'): Promise<number | null> => {
    child?.kill(signal);
    await ended(child);
    return child?.exitCode ?? null;
  };
  return {
    dataFolder,
    start,
    output: () => output,
    tell: (line) => {
      child?.stdin?.write(`${line}\n`);
    },
    kill: async () => {
      await end('SIGKILL');
    },
    stop: () => end('SIGTERM'),
    remove: async () => {
      await end('SIGKILL');
      rmSync(dataFolder, { recursive: true, force: true });
    },
  };
};
