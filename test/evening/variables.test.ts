/** When variable stars are next at their extremes, against what others predicted and saw. */
import { expect, it } from 'vitest';
import { answer, realDeps } from '../commands/real-deps.js';

const deps = await realDeps();

it('Algol is at its faintest when an online calculator, found right by observers in New Jersey, has it: 18 September 2022, 01:31 UT', async () => {
  const { facts } = await answer(deps, 'up Algol site:40,-75', Date.UTC(2022, 8, 17, 20));
  // To ten minutes, by elements that take the Earth's place in its orbit for the Sun's (at most 8 minutes).
  expect(facts.find(({ label }) => label === 'It is')?.value).toMatch(
    /next minimum about Sat 17 Sep 2022, 21:[23]0 EDT/u,
  );
});

it('lists stars that vary, and none that binoculars do not show as its period has it', async () => {
  const now = Date.UTC(2026, 10, 27, 20);
  const { facts } = await answer(deps, 'good variable stars for binoculars from 52.71,0.12', now);
  const lines = facts.map(({ value }) => value).join('\n');
  // Among the stars that the American Association of Variable Star Observers gives beginners (from memory), with the ranges that it tells.
  expect(lines).toMatch(/Algol \(β Per\).*mag 2\.1 to 3\.4/u);
  expect(lines).toMatch(/δ Cep.*mag 3\.5 to 4\.4/u);
  const told = [...lines.matchAll(/about (\d+\.\d) then/gu)].map(([, magnitude]) => Number(magnitude));
  expect(told.length).toBeGreaterThan(0);
  // 10 × 50 under a country sky: some 9.5 at most; common practice, no source.
  for (const magnitude of told) expect(magnitude).toBeLessThan(9.5);
});
