/**
 * Which of several nights; what stands overhead; which shower. New Moon on 9 December 2026, 00:52 UT, full on the 24th, 01:28 (published
 * tables, from memory): nights beside the new Moon are without it, those beside the full one never.
 */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { nightsOver } from '../../bot/times/index.js';
import { answer, realDeps } from './real-deps.js';

// A Friday.
const NOW = Date.UTC(2026, 10, 27, 19, 30);
const deps = await realDeps({ clubSiteText: '52.2,-1.1' });
const summary = async (line: string, nowUtcMs = NOW): Promise<string> => (await answer(deps, line, nowUtcMs)).summary;

describe('several nights in words', () => {
  const days = (text: string): readonly string[] => {
    const found = nightsOver(text, 'Europe/London', NOW);
    return isProblem(found) ? [found.problem] : found.dates.map(({ month, day }) => `${month}-${day}`);
  };

  // By the calendar: 27 November 2026 is a Friday.
  it.each([
    ['this week', 7, '11-27', '12-3'],
    ['next week', 7, '11-30', '12-6'],
    ['this weekend', 2, '11-27', '11-28'],
    ['next weekend', 2, '12-4', '12-5'],
    ['this month', 4, '11-27', '11-30'],
    ['next month', 31, '12-1', '12-31'],
    ['february', 28, '2-1', '2-28'],
    ['20 nights', 20, '11-27', '12-16'],
    ['2026-12-13 or 2026-12-14', 2, '12-13', '12-14'],
  ])('%s', (text, count, first, last) => {
    expect([days(text).length, days(text)[0], days(text).at(-1)]).toEqual([count, first, last]);
  });

  it.each(['', 'whenever', '30 feb'])('"%s" is none', (text) => expect(days(text)).toEqual(['bad-time']));
});

