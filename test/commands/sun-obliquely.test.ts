/** The Sun without its name: warned of as by name; what is bright at night is none. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps } from './real-deps.js';

const AT_NIGHT = Date.UTC(2026, 10, 28, 4, 30);
const isWarned = async (line: string): Promise<boolean> => {
  // What was warned of before is remembered.
  const deps = await realDeps({ clubSiteText: '54.97,-2.1' });
  const said = await ask(deps, line, AT_NIGHT);
  return isProblem(said) && said.problem === 'not-safe';
};

describe('the Sun by another name', () => {
  it.each([
    'can i have a quick squint at the big yellow one at lunchtime through the dob',
    'quick look at the big bright thing at lunch with my dob',
    'want to see the day star in my binos',
    'look at our nearest star through the finder',
    'aim at the lamp of the day with binos',
  ])('is warned of: %s', async (line) => {
    expect(await isWarned(line)).toBe(true);
  });

  it.each([
    'how far is our nearest star',
    'what is the bright thing in the east',
    'what is that bright thing in the south this morning',
    'is the big bright one jupiter',
  ])('is none: %s', async (line) => {
    expect(await isWarned(line)).toBe(false);
  });
});
