/** Sun cream, a sun hat, a sun sign: named after the Sun, and no question of it. What is of the Sun is warned of as before. */
import { beforeAll, describe, expect, it } from 'vitest';
import { withSunThings } from '../../bot/commands/asking/sun-things.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps, strangers } from './real-deps.js';

const NOON = Date.UTC(2026, 11, 12, 12, 30);
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const stranger = strangers('wenefrid');
const answerTo = async (line: string): Promise<string> => {
  const outcome = await ask(deps, line, NOON, stranger());
  return isProblem(outcome) ? outcome.message : `${outcome.title}. ${outcome.summary}`;
};

describe('what is only named after the Sun', () => {
  it.each([
    'is sun cream ok near optics',
    'sun cream ok near optics?',
    'what sun cream is best',
    'does sun lotion harm the coatings',
    'sun tan lotion on the lens, how do i clean it',
    'sun hat or beanie for the star party',
    'we had sun dried tomatoes at the meeting',
    'i got a sun burn mowing the lawn',
    'is sun screen bad for the focuser',
    'my sun sign is leo',
    'my sun sign is leo, whats yours',
  ])('is no target and no danger: %s', async (line) => {
    const told = await answerTo(line);
    expect(told).not.toMatch(/solar filter|Found no target|Abell|the Sun and/iu);
  });

  it.each([
    'my sun sign is leo',
    'im a leo',
    'i was born under taurus',
    'what does leo mean for love this week',
    'read my horoscope',
    'my moon sign is pisces',
  ])('nor has it a place in the sky: %s', async (line) =>
    expect(await answerTo(line)).toMatch(/nothing of what they would mean/u),
  );

  it.each([
    ['is leo good for galaxies tonight', /Leo/u],
    ['is leo up tonight', /Leo/u],
    ['sun shades over the scope can i look at the sun', /^No/u],
    ['can i project the sun on a sun screen', /Sun|beam/u],
    ['can i look at the sun with sun cream on', /^No/u],
  ])('the rest is read as before: %s', async (line, told) => expect(await answerTo(line)).toMatch(told));

  it('what is to be reminded of keeps its words', () =>
    expect(withSunThings('remind me at 9 to bring sun cream')).toBe('remind me at 9 to bring sun cream'));
});
