/** "Everything is about 15 degrees to the west": a miss of all targets, and neither an hour nor a wish for stars to align on. The lines are our own. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps, strangers } from './real-deps.js';

const NOW = Date.UTC(2026, 11, 12, 20, 30);
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const stranger = strangers('tove');
const titleOf = async (line: string): Promise<string> => {
  const outcome = await ask(deps, line, NOW, stranger());
  return isProblem(outcome) ? outcome.message : String(outcome.title);
};

describe('a miss of all targets', () => {
  it.each([
    'I align on two stars and everything is about 15 degrees to the west',
    'every goto is about 20 degrees to the left',
    'all the targets come out 3 degrees too high',
  ])('goes to the walk: %s', async (line) => {
    expect(await titleOf(line)).toMatch(/Finding the connection fault/u);
  });

  it.each([
    ['which stars to align on', /Stars to align on/u],
    ['whats everything above 20 degrees tonight', /Worth seeing/u],
    ['show everything over 5 degrees high in the west', /Worth seeing/u],
    ['saturn around 10', /Saturn/u],
  ])('is none: %s', async (line, title) => {
    expect(await titleOf(line)).toMatch(title);
  });
});
