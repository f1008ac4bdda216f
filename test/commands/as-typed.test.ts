/** What members type without option names, as they type it; the readings are common practice, no source. */
import { describe, expect, it } from 'vitest';
import { asTyped } from '../../bot/commands/asking/as-typed.js';
import { parseLine } from '../../bot/commands/core/grammar.js';
import type { Asker } from '../../bot/commands/core/command.js';
import { allCommands } from '../../bot/commands/all-commands.js';
import { answer, ask, ODALYS, realDeps, refusal } from './real-deps.js';

// Wednesday 25 November 2026, 20:00 UTC.
const NOW = Date.UTC(2026, 10, 25, 20);
const deps = await realDeps();
await answer(deps, 'site add name:Fen position:52.71,0.12', NOW);

const meant = async (line: string): Promise<Record<string, unknown> | string> => {
  const parsed = parseLine(line, allCommands);
  if ('problem' in parsed) return parsed.problem;
  const found = await asTyped(deps, parsed.command, parsed.raw, {
    asker: ODALYS,
    nowUtcMs: NOW,
    markPersonal: () => undefined,
  });
  return 'problem' in found ? String(found.problem) : Object.fromEntries(found);
};

describe('what follows a target', () => {
  it.each([
    ['up m42 tonight', { target: 'm42', on: 'tonight' }],
    ['up m42 saturday', { target: 'm42', on: 'saturday' }],
    ['up NGC 2024 new moon', { target: 'NGC 2024', on: 'new moon' }],
    ['up m42 fen', { target: 'm42', site: 'fen' }],
    ['up m42 saturday at fen', { target: 'm42', on: 'saturday', site: 'fen' }],
    ['up m42 in cork, ireland', { target: 'm42', site: 'cork, ireland' }],
    ['up double cluster', { target: 'double cluster' }],
    ['up M 31 tomorrow 52.71, 0.12', { target: 'M 31', on: 'tomorrow', site: '52.71, 0.12' }],
    ['altitude m42 52.71,0.12', { target: 'm42', site: '52.71,0.12' }],
    ['altitude vega saturday 11pm', { target: 'vega', at: 'saturday 11pm' }],
    ['altitude vega in 2 hours', { target: 'vega', at: 'in 2 hours' }],
    ['altitude 16:41:42 +36:28', { target: '16:41:42 +36:28' }],
    ['altitude Barnard at:now', { target: 'Barnard', at: 'now' }],
    ['sun from:vega to:saturn', { from: 'vega', target: 'saturn' }],
  ])('%s', async (line, expected) => expect(await meant(line)).toEqual(expected));
});

describe('nights, hours, places and kinds without a target', () => {
  it.each([
    ['dark sydney', { site: 'sydney' }],
    ['dark saturday', { on: 'saturday' }],
    ['dark saturday cork', { on: 'saturday', site: 'cork' }],
    ['dark new moon', { on: 'new moon' }],
    ['tonight saturday', { on: 'saturday' }],
    ['tonight galaxies', { kind: 'galaxies' }],
    ['tonight saturday site:fen', { on: 'saturday', site: 'fen' }],
    ['entries kathmandu', { site: 'kathmandu' }],
    ['sidereal now', { at: 'now' }],
    ['sidereal 9pm cork', { at: '9pm', site: 'cork' }],
    ['alignment 9pm fen altaz', { at: '9pm', site: 'fen', mount: 'altaz' }],
    ['gear dobsonian', { mount: 'altaz' }],
    ['gear equatorial windows', { mount: 'german', system: 'windows' }],
    ['site use fen', { action: 'use', name: 'fen' }],
    ['site add Home 52.2,-1.1', { action: 'add', name: 'Home', position: '52.2,-1.1' }],
    ['remind sunrise', { when: 'sunrise' }],
    ["remind me when it's dark", { when: 'dark' }],
    ['tonight site:fen site:cork', 'option-twice'],
  ])('%s', async (line, expected) => expect(await meant(line)).toEqual(expected));

  it('takes kinds in the plural and short, and mounts by their other names', async () => {
    for (const [kind, type] of [
      ['galaxies', /galaxy/u],
      ['planets', /planet/u],
      ['globular', /globular/u],
    ] as const) {
      const { data } = await answer(deps, `tonight kind:${kind}`, NOW);
      const picks = data['picks'] as readonly { type: string }[];
      expect(picks.length, kind).toBeGreaterThan(0);
      for (const pick of picks) expect(pick.type).toMatch(type);
    }
    const { data } = await answer(deps, 'gear dobsonian', NOW);
    expect(data['gear']).toMatchObject({ mount: 'altaz' });
  });
});

