/** A yes or no, and which of two, begin the answer. */
import { describe, expect, it } from 'vitest';
import { answer, realDeps } from './real-deps.js';

// Thursday 26 November 2026, 19:42 UTC, two days after full Moon.
const NOW = Date.UTC(2026, 10, 26, 19, 42);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const summary = async (line: string, nowUtcMs = NOW): Promise<string> => (await answer(deps, line, nowUtcMs)).summary;

// All figures of the sky by pip's ephem 4.2.1 for 52.71° N, 0.12° E: moonrise 17:05, astronomical dusk 17:56, moonrise of the 29th 21:34:40, dusk 17:54:38.
describe('of the dark and the Moon', () => {
  it.each([
    ['will it get dark before the moon comes up', /^No, the Moon came up first, at 17:06 GMT, 50 min before/u],
    ['will the moon be up when it gets dark', /^Yes, the Moon is up then until 11:17 GMT; it rose at 17:06/u],
    ['will it be dark before moonrise on sunday', /^Yes, 3 h 40 min before: the Moon rises at 21:35 GMT/u],
    ['is there any moonless darkness before midnight tonight', /^No, none before 00:00 GMT/u],
    ['is it dark yet', /^Yes, fully dark since 17:56 GMT, but the Moon is up, 9\d % lit/u],
    ['is the moon going to spoil things tonight', /^Yes for galaxies and nebulae/u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));

  it('says that it is not dark yet while it is not', async () => {
    expect(await summary('is it dark yet', Date.UTC(2026, 10, 26, 16, 30))).toMatch(/^Not yet, in 1 h 26 min\./u);
  });

  // The Geminids' maximum: solar longitude 262.2°, International Meteor Organization's working list (from memory): 14 December 2026 about 14 h UT,
  // after which they fall off fast, so that the night before is Europe's.
  it('says that no meteors are to be had, or that they are', async () => {
    expect(await summary('any meteors tonight')).toMatch(/^None to speak of tonight.* Next: Geminids/u);
    expect(await summary('any meteors tonight', Date.UTC(2026, 11, 13, 19))).toMatch(
      /^Yes, the Geminids have their best tonight/u,
    );
    expect(await summary('meteors tomorrow night', Date.UTC(2026, 11, 13, 19))).toMatch(
      /^Some in the night of Mon 14/u,
    );
  });
});

// Separations and position angles by the same: Moon and Jupiter 47.07° and 96.0°, Jupiter and Mars 4.09° and 89.6°, Castor and Pollux 4.50°
// and 148.5°, Moon and Pleiades 37.13°; heights of Regulus and Procyon 44.0° and 41.6°.
describe('of two targets', () => {
  it.each([
    [
      'separation and position angle between the moon and jupiter at 02:00',
      /^At 02:00 GMT 47\.1° apart; Jupiter at position angle 96° from the Moon/u,
    ],
    ['how far apart are jupiter and mars at 3am', /^At 03:00 GMT 4\.1° apart; Mars at position angle 90°/u],
    ['how far apart are castor and pollux', /^At 19:42 GMT 4\.5° apart; Pollux at position angle 14[89]°/u],
    ['is the moon within 10 degrees of the pleiades at 22:00', /^No\. At 22:00 GMT 37\.1° apart/u],
    ['which is higher at 4am, regulus or procyon', /^Regulus, the higher at 04:00 GMT: 44° .* Procyon 42°/u],
    ['saturn or the moon best right now', /^Saturn, the higher at 19:42 GMT: 38° .*; the Moon 18°/u],
    ['should i look at jupiter or saturn first', /^Saturn first: .*; Jupiter is down and rises at 22:1[56] GMT/u],
    ['mars or jupiter first at 8pm', /^Neither is up at 20:00 GMT|^Jupiter first: it rises/u],
    ['is venus brighter than jupiter', /^Venus, the brighter: mag −4\.\d against −2\.\d/u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));
});

// Skyfield 1.55, earthlib.refraction: 4.632′, 7.030′ and 9.256′.
describe('of the air as it is', () => {
  it.each([
    ['refraction at 12 degrees altitude, 5 C and 1015 mb', /lifts it by 4\.6′/u],
    ['refraction at 8 degrees, -3 C, 1024 hPa', /lifts it by 7\.0′/u],
    ['refraction for 5 degrees at 980 mb and 20C', /lifts it by 9\.3′/u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));
});

// 20.58° high at 02:21:47 by ephem; K. A. Pickering's airmass there by hand: 2.82.
describe('of a culmination', () => {
  it('tells its airmass, the target being down now', async () => {
    expect(await summary('what is the airmass of sirius when it culminates')).toMatch(
      /^Sirius crosses the meridian at 02:22 GMT .* 20\.6° high .*, airmass 2\.82/u,
    );
  });
});

// Common practice of clubs, no source; of lasers and aircraft the usual law.
describe('of gear and safety', () => {
  it.each([
    ['can i see the rings with 10x50 binoculars', /^No, binoculars show Saturn as a small yellow star/u],
    ["can binoculars show saturn's rings", /^No, /u],
    ['is it ok to shine my laser at a helicopter', /^Never at or near an aircraft/u],
    ['am i allowed a green laser to show people the stars', /^(?:With care|Never)/u],
    ['25mm or 10mm eyepiece first', /^The one with the larger number/u],
    ["can i see jupiter's moons in binoculars", /^Yes, /u],
    ['why is everything mirrored in my scope', /nothing is broken/u],
    ['how do i stop dew on my corrector', /^Dew\./u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));
});
