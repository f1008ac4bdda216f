/**
 * The Moon's partial eclipse of 28 August 2026 as it is asked about while it is on. Times: NASA's catalogue of lunar eclipses, umbral contacts at 02:34
 * and 05:52 UTC, greatest 04:13, magnitude 0.93 (from memory, to a minute).
 */
import { beforeAll, describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { realDeps, strangers, talk } from './real-deps.js';

const DURING = Date.UTC(2026, 7, 28, 3, 50);
const WITHOUT = Date.UTC(2027, 6, 20, 21, 50);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const stranger = strangers('maelis');
const told = async (lines: readonly string[], nowUtcMs: number): Promise<string> => {
  const last = (await talk(deps, lines, nowUtcMs, stranger())).at(-1);
  if (last === undefined || isProblem(last)) throw new Error(`${lines.join('; ')}: ${last?.message ?? 'nothing'}`);
  return JSON.stringify([last.summary, last.facts, last.notes]);
};

describe('while the Moon is eclipsed', () => {
  it.each(['theres a bite out of the moon whats going on', 'why is the moon so red', 'half of the moon is missing'])(
    '%s',
    async (line) => {
      expect(await told([line], DURING)).toMatch(/Partial eclipse of the Moon, Fri 28 Aug, 03:34 to 06:52 BST/u);
    },
  );

  it.each(['how long does it last', 'how much is covered', 'will it go red', 'when does it end'])(
    'then: %s',
    async (line) => {
      expect(await told(['any eclipse tonight', line], DURING)).toMatch(/greatest 05:13, 97 % covered/u);
    },
  );

  it('the Moon itself is told with it', async () => {
    expect(await told(['up moon'], DURING)).toMatch(/Partial eclipse of the Moon/u);
  });

  it('one that is seen is not said to be missed here, where a total one is asked for', async () => {
    expect(await told(['any eclipse tonight', 'when is the next total one'], DURING)).not.toMatch(
      /not seen from here/u,
    );
  });
});

it('a red Moon without an eclipse is the Moon', async () => {
  expect(await told(['why is the moon so red'], WITHOUT)).not.toMatch(/eclipse/u);
});
