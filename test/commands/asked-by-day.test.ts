/** What is asked of the sky while the Sun is up: that it is day is said first, and nobody is sent about it by hand. */
import { beforeAll, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { answer, realDeps } from './real-deps.js';

/** 09:10 in Wellington. The Sun 36° high, azimuth 87°: by the Astronomical Almanac's low-precision formulas (page C5, from memory), 36.4° and 87.2°. */
const MORNING = Date.UTC(2026, 10, 27, 20, 10);
/** Nautical twilight in the evening: the Sun 10° down. */
const DUSK = Date.UTC(2026, 10, 28, 8, 35);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
  await answer(deps, 'site add home -41.29,174.78', MORNING);
});

it.each(['how do I find Antares now', 'how do I find Mercury now', 'how do I find Venus now', 'hop to M 7'])(
  '%s: no way by hand towards it',
  async (line) => {
    const { summary, level } = await answer(deps, line, MORNING);
    expect(summary).toMatch(/^No, not by day: the Sun is up now, \d+° from it, and no star shows to go by\./u);
    expect(level).not.toBe('good');
  },
);

it('tells the way of the night where the target has one', async () => {
  const { summary } = await answer(deps, 'how do i find mars now', MORNING);
  expect(summary).toMatch(/^No, not by day: .* In the dark, 04:\d\d NZDT: From Regulus/u);
});

it('goes by no star that the twilight hides', async () => {
  const { summary } = await answer(deps, 'how do i find NGC 2070 now', DUSK);
  // Dim stars show from astronomical twilight on. Common practice, no source.
  const magnitudes = [...summary.matchAll(/\(mag (\d\.\d)\)/gu)].map(([, magnitude]) => Number(magnitude));
  for (const magnitude of magnitudes) expect(magnitude).toBeLessThan(4);
});

it.each([
  'which star is the very bright one in the east',
  'what is that bright thing east of me',
  'whats that shining thing in the sky',
])('%s: the Sun, which stands there', async (line) => {
  const { summary, level } = await answer(deps, line, MORNING);
  expect(summary).toMatch(/^It is day then: that is the Sun, 36° high in the east, 87°\. Do not look at it/u);
  expect(level).toBe('danger');
});

it('says where the Sun stands, where another side of the sky is asked about', async () => {
  const { summary, level } = await answer(deps, 'bright star in the west', MORNING);
  expect(summary).toMatch(/^It is day then, the Sun 36° high in the east, 87°: never sweep/u);
  expect(level).not.toBe('good');
});

it('says of "now" that it is day', async () => {
  const { summary } = await answer(deps, 'whats up now', MORNING);
  expect(summary).toMatch(/^It is day now, the Sun is up: this is for the coming night\./u);
});

it.each(['is Mercury visible at noon', 'can we find venus at lunch time with it'])('%s: not by hand', async (line) => {
  const { summary, level } = await answer(deps, line, MORNING);
  expect(summary).toMatch(/^No, not by eye or by hand/u);
  expect(level).not.toBe('good');
});