describe('which night', () => {
  it('is the darkest of a month', async () => {
    expect(await summary('what is the darkest night next month')).toMatch(
      /^Best: .*to (?:Fri 11|Sat 12) Dec, each 1[01] h/u,
    );
    expect(await summary('darkest weekend next month?')).toMatch(/^Darkest: Fri 11 Dec and Sat 12 Dec/u);
  });

  it('says which weekends are dark for some hours alone', async () => {
    const said = await summary('dark weekends');
    expect(said).toMatch(/^Dark without the Moon: Fri 4 Dec and Sat 5 Dec; Fri 11 Dec and Sat 12 Dec;/u);
    expect(said).toMatch(/Only some hours: Fri 27 Nov and Sat 28 Nov \(none and 2 h/u);
    expect(said).not.toMatch(/25 Dec/u);
    const { facts } = await answer(deps, 'moon', NOW);
    expect(facts.find(({ label }) => label === 'Dark weekend')?.value).toMatch(
      /^Fri 4 Dec, .*; before it Sat 28 Nov, only/u,
    );
  });

  it('is the better of two dates', async () => {
    for (const line of [
      'we meet on the 13th or 14th, is the Moon up then',
      'club night is sunday 13 or monday 14 december, will there be a moon',
    ])
      expect(await summary(line)).toMatch(
        /Sun 13 Dec: Moon 2\d % lit, sets 20:0\d; .*Mon 14 Dec: Moon \d\d % lit, sets 21:1\d/u,
      );
    expect(await summary('is the 9th or the 24th of december better for galaxies')).toMatch(/^Better Wed 9 Dec\./u);
  });

  it('is the best of three dates, of a week, and with moonlight where there is no other', async () => {
    expect(await summary('we have the hall on 4, 11 and 18 december, which is best for observing')).toMatch(
      /^Better Fri 11 Dec\. Fri 4 Dec: .*Fri 18 Dec:/u,
    );
    expect(await summary("what's the best week in december for galaxies")).toMatch(/^Best: Sat 5 Dec to Sat 12 Dec/u);
    expect(await summary('which saturdays in january are moonless')).toMatch(
      /^Dark without the Moon: Sat 2 Jan; Sat 9 Jan; .*Only some hours: Sat 16 Jan/u,
    );
    const { notes } = await answer(deps, 'is saturday or sunday better for M42', NOW);
    expect(notes.join(' ')).toContain('hours with moonlight');
  });

  it('is the best for a target, and the Moon is nothing to a planet', async () => {
    expect(await summary('best night next month to see M33')).toMatch(/^Best: .* Dec.*with M 33 high enough/u);
    const { summary: said, notes } = await answer(deps, 'which night this week is best for saturn', NOW);
    expect(said).toMatch(/^Best: /u);
    expect(notes.join(' ')).toContain('The Moon hardly matters to Saturn');
  });

  it('is no fault of a mount', async () => {
    const { title } = await answer(deps, 'is the 5th or the 12th of december better for faint stuff', NOW);
    expect(title).toMatch(/^Nights without the Moon/u);
  });
});

describe('what stands overhead', () => {
  // Sidereal time at Greenwich at 0 h on 27 November is 4 h 25 min (Astronomical Almanac): at 19:30, 1.1° west, 23 h 54 min; the constellations by pip's ephem 4,
  // 23 h 54 min, +52.2° is in Cassiopeia, and at 33.9° S, 18.4° E it is 1 h 12 min, −33.9° in Sculptor.
  it.each([
    ['what is overhead', /^Cassiopeia stands overhead\./u],
    ['which constellation is right above my head', /^Cassiopeia stands overhead\./u],
    ["what's at the zenith now from 33.9 S 18.4 E", /^Sculptor stands overhead\./u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));

  // Of the bright stars in the south that evening none is orange; Hamal in the east is (B−V 1.15, Bright Star Catalogue).
  it('and which one that is, by its colour', async () => {
    expect(await summary('bright orange star low in the south, no Moon')).toMatch(
      /^Most likely (?:Diphda|Fomalhaut) .*not orange itself/u,
    );
    expect(await summary('reddish star high in the east')).toMatch(/^Most likely Hamal/u);
  });
});

describe('showers and the heart of the Galaxy', () => {
  // Rates of the IMO's list: Geminids 150, Leonids 12; the Moon sets before midnight on 14 December 2026.
  it('two showers side by side', async () => {
    expect(await summary('Leonids or Geminids')).toMatch(
      /^The Geminids are better: night of (?:Sun 13|Mon 14) Dec.*no Moon then\. The Leonids: night of \w+ 1[78] Nov 2027/u,
    );
    expect(await summary('best meteor shower')).toMatch(/^The Geminids are the best/u);
    expect(await summary('are the quadrantids any good')).toMatch(
      /^Next: Quadrantids, night of Sun 3 Jan 2027, .*an hour/u,
    );
  });

  // At 35° S what stands at declination −29° culminates at 84°; Sagittarius A* is at −29.0° (Reid and Brunthaler 2004).
  it('the galactic centre is a target', async () => {
    const { summary: said, title } = await answer(
      deps,
      'how high does the milky way core get in july from -35,140',
      NOW,
    );
    expect(title).toMatch(/^Galactic Centre/u);
    expect(said).toMatch(/8[34]° high/u);
    expect((await answer(deps, "where's the galactic centre", NOW)).title).toMatch(/^Galactic Centre/u);
    expect(await summary('when does the centre of the milky way rise')).toMatch(/^Galactic Centre rises/u);
  });
});

describe('what is told first of the Sun and the Milky Way', () => {
  // 52.2° N, 1.1° W: sunset 15:58 on 28 November 2026 and sunrise 07:46, pip's ephem 4; no sunset at Tromsø from late November to January.
  it.each([
    ['when is sunset', /^The Sun sets next on Sat 28 Nov 2026, 15:5[789] GMT\. Dark/u],
    ['sunrise tomorrow', /^The Sun rises on Sat 28 Nov 2026, 07:4[567] GMT/u],
    ['sunset in Tromso', /^The Sun does not set there/u],
    // In late November evenings it runs from Cygnus over Cassiopeia: any planisphere.
    [
      'can i see the milky way on the 9th of december',
      /^Yes: at 1[78]:\d\d GMT it stands through .*Cassiopeia.*Cygnus/u,
    ],
    // At sidereal time 2 h from 33° S the Galaxy's south pole is overhead, and the Milky Way round the horizon.
    ['does the milky way show from -33,151', /^Not well at .*low all around/u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));

  it('opens with the hours of the dark and not with the wait', async () => {
    expect(await summary('when does it get dark', Date.UTC(2026, 10, 27, 15))).toMatch(
      /^Dark 18:0\d to .*It begins in 3 h \d min\.$/u,
    );
  });
});
