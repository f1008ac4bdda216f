/** Hours in four figures, as observers and the 24-hour clock write them; and figures that are none. The sentences are ours. */
import { describe, expect, it } from 'vitest';
import { answer, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 20);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const told = async (line: string): Promise<string> => {
  const { title, summary, facts } = await answer(deps, line, NOW);
  return [title, summary, ...facts.map(({ label, value }) => `${label} ${value}`)].join('\n');
};

describe('an hour in four figures', () => {
  it.each([
    ['slew to venus 0900 tomorrow, safe?', '09:00 GMT'],
    ['safe to slew to venus at 0700 tomorrow', 'Sat 28 Nov 2026, 07:00 GMT'],
    ['sidereal time 2300 local', '23:00 GMT'],
    ['Saturn 2230', 'At 22:30 GMT'],
    ['how high is vega 0300', 'Sat 28 Nov 2026, 03:00 GMT'],
    ['saturn tonight 2030', 'At 20:30 GMT'],
  ])('%s', async (line, hour) => {
    expect(await told(line)).toContain(hour);
  });

  // Where the Sun is up, the way past it is reckoned for the hour that was said.
  it('is the same to the Sun as its twelve hours', async () => {
    expect(await told('slew to venus 0900 tomorrow, safe?')).toBe(await told('slew to venus 9am tomorrow, safe?'));
  });

  it.each([
    ['next solar eclipse 2030', 'in 2030'],
    ['perseids 2030', 'in 2030'],
    ['up ngc 2244', 'NGC 2244'],
    ['up ic 1805', 'IC 1805'],
  ])('is not what "%s" has', async (line, kept) => {
    const said = await told(line);
    expect(said).toContain(kept);
    expect(said).not.toMatch(/At (?:20:30|22:44|18:05)/u);
  });
});
