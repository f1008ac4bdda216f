/** Hours and days as observers write them, eclipses that run over midnight, and what no walk takes for an answer. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 27, 19, 0);
const COLOGNE = 'site add home 50.93,6.95';
const WINDHOEK = 'site add home -22.56,17.08';

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const at = async (site: string, ...lines: readonly string[]): Promise<string> => {
  const asker = { ...ODALYS, memberId: `console:${site}${lines.join()}`, channelId: lines.join() };
  await answer(deps, site, EVENING, asker);
  let said = '';
  for (const [i, line] of lines.entries()) {
    const outcome = await ask(deps, line, EVENING + 1000 * i, asker);
    said = isProblem(outcome)
      ? `${outcome.problem}: ${outcome.message}`
      : [outcome.title, outcome.summary, ...outcome.facts.map(({ value }) => value), ...outcome.notes].join('\n');
  }
  return said;
};

describe('hours and days in figures', () => {
  it.each([
    ['best galaxies 2200-0100 356mm', /10 targets by the hour, 22:00 to 01:00 CAT/u],
    ['clusters 2000-2300', /to 23:00 CAT/u],
    ['dark 28/11', /^The dark of Sat 28 Nov 2026/u],
    ['dark 2811', /^The dark of Sat 28 Nov 2026/u],
    ['dark 1212', /^The dark of Sat 12 Dec 2026/u],
    ['SMC 2045', /At 20:45 CAT/u],
    ['NGC 253 transit', /\nNGC 253 crosses the meridian/u],
    ['sunrise 2911', /rises on Sun 29 Nov 2026/u],
    ['sidereal 2200', /at Fri 27 Nov 2026, 22:00 CAT/u],
    ['NGC 2811', /^NGC 2811/u],
    ['Venus 1300 goto', /^The Sun and Venus\n.*stands \d+° high[^]*Sat 28 Nov 2026, 13:00 CAT/u],
    ['M 8 1900 10 dec safe?', /^The Sun and M 8\n[^]*Thu 10 Dec 2026, 19:00 CAT/u],
    ['is it safe to aim at M 8 now 1900 dec 10', /^The Sun and M 8\n[^]*Thu 10 Dec 2026, 19:00 CAT/u],
    ['planets Dec 2026', /^Worth seeing, night of Tue 15 Dec 2026/u],
    ['conj 2027 Venus Jupiter', /Venus and Jupiter, 0\.5° apart Thu 26 Aug 2027/u],
    // Total at Windhoek that morning: NASA's five millennium catalogue of solar eclipses, from memory.
    ['25 Nov 2030 eclipse', /^What is coming: eclipses\nTotal eclipse of the Sun, Mon 25 Nov 2030/u],
    ['is there an eclipse on 3 march 2027', /\nNone is seen from here on Wed 3 Mar 2027\. Next after it: /u],
  ])('%s', async (line, told) => expect(await at(WINDHOEK, line)).toMatch(told));
});

it('dates each instant of an eclipse that runs over midnight', async () => {
  // Penumbra enters 20 Feb 21:12, greatest 23:13, leaves 21 Feb 01:14 UT: NASA's catalogue of lunar eclipses, from memory.
  expect(await at(COLOGNE, 'list all eclipses of the moon')).toMatch(
    /Sat 20 Feb 2027, 22:12 to Sun 21 Feb, 02:14 CET; greatest Sun 21 Feb, 00:13/u,
  );
});

describe('an eyepiece is no telescope', () => {
  it('and is not kept as one', async () => {
    const asked = 'what is best eyepiece for Albireo, I have 20 and 9 mm';
    expect(await at(COLOGNE, asked)).toMatch(/^Albireo/u);
    expect(await at(COLOGNE, asked, 'when is Algol minimum')).toMatch(/Next minima of Algol/u);
  });

  it('nor does what no telescope is fail what is asked after it', async () => {
    expect(await at(COLOGNE, 'up Albireo with:9mm', 'when is Algol minimum')).toMatch(/Next minima of Algol/u);
  });
});

describe('moons', () => {
  it.each([
    ['wich moons can we see tonite', /^Moons of Jupiter/u],
    ['what is the moon doing', /^The Moon/u],
    // Jupiter rises at 22:50 there that evening: by the morning hour it stands in the south.
    ['which moons of Jupiter at 6', /^Moons of Jupiter, Sat 28 Nov 2026, 06:00 CET/u],
  ])('%s', async (line, told) => expect(await at(COLOGNE, line)).toMatch(told));
});

describe('while a walk waits', () => {
  it.each([
    ['NGC 1365 300mm', /^NGC 1365/u],
    ['doubles 1 to 2 arcsec tonight', /^Worth seeing/u],
    ['Io shadow transit this week', /^Moons of Jupiter/u],
    ['algol min here', /^Algol/u],
    ['beta Per visible Windhoek', /^Algol/u],
    ['tracking Saturn start 1800 sun still up', /^The Sun and Saturn/u],
    ['Antares now', /^Antares/u],
    ['SMC 2045', /^NGC 292/u],
    ['take flats at noon cap off', /^not-safe: No, not with tube or finder open/u],
  ])('%s is answered, and the walk stays', async (line, told) => {
    const walk = 'triage do:new goto missed by 15 degrees';
    const said = await at(WINDHOEK, walk, line);
    expect(said).toMatch(told);
    expect(await at(WINDHOEK, walk, line, 'no change')).not.toMatch(/unknown-command/u);
  });
});
