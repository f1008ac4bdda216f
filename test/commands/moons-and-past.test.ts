/** "And its moons?", "is it waxing or waning", "and set?", "when did Mars rise", "and tomorrow?": what follows keeps to what was asked about. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 11, 12, 20, 30);
const BETWEEN_MS = 20_000;

/** The title and the words of the last answer of a talk. */
const last = async (lines: readonly string[], nowUtcMs = EVENING): Promise<string> => {
  const deps = await realDeps({ clubSiteText: '54.97,-2.1' });
  let told = '';
  for (const [i, line] of lines.entries()) {
    const outcome = await ask(deps, line, nowUtcMs + i * BETWEEN_MS);
    told = isProblem(outcome) ? outcome.message : `${outcome.title}: ${outcome.summary}`;
  }
  return told;
};

const OF_ITS_MOONS = [
  'and its moons?',
  'its moons',
  'what about its moons',
  'the moons?',
  'can i see its moons',
  'can i see the moons',
  'how many moons can i see',
  'where are its moons',
  'does it have moons',
  'and their moons?',
  'which of its moons show',
];

describe('the moons of the planet that was asked about', () => {
  it.each(OF_ITS_MOONS)('are those of Jupiter: %s', async (line) =>
    expect(await last(['where is jupiter', line])).toMatch(/^Moons of Jupiter/u),
  );

  it.each(OF_ITS_MOONS)('are those of Saturn: %s', async (line) =>
    expect(await last(['is saturn up', line])).toMatch(/^Saturn, .*: Titan \(mag 8\.4\)/u),
  );

  it.each([
    ['can i see saturn’s moons', /Titan/u],
    ['which moons of saturn can i see tonight', /Titan/u],
    ['saturn moons', /Titan/u],
    ['does mars have any moons i can see', /Phobos and Deimos/u],
    ['moons of uranus', /Titania/u],
    ['does venus have moons', /no moon/u],
    ['how many moons has neptune', /Triton/u],
    ['jupiters moons tonight', /^Moons of Jupiter/u],
  ])('are asked for outright: %s', async (line, told) => expect(await last([line])).toMatch(told));

  it.each([
    [['is jupiter up', 'and the moon?'], /^(?:The )?Moon/u],
    [['is jupiter up', 'full moons this month?'], /^The Moon/u],
    [['is saturn up', 'is the moon in the way'], /^(?!Moons)/u],
    [['is vega up', 'and its moons?'], /^(?!Moons of)/u],
  ] as const)('are not meant in %s', async (lines, told) => {
    const said = await last(lines);
    expect(said).toMatch(told);
    expect(said).not.toMatch(/Titan|Moons of/u);
  });

  it('at the hour that was asked about', async () =>
    expect(await last(['where is jupiter at 11pm', 'and its moons?'])).toMatch(
      /^Moons of Jupiter, Sat 12 Dec 2026, 23:00/u,
    ));
});

describe('after an answer of the Moon', () => {
  it.each([
    'is it waxing',
    'is it waning',
    'waxing or waning',
    'is it waxing or waning',
    'waxing?',
    'is she growing',
    'is it growing or shrinking',
    'is it getting bigger',
    'is it getting bigger or smaller',
    'getting fuller?',
  ])('its phase is told: %s', async (line) =>
    expect(await last(['when does the moon rise', line])).toMatch(/axing crescent/u),
  );

  it.each([
    ['and rise?', /Moon rises at 11:27/u],
    ['rise', /Moon rises at 11:27/u],
    ['when does it rise', /Moon rises at 11:27/u],
    ['rise time?', /Moon rises at 11:27/u],
    ['and set?', /Moon sets next on Sun 13 Dec 2026, 19:57/u],
    ['and when does it set', /Moon sets next on Sun 13 Dec 2026, 19:57/u],
    ['rises when', /Moon rises at 11:27/u],
    ['where does it rise', /Moon rises at 11:27 GMT on Sun 13 Dec 2026 in the south-east/u],
    ['sets?', /Moon sets next on Sun 13 Dec 2026, 19:57/u],
    ['set time', /Moon sets next on Sun 13 Dec 2026, 19:57/u],
  ])('its hours are told: %s', async (line, told) =>
    expect(await last(['how bright is the moon', line])).toMatch(told),
  );
});

