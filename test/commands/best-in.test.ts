/** "What's the best in Leo" is a list of the best known there; a constellation alone is no far cluster of galaxies; emission nebulae are a kind; a dog is a dog. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { realDeps } from './real-deps.js';

const MARCH = Date.UTC(2027, 2, 5, 20, 0);
const SEPTEMBER = Date.UTC(2026, 8, 12, 19, 30);

const asked = async (line: string, nowUtcMs = MARCH): Promise<string> =>
  wordsOf(await realDeps({ clubSiteText: '54.97,-2.1' }), line, nowUtcMs);

describe('the best in a constellation', () => {
  it.each([
    'whats the best in leo',
    "what's the nicest thing in leo",
    'best of leo',
    'the best in leo',
    'which is the best in leo',
  ])('%s', async (line) => {
    const told = await asked(line);
    expect(told).toMatch(/^Worth seeing in Leo/u);
    // Two of the Messier galaxies of Leo: the Messier list, from memory.
    expect(told).toMatch(/M 66/u);
    expect(told).toMatch(/M 105/u);
  });

  it('its brightest star is one star', async () =>
    expect(await asked('whats the brightest star in leo')).toMatch(/^Regulus/u));

  it('a target in it is no list', async () =>
    expect(await asked('whats the best time to see m42 in orion')).toMatch(/^M 42/u));
});

describe('a constellation alone', () => {
  // α Leonis, α Persei, α Herculis and α Virginis bear these names: the IAU's list of star names, from memory.
  it.each([
    ['where is leo', /^Regulus/u],
    ['where is perseus', /^Mirfak/u],
    ['where is virgo', /^Spica/u],
    ['where is hydra', /^Alphard/u],
    ['where is andromeda', /^M 31/u],
    ['up triangulum', /^M 33/u],
    ['leo cluster of galaxies', /^Abell 1367/u],
    ['perseus cluster', /^Abell 426/u],
  ])('%s', async (line, told) => expect(await asked(line)).toMatch(told));
});

describe('nebulae that glow by themselves', () => {
  it.each([
    'which emission nebulae are best placed tonight',
    'emission nebulas up tonight',
    'narrowband targets tonight',
    'any hii regions up tonight',
  ])('%s', async (line) => {
    const told = await asked(line, SEPTEMBER);
    expect(told).toMatch(/^Worth seeing/u);
    expect(told).toMatch(/NGC 7000/u);
    // Planetary nebulae.
    expect(told).not.toMatch(/M 57|M 27/u);
  });
});

describe('a dog', () => {
  it.each(['can the dog look', 'can my dog see it'])('%s is not Sirius', async (line) =>
    expect(await asked(line)).not.toMatch(/Sirius/u),
  );
  it('the dog star is', async () => expect(await asked('where is the dog star')).toMatch(/^Sirius/u));
});
