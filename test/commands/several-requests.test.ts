/** Several requests in one line: each is answered, and what is one question stays one. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { allCommands } from '../../bot/commands/all-commands.js';
import { severalIn } from '../../bot/commands/asking/several-requests.js';
import { dayAt } from '../../bot/commands/asking/sentence/day-at.js';
import { answer, ask, realDeps } from './real-deps.js';

// Thursday 26 November 2026, 12:58 UTC.
const NOW = Date.UTC(2026, 10, 26, 12, 58);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const known = {
  ...deps,
  allCommands,
  siteNames: ['fen hut'],
  nowUtcMs: NOW,
  day: dayAt({ latitudeDeg: 52.71, longitudeDeg: 0.12 }, NOW),
};

const linesOf = (text: string): readonly string[] | null =>
  severalIn(text, known)?.map(({ read }) => ('line' in read ? read.line : 'said')) ?? null;

describe('several requests', () => {
  it.each([
    [
      'whats up at 9 and moon rise and remind me at ten to eight',
      'tonight at:21:00',
      'up moon first:rise',
      'remind at:19:50',
    ],
    ['when is it dark and whats up at ten', 'dark', 'tonight at:22:00'],
    ['m42 at midnight & moon phase', 'up m42 at:midnight', 'moon'],
    ['how dark is it tonight; where is m31 at 9?', 'dark on:tonight', 'altitude m31 at:21:00'],
    ['is saturn up now and when does jupiter rise', 'up saturn at:now first:up', 'up jupiter first:rise'],
    ['iss pass and moon rise', 'said', 'up moon first:rise'],
    ['how high is deneb at 20:00 and at 23:30', 'altitude deneb at:20:00', 'altitude deneb at:"23:30"'],
    ['azimuth of rigel at 1am and its hour angle', 'altitude rigel at:1am', 'up rigel first:hour-angle at:1am'],
    ['is jupiter up at 11 and at 3', 'up jupiter at:23:00 first:up', 'up jupiter at:03:00 first:up'],
    ['when is it dark in cork and how high is vega', 'dark site:cork', 'altitude vega site:cork'],
  ])('%s', (text, ...lines) => {
    expect(linesOf(text)).toEqual(lines);
  });

  it.each([
    'is m31 up and m33',
    'sent to vega and landed on deneb',
    'is it safe to look at venus and mercury at noon',
    'slew from vega to mercury and then to deneb',
    'venus next then mercury',
    'my mount beeps and the handset says no response',
    'remind me at 9 to cap the tube and check the dew',
    'when does jupiter rise and set',
    'can i look at the sun and is the moon up',
    'save my garden as 52.63, 1.30',
    'use cork and whats up tonight',
  ])('%s is one question', (text) => expect(linesOf(text)).toBeNull());

  it('are answered in their order, so that a site saved first counts for what follows', async () => {
    const own = await realDeps({ clubSiteText: '52.71,0.12' });
    const told = await answer(own, 'save site dads farm 53.2 n 1.1 w and m42 midnite', NOW);
    expect(told.title).toBe('Two answers');
    expect(told.facts.map(({ label }) => label).join()).toMatch(/dads farm.*M 42/u);
    expect(told.notes).toContain('Site: dads farm (your site).');
    expect(told.audience).toBe('asker');
  });

  it('are three at most; the words of the others are told', async () => {
    const told = await answer(deps, 'whats up and when is it dark and moon phase and where is vega', NOW);
    expect(told.facts).toHaveLength(3);
    expect(told.notes[0]).toContain('“where is vega”');
  });

  it('tell beside the others what cannot be answered', async () => {
    const told = await answer(deps, 'iss pass and when is it dark', NOW);
    expect(told.facts.map(({ value }) => value).join()).toMatch(/satellites.*Dark 17:56/u);
  });

  it('keep the warning of the Sun', async () => {
    const told = await answer(deps, 'how high is mercury at 1pm and moon phase', NOW);
    expect(told.level).toBe('caution');
    expect(told.cautions.join()).toContain('Mercury');
  });

  it('are none of a name of an object’s own', async () => {
    expect(await ask(deps, 'constructor and toString', NOW)).toHaveProperty('problem');
  });
});
