/** What is asked of a target itself, with a site and without one; which place of a name is meant; the one after the next. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 19, 30);
const here = await realDeps({ clubSiteText: '52.2,-1.1' });
const nowhere = await realDeps();
const summary = async (line: string): Promise<string> => (await answer(here, line, NOW)).summary;

describe('what a target is', () => {
  // Magnitudes, sizes and kinds: any handbook has them; 0.03 for Vega, 3.4 and 3° for M 31. From memory.
  it.each([
    ['what magnitude is vega', /^Vega: mag 0\.0, plain to the naked eye\./u],
    ['how bright is m81', /^M 81: mag 6\.9 in all, spread over/u],
    ['how big is the andromeda galaxy', /^M 31 is 3\.0° × \d\.\d°, 6 times as wide as the full Moon\./u],
    ['what type of object is m1', /^M 1 is a supernova remnant in Taurus\./u],
    ['what is m57', /^M 57 is a planetary nebula in Lyra\./u],
    ['which constellation is mizar in', /^Mizar is in Ursa Major\./u],
    ['how far apart are the stars of albireo', /^Albireo: 3[45]″ apart/u],
    ['do i need a filter for m42', /^Not needed, but a nebula filter helps/u],
    ['filter for the veil?', /^All but needed: an O III filter helps much/u],
    ['do i need a filter for m31', /^No: M 31 shines in all colours/u],
    // M 13 is at 16 h 42 min: highest at midnight about the end of May (the Sun is at 4 h 40 min on the 31st).
    ['best month for m13', /^M 13 is best about (?:May|June):/u],
    ['what kind of galaxy is m104', /^M 104 is a spiral galaxy in Virgo/u],
    ['albireo sep and PA', /^Albireo: 3[45]″ apart at 5\d°/u],
    // The Earth stood 6° off the plane of the rings in late November 2026: almanacs, from memory.
    ['saturn ring tilt', /^Saturn's rings are tilted [67]\.\d°/u],
    ['what constellation is fornax a in', /^NGC 1316 is in Fornax/u],
    ['which catalogue number is the whirlpool galaxy', /^M 51 is also .*NGC 5194/u],
    ['filter for the horsehead', /^Yes: .* only with an H-beta filter/u],
  ])('needs no site: %s', async (line, words) => {
    expect((await answer(nowhere, line, NOW)).summary).toMatch(words);
    expect(await summary(line)).toMatch(words);
  });

  // Light takes 499 s for an astronomical unit; Jupiter is some 5.1 away two months before its opposition of 10 February 2027 (4.3): by hand.
  it('how far a planet is, and no distance that is not known', async () => {
    expect((await answer(nowhere, 'how far is jupiter', NOW)).summary).toMatch(
      /^Jupiter is 5\.\d\d astronomical units .* 7[56]\d million km; its light takes 42 minutes/u,
    );
    expect((await answer(nowhere, 'how far away is m13', NOW)).summary).toMatch(/^How far M 13 is I do not keep/u);
  });

  // 4.3° to 4.5°, reckoned apart by hand from their elements.
  it('how far planets stand from each other, though no site is known', async () => {
    expect((await answer(nowhere, 'jupiter mars sep tonight', NOW)).summary).toMatch(
      /^Jupiter and Mars are [34]\.\d° apart/u,
    );
    const ofMoon = await ask(nowhere, 'how far apart are jupiter and the moon', NOW);
    expect(isProblem(ofMoon) && ofMoon.problem).toBe('no-site');
  });

  it('is asked for a site where the sky over it is asked for', async () => {
    const outcome = await ask(nowhere, 'when does vega set', NOW);
    expect(isProblem(outcome) && outcome.problem).toBe('no-site');
  });

  it('tells nothing of a filter for the Sun without its warning', async () => {
    const outcome = await ask(here, 'do i need a filter for the sun', Date.UTC(2026, 10, 27, 12));
    const said = isProblem(outcome) ? outcome.message : `${outcome.cautions.join(' ')} ${outcome.summary}`;
    expect(said).toMatch(/filter/u);
    expect(said).not.toMatch(/^\s*(?:No|Not needed)\b/u);
  });
});

describe('whether a telescope splits a pair', () => {
  // W. R. Dawes (1867): 4.56″ over the inches, 116″ over the millimetres; 1.1″ for 4 inches, 1.9″ for 60 mm, 1.4″ for 80 mm.
  it.each([
    // First, as a telescope that is told serves for what is asked next.
    ['can i split porrima', /^Yes, from about \d+ mm of aperture on/u],
    ['is a 4 inch enough for epsilon lyrae', /^Yes: 2\.\d″ apart.*102 mm telescope is 1\.1″/u],
    ['can i split castor with a 60mm', /^Yes: 5\.\d″ apart.*60 mm telescope is 1\.9″/u],
    ['is 80mm enough for izar', /^Just: 2\.\d″ apart.*an 80 mm telescope is 1\.4″; .*steady air/u],
    ['can a 3 inch do the double double', /^Just: 2\.\d″ apart/u],
    ['will my 6 inch resolve sirius b', /^Hardly: 11″ apart.*glare/u],
    ['would 10x50s show albireo as two', /^Yes, held steady: 3[45]″ apart/u],
    ['what aperture do i need for porrima', /^About \d+ mm: 3\.\d″ apart.*by Dawes' limit 3[05] mm/u],
    // Polaris' companion, mag 9 at 18″, is a test of small telescopes; Sirius' is not: common practice.
    ['can you split polaris in an 80mm', /^Yes: 18″ apart.*spark beside the bright/u],
    ['do i need a big scope for mizar', /^Any telescope will do: 14″ apart/u],
    ['can a mak 127 split zeta herculis', /^I hold no figures of a companion/u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));

  it('is told of its best hour alone where that is asked, and splitting is no town', async () => {
    const found = await answer(here, 'best time to split castor', NOW);
    expect(found.summary).toMatch(/^Best at \d\d:\d\d GMT/u);
    expect(found.title).toContain('Castor');
    expect((await answer(here, "what's up from Split Croatia", NOW)).notes.join(' ')).toContain('Croatia');
  });
});

describe('a place named with its country or region', () => {
  // Ontario's Whitby and New Zealand's are not in the list, England's is; the atlas has Hobart in Australia.
  it.each([
    'is mars up from Whitby Ontario',
    'when does m13 rise in whitby new zealand',
    'up m13 tonight from Whitby, Ontario',
  ])('is not taken for another: %s', async (line) => {
    const outcome = await ask(here, line, NOW);
    expect(isProblem(outcome) && outcome.problem).toBe('unknown-place');
    expect(isProblem(outcome) && outcome.message).toMatch(/Whitby/iu);
  });

  it('is found there', async () => {
    expect((await answer(here, 'can I spot Uranus from Hobart Australia', NOW)).notes.join(' ')).toContain('Tasmania');
  });
});

describe('the one after the next', () => {
  const asker = { ...ODALYS, memberId: 'console:after' };
  const last = async (...lines: readonly string[]): Promise<string> => {
    let said = '';
    for (const line of lines) said = (await answer(here, line, NOW, asker)).summary;
    return said;
  };

  // Full Moons of 24 December 2026, 01:28 UT, and 22 January 2027, 12:17; new on 9 December, 00:52: published tables, from memory.
  it('of the quarters of the Moon', async () => {
    expect(await last('next full moon')).toMatch(/^Full Moon Thu 24 Dec, 01:2\d GMT/u);
    expect(await last('next full moon', 'and the one after')).toMatch(/^Full Moon Fri 22 Jan 2027, 12:1\d GMT/u);
    expect(await last('next full moon', 'and the new one?')).toMatch(/^New Moon Wed 9 Dec, 00:5\d GMT/u);
  });

  // Eclipses of the Moon on 12 January 2028 (partial) and 31 December 2028 (total): NASA's catalogue, from memory.
  it('of eclipses that anybody notices', async () => {
    expect(await last('next lunar eclipse', 'and the one after')).toMatch(
      /^After the next: Total eclipse of the Moon, Sun 31 Dec 2028/u,
    );
  });
});
