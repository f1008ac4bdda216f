import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import type { Json } from '../../bot/reply/reply.js';
import { answer, realDeps, refusal } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 25, 18);
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const data = async (line: string, nowUtcMs = NOW): Promise<Record<string, Json>> =>
  (await answer(deps, line, nowUtcMs)).data;
const ms = (iso: Json | undefined): number => Date.parse(iso as string);

describe('the fields that each answer carries for machines', () => {
  it.each([
    [
      'altitude M 46 at:2026-12-13T23:00Z site:52.71,0.12',
      ['target', 'utc', 'altitudeDeg', 'apparentAltitudeDeg', 'azimuthDeg', 'hourAngleHours', 'airmass', 'pierSide'],
    ],
    [
      'up NGC 7331 site:51.05,-114.07',
      [
        'night',
        'riseUtc',
        'transitUtc',
        'setUtc',
        'alwaysUp',
        'neverUp',
        'darkness',
        'bestUtc',
        'bestAltitudeDeg',
        'upInDarkness',
        'moon',
        'sky',
        'marginMag',
        'verdict',
        'hindrance',
      ],
    ],
    ['sidereal site:52.71,0.12', ['utc', 'gmstHours', 'gastHours', 'lmstHours', 'lastHours']],
    ['epoch Mizar', ['j2000', 'ofDate', 'separationArcmin']],
    ['dark site:52.71,0.12', ['sunsetUtc', 'civil', 'nautical', 'astronomical', 'sunriseUtc', 'moon', 'moonlessDark']],
    ['tonight site:52.71,0.12', ['dark', 'hours', 'picks']],
  ])('%s', async (line, fields) => expect(Object.keys(await data(line)).sort()).toEqual([...fields].sort()));

  it('names the parts of nested fields', async () => {
    const up = await data('up NGC 7331 site:51.05,-114.07');
    expect(Object.keys(up['moon'] as object).sort()).toEqual(['altitudeDeg', 'illuminatedFraction', 'separationDeg']);
    const tonight = (await data('tonight site:52.71,0.12')) as unknown as { picks: object[] };
    expect(Object.keys(tonight.picks[0]!).sort()).toEqual([
      'bestAltitudeDeg',
      'bestUtc',
      'magnitude',
      'marginMag',
      'moonSeparationDeg',
      'name',
      'type',
      'why',
      'worth',
    ]);
  });
});

describe('answers against worked examples', () => {
  // Meeus, Astronomical Algorithms, 2nd ed., example 12.b: 1987 April 10, 19:21:00 UT, mean sidereal time at Greenwich 8h 34m 57.0896s.
  it('gives the sidereal time of Meeus 12.b', async () => {
    const { gmstHours } = (await data('sidereal at:1987-04-10T19:21:00Z site:51.48,0')) as unknown as {
      gmstHours: number;
    };
    expect(Math.abs(gmstHours - (8 + 34 / 60 + 57.0896 / 3600)) * 3600).toBeLessThan(0.02);
  });

  // Meeus, example 13.b: Venus from the US Naval Observatory (38°55′17″ N, 77°03′56″ W), 1987 April 10, 19:21:00 UT: altitude 15.1249°,
  // azimuth 68.0337° from the south, hour angle 64.352133°. The book's place of Venus is geocentric; parallax moves it by up to 0.002°.
  it('puts Venus where Meeus 13.b does', async () => {
    const { altitudeDeg, azimuthDeg, hourAngleHours } = (await data(
      'altitude Venus at:1987-04-10T19:21:00Z site:38.9213889,-77.0655556',
    )) as unknown as { altitudeDeg: number; azimuthDeg: number; hourAngleHours: number };
    expect(Math.abs(altitudeDeg - 15.1249)).toBeLessThan(0.01);
    expect(Math.abs(azimuthDeg - (180 + 68.0337))).toBeLessThan(0.01);
    expect(Math.abs(hourAngleHours * 15 - 64.352133)).toBeLessThan(0.01);
  });
});

describe('the night of a date', () => {
  it('runs from local mean noon to the next: 12:00 less longitude/15 h UTC', async () => {
    const { night } = (await data('up Capella site:51.05,-114.07 on:2026-11-25')) as unknown as {
      night: { startUtc: string; endUtc: string };
    };
    const noon = Date.UTC(2026, 10, 25) + (12 + 114.07 / 15) * 3_600_000;
    expect(Math.abs(ms(night.startUtc) - noon)).toBeLessThanOrEqual(500);
    expect(ms(night.endUtc) - ms(night.startUtc)).toBe(86_400_000);
  });

  it('is never said to be dark in the polar summer, and says so', async () => {
    const summer = await answer(deps, 'dark on:2027-06-20 site:69.65,18.95', NOW);
    expect(summer.data['astronomical']).toBeNull();
    expect(summer.data['sunsetUtc']).toBeNull();
    expect(summer.summary).toContain('the Sun does not set');
  });

  it('knows the polar night: no sunrise, yet darkness', async () => {
    const winter = await answer(deps, 'dark on:2026-12-21 site:78.22,15.65', NOW);
    expect(winter.data['sunriseUtc']).toBeNull();
    expect(winter.data['astronomical']).not.toBeNull();
    expect(winter.facts.find(({ label }) => label === 'Sun')?.value).toBe('does not rise');
  });
});

