/** The figure that was asked for begins the answer. */
import { describe, expect, it } from 'vitest';
import { answer, ask, ODALYS, realDeps } from './real-deps.js';
import { isProblem } from '../../bot/ground/problem.js';

const NOW = Date.UTC(2026, 10, 26, 18, 30);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const summary = async (line: string, nowUtcMs = NOW): Promise<string> => (await answer(deps, line, nowUtcMs)).summary;

describe('the figure that was asked for', () => {
  // Meeus, Astronomical Algorithms, 2nd ed., example 13.b: hour angle 64.352133° (4 h 17.4 min), altitude 15.12°.
  it('is the hour angle of Meeus 13.b', async () => {
    const at = 'at:1987-04-10T19:21:00Z site:38.9213889,-77.0655556';
    expect(await summary(`up Venus ${at} first:hour-angle`)).toMatch(
      /^Hour angle at .*: \+4 h 17 min, west of the meridian/u,
    );
    // K. A. Pickering's airmass there by hand: 1 / sin(15.18° + 244 / (165 + 47 · 15.18^1.1)°) = 3.77.
    expect(await summary(`up Venus ${at} first:airmass`)).toMatch(/^Airmass at .*: 3\.7[67], at 15\.2°/u);
  });

  // Reckoned for 52.71° N, 0.12° E with pip's ephem 4 (R. Sinnott's Moon): moonrise 18:32 on the 27th, transit of Saturn from La Palma 21:17 WET.
  it('is when the Moon rises, and when a planet crosses the meridian and how high', async () => {
    expect(await summary('moonrise tomorrow')).toMatch(/^Moon rises on Fri 27 Nov 2026, 18:32 GMT in the north-east/u);
    expect(await summary('transit time and altitude of Saturn at 28.3 -16.5')).toMatch(
      /^Saturn crosses the meridian at 21:17 WET, 62\.5° high in the south/u,
    );
    expect(await summary('Hour angle of Aldebaran at 21:00 UT?')).toMatch(/^Hour angle at 21:00 GMT: −3 h 14 min/u);
    expect(await summary('Parallactic angle of the Pleiades at 20:00')).toMatch(
      /^Parallactic angle at 20:00 GMT: −39\.\d°/u,
    );
  });

  // The same: moonset of the 27th 11:17, of the 28th 11:49.
  it('is of the date that was named, and the night after is told beside it', async () => {
    expect(await summary('moonset tomorrow')).toMatch(
      /^Moon sets on Fri 27 Nov 2026, 11:17 GMT .*night after, Sat 28 Nov 2026, 11:49/u,
    );
  });

  it('is judged for the Sun where it falls by day', async () => {
    const { cautions } = await answer(deps, 'when does venus transit', NOW);
    expect(cautions.join(' ')).toContain('as it crosses the meridian');
  });

  // 18 September 2022, 01:31 UT, told for observers, and 534 periods of 2.867328 days after it: 27 November 2026, 05:11.
  it("is Algol's next evenings", async () => {
    expect(await summary('next minimum of Algol')).toMatch(
      /^Next minima of Algol seen from here: Fri 27 Nov 2026, 05:10/u,
    );
  });

  it.each([
    ['what constellation is mars in', /^Mars is in Leo\./u],
    ['can i see mars without a telescope', /^Yes, with the naked eye: mag 0\.5, from/u],
    ['can i see neptune by eye', /^No, not with the naked eye/u],
    ['which eyepiece for saturn in my 8 inch', /^Saturn in a 203 mm telescope: about \d+ to 250×/u],
    ['what does 114/900 on my telescope mean', /^114 mm is the aperture, 900 mm the focal length: f\/7\.9\./u],
    ['how much does refraction lift a star at 10 degrees', /^The air lifts it by 5\.4′/u],
  ])('%s', async (line, words) => expect(await summary(line)).toMatch(words));

  it('is told of each where two are asked for in one line', async () => {
    const { facts } = await answer(deps, 'Airmass of Capella at 23:00 and its azimuth at 01:00', NOW);
    const said = JSON.stringify(facts);
    expect(said).toContain('Airmass at 23:00 GMT: 1.06');
    expect(said).toMatch(/18\d°, at Fri 27 Nov 2026, 01:00/u);
  });
});

describe('a miss of the goto', () => {
  it.each([
    'scope keeps landin left of capella wat do i do',
    'goto stops short of mars every time',
    'vega is never centred',
  ])('is no question of the sky: %s', async (line) => {
    // Each of a member of their own: it may open a walk.
    const outcome = await ask(deps, line, NOW, { ...ODALYS, memberId: `console:${line}`, channelId: line });
    expect(isProblem(outcome) ? outcome.message : outcome.summary).toMatch(/^How (?:far|does the miss)\b/u);
  });
});

describe('what narrows a request', () => {
  it('is used, or it is said that it is not', async () => {
    const told = async (line: string): Promise<string> => {
      const outcome = await ask(deps, line, NOW);
      return isProblem(outcome) ? outcome.message : [outcome.title, outcome.summary, ...outcome.notes].join(' ');
    };
    expect(await told('m42 with slew limit 70 degrees')).toContain('limit 70');
    expect(await told('is m31 under 30 degrees at 9')).toContain('Not used: under 30');
    expect(await told('when is m33 above 45')).toMatch(/Above 45° until/u);
    expect(await told('doubles in cass')).toContain('Worth seeing in Cassiopeia');
    expect(await told('whats up tonight')).not.toContain('Not used');
  });
});

describe('the evening', () => {
  // Sixty characters a line, thirty lines: common practice of telephones, no source.
  it('fits a telephone: a thousand characters, what is cut named, and all of it to be asked for', async () => {
    // Nothing was told by them this evening.
    const asker = { ...ODALYS, memberId: 'console:quiet', channelId: 'quiet' };
    for (const line of ['whats up tonight', 'tonight kind:galaxies', 'tonight with:binoculars']) {
      const { title, summary: head, facts, notes, choices = [] } = await answer(deps, line, NOW, asker);
      const rows = [title, head, ...facts.map(({ label, value }) => `${label}  ${value}`), ...notes];
      expect(rows.join('\n').length, line).toBeLessThanOrEqual(1000);
      expect(rows.length, line).toBeLessThanOrEqual(18);
      expect(facts.at(-1)?.label, line).toBe('Also');
      const all = choices.find(({ label }) => label.startsWith('All'));
      expect((await answer(deps, all?.run ?? '', NOW, asker)).facts, line).toHaveLength(10);
    }
    expect((await answer(deps, 'more', NOW, asker)).facts).toHaveLength(10);
  });
});
