/** Hours by the words beside them: of the night, by day, and in the small hours of the evening to come. What is meant by each is common practice, no source. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { realDeps } from './real-deps.js';

const deps = await realDeps({ clubSiteText: '53.96,-1.08' });
const EVENING = Date.UTC(2026, 11, 12, 20, 30);
const SMALL_HOURS = Date.UTC(2026, 11, 13, 4, 25);
const BY_DAY = Date.UTC(2026, 11, 13, 10, 0);

describe('the hour that is meant', () => {
  it.each([
    [EVENING, 'how high is vega at 2 in the night', /Sun 13 Dec 2026, 02:00/u],
    [EVENING, 'where is jupiter at 4 at night', /Sun 13 Dec 2026, 04:00/u],
    [EVENING, 'where is jupiter at 11 at night', /Sat 12 Dec 2026, 23:00/u],
    [EVENING, 'where is jupiter at 12 at night', /Sun 13 Dec 2026, 00:00/u],
    [BY_DAY, 'venus in daylight at 11 tomorrow', /At 11:00 GMT/u],
    [BY_DAY, 'where is venus by day at 2', /Sun 13 Dec 2026, 14:00/u],
  ] as const)('%d: %s', async (now, line, pattern) => expect(await wordsOf(deps, line, now)).toMatch(pattern));
});

describe('in the small hours', () => {
  it.each([
    ['how high is saturn this evening', /night of Sun 13 Dec/u],
    ['saturn heute Abend', /night of Sun 13 Dec/u],
    ['saturne ce soir', /night of Sun 13 Dec/u],
    ['how high is saturn tonight at 9pm', /Sun 13 Dec 2026, 21:00/u],
    ['how high is jupiter this evening at midnight', /Mon 14 Dec 2026, 00:00/u],
    ['is jupiter up tonight at midnight', /night of Sun 13 Dec/u],
    // The night in progress goes on until six.
    ['how high is jupiter tonight at 5am', /Sun 13 Dec 2026, 05:00/u],
    ['is jupiter up tonight', /night of Sat 12 Dec/u],
    ['remind me at 6 to park', /Sun 13 Dec 2026, 06:00/u],
    ['remind me at 6pm to park', /Sun 13 Dec 2026, 18:00/u],
  ] as const)('%s', async (line, pattern) => expect(await wordsOf(deps, line, SMALL_HOURS)).toMatch(pattern));
});

describe('drift in dec', () => {
  it.each(['drift in dec', 'my guiding has drift in dec'])('%s: of declination, and no month', async (line) =>
    expect(await wordsOf(deps, line, EVENING)).not.toMatch(/does not fit|15 Dec|did not follow/u),
  );
});
