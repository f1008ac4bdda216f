/** Sentences of our own, in many voices, and the line each means; the readings are common practice, no source. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { plainQuestion } from '../../bot/commands/asking/plain-question.js';
import type { Asker } from '../../bot/commands/core/command.js';
import { answer, ask, ODALYS, realDeps, refusal } from './real-deps.js';

// Wednesday 25 November 2026, 20:41 UTC.
const NOW = Date.UTC(2026, 10, 25, 20, 41);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const known = { ...deps, siteNames: ['garden', 'fen hut'], nowUtcMs: NOW };

const sentences = readFileSync(new URL('our-own-sentences.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line.includes(' => ') && !line.startsWith('#'))
  .map((line) => line.split(' => ') as [string, string]);

const lineOf = (sentence: string): string => {
  const read = plainQuestion(sentence, known);
  if (read === null) return '-';
  return 'line' in read ? read.line : 'an answer';
};

describe('our own sentences', () => {
  it.each(sentences)('%s', (sentence, line) => expect(lineOf(sentence)).toBe(line));

  it('are read whatever the case, the marks and the courtesies around them', () => {
    for (const [sentence, line] of sentences) {
      if (line.startsWith('triage') || line === '-') continue;
      for (const spelt of [`${sentence.toUpperCase()}?`, `please ${sentence} ?!`])
        expect(lineOf(spelt).toLowerCase(), spelt).toBe(line.toLowerCase());
    }
  }, 90_000);
});

// Each asks alone: a walk that waits for an answer would take the next words.
const someone = (line: string): Asker => ({ ...ODALYS, memberId: `console:${line}`, channelId: `console ${line}` });

describe('what is asked in a sentence is answered', () => {
  it('says that the Sun is up before all else, whatever is looked at by day', async () => {
    for (const sentence of ["sun's up can i look at venus", 'can i look at venus while the sun is up']) {
      const { title, facts } = await answer(deps, sentence, Date.UTC(2026, 10, 25, 12), someone(sentence));
      expect(title).toMatch(/^The Sun and Venus/u);
      expect(facts.length).toBeGreaterThan(0);
    }
  });

  it('understands a sentence that begins with a command name by chance', async () => {
    for (const [sentence, title] of [
      ['moon rise tomorow', /^Moon, night of Thu 26 Nov/u],
      ['tonight what can i see with binoculars', /^Worth seeing/u],
      ['remind me to look at jupiter at 11', /^Reminder set/u],
      ['astray vega landed 15 degrees west', /./u],
    ] as const)
      expect((await answer(deps, sentence, NOW, someone(sentence))).title, sentence).toMatch(title);
  });

  it('takes the whole month named, and says which day of it was taken', async () => {
    const { title, notes } = await answer(deps, 'how high is the beehive in march', NOW, someone('march'));
    expect(title).toContain('night of Mon 15 Mar 2027');
    expect(notes.join(' ')).toContain('Took the middle of it');
  });

  it('uses the garden that is saved, and asks for one that is not; never a town of that name', async () => {
    const own = someone('garden');
    await answer(deps, 'save my garden 52.63 1.30', NOW, own);
    const { notes, audience } = await answer(deps, 'can i see andromeda from my garden', NOW, own);
    expect(notes.join(' ')).toContain('garden (your site)');
    expect(audience).toBe('asker');
    const { message } = await refusal(deps, 'can i see andromeda from my garden', NOW, someone('no garden'));
    expect(message).toContain('site add garden');
  });

  it('saves a site by the words people use, a town as well', async () => {
    const own = someone('towns');
    for (const sentence of [
      'my site is cork, ireland',
      'site add fen ely, england',
      'save fenwold common at 52.71,0.12',
    ])
      expect((await answer(deps, sentence, NOW, own)).title, sentence).toMatch(/^Site saved/u);
    expect((await ask(deps, 'im in norwich', NOW, own)).choices?.map(({ run }) => run).join()).toContain(
      'Norwich, England',
    );
    expect((await answer(deps, 'how do i save my garden', NOW, own)).title).toBe('site');
  });

  it('asks for the longitude where a latitude alone is given, and never answers for another place', async () => {
    for (const sentence of ['what galaxies are up from 35 S', '52 N', 'can i see m31 at 60 north'])
      expect((await refusal(deps, sentence, NOW, someone(sentence))).problem, sentence).toBe('which-longitude');
    expect((await answer(deps, 'whats up from 35 S 20 E', NOW, someone('35 S 20 E'))).title).toMatch(/^Worth seeing/u);
  });

  it('saves the place named after site, and shows a saved one as before', async () => {
    const own = someone('ely');
    expect((await answer(deps, 'site ely, england', NOW, own)).title).toBe('Site saved: Ely');
    expect((await answer(deps, 'site ely', NOW, own)).title).toBe('Ely');
    expect((await refusal(deps, 'site nosuchplace', NOW, someone('nowhere'))).problem).toBe('bad-option');
  });

  it('takes no common word beside a target for a place', async () => {
    for (const line of ['up saturn tilt', 'saturn ring angle', 'saturn rings tilted how much']) {
      const { title, notes } = await answer(deps, line, NOW, someone(line));
      expect(title, line).toMatch(/^Saturn/u);
      expect(notes.join(' '), line).toContain('52.71° N');
    }
  });

  it('meets words it does not follow with what can be asked', async () => {
    for (const line of [
      'are you a gardener',
      'when is the pub open',
      'how',
      'which chair should i buy',
      'it is my birthday',
    ]) {
      const { problem, message, choices } = await refusal(deps, line, NOW, someone(line));
      expect(problem, line).toBe('unknown-command');
      expect(message, line).toContain(`I did not follow "${line}"`);
      expect(choices?.map(({ run }) => run)).toEqual(['tonight', 'triage', 'help']);
    }
  });

  it('takes two words of a town for the town', async () => {
    const { notes } = await answer(deps, 'tonight Cape Town', NOW, someone('cape'));
    expect(notes.join(' ')).toContain('Cape Town');
  });
});
