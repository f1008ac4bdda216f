/** What a newcomer asks on a phone at night: an eclipse's kind kept, a small place and a telescope told, the Moon first, hours that are past, the Sun aimed at. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { said } from './an-evening-in-york.js';
import { ask, ODALYS, realDeps } from './real-deps.js';

const LATE = Date.UTC(2026, 10, 27, 22, 42);
const HEXHAM = '54.97,-2.1';

const talk = async (lines: readonly string[], nowUtcMs = LATE): Promise<string> => {
  const deps = await realDeps({ clubSiteText: HEXHAM });
  let told = '';
  for (const [i, line] of lines.entries()) {
    const outcome = await ask(deps, line, nowUtcMs + i * 1000, ODALYS);
    told = isProblem(outcome) ? `${outcome.problem}: ${outcome.message}` : said(outcome);
  }
  return told;
};

// NASA's catalogues of eclipses, from memory: total of the Moon 31 Dec 2028, 26 Jun 2029 and 20 Dec 2029; of the Sun 2 Aug 2027, total at Luxor.
describe('an eclipse keeps its kind', () => {
  it.each([
    [
      ['whens the next total eclipse here', 'and after that'],
      /After the next total one: Total eclipse of the Moon, Tue 26 Jun 2029/u,
    ],
    [['wen is the nxt total eclipse', 'n after that?', 'next one?'], /Total eclipse of the Moon, Thu 20 Dec 2029/u],
    [
      ['whens the next lunar eclipse', 'is there a solar one i can see from here'],
      /Partial eclipse of the Sun, Mon 2 Aug 2027/u,
    ],
    [
      ['when is the next eclipse', 'whens the total one'],
      /Next total one: Total eclipse of the Moon, Sun 31 Dec 2028/u,
    ],
    [['next total solar eclipse from luxor', 'when is C2'], /C1 11:40, C2 13:02, C3 13:0[89], C4 14:2\d/u],
    [
      ['when is the next solar eclipse', 'how long between C2 and C3'],
      /no C2 and no C3, and the filter stays on throughout/u,
    ],
    // Oppositions of Mars: 19 Feb 2027 and 25 Mar 2029, almanacs, from memory.
    [['when is mars at opposition', 'and the next one'], /After the next: Mars, opposition Sun 25 Mar 2029/u],
    [['when are the perseids', 'what comes after'], /After the next: Perseids, night of (?:Fri 11|Sat 12) Aug 2028/u],
  ] as const)('%s', async (lines, told) => expect(await talk(lines)).toMatch(told));

  it('is told in a line or two, and of the Moon without a warning of the Sun', async () => {
    const deps = await realDeps({ clubSiteText: HEXHAM });
    const outcome = await ask(deps, 'when is the next lunar eclipse', LATE);
    expect(outcome).toMatchObject({ level: 'info', cautions: [], facts: [{ label: 'Partial eclipse of the Moon' }] });
  });
});

describe('a place and a telescope told together', () => {
  it.each([
    'im in corbridge with a 10 inch dob',
    'I live in Corbridge and have a 10 inch dob',
    'got a 10 inch dob here in corbridge',
    'at corbridge w my 10 inch reflector',
  ])('%s', async (line) => {
    expect(await talk([line])).toMatch(/Found as Corbridge, England.*\n?.*evening are for the 10 inch/su);
    expect(await talk([line, 'up m31'])).toMatch(/in a 254 mm telescope/u);
  });

  it.each([
    ['I live in Nether Wibble near Hexham', /Found as Hexham.*I do not know Nether Wibble: took Hexham beside it/su],
    ['based in otterburn, 200mm newtonian', /^unknown-place/u],
    ['im in love with my 10 inch dob', /^unknown-command/u],
    ['in bed with a 10 inch dob', /^unknown-command/u],
  ] as const)('%s', async (line, told) => expect(await talk([line])).toMatch(told));

  it('the sky told is used as well, and what is said for once is not kept', async () => {
    expect(await talk(['im under a dark sky with a 12 inch', 'up m31'])).toMatch(
      /in a 305 mm telescope under a dark sky/u,
    );
    expect(await talk(['can i see m31 with an 8 inch', 'up m31'])).toMatch(/in a 150 mm telescope/u);
  });
});

describe('what is asked of the last target', () => {
  it.each([
    [['up m31', 'i cant find it'], /At 22:42 GMT it is 64° high in the west-south-west\. From Mirach/u],
    [['up venus', "i can't see it"], /it is below the horizon/u],
    [['up m31', 'wen is best'], /\nBest at/u],
    [['up vega', 'what about capella', 'which is higher'], /^Vega.*and Capella.*\nCapella stands higher/u],
    [['moon', 'is it full'], /^The Moon.*\nWaning gibbous/u],
  ] as const)('%s', async (lines, told) => expect(await talk(lines)).toMatch(told));

  it('by day the same words send nobody sweeping', async () =>
    expect(await talk(['up m31', 'i cant find it'], Date.UTC(2026, 10, 27, 12, 42))).toMatch(
      /Never sweep for it: one pass over the Sun blinds/u,
    ));

  it('beside a walk they are the walk’s', async () =>
    expect(await talk(['triage nothing connects', 'i cant find it'])).toMatch(/^Step 2/u));
});

describe('an hour without am or pm', () => {
  it.each([
    ['how hi is the moon at 10', /22:00 GMT, 42 min ago/u],
    ['where will mars be at 6', /Sat 28 Nov 2026, 06:00 GMT.*Took 06:00 of the coming morning/su],
    ['how high was saturn at 9', /Fri 27 Nov 2026, 21:00/u],
    ['how high is vega at 11', /Fri 27 Nov 2026, 23:00 GMT\.\n/u],
  ] as const)('%s', async (line, told) => expect(await talk([line])).toMatch(told));
});

describe('the bright thing', () => {
  it('is the Moon where it stands there, and nothing nearly overhead', async () =>
    // Moon 84 % lit, 31° high at azimuth 92°: astropy 8.0's own ephemeris.
    expect(await talk(['whats the bright thing in the east'])).toMatch(
      /Most likely the Moon, 84 % lit: 31° high in the east/u,
    ));
});

describe('aiming at the Sun, and what is held before it', () => {
  // Common practice, no source.
  it.each([
    ['how do i find the sun w the scope', /^not-safe: No, .*shadow on the ground is smallest/u],
    [
      'cant find the sun in my telescope with the solar filter on',
      /^not-safe: No, .*shadow on the ground is smallest/u,
    ],
    ['how do i find the sun with the finder', /^not-safe: No, unless/u],
    ['how do i find the sun without a filter', /^not-safe: No, unless/u],
    ['filter has a pinhole', /^not-safe: No, not with that filter/u],
    ['can i use welding glass number 10 for the sun', /^not-safe: No, .*10 lets through too much/u],
    ['flats now', /^In short\n.*light panel/u],
    ['park position for day', /^In short\nNo position is safe open/u],
  ] as const)('%s', async (line, told) => expect(await talk([line])).toMatch(told));
});

it('sunset is one hour on every screen, the almanac’s', async () => {
  // astropy: centre 50′ below the horizon at 54.97° N, 2.10° W on 28 Nov 2026.
  const AFTERNOON = Date.UTC(2026, 10, 28, 14, 42);
  expect(await talk(['dark'], AFTERNOON)).toMatch(/sets 15:48/u);
  expect(await talk(['site add home 54.97,-2.1 elevation:61', 'sun venus'], AFTERNOON)).toMatch(
    /Sunset: 15:48 GMT \(from a height 15:50\)/u,
  );
});

describe('a list for children', () => {
  // Few, bright, early, nothing overhead: common practice, no source.
  it.each([
    'wats good for kids tonight',
    'what can i show my 6 year old',
    'never used a telescope before, what shall i look at',
  ])('%s', async (line) => {
    const early = Date.UTC(2026, 10, 27, 17, 12);
    expect(await talk([line], early)).toMatch(
      /^Bright and easy, .*\n.* 5 targets by the hour, 17:12 to 21:30 GMT.*Moon, 21°/su,
    );
    expect(await talk([line], early)).not.toMatch(/Uranus|Neptune|nearly overhead/u);
  });
});

describe('words that were taken for others', () => {
  it.each([
    ['mercury in the morning with binoculars after sunrise?', /^not-safe: No, never sweep/u],
    ['can we see a shooting star tonight', /^What is coming: showers/u],
    ['my dad has a telescope what should we look at first', /^Worth seeing/u],
    ['is venus up in morn', /^Venus/u],
    ['whats that orange star', /Most likely Betelgeuse/u],
  ] as const)('%s', async (line, told) => expect(await talk([line])).toMatch(told));
});
