/** Thanks, good wishes and assent in other words are met kindly, and are no target; what asks beside them is answered. Words from memory. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { realDeps } from './real-deps.js';

const EVENING = Date.UTC(2027, 0, 2, 20, 30);

const after = async (line: string): Promise<string> => {
  const deps = await realDeps({ clubSiteText: '54.97,-2.1' });
  await wordsOf(deps, 'is m42 up', EVENING);
  return wordsOf(deps, line, EVENING + 20_000);
};

describe('after an answer', () => {
  it.each([
    'cheers m8',
    'cheers, m8!',
    'ta m8',
    'cool',
    'cool thanks',
    'ah cool, got it',
    'nice one',
    'sound',
    'good to know',
    'takk',
    'tusen takk',
    'mange tak',
    'kiitos',
    'merry xmas',
    'merry christmas everyone',
    'happy new year m8',
    'god jul',
  ])('%s is met with a kind word', async (line) => expect(await after(line)).toMatch(/^You are welcome/u));

  it.each([
    ['night m8', /^Good night/u],
    ['hi all', /^Hello/u],
    ['good evening everyone', /^Hello/u],
  ])('%s is greeted back', async (line, told) => expect(await after(line)).toMatch(told));

  it.each([
    ['is m8 up', /^M 8 /u],
    ['and m8', /^M 8 /u],
    ['thanks, is m8 up', /^M 8 /u],
    ['thanks m8, what about m31', /^M 31 /u],
    ['evenin whats up', /^Worth seeing/u],
    ['hi m8 whats up tonight', /^Worth seeing/u],
    ['nice doubles', /^Worth seeing/u],
  ])('%s is a question still', async (line, told) => expect(await after(line)).toMatch(told));

  it.each(['no sound', 'it makes a sound', 'the sound stopped'])('%s is no thanks', async (line) =>
    expect(await after(line)).not.toMatch(/You are welcome/u),
  );
});
