/** The evening or the morning of a night, a Moon of so many days, letters of stars, and a star beside another. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { answer, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 27, 19, 0);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
  await answer(deps, 'site add home 50.93,6.95', EVENING);
});

const said = async (line: string): Promise<string> => {
  const { title, summary, facts, notes } = await answer(deps, line, EVENING);
  return [title, summary, ...facts.map(({ label, value }) => `${label}: ${value}`), ...notes].join('\n');
};

describe('the evening or the morning of a night', () => {
  it.each([
    // Greatest western elongation on 3 January 2027: a morning star all that month (planetary phenomena, from memory).
    ['can i see Venus in evening in january', /\nNo: .* Before dawn it shows: \d+° high in the south/u],
    ['can i see venus in the morning in january', /^Venus, night of Thu 14 Jan 2027\nYes, from 06:\d\d CET/u],
    ['kann ich Venus am Abend sehen', /\nNo: /u],
    // Opposition about 10 February 2027: up all night (from memory).
    ['is jupiter visible in the evening in february', /\nYes, from 18:\d\d CET to 00:30 CET/u],
    ['can i see mars tomorrow morning', /^Mars, night of Fri 27 Nov 2026\nYes, from 03:00 CET/u],
    ['Welche Planeten sieht man morgen früh?', /by the hour, 04:00 to 07:00 CET/u],
    ['qué planetas se ven mañana por la mañana', /by the hour, 04:00 to 07:00 CET/u],
  ])('%s', async (line, told) => expect(await said(line)).toMatch(told));

  it('is no good night where it shows in the other part alone', async () => {
    expect((await answer(deps, 'can i see Venus in evening in january', EVENING)).level).not.toBe('good');
  });
});

describe('a young Moon', () => {
  // New Moon 9 December 2026 at 00:52 UT (from memory).
  it.each([
    ['moon is 3 days old where I find it after sunset', /at Sat 12 Dec 2026, 17:\d\d CET[^]*3\.6 days old/u],
    ['where is the 2 day old moon', /at Fri 11 Dec 2026, 17:\d\d CET/u],
    ['when can i see the thin crescent moon', /high in the south[^]*Fri 11 Dec 2026/u],
    ['how old is the moon', /18\.5 days old/u],
    ['crescent nebula where', /^NGC 6888/u],
  ])('%s', async (line, told) => expect(await said(line)).toMatch(told));
});

describe('Bayer letters typed as Latin ones', () => {
  it.each([
    ['o Cet', /^Mira \(ο Cet\)/u],
    ['where is o ceti', /^Mira \(ο Cet\)/u],
    ['a Ori', /^Betelgeuse \(α Ori\)/u],
    ['d Cep', /^δ Cep/u],
    // A star of its own, of magnitude 4.6: the Bright Star Catalogue's HR 1324 (from memory).
    ['b Per', /^b Per/u],
  ])('%s', async (line, told) => expect(await said(line)).toMatch(told));
});

// 11.8′ apart, of old a test of the eye (from memory).
it.each(['how looks Mizar and Alcor in binocular', 'mizar alcor split in binoculars?'])('%s', async (line) =>
  expect(await said(line)).toMatch(/Alcor.* 12′ .*: the eye alone parts them, binoculars with ease/u),
);
