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
