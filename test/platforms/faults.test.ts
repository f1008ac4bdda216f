/** What the log calls a thing that went wrong inside a command: the operator does something else about each. */
import { PassThrough } from 'node:stream';
import { expect, it } from 'vitest';
import { createLog } from '../../bot/app/log.js';
import { createMetrics } from '../../bot/app/metrics.js';
import { commandFaults } from '../../bot/platforms/shared/faults.js';
import { storeError } from '../../bot/store/store-failure.js';

it.each([
  [
    'a store that is away',
    storeError('store-unavailable', new Error('connect ECONNREFUSED')),
    /^the store could not /u,
    'store',
  ],
  ['a fault of the program', new TypeError('x is undefined'), /^a command failed$/u, 'command'],
])('%s is told and counted as such', async (_name, error, line, kind) => {
  const lines: string[] = [];
  const sink = new PassThrough();
  sink.on('data', (chunk: Buffer) => lines.push(chunk.toString()));
  const metrics = createMetrics(false, ['discord']);
  commandFaults({ log: createLog('info', [], sink), metrics }, 'discord')(error, 'site');
  expect((JSON.parse(lines[0] ?? '{}') as { msg: string }).msg).toMatch(line);
  const { body } = await metrics.expose();
  expect(body.match(/^pierhand_failures_total\{.*\} 1$/gmu)).toEqual([
    `pierhand_failures_total{platform="discord",kind="${kind}"} 1`,
  ]);
});