describe('names that several places share', () => {
  it.each([
    ['dublin', 'dark site:"Dublin, Leinster, IE"'],
    ['cambridge', 'dark site:"Cambridge, England, GB"'],
    ['birmingham', 'dark site:"Birmingham, England, GB"'],
    ['boston', 'dark site:"Boston, Massachusetts, US"'],
    ['"la palma"', 'dark site:"La Palma, Canary Islands, ES"'],
  ])('%s is asked about, the city of the world first, and each choice answers', async (name, first) => {
    const { problem, choices = [] } = await refusal(deps, `dark ${name}`, NOW);
    expect(problem).toBe('ambiguous-place');
    expect(choices[0]?.run).toBe(first);
    for (const { run } of choices.slice(0, 3)) await answer(deps, run, NOW);
  });

  it('knows Newcastle upon Tyne as Newcastle, and Skye as a place', async () => {
    const { choices = [] } = await refusal(deps, 'dark newcastle', NOW);
    expect(choices.map(({ label }) => label).join()).toContain('upon Tyne');
    expect((await answer(deps, 'dark skye', NOW)).notes.join()).toContain('Isle of Skye');
  });

  it.each(['home', 'here', 'garden', 'club', 'observatory', 'my back garden'])(
    '"%s" that is not saved is no town: it asks',
    async (word) => {
      const { problem, message } = await refusal(deps, `up m42 site:"${word}"`, NOW);
      expect(problem).toBe('unknown-site');
      expect(message).toContain('site add');
    },
  );
});

// Each asks alone: a walk that waits for an answer would take the next words.
const settled = await realDeps({ clubSiteText: '52.71,0.12' });
const someone = (line: string): Asker => ({ ...ODALYS, memberId: `console:${line}`, channelId: `console ${line}` });

describe('plain questions', () => {
  it.each([
    ["what's up tonight", /^Worth seeing/u],
    ['what can I see saturday', /^Worth seeing, night of Sat/u],
    ['which galaxies can i see tonight', /^Worth seeing/u],
    ['is saturn up tonight', /^Saturn, night/u],
    ['when is mars up', /^Mars, night/u],
    ['how high is m13 at midnight', /^M 13/u],
    ['where is saturn', /^Saturn/u],
    ['double cluster', /^Double Cluster|^NGC 869|Double/u],
    ['when does it get dark in cork', /^The dark/u],
    ['is it safe to slew to antares now', /^The Sun and Antares/u],
    ['which stars should i align on', /^Stars to align/u],
    ['where is polaris on the clock', /pole/u],
    ['what do i type in for daylight saving', /^What to type/u],
    ['what sidereal time should it show', /^Sidereal/u],
    ['cancel my reminders', /^Reminders/u],
    ['what do you know about me', /^What I keep/u],
    ['forget me', /^Forget me/u],
    ['the mount does not connect', /^Finding the connection fault/u],
    ['when is the next new moon', /^The Moon/u],
    ['next moonless saturday', /^What is coming/u],
    ['perseids', /^What is coming/u],
    ['when is the next lunar eclipse', /^What is coming/u],
    ['when is mars at opposition', /^What is coming/u],
    ['jupiter moons', /^Moons of Jupiter/u],
    ['hello', /^Hello/u],
    ['thanks!', /welcome/u],
    ['evening all', /^Hello/u],
    ['ok that is clear', /welcome/u],
    ['many thanks', /welcome/u],
    ['see you saturday at the field', /^Good night/u],
    ['thanks, what about saturn', /^Saturn/u],
    ['hello jupiter', /^Jupiter/u],
    ['it went to the wrong place', /^Finding the connection fault/u],
    ['?', /Pierhand/u],
  ])('%s', async (line, title) => expect((await answer(settled, line, NOW, someone(line))).title).toMatch(title));

  it.each([
    ['whats the ISS doing tonight', /satellites/u, 'tonight'],
    ['weather tonight', /weather/u, 'dark'],
    ['which side of the mount', /meridian/u, 'meridian M 42'],
  ])('%s is refused kindly, in one go with a next step', async (line, says, next) => {
    const { problem, message, choices = [] } = await refusal(settled, line, NOW, someone(line));
    expect(problem).toBe('not-known-here');
    expect(message).toMatch(says);
    expect(choices.map(({ run }) => run)).toContain(next);
    for (const { run } of choices) await answer(settled, run, NOW, someone(run));
  });

  it('takes a command with a slip for the command, and no other word for one', async () => {
    expect((await answer(settled, 'alignemnt', NOW, someone('slip'))).title).toMatch(/^Stars to align/u);
    for (const word of ['alignments-r-us', 'sunny', 'constructor'])
      expect(await ask(settled, word, NOW, someone(word)), word).toMatchObject({ problem: 'unknown-command' });
  });
});