describe('verdicts', () => {
  it.each([
    ['up NGC 7331 site:51.05,-114.07', 'up', /^Up, best at \d\d:\d\d M[SD]T, \d+° high in the /u],
    ['up Achernar site:52.71,0.12', 'never-up', /^Not up from here/u],
    ['up M 55 site:52.71,0.12 on:2026-12-10', 'day-only', /^Not up in the dark hours/u],
    ['up Fomalhaut site:56,0 on:2026-11-25', 'low', /^Up but low/u],
  ])('%s', async (line, verdict, summary) => {
    const reply = await answer(deps, line, NOW);
    expect(reply.data['verdict']).toBe(verdict);
    expect(reply.summary).toMatch(summary);
  });

  it('never says up where altitude says down: at the best time of any target, site and night', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 0, max: deps.catalogue.sweep.length - 1 }),
        fc.integer({ min: -7500, max: 7800 }),
        fc.integer({ min: -17_999, max: 17_999 }),
        fc.integer({ min: 0, max: 3650 }),
        async (index, latitude, longitude, day) => {
          const target = deps.catalogue.targetAt(index);
          const site = `${latitude / 100},${longitude / 100}`;
          const date = new Date(NOW + day * 86_400_000).toISOString().slice(0, 10);
          const up = (await data(`up "${target.name}" site:${site} on:${date}`)) as unknown as {
            verdict: string;
            bestUtc: string;
            bestAltitudeDeg: number;
            upInDarkness: boolean;
            alwaysUp: boolean;
            neverUp: boolean;
          };
          const { altitudeDeg } = (await data(
            `altitude "${target.name}" site:${site} at:${up.bestUtc}`,
          )) as unknown as { altitudeDeg: number };
          // bestAltitudeDeg is printed to four decimals.
          expect(Math.abs(altitudeDeg - up.bestAltitudeDeg)).toBeLessThan(0.0001);
          if (['up', 'low', 'twilight-only'].includes(up.verdict)) expect(altitudeDeg).toBeGreaterThan(-0.0001);
          if (up.verdict === 'never-up') expect(altitudeDeg).toBeLessThan(0);
          expect(up.alwaysUp && up.neverUp).toBe(false);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('tonight', () => {
  it('keeps to what was asked: kind, brightness, altitude, dark hours, ten at most', async () => {
    const { dark, picks } = (await data('tonight site:-33.9,18.4 kind:galaxy brighter:9 above:40')) as unknown as {
      dark: { startUtc: string; endUtc: string };
      picks: { type: string; magnitude: number; bestUtc: string; bestAltitudeDeg: number; name: string }[];
    };
    expect(picks.length).toBeGreaterThan(3);
    expect(picks.length).toBeLessThanOrEqual(10);
    for (const pick of picks) {
      expect(pick.type).toMatch(/galaxy/u);
      expect(pick.magnitude).toBeLessThanOrEqual(9);
      expect(pick.bestAltitudeDeg).toBeGreaterThanOrEqual(40);
      expect(ms(pick.bestUtc)).toBeGreaterThanOrEqual(ms(dark.startUtc) - 1000);
      expect(ms(pick.bestUtc)).toBeLessThanOrEqual(ms(dark.endUtc) + 1000);
      const { altitudeDeg } = (await data(`altitude "${pick.name}" site:-33.9,18.4 at:${pick.bestUtc}`)) as unknown as {
        altitudeDeg: number;
      };
      expect(Math.abs(altitudeDeg - pick.bestAltitudeDeg)).toBeLessThan(0.0001);
    }
  });

  it('says why nothing is listed where it never gets dark', async () => {
    const reply = await answer(deps, 'tonight site:69.65,18.95 on:2027-06-20', NOW);
    expect(reply.data['picks']).toEqual([]);
    expect(reply.summary).toContain('the Sun does not set');
  });
});

describe('the Sun warning comes by itself', () => {
  it('in altitude: Venus near the Sun by day is danger, the Sun itself names the filter standard', async () => {
    // Superior conjunction of Venus, 2026 January 6 (value from memory, checked by the separation the answer reports).
    const venus = await answer(deps, 'altitude Venus at:2026-01-06T12:00Z site:10,0', NOW);
    expect(venus.level).toBe('danger');
    expect(venus.cautions.join(' ')).toContain('The Sun is up');
    const sun = await answer(deps, 'altitude Sun at:2026-06-21T12:00Z site:52.71,0.12', NOW);
    expect(sun.level).toBe('danger');
    expect(sun.cautions.join(' ')).toContain('ISO 12312-2');
  });

  it('by night nobody is nagged', async () => {
    const reply = await answer(deps, 'altitude Capella at:2026-12-13T23:00Z site:52.71,0.12', NOW);
    expect(reply.cautions).toEqual([]);
    expect(reply.level).toBe('good');
  });
});

describe('bad input gets one sentence that says what would be right', () => {
  it.each([
    ['up Qwzrtplk site:52,0', 'unknown-target', /such as/u],
    ['up M 31 site:95,0', 'bad-position', /latitude/iu],
    ['up M 31', 'no-site', /site:/u],
    ['altitude M 31 site:52,0 at:"25 o\'clock"', 'bad-time', /such as|for example/iu],
    ['altitude M 31 site:52,0 at:2250-01-01', 'date-out-of-range', /1900/u],
    ['tonight site:52,0 brighter:bright', 'bad-option', /number from/u],
    ['tonight site:52,0 kind:comet', 'bad-option', /galaxy/u],
    ['up M 31 sites:52,0', 'unknown-option', /site:/u],
    ['altitude', 'missing-option', /For example/u],
  ])('%s', async (line, code, right) => {
    const found = await refusal(deps, line, NOW);
    expect(found.problem).toBe(code);
    expect(found.message).toMatch(right);
    expect(found.message.length).toBeLessThanOrEqual(400);
  });
});