describe('what has been is told as it was', () => {
  // Astropy 8.0.2, builtin ephemeris, 34′ of refraction, the Moon by its upper edge, to the minute: Mars rose 11 Dec 22:06, Saturn 12 Dec 13:08, the
  // Moon 12 Dec 11:12 and set 18:40 (ours are the last whole minutes before).
  it.each([
    ['when did mars rise', /Mars rose on Fri 11 Dec 2026, 22:0[56] GMT/u],
    ['what time did mars come up', /Mars rose on Fri 11 Dec 2026, 22:0[56] GMT/u],
    ['what time did saturn rise today', /Saturn rose on Sat 12 Dec 2026, 13:0[78] GMT/u],
    ['when did the moon rise', /Moon rose on Sat 12 Dec 2026, 11:1[12] GMT/u],
    ['when did the moon set', /Moon set on Sat 12 Dec 2026, 18:(?:39|40) GMT/u],
    ['what time did the moon go down', /Moon set on Sat 12 Dec 2026, 18:(?:39|40) GMT/u],
    ['last moonset', /Moon set on Sat 12 Dec 2026/u],
    ['when did vega cross the meridian', /Vega crossed the meridian on Sat 12 Dec 2026/u],
    ['when was jupiter highest', /Jupiter crossed the meridian on Sat 12 Dec 2026/u],
  ])('%s', async (line, told) => expect(await last([line])).toMatch(told));

  it('what is to come is told as before', async () => {
    expect(await last(['when does mars rise'])).toMatch(/Mars rises at 22:03 GMT/u);
    expect(await last(['when did mars rise'], Date.UTC(2026, 11, 13, 0, 30))).toMatch(
      /rose on Sat 12 Dec 2026, 22:0[34]/u,
    );
    expect(await last(['is the moon up', 'when did it set'])).toMatch(/Moon set on Sat 12 Dec/u);
  });
});

describe('another night is asked of the same target', () => {
  it.each([
    'what about tonight',
    'and tonight',
    'how about tonight?',
    'and tomorrow?',
    'tomorrow?',
    'saturday?',
    'sunday',
    'and on sunday',
    'what about friday',
    'and next week?',
    'and on the 20th?',
    'in january?',
  ])('%s', async (line) => {
    for (const first of [
      'is mars up',
      'where is mars',
      'up mars',
      'can i see mars with binoculars',
      'when does mars rise',
    ])
      expect(await last([first, line]), first).toMatch(/^Mars\b/u);
  });

  it('and of a night to come nothing is up now', async () =>
    expect(await last(['is mars up', 'and tomorrow?'])).toMatch(/Yes, from 23:1\d GMT/u));
});

describe('a few words more', () => {
  it.each([
    [['is vega up', 'how high at midnight'], /^Vega .*5\.5° high .* 00:00 GMT/u],
    [['is mars up', 'and jupiter', 'how far apart are they'], /^Mars and Jupiter, .*9\.0° apart/u],
    [['is mars up', 'and mizar', 'how far apart are they'], /^Mizar .*: Mizar: 14″ apart/u],
    [['wheres jup', 'n its moons'], /^Moons of Jupiter/u],
    [['is mars up', 'too late, make it friday'], /^Mars, night of Fri 18 Dec/u],
    // Sunset of 12 Dec 2026 at 54.97° N, 2.10° W: the answer of `dark` that stands tested against almanacs.
    [['when did the sun go down'], /The Sun set at 15:40 GMT/u],
    [['is the moon bigger tonight'], /across/u],
  ] as const)('%s', async (lines, told) => expect(await last(lines)).toMatch(told));
});
