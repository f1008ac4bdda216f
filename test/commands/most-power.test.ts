/** The highest power, asked after other figures: by the aperture that was told; a telescope told in a question of figures is one's own after it. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 14, 22, 0);

const talk = async (...lines: readonly string[]): Promise<string> => {
  const deps = await realDeps({ clubSiteText: '54.97,-2.1' });
  let told = '';
  for (const [i, line] of lines.entries()) told = await wordsOf(deps, line, EVENING + i * 20_000);
  return told;
};

const FIELD = 'whats the field with a 25mm plossl on 1200mm';

describe('the highest power', () => {
  // Twice the aperture in millimetres: common practice, no source.
  it.each([
    [[FIELD, 'whats the max magnification'], /^Highest power\nTwice the aperture/u],
    [['how faint can my 10 inch go', FIELD, 'whats the max magnification'], /^508×/u],
    [['power with 10mm on my 8 inch f6 dob', 'highest useful power'], /^406×/u],
    [[FIELD, 'whats the magnification'], /^48×/u],
  ] as const)('%s', async (lines, told) => expect(await talk(...lines)).toMatch(told));
});

describe('a telescope told in a question of figures', () => {
  it('is what the next is answered for', async () =>
    expect(await talk('how faint can my 10 inch go', 'can i split castor')).toMatch(/254 mm telescope/u));

  it('an eyepiece is none', async () =>
    expect(await talk('how much does my 32mm eyepiece magnify', 'up m1')).toMatch(/150 mm telescope/u));
});
