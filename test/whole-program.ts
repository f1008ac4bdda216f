/** The whole program in a process of its own, as an operator runs it; vitest builds it once, before the first test. */
import { execFile, execFileSync, type ExecFileException } from 'node:child_process';
import path from 'node:path';
import { projectRoot } from '../bot/ground/project-root.js';

/** Called by vitest (globalSetup): a process starts from dist/ in a fifth of the time that it takes from source. */
export const setup = (): void => {
  execFileSync(process.execPath, ['build.mjs'], { cwd: projectRoot(), stdio: 'inherit' });
};

export interface Ended {
  /** Null where a signal ended it. */
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

export interface RunOptions {
  /** The only settings it gets, beside the data folder. */
  readonly env?: Readonly<Record<string, string>>;
  /** What stands on standard input. */
  readonly input?: string;
}

const MOST_OUTPUT_BYTES = 64 * 1024 * 1024;

/** @param folder a temporary one, away from the project's own: it works there and keeps its data in it */
export const runProgram = (
  entry: 'main' | 'ask' | 'backup',
  args: readonly string[],
  folder: string,
  { env = {}, input = '' }: RunOptions = {},
): Promise<Ended> =>
  new Promise((resolve) => {
    const child = execFile(
      process.execPath,
      [path.join(projectRoot(), `dist/bot/${entry}.js`), ...args],
      {
        cwd: folder,
        env: { PATH: process.env['PATH'] ?? '', PIERHAND_DATA: path.join(folder, 'data'), ...env },
        maxBuffer: MOST_OUTPUT_BYTES,
        timeout: 100_000,
      },
      (_error: ExecFileException | null, stdout, stderr) => resolve({ code: child.exitCode, stdout, stderr }),
    );
    child.stdin?.end(input);
  });
