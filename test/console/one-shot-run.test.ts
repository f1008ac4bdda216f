import { beforeAll, describe, expect, it, vi } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { isComment, oneShotRun } from '../../bot/platforms/console/index.js';
import { realDeps } from '../commands/real-deps.js';

// A busy machine may be many times slower; nothing here is about its speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const NOW = Date.UTC(2026, 10, 26, 20);
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const failLoudly = (error: unknown): never => {
  throw error instanceof Error ? error : new Error(String(error));
};
/** What a script starts anew each time, over one store. */
const newRun = () => oneShotRun(deps, () => NOW, failLoudly);
const walkIn = ({ outcome }: Awaited<ReturnType<ReturnType<typeof newRun>['answer']>>): unknown =>
  isProblem(outcome) ? undefined : outcome.data['walkId'];

describe('a walk that an earlier run left open', () => {
  it.each(['nonsense', 'eyepiece 25 1200', '# an evening', ''])(
    'takes no words that are not said to it: "%s"',
    async (line) => {
      const opened = await newRun().answer('triage do:new usb 1-1: device descriptor read/64, error -71');
      const status = `triage walk:${String(walkIn(opened))}`;
      const before = await newRun().answer(status);
      expect(isProblem((await newRun().answer(line)).outcome)).toBe(true);
      expect(await newRun().answer(status)).toEqual(before);
    },
  );

  it('goes on where it is meant, and says that it does', async () => {
    const id = String(walkIn(await newRun().answer('triage do:new the port is missing')));
    const goesOn = await newRun().answer('triage I use Linux');
    expect(walkIn(goesOn)).toBe(id);
    expect(goesOn.hint).toContain('do:new');
    expect((await newRun().answer(`triage walk:${id}`)).hint).toBeNull();
    expect((await newRun().answer('nonsense')).hint).toContain(`triage walk:${id}`);
    expect((await newRun().answer('sidereal site:52.71,0.12')).hint).toBeNull();
  });

  it('within one run takes bare words, as in a conversation', async () => {
    const run = newRun();
    const id = walkIn(await run.answer('triage do:new the port is missing'));
    expect(walkIn(await run.answer('I use Linux'))).toBe(id);
  });
});

it('a comment is told from a number picked and from a heading in a pasted line', () => {
  expect(['# an evening', '#', '  # x', '#!/bin/sh'].every(isComment)).toBe(true);
  expect(['#2', 'up M 42 # x', ''].some(isComment)).toBe(false);
});
