/** The night, the hour and the place of a talk hold for what is asked next, until another is said. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { ask, realDeps } from './real-deps.js';

const TUESDAY_AFTERNOON = Date.UTC(2027, 1, 16, 16);
const NORTH_TYNE = '54.97,-2.1';

const talk = async (lines: readonly string[], stepMs = 20_000): Promise<string> => {
  const deps = await realDeps({ clubSiteText: NORTH_TYNE });
  let told = '';
  for (const [i, line] of lines.entries()) told = await wordsOf(deps, line, TUESDAY_AFTERNOON + i * stepMs);
  return told;
};

const STAR_PARTY = ['we have a star party on friday at 7pm, what will be up', 'make it half 6'];

describe('a night named once', () => {
  it.each([
    'will the moon be up',
    'would the moon spoil it',
    'what craters will we see',
    'is jupiter up at that time',
    'where is mars at that hour',
    'is saturn up that night',
    'is the moon out then',
    'which planets then',
    'how dark is it that night',
    'what can we see then with binoculars',
    'and saturn?',
  ])('is kept and told in the answer: %s', async (line) =>
    expect(await talk([...STAR_PARTY, line])).toMatch(/Fri 19 Feb 2027/u),
  );

  it.each(['is jupiter up at that time', 'will the moon be up', 'is the moon out then'])(
    'has its hour with it: %s',
    async (line) => expect(await talk([...STAR_PARTY, line])).toMatch(/at 18:30 GMT/u),
  );

  it('goes on over several questions', async () =>
    expect(await talk([...STAR_PARTY, 'will the moon be up', 'is jupiter up then', 'and saturn?'])).toMatch(
      /^Saturn, night of Fri 19 Feb 2027.*\n.*18:30 GMT/u,
    ));

  it.each([
    'will the moon be up tonight',
    'where is jupiter now',
    'is jupiter up tonight',
    'what can i see tonight',
    'where is jupiter',
    'what galaxies can i see',
  ])('gives way to what says its own, or is asked of now: %s', async (line) =>
    expect(await talk([...STAR_PARTY, line])).not.toMatch(/Fri 19 Feb/u),
  );

  it('is over after a long pause', async () =>
    expect(await talk(['what is up on friday', 'is the moon out then'], 3_600_000)).toMatch(/Tue 16 Feb/u));
});

describe('a place named once', () => {
  it.each([
    [['what is up from truro, england', 'when is it dark there'], /site:.?truro|Truro/iu],
    [['where is jupiter from auckland, nz', 'and saturn from there'], /Auckland/u],
    [['where is jupiter from auckland, on hols'], /Auckland/u],
    [['where is jupiter from my mums place in cornwall'], /Cornwall is wide and no town.*Truro/u],
    [['where is jupiter from devon', 'and saturn from there'], /Devon is wide and no town.*Exeter/u],
    [['whats the sky like at kielder'], /“kielder”/u],
    [['im at kielder this weekend'], /Found no place “kielder”/u],
  ] as const)('is used, or asked for: %s', async (lines, told) => expect(await talk(lines)).toMatch(told));

  it('gives way to home', async () => {
    const told = await talk(['where is jupiter from auckland, nz', 'what about from home']);
    expect(told).toMatch(/^Jupiter/u);
    expect(told).not.toMatch(/Auckland|NZDT/u);
  });

  it('is offered once, though two are called the same to the last word', async () => {
    const deps = await realDeps({ clubSiteText: NORTH_TYNE });
    const told = await ask(deps, 'up sun site:"auckland, nowhere"', TUESDAY_AFTERNOON);
    const offered = (told.choices ?? []).map(({ label }) => label);
    expect(offered.length).toBeGreaterThan(0);
    expect(new Set(offered).size).toBe(offered.length);
  });

  it('of which it is not yet said is asked again at the next question, where no usual site is known', async () => {
    const deps = await realDeps({ clubSiteText: null });
    await wordsOf(deps, 'where is jupiter from truro', TUESDAY_AFTERNOON);
    expect(await wordsOf(deps, 'when does saturn rise', TUESDAY_AFTERNOON + 20_000)).toMatch(/more than one Truro/u);
  });
});
