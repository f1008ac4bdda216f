/**
 * True noon and the equation of time. Expected values: astropy 8.0.2 (builtin ephemeris, apparent sidereal time less the Sun's right ascension of
 * date, sought second by second).
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { equationOfTimeMs } from '../../bot/sky/equation-of-time.js';
import { sunDay } from '../../bot/sky/sun-days.js';
import { ask, realDeps, strangers } from './real-deps.js';

const EVENING = Date.UTC(2026, 11, 12, 20, 30);
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: '54.97,-2.1' });
});

const stranger = strangers('sunniva');
const summaryOf = async (line: string): Promise<string> => {
  const outcome = await ask(deps, line, EVENING, stranger());
  return isProblem(outcome) ? outcome.message : outcome.summary;
};

describe('the Sun crosses the meridian', () => {
  it.each([
    ['2026-12-12', [54.97, -2.1], '12:02:06', 378, 11.93],
    ['2026-11-03', [54.97, -2.1], '11:51:57', 987, 19.88],
    ['2026-02-11', [54.97, -2.1], '12:22:34', -850, 21.11],
    ['2026-04-15', [54.97, -2.1], '12:08:24', 0, 44.9],
    ['2026-12-13', [-36.85, 174.76], '00:14:54', 364, 76.28],
  ] as const)('on %s at %s', (date, [latitudeDeg, longitudeDeg], clock, equationSeconds, altitudeDeg) => {
    const observer = { latitudeDeg, longitudeDeg, elevationM: 0 };
    const middle = Date.parse(`${date}T12:00:00Z`) - (longitudeDeg / 360) * 86_400_000;
    const { noonUtcMs, noonAltitudeDeg } = sunDay(observer, {
      startUtcMs: middle - 43_200_000,
      endUtcMs: middle + 43_200_000,
    });
    expect(Math.abs(noonUtcMs - Date.parse(`${date}T${clock}Z`))).toBeLessThan(1500);
    expect(Math.abs(equationOfTimeMs(observer, noonUtcMs) / 1000 - equationSeconds)).toBeLessThan(1.5);
    expect(noonAltitudeDeg).toBeCloseTo(altitudeDeg, 1);
  });
});

describe('noon by the Sun is told', () => {
  it.each([
    'when is true noon here tomorrow',
    'solar noon tomorrow',
    'what time is local noon tomorrow',
    'when is the sun highest tomorrow',
    'at what time is the sun due south tomorrow',
    'when does the sun culminate tomorrow',
    'when is the shadow shortest tomorrow',
    'when are shadows shortest tomorrow?',
  ])('%s', async (line) =>
    expect(await summaryOf(line)).toMatch(
      /^True noon of Sun 13 Dec 2026 is at 12:02:34 GMT: the Sun due south, 11\.9° high/u,
    ),
  );

  it.each([
    'how far is the sundial off today',
    'equation of time',
    'what is the equation of time today',
    'is a sundial fast or slow now',
    'how much is my sundial ahead',
    'how wrong does a sundial read today',
    'whats the correction for a sundial today',
  ])('%s', async (line) =>
    expect(await summaryOf(line)).toMatch(
      /^Equation of time on Sat 12 Dec 2026: \+6 min 18 s, .* 2 min 6 s behind the clock: true noon 12:02:06 GMT/u,
    ),
  );

  it('where the Sun stands in the north at noon, and where it does not rise', async () => {
    expect(await summaryOf('solar noon in auckland')).toMatch(/13:14:53 NZDT: the Sun due north, 76\.3° high/u);
    expect(await summaryOf('solar noon in tromso')).toMatch(/the Sun due south, 2\.7° below the horizon/u);
  });

  it.each([
    'i bought a sundial',
    'the sundial in the garden is nice',
    'we meet at noon',
    'can i set up at noon tomorrow',
  ])('nobody asked it: %s', async (line) => expect(await summaryOf(line)).not.toMatch(/Equation of time|True noon/u));
});
