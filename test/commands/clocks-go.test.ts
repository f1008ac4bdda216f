/** When the clocks go forward and back, where the asker usually stands; a controller's clock is none of it. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { realDeps } from './real-deps.js';

const FEBRUARY = Date.UTC(2027, 1, 1, 19, 0);

const asked = async (line: string, site: string | null = '54.97,-2.1', nowUtcMs = FEBRUARY): Promise<string> =>
  wordsOf(await realDeps({ clubSiteText: site }), line, nowUtcMs);

describe('the clocks', () => {
  // 01:00 GMT on the last Sundays of March and October: the Summer Time Order 2002 (S.I. 2002/262), from memory.
  it.each([
    ['when do clocks go forward', /forward on Sun 28 Mar 2027, from 01:00 to 02:00; back on Sun 31 Oct 2027/u],
    ['when do the clocks change', /go forward on Sun 28 Mar 2027/u],
    ['when do the clocks go back this year?', /go back on Sun 31 Oct 2027, from 02:00 to 01:00/u],
    ['do the clocks change this weekend', /go forward on Sun 28 Mar 2027/u],
    ['when does summer time start', /go forward on Sun 28 Mar 2027/u],
    ['when should i put my clock back', /go back on Sun 31 Oct 2027/u],
    ['when is the next clock change', /go forward on Sun 28 Mar 2027/u],
  ])('%s', async (line, told) => expect(await asked(line)).toMatch(told));

  // 2 a.m. on the second Sunday of March: the US Energy Policy Act of 2005, section 110, from memory.
  it('go by another rule elsewhere', async () =>
    expect(await asked('when do the clocks go forward', '35.1,-106.6')).toMatch(
      /Sun 14 Mar 2027, from 02:00 to 03:00/u,
    ));

  // Iceland keeps UTC all year: from memory.
  it('stay as they are in Iceland', async () =>
    expect(await asked('when do the clocks go forward', '64.1,-21.9')).toMatch(/are not changed/u));

  it('are told by the rule where no place is known', async () =>
    expect(await asked('when do the clocks go forward', null)).toMatch(/last Sunday of March/u));

  it.each([
    'the clock of my handset goes back to 2000',
    'my clock is an hour back',
    'when i power it off the clock goes back an hour',
  ])('%s is of the mount', async (line) => expect(await asked(line)).not.toMatch(/^The clocks/u));
});
