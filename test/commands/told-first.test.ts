/** What people tell first of all: where they are, a site with its height; and the Moon of a night under way. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 27, 18, 18);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const alone = (channelId: string) => ({ ...ODALYS, memberId: `console:${channelId}`, channelId });
const factOf = (facts: readonly { readonly label: string; readonly value: string }[], label: string): string =>
  facts.find((fact) => fact.label === label)?.value ?? '';

describe('where they are', () => {
  // Positions: GeoNames, as the lists here.
  it.each([
    ['La Serena, Chile. 10 inch scope', /^29\.\d+° S/u],
    ['Hello, I am in Granada, Spain. I am here with my daughter', /^37\.1\d° N/u],
    ['We live in Germany, in Köln', /^50\.9\d° N/u],
  ])('%s', async (line, position) => {
    expect(factOf((await answer(deps, line, EVENING, alone(line))).facts, 'Position')).toMatch(position);
  });

  it('does not keep a place where a trouble is told behind it', async () => {
    const asker = alone('trouble');
    const outcome = await ask(deps, 'La Serena, Chile. my mount will not connect', EVENING, asker);
    expect(isProblem(outcome) ? '' : outcome.title).not.toMatch(/^Site saved/u);
  });

  it('keeps a height as the height, and not in the name', async () => {
    const { title, facts } = await answer(deps, 'save site Pangue -30.12 -70.9 1100m', EVENING, alone('height'));
    expect([title, factOf(facts, 'Elevation')]).toEqual(['Site saved: pangue', '1100 m']);
  });

  it('means the town they stand in', async () => {
    const asker = alone('granada');
    await answer(deps, 'my site is Granada, Spain', EVENING, asker);
    expect(isProblem(await ask(deps, 'eclipse of 2 august 2027 in Granada', EVENING, asker))).toBe(false);
  });
});

it('lists the reminders where all are to be deleted, and deletes nothing unasked', async () => {
  expect((await answer(deps, 'delete them all', EVENING, alone('delete'))).notes.join(' ')).toMatch(
    /remind cancel all/u,
  );
});

// Cologne: the Moon rises at 19:14 CET that evening, 86 % lit (reckoned apart, low precision).
describe('the Moon of a night under way', () => {
  const cologne = async (line: string, utcMs: number) => {
    const asker = alone(`${utcMs} ${line}`);
    await answer(deps, 'site add garden 50.94,6.96', utcMs, asker);
    return answer(deps, line, utcMs, asker);
  };

  it('is no more told of as away once it has risen', async () => {
    expect((await cologne('is it dark without moon tonight', EVENING)).summary).toMatch(/^No, not any more/u);
    expect((await cologne('whats up tonight', EVENING)).notes.join(' ')).not.toMatch(/No Moon/u);
  });

  it('is away before', async () => {
    expect((await cologne('is it dark without moon tonight', EVENING - 3_600_000)).summary).toMatch(
      /^Yes, no Moon 18:3/u,
    );
  });

  // Last quarter on 1 December 2026 (almanac, from memory): it rises about midnight and later.
  it('is said to rise later in the dark', async () => {
    const { notes } = await cologne('tonight on:2026-12-03', EVENING);
    expect(notes.join(' ')).toMatch(/No Moon until it rises 0\d:\d\d/u);
  });
});
