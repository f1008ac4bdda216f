/** What newcomers and parents ask of a night, as they type it, eyes first. */
import { describe, expect, it } from 'vitest';
import { at, EVENING, said, wordsOf } from './an-evening-in-york.js';
import { answer, ask, refusal } from './real-deps.js';

const MIDDAY = Date.parse('2026-11-27T12:00Z');
const YORK = await at('"York, England"');

describe('the Moon and eyes', () => {
  it.each([
    'is it safe to look at full moon thru telescope without filter',
    'can i look at the moon through sunglasses',
    'can the lunar eclipse damage my eyes',
  ])('is no question of the Sun: %s', async (line) => {
    const told = await answer(YORK, line, EVENING);
    expect(told.summary).toMatch(/^The Moon is safe/u);
    expect(told.cautions).toEqual([]);
  });

  it.each(['is it safe to look at the crescent moon by day with binos', 'can i see venus with binos at noon'])(
    'by day and by hand it is: %s',
    async (line) => {
      expect((await refusal(YORK, line, MIDDAY)).message).toMatch(/^No, never sweep/u);
    },
  );

  it('the crescent Moon is no nebula', async () => {
    expect(await wordsOf(YORK, 'is it safe to point at the crescent moon at 2pm', MIDDAY)).not.toContain('NGC 6888');
  });
});

describe('looking at the Sun, asked how', () => {
  it.each([
    'how to see sunspots safely',
    'how can i safely look at the sun',
    'whats the safest way to view the eclipse',
  ])('is told how, and by no other way: %s', async (line) => {
    expect((await refusal(YORK, line, EVENING)).message).toMatch(/^Only with a proper full-aperture solar filter/u);
  });
});

describe('what a newcomer saw', () => {
  it('the brightest of all stands first, whatever side it is on', async () => {
    // Skyfield 1.55, York 27 November 2026, 19:10 UTC: Vega 38.9° high in the west; brighter ones are down, but for the Moon.
    expect((await answer(YORK, 'whats the brightest thing in the sky rn', EVENING)).summary).toContain('Vega');
  });
  it.each([
    ['what constellation is that w shaped one', /Schedar|Cassiopeia/u],
    ['3 stars in a row what is it', /Orion/u],
  ])('a shape is known by what it is: %s', async (line, name) => {
    expect((await answer(YORK, line, EVENING)).title).toMatch(name);
  });
  it('“is that Venus” is answered for now', async () => {
    expect(await wordsOf(YORK, 'is that venus next to the moon')).toContain('Venus is below the horizon then');
  });
});

describe('what follows a question', () => {
  it('of meteors is of the same night', async () => {
    const deps = await at('"York, England"');
    await ask(deps, 'when are the geminids', EVENING);
    expect(await wordsOf(deps, 'what time should we go out for it', EVENING + 30_000)).toContain('Geminids: night of');
    expect(await wordsOf(deps, 'and the moon?', EVENING + 60_000)).toContain('Geminids: night of');
  });
  it('“meridian” is no star’s name with a slip', async () => {
    const deps = await at('"York, England"');
    await ask(deps, 'is m45 up', EVENING);
    expect(await wordsOf(deps, 'when does it cross meridian tomorrow', EVENING + 30_000)).toMatch(/^M 45/u);
  });
});

describe('lenses and apertures', () => {
  it('a lens of 135 mm is no telescope', async () => {
    expect(await wordsOf(YORK, 'what can i photograph with 135mm lens and tracker tonight')).not.toContain(
      '135 mm telescope',
    );
  });
  it('focal length over focal ratio is the aperture', async () => {
    // 1200 over 6.
    expect(await wordsOf(YORK, 'what eyepiece for saturn in 1200mm f6')).toContain('200 mm telescope');
  });
});

it('a city of two words is no star', async () => {
  expect(await wordsOf(YORK, 'how high is the moon on 31 december from cape town')).toContain('Cape Town');
});

describe('how large the Moon is', () => {
  const CHRISTMAS = Date.parse('2026-12-19T19:00Z');
  it.each(['is it a supermoon', 'is the moon bigger tonight', 'how big is the moon'])(
    'now and when full: %s',
    async (line) => {
      // Skyfield 1.55 with de421, from the Earth's centre: 374,282 km and 31.92′ on 19 December 2026, 19:00 UTC; 356,738 km and
      // 33.49′ at the full Moon of 24 December, 01:28 UTC. Within 360,000 km it is called a supermoon (common practice).
      const { summary } = await answer(YORK, line, CHRISTMAS);
      expect(summary).toContain('31.9′ across now, 374,000 km away');
      expect(summary).toContain('24 Dec, is 33.5′: what is called a supermoon');
    },
  );
  it('and how far, from the Earth’s centre', async () => {
    expect((await answer(YORK, 'how far is the moon', CHRISTMAS)).summary).toContain('374,000 km from the Earth');
  });
});

it.each([
  ['whats the azimuth of polaris', /high in the north/u],
  ['what time do stars come out', /^The dark of/u],
  ['first quarter moon tonight what to look at', /^The Moon’s terminator/u],
  ['how long is the moon up tomorrow', /Moon sets on .* Moon rises on/u],
  ['how cold will it get', /^not-known-here: I cannot see the weather/u],
])('heard as it is typed: %s', async (line, words) => {
  expect(await wordsOf(YORK, line)).toMatch(words);
});

it('“find it by day” is of the planet that was named, and carries the Sun’s caution', async () => {
  const told = await answer(YORK, 'is venus up in the day? find it with goto at noon', EVENING);
  expect(told.cautions.join(' ')).toContain('The Sun is up');
  expect(said(told)).not.toContain('That is the Sun itself');
});
