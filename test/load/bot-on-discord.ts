/** The bot as operators run it (dist/, a process of its own, on one core where that can be held) against the Discord double. */
import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { projectRoot } from '../../bot/ground/project-root.js';
import type { DiscordDouble } from '../doubles/discord/discord-double.js';

export interface BotOnDiscord {
  readonly pid: number;
  readonly dataFolder: string;
  /** Whether it is held to one core. */
  readonly isOnOneCore: boolean;
  readonly residentMb: () => number;
  /** Seconds of processor time used so far. */
  readonly cpuSeconds: () => number;
  /** Standard error so far, its last 100,000 characters. */
  readonly logged: () => string;
  /** What is alive on its heap after a full collection, in MB; stops it for some 100 ms. */
  readonly heapMb: () => Promise<number>;
  readonly ended: () => boolean;
  readonly stop: () => Promise<number | null>;
  readonly kill: () => Promise<void>;
}

const has = (program: string): boolean => {
  try {
    execFileSync('sh', ['-c', `command -v ${program}`], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
};

const TICKS_A_SECOND = 100;

/** @param core the one it is held to, where that can be done */
export const botOnDiscord = (
  double: DiscordDouble,
  env: Readonly<Record<string, string>> = {},
  core = 1,
): BotOnDiscord => {
  const dataFolder = env['PIERHAND_DATA'] ?? mkdtempSync(path.join(tmpdir(), 'pierhand-load-'));
  const isOnOneCore = has('taskset');
  const { PATH = '', HOME = '' } = process.env;
  const node = [
    process.execPath,
    '--expose-gc',
    // As in Dockerfile and deploy/pierhand.service.
    '--max-semi-space-size=8',
    // To profile it: LOAD_NODE_ARGS='--cpu-prof --cpu-prof-dir=/tmp/profile'.
    ...(process.env['LOAD_NODE_ARGS'] ?? '').split(' ').filter((flag) => flag !== ''),
    '--import',
    path.join(projectRoot(), 'test/load/heap-probe.mjs'),
    path.join(projectRoot(), 'dist/bot/main.js'),
  ];
  const [program = '', ...args] = isOnOneCore ? ['taskset', '-c', String(core), ...node] : node;
  const child: ChildProcess = spawn(program, args, {
    cwd: dataFolder,
    stdio: ['ignore', 'ignore', 'pipe'],
    env: {
      PATH,
      HOME,
      PIERHAND_DATA: dataFolder,
      PIERHAND_SITE: '52.71,0.12',
      DISCORD_TOKEN: double.token,
      DISCORD_API_URL: double.apiUrl,
      LOG_LEVEL: 'warn',
      // As in Dockerfile and deploy/pierhand.service.
      MALLOC_ARENA_MAX: '1',
      MALLOC_MMAP_THRESHOLD_: '131072',
      ...env,
    },
  });
  let logged = '';
  let line = '';
  let heapsMb: number[] = [];
  child.stderr?.on('data', (chunk: Buffer) => {
    const lines = (line + chunk.toString()).split('\n');
    line = lines.pop() ?? '';
    for (const whole of lines) {
      const found = /^heap-probe (\d+)$/u.exec(whole);
      if (found !== null) heapsMb.push(Number(found[1]) / 1e6);
      else logged = `${logged}${whole}\n`.slice(-100_000);
    }
  });
  const pid = child.pid ?? 0;
  const ended = (): boolean => child.exitCode !== null || child.signalCode !== null;
  const end = async (signal: 'SIGTERM' | 'SIGKILL'): Promise<number | null> => {
    if (!ended()) {
      const exit = new Promise((resolve) => child.once('exit', resolve));
      child.kill(signal);
      await exit;
    }
    rmSync(dataFolder, { recursive: true, force: true });
    return child.exitCode;
  };
  return {
    pid,
    dataFolder,
    isOnOneCore,
    ended,
    residentMb: () =>
      (Number(/^VmRSS:\s+(\d+) kB$/mu.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? Number.NaN) * 1024) /
      1e6,
    cpuSeconds: () => {
      const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ')[1]?.split(' ') ?? [];
      return (Number(fields[11]) + Number(fields[12])) / TICKS_A_SECOND;
    },
    logged: () => logged,
    heapMb: async () => {
      heapsMb = [];
      child.kill('SIGUSR2');
      for (let i = 0; i < 1500 && !ended(); i++) {
        const [found] = heapsMb;
        if (found !== undefined) return found;
        await new Promise((resolve) => setTimeout(resolve, 20));
      }
      throw new Error('the bot did not tell its heap');
    },
    stop: () => end('SIGTERM'),
    kill: async () => {
      await end('SIGKILL');
    },
  };
};
