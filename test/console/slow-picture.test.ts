import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PassThrough } from 'node:stream';
import { expect, it, vi } from 'vitest';
import { createLog } from '../../bot/app/log.js';
import { createMetrics } from '../../bot/app/metrics.js';
import { loadSettings } from '../../bot/app/settings.js';
import { startConsole, type ConsoleStreams } from '../../bot/platforms/console/index.js';
import { realDeps } from '../commands/real-deps.js';

const PICTURE = path.resolve('test/pictures/screens/attached-then-denied-1.png');

/** A terminal that somebody types at, and what stands on it. */
const terminal = () => {
  const stdin = Object.assign(new PassThrough(), { isTTY: true });
  const stdout = Object.assign(new PassThrough(), { isTTY: true, columns: 80 });
  let shown = '';
  stdout.on('data', (chunk: Buffer) => (shown += chunk.toString()));
  const until = async (words: string): Promise<string> => {
    while (!shown.includes(words)) await new Promise((resolve) => setTimeout(resolve, 10));
    return shown;
  };
  return {
    streams: { stdin, stdout } as unknown as ConsoleStreams,
    type: (line: string) => stdin.write(`${line}\r`),
    until,
    shown: () => shown,
  };
};

it('a picture being read says so, keeps no question waiting, and no one who wants to leave', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-console-'));
  let isRead = (): void => undefined;
  let reading = new Promise<void>((resolve) => (isRead = resolve));
  const pictures = {
    read: async () => {
      await reading;
      return { text: 'usb 1-1: device descriptor read/64, error -71', confidencePercent: 90 };
    },
    close: () => undefined,
  };
  const settings = loadSettings({ PIERHAND_DATA: folder });
  const context = {
    deps: await realDeps({ pictures }),
    settings,
    log: createLog('silent', []),
    metrics: createMetrics(),
    now: () => Date.UTC(2026, 10, 26, 20),
  };
  const { streams, type, until, shown } = terminal();
  const { ended } = startConsole(context, streams, null);
  type(`triage file:${PICTURE}`);
  await until('Reading the file');
  type('sidereal site:52.71,0.12');
  expect(await until('The controller should show')).not.toContain('Hand controller');
  isRead();
  await until('Hand controller');
  reading = new Promise((resolve) => (isRead = resolve));
  // Two at one machine: what one asked comes when the other speaks.
  type('as Tamsin');
  await until('Tamsin speaks');
  type(`triage file:${PICTURE}`);
  await vi.waitFor(() => expect(shown().split('Reading the file')).toHaveLength(3), 30_000);
  type('as me');
  await until('You speak');
  expect(shown()).not.toContain('For ');
  isRead();
  expect(await until('For Tamsin:')).not.toContain('For you:');
  reading = new Promise(() => undefined);
  type(`triage do:new file:${PICTURE}`);
  type('quit');
  await ended;
  rmSync(folder, { recursive: true });
}, 60_000);
