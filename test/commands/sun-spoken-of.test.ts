/** What "it" is where somebody asks to look: the Sun that was spoken of, or the Moon or a planet that was. Common practice, no source. */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { realDeps, strangers, talk } from './real-deps.js';

/** The Moon is full, Saturn has set. */
const NIGHT = Date.UTC(2027, 2, 22, 21);
const AFTERNOON = Date.UTC(2027, 5, 5, 13);
/** Some hours before the Moon's partial eclipse of the 28th. */
const BEFORE_ECLIPSE = Date.UTC(2026, 7, 27, 20);

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const stranger = strangers('runa');
/** The last of lines said one after the other. */
const lastOf = async (lines: readonly string[], nowUtcMs: number): Promise<Outcome> => {
  const outcome = (await talk(deps, lines, nowUtcMs, stranger())).at(-1);
  if (outcome === undefined) throw new Error('nothing was asked');
  return outcome;
};
const isNo = (outcome: Outcome): boolean => isProblem(outcome) && outcome.problem === 'not-safe';
const wordsOf = (outcome: Outcome): string =>
  isProblem(outcome) ? outcome.message : [outcome.title, outcome.summary, ...outcome.cautions].map(String).join(' ');

describe('after the Moon, a planet or a cluster, by night', () => {
  it.each([
    [['where is the moon', 'can i look at it through my telescope'], /^Moon/u],
    [['where is the moon', 'is it safe for the kids eyes'], /The Moon is safe/u],
    [['where is the moon', 'its dead bright do i need sunglasses'], /The Moon is safe/u],
    [['where is the moon', 'can i look at it without a filter'], /The Moon is safe/u],
    [['is saturn up', 'can we see it with the binoculars'], /^Saturn/u],
    [['is saturn up', 'can the kids look at it'], /^Saturn/u],
    [['what about m13', 'can i look at it through my telescope'], /^M 13/u],
  ])('%j is answered of it', async (lines, told) => {
    const outcome = await lastOf(lines, NIGHT);
    expect(isNo(outcome)).toBe(false);
    expect(wordsOf(outcome)).toMatch(told);
  });

  it('an eclipse of the Moon is safe to look at', async () => {
    expect(wordsOf(await lastOf(['any eclipse tonight', 'can i look at it without a filter'], BEFORE_ECLIPSE))).toMatch(
      /The Moon is safe/u,
    );
  });

  it('an eclipse that is of the Sun is not, though it is asked by night', async () => {
    expect(isNo(await lastOf(['any eclipse tonight', 'can i look at it without a filter'], NIGHT))).toBe(true);
  });

  it('nobody is refused who names nothing to look at', async () => {
    expect(isNo(await lastOf(['with just binos'], NIGHT))).toBe(false);
  });
});

describe('after the Sun', () => {
  it.each([
    [['whats that really bright thing up there', 'can i zoom in on it with my scope']],
    [['where is the sun', 'how high is it', 'can i zoom in on it with my scope']],
    [['where is the sun', 'how do i aim at it']],
    [['when is the next solar eclipse', 'can i use my sunglasses']],
    [['can i look at the sun with my dob', 'what can i see on it']],
    [['can i look at the sun with my dob', 'and jupiter', 'can i use my sunglasses']],
    [['i seen someone use a crisp packet as a filter will that do', 'what about a cd']],
    [['is venus up', 'can i look for it with my binoculars']],
  ])('%j is warned of', async (lines) => {
    expect(isNo(await lastOf(lines, AFTERNOON))).toBe(true);
  });

  it.each([
    [['can i look at the sun with my dob', 'one kid already had a go'], /see a doctor/u],
    [['when is the next solar eclipse', 'do i need glasses for that'], /^Yes, for bare eyes/u],
    [['do i need eclipse glasses'], /^Yes, for bare eyes/u],
    [['can i look at the sun', 'and solar film in a cardboard ring over the front'], /^Yes, if it is a full-aperture/u],
    [['should i cap the scope'], /^Yes, tube and finder/u],
    [['when is the next solar eclipse', 'can i see it from here'], /eclipse of the Sun/u],
    [['is mercury up', 'do i need to worry about the sun'], /° from the Sun|never by hand/iu],
  ])('%j has the answer that is right', async (lines, told) => {
    expect(wordsOf(await lastOf(lines, AFTERNOON))).toMatch(told);
  });

  it.each([
    'its started! can i look now',
    'my lad keeps pointing his binos up at it',
    'can i use two pairs of sunglasses as a filter',
  ])('by day, of nothing that is named: %s', async (line) => {
    expect(isNo(await lastOf([line], AFTERNOON))).toBe(true);
  });
});

describe('beside the Sun, by day', () => {
  it.each([
    ['im testing the scope on a church steeple across the valley', /target on the ground is fine/u],
    ['the suns behind me is that ok', /Behind you is the right place/u],
    ['is there owt safe to look at in the day', /^In short By day the Moon/u],
    ['the sun is an average star isnt it', /is a star/u],
  ])('%s', async (line, told) => {
    expect(wordsOf(await lastOf([line], AFTERNOON))).toMatch(told);
  });

  it.each(['can i look at the sun across the valley', 'i want to see the sun behind the church with my scope'])(
    'is no leave to look at it: %s',
    async (line) => {
      expect(wordsOf(await lastOf([line], AFTERNOON))).not.toMatch(/is fine|right place/u);
    },
  );
});
