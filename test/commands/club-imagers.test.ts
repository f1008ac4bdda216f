/** What imagers, and members whose English is another language, ask of a night. */
import { describe, expect, it } from 'vitest';
import { at, EVENING, wordsOf } from './an-evening-in-york.js';
import { answer, ask } from './real-deps.js';

const YORK = await at('"York, England"');

describe('a camera’s numbers', () => {
  it.each([
    // 206.265 × 2.4 / 250 and 206.265 × 3.8 / 2000 (the definition of the radian).
    ['image scale for 2.4 micron pixels at 250mm', /^1\.98″ a pixel/u],
    ['what arcsec per pixel is 3.8um on 2000mm', /^0\.39″ a pixel/u],
    // 2 arctan(18 / 200), 2 arctan(12 / 200); 2 arctan(11.75 / 400), 2 arctan(7.8 / 400).
    ['fov of full frame at 200mm', /^10\.29° × 6\.87°/u],
    ['field of view aps-c 400mm', /^3\.37° × 2\.23°/u],
  ])('%s', async (line, title) => {
    expect((await answer(YORK, line, EVENING)).title).toMatch(title);
  });
  it('an eyepiece’s stay an eyepiece’s', async () => {
    expect(await wordsOf(YORK, 'field of view 25mm 52 deg eyepiece 1200mm scope')).toMatch(/48×/u);
  });
});

describe('hours before the Moon', () => {
  it('are told of one night', async () => {
    // Skyfield 1.55: the Moon rises at Denver on 27 November 2026 at 19:57 MST.
    const told = await wordsOf(
      await at('"Denver, Colorado"'),
      'how many hours can i get on the california nebula before the moon gets up',
      Date.parse('2026-11-28T01:30Z'),
    );
    expect(told).toMatch(/to 19:5\d MST/u);
  });
});

describe('a height and its hour', () => {
  it('is no word left over', async () => {
    expect(await wordsOf(YORK, 'what time is jupiter at 30 degrees')).toMatch(/Above 30° from/u);
  });
  it('Algol’s dips are its minima', async () => {
    expect(await wordsOf(YORK, 'will algol dip this week')).toMatch(/Next minima of Algol/u);
  });
});

describe('asked in another language', () => {
  it.each([
    ['hola, que planetas se ven esta noche', /^Worth seeing/u],
    ['y a que hora sale la luna', /^Moon/u],
    ['welche planeten sind heute abend sichtbar', /^Worth seeing/u],
    ['quais planetas posso ver hoje', /^Worth seeing/u],
    ['jakie planety widac dzisiaj', /^Worth seeing/u],
  ])('%s', async (line, title) => {
    expect(await wordsOf(YORK, line)).toMatch(title);
  });
  it.each([
    ['i want know what is star very shiny in east now', /^Bright in the east/u],
    ['at what hour moon is go down tomorrow', /Moon sets on Sat 28 Nov/u],
    ['when jupiter rise up from horizon please', /Jupiter rises at 22:1\d/u],
  ])('or in English learnt late: %s', async (line, words) => {
    expect(await wordsOf(YORK, line)).toMatch(words);
  });
  it('“in 2 hrs” follows', async () => {
    const deps = await at('"York, England"');
    await ask(deps, 'jupiter', EVENING);
    expect(await wordsOf(deps, 'how about in 2 hrs', EVENING + 30_000)).toMatch(/At 21:1\d GMT/u);
  });
});

describe('south by the Cross', () => {
  it('is told without the North Star', async () => {
    const told = await wordsOf(YORK, 'southern cross pointers how to find south');
    expect(told).toContain('four and a half times');
    expect(told).not.toContain('North Star');
  });
});

describe('two in one field', () => {
  it.each([
    // M 81 and M 82 are 0.6° apart, M 42 is 1.4° long with its outer nebula: the catalogue's own figures; the field is 50 over 40.
    ['m81 and m82 same field with 25mm in 1000mm?', /Yes: M 81 and M 82 are 0\.6° apart/u],
    ['do m42 and m45 fit in one field with 25mm in 1000mm', /No: M 42 and M 45 are 39\.\d° apart/u],
    ['does m42 fit with 25mm in 1000mm', /No: M 42 is 1\.4° long/u],
    // Twice 130.
    ['is 300x too much for my 130mm', /^260×\nYes, 300× is too much/u],
    ['is 150x too much for my 130mm', /^260×\nNo, 150× is within it/u],
  ])('%s', async (line, words) => {
    expect(await wordsOf(YORK, line)).toMatch(words);
  });
});

describe('mornings and evenings', () => {
  it('“remind me tomorrow when Venus rises” is of tomorrow’s morning', async () => {
    // Skyfield 1.55: Venus rises at York at 04:16 UTC on 28 November 2026; 15° high it is by six.
    const told = await answer(await at('"York, England"'), 'remind me tomorrow when venus rises', EVENING);
    expect(told.summary).toMatch(/^Sat 28 Nov 2026, 0[4-6]:/u);
  });
  it('what passes after midnight stays of tomorrow’s night', async () => {
    const told = await answer(await at('"York, England"'), 'remind me tomorrow when m42 transits', EVENING);
    expect(told.summary).toMatch(/^Sun 29 Nov 2026, 01:0\d/u);
  });
  it('tomorrow morning ends this night', async () => {
    const deps = await at('"York, England"');
    await ask(deps, 'jupiter', EVENING);
    expect(await wordsOf(deps, 'no i meant tomorrow morning', EVENING + 30_000)).toMatch(
      /^Jupiter, night of Fri 27 Nov/u,
    );
  });
  it('a height said with its unit is no inch', async () => {
    expect(await wordsOf(YORK, 'how many hours of ic 1396 above 30° in darkness tonight')).toMatch(/Above 30°/u);
  });
});

it.each([
  ['whats good for a complete beginner with 70mm refractor this evening', /70 mm telescope/u],
  ['my 5 yr old wants see a planet b4 8.30', /^Worth seeing[^]*to 20:30/u],
  ['is m33 any good from town bortle 7 with 8in', /203 mm telescope under a city sky/u],
  ['full moon when next', /Full Moon Thu 24 Dec/u],
  ['is jupiter and mars near each other tonight', /° apart/u],
  ['how long is the night on saturday', /^The dark of Sat 28 Nov/u],
  ['what are the two fuzzy patches in the south', /^Large Magellanic Cloud/u],
])('heard as it is typed: %s', async (line, words) => {
  // The full Moon of 24 December 2026, 01:28 UTC: the almanacs' date.
  expect(await wordsOf(YORK, line)).toMatch(words);
});
