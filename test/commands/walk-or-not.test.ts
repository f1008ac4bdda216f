/** What belongs to another command goes there while a walk waits, and its question stands again; what may be the walk's stays. No source: common practice. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 20, 10);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const beginning = async (line: string) => {
  const asker = { ...ODALYS, memberId: `console:${line}`, channelId: line };
  await answer(deps, 'site add garden 53.8,-1.55', NOW, asker);
  await answer(deps, 'triage do:new goto missed by 15 degrees east', NOW, asker);
  return asker;
};

describe('beside a walk', () => {
  it.each([
    'exit pupil 32mm ep in f/5',
    'longest exposure without trails 50mm lens',
    'whats the exit pupil of a 25 mm eyepiece in f/6',
    'what is airmass at 30 deg',
    'air lift at 5 deg',
    'sampling 3.75um pixel 750mm',
    'exposure for m42 with f5',
    'show my reminders',
    'list my sites',
    'saturn at 9',
  ])('goes where it belongs: %s', async (line) => {
    const outcome = await ask(deps, line, NOW, await beginning(line));
    expect(isProblem(outcome) ? undefined : outcome.data['walkId']).toBeUndefined();
    expect(JSON.stringify(outcome)).toContain('Your walk still waits');
  });

  it('what about another hour follows the question of the sky, with no mark behind it', async () => {
    const asker = await beginning('follows');
    await answer(deps, 'is saturn up tonight', NOW, asker);
    const next = await answer(deps, 'what about 10pm', NOW + 1000, asker);
    expect(next.title).toMatch(/^Saturn/u);
    expect(next.notes.join(' ')).toMatch(/Taken to follow.*(?:10 ?pm|22:00)/u);
  });

  it.each([
    'the exposure loop stops after 30 s',
    'time was set to 10pm but it is 9pm',
    'i used vega and capella to align',
    'stars trail after 60 s',
    'the cable is 5 m long',
    'power is 12v battery',
    'after the meridian flip it goes wrong',
    'no change',
  ])('stays with the walk: %s', async (line) => {
    const told = await answer(deps, line, NOW, await beginning(line));
    expect(told.data['walkId']).toMatch(/./u);
  });
});
