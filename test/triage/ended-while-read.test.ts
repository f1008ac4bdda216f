/** A picture takes its time to be read; the walk that it was sent to is not held meanwhile. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import type { Asker } from '../../bot/commands/core/command.js';
import { runCommand } from '../../bot/commands/core/dispatch.js';
import { isProblem } from '../../bot/ground/problem.js';
import { projectRoot } from '../../bot/ground/project-root.js';
import { slowPictures } from '../doubles/slow-pictures.js';
import { ODALYS, answer, realDeps } from '../commands/real-deps.js';

const PICTURE = readFileSync(path.join(projectRoot(), 'test/pictures/screens/attached-then-denied-1.png'));
const NOW_UTC_MS = Date.UTC(2026, 10, 27, 21);
const RUNA: Asker = { ...ODALYS, memberId: 'console:runa', displayName: 'Runa', clubId: 'console:tarnside' };

const slowly = async () => {
  const { pictures, isRead } = slowPictures();
  const deps = await realDeps({ pictures });
  const triage = deps.commands.find(({ name }) => name === 'triage');
  if (triage === undefined) throw new Error('no triage');
  const file = { name: 'screen.png', sizeBytes: PICTURE.length, load: () => Promise.resolve(new Uint8Array(PICTURE)) };
  const sent = () =>
    runCommand(deps, triage, new Map<string, unknown>([['file', file]]), {
      asker: RUNA,
      nowUtcMs: NOW_UTC_MS,
      onError: (error) => {
        throw error as Error;
      },
    });
  return { deps, sent, isRead };
};

it('a press is answered while a picture is read, and the picture is read into what came of it', async () => {
  const { deps, sent, isRead } = await slowly();
  await answer(deps, 'triage the port is not in the list', NOW_UTC_MS, RUNA);
  const picture = sent();
  const pressed = await answer(deps, 'triage it is a Linux laptop, on a usb serial adapter', NOW_UTC_MS, RUNA);
  expect(pressed.title).toMatch(/Step|Finding/u);
  isRead();
  const read = await picture;
  if (isProblem(read)) throw new Error(read.message);
  const summary = await answer(deps, 'triage do:summary', NOW_UTC_MS, RUNA);
  expect(JSON.stringify(summary)).toMatch(/Linux/u);
  expect(JSON.stringify(summary)).toMatch(/error -71/u);
});

it('a walk that is ended meanwhile stays ended, and nothing of the picture is taken', async () => {
  const { deps, sent, isRead } = await slowly();
  await answer(deps, 'triage the port is not in the list', NOW_UTC_MS, RUNA);
  const picture = sent();
  await answer(deps, 'triage do:end', NOW_UTC_MS, RUNA);
  isRead();
  const read = await picture;
  expect(isProblem(read) && read.problem).toBe('walk-ended');
  expect(isProblem(read) && read.message).toMatch(/triage do:new/u);
});
