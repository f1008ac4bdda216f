/** What the Sun does to eyes and cameras is said before anything that waits, and to nobody who asks of something else. */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 27, 20, 10);
/** The Sun is up in Leeds. */
const NOON = Date.UTC(2026, 10, 27, 12, 30);

const lines = readFileSync(new URL('sun-harm.txt', import.meta.url), 'utf8')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'));
const harmful = lines.filter((line) => !line.startsWith('~'));
const harmless = lines.filter((line) => line.startsWith('~')).map((line) => line.slice(2));

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const alone = (channelId: string) => ({ ...ODALYS, memberId: `console:${channelId}`, channelId });

/** What each begins with in knowledge/cautions.yaml. */
const FIRST =
  /^(?:No[,:]|Not while|Only (?:with|as|if)|Stop:|Yes, (?:always:|before and after totality)|If anyone has looked)/u;

describe('what comes near the Sun', () => {
  it.each(harmful)('%s', async (line) => {
    const asker = alone(line);
    await answer(deps, 'site add garden 53.8,-1.55', EVENING, asker);
    const outcome = await ask(deps, line, EVENING, asker);
    expect(isProblem(outcome) ? [outcome.problem, outcome.message] : ['', outcome.summary]).toEqual([
      'not-safe',
      expect.stringMatching(FIRST),
    ]);
  });

  it('is answered so while a walk waits, whose question stands again below', async () => {
    for (const line of harmful) {
      const asker = alone(`walk ${line}`);
      await answer(deps, 'triage do:new goto missed by 15 degrees east', EVENING, asker);
      const outcome = await ask(deps, line, EVENING + 1000, asker);
      expect(isProblem(outcome) ? outcome.message : outcome.summary, line).toMatch(FIRST);
      expect(isProblem(outcome) ? outcome.message : '', line).toContain('Your walk still waits');
    }
  });
});

describe('what only sounds like it', () => {
  it.each(harmless)('%s', async (line) => {
    for (const nowUtcMs of [EVENING, NOON]) {
      const asker = alone(`${nowUtcMs} ${line}`);
      await answer(deps, 'site add garden 53.8,-1.55', nowUtcMs, asker);
      const outcome = await ask(deps, line, nowUtcMs, asker);
      expect(isProblem(outcome) ? outcome.problem : '').not.toBe('not-safe');
    }
  });
});

describe('which word comes first', () => {
  // ISO 12312-2:2015 is of filters worn before the eyes; contacts of an eclipse: Meeus, Astronomical Algorithms, chapter 54. From memory.
  it.each([
    ['can i take the filter off in totality 2028', /between second and third contact/u],
    ['at 99% partial can i look without the filter', /^Not while any of the Sun shows/u],
    ['i wear my eclipse glasses and look in the eyepiece right?', /for bare eyes alone/u],
    ['take photo of partial eclipse w phone through scope without filter just quick', /a phone or a camera burns/u],
    ['white light projection onto paper good idea?', /the beam burns/u],
    ['i lost venus i sweep around w low power at 11am ok?', /never sweep .* before sunrise/u],
    ['looked in the finder at the eclipse and now blurry spot', /see a doctor today/u],
    ['iss transit sun, filter needed?', /^Yes, always/u],
  ])('%s', async (line, told) => {
    const outcome = await ask(deps, line, EVENING, alone(`first ${line}`));
    expect(isProblem(outcome) ? outcome.message : outcome.summary).toMatch(told);
  });

  // Common practice, no source: a Yes to a guard is no Yes to an open cap, and a No to an open cap no leave to go without a filter.
  it.each([
    ['do i need to take finder cap off for the sun', /^No: the finder's cap stays on/u],
    ['do i have to take the caps off before i point at the sun', /^No: the finder's cap stays on/u],
    ['should i remove the finder cover for the sun', /^No: the finder's cap stays on/u],
    ['should the cap be off the finder when looking at sun w filter', /^No: the finder's cap stays on/u],
    ['do the caps have to come off when looking at the sun', /^No: the finder's cap stays on/u],
    ['do i need a filter with the cap off to see the sun', /^Yes, always/u],
    ['do i need a filter if i take the cap off for the sun', /^Yes, always/u],
    ['should i take the finder off or cap it for the sun', /^Yes, always/u],
    ['must the solar filter be on before the cap is off when i look at the sun', /^Yes, always/u],
  ])('by night and by day: %s', async (line, told) => {
    for (const nowUtcMs of [EVENING, NOON]) {
      const asker = alone(`caps ${nowUtcMs} ${line}`);
      await answer(deps, 'site add garden 53.8,-1.55', nowUtcMs, asker);
      const outcome = await ask(deps, line, nowUtcMs, asker);
      expect(isProblem(outcome) ? outcome.message : outcome.summary).toMatch(told);
    }
  });

  it('a form of a walk that tells of it hears it as well', async () => {
    const asker = alone('form');
    const { walkId } = (await answer(deps, 'triage do:new goto missed by 15 degrees east', EVENING, asker)).data as {
      walkId: string;
    };
    const told = await answer(
      deps,
      `triage walk:${walkId} text:"can i look at the partial eclipse through the scope without a filter"`,
      EVENING,
      asker,
    );
    expect(told.notes.join(' ')).toMatch(/Not? .*full-aperture solar filter/u);
  });
});
