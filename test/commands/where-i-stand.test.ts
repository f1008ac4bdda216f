/** Where a member says they stand, and what becomes of it; by plain English, no source beyond that. */
import { describe, expect, it } from 'vitest';
import { runLine } from '../../bot/commands/core/dispatch.js';
import type { Asker } from '../../bot/commands/core/command.js';
import { isProblem } from '../../bot/ground/problem.js';
import { ODALYS, realDeps } from './real-deps.js';

const NOW_UTC_MS = Date.UTC(2026, 10, 27, 21, 0);

/** The usual site after the lines: latitude and longitude as whole degrees; null where there is none. */
const usualAfter = async (member: string, lines: readonly string[]): Promise<readonly [number, number] | null> => {
  const deps = await realDeps({ clubSiteText: null });
  const asker: Asker = { ...ODALYS, memberId: `console:${member}`, displayName: member };
  for (const line of lines)
    await runLine(deps, line, {
      asker,
      nowUtcMs: NOW_UTC_MS,
      onError: (error) => {
        throw error;
      },
    });
  const sites = await deps.store.sites.list({ kind: 'member', id: asker.memberId });
  const usual = sites.find(({ isDefault }) => isDefault);
  return usual === undefined ? null : [Math.round(usual.latitudeDeg), Math.round(usual.longitudeDeg)];
};

describe('where a member says they stand is kept', () => {
  it.each([
    ['observing from Santiago, Chile tonight', [-33, -71]],
    ['camping near Keswick', [55, -3]],
    ['we are at the club field near Nairobi, Kenya', [-1, 37]],
    ['staying at a farm near Aberystwyth this week', [52, -4]],
    ['i have moved to Lisbon', [39, -9]],
  ] as const)('%s', async (line, where) => {
    expect(await usualAfter(`tess-${line.length}`, [line])).toEqual(where);
  });

  it.each([
    'my site is Auckland',
    'ok my site is now Auckland',
    'my location is Auckland',
    'change my site to Auckland',
  ])('in the place of the one before: %s', async (line) => {
    expect(await usualAfter(`noor-${line.length}`, ["I'm observing from Tucson", line])).toEqual([-37, 175]);
  });

  it('but the club’s, where the club has none, is asked for', async () => {
    const deps = await realDeps({ clubSiteText: null });
    const outcome = await runLine(deps, "I'm at the club tonight", {
      asker: { ...ODALYS, memberId: 'console:ines', displayName: 'Ines' },
      nowUtcMs: NOW_UTC_MS,
      onError: (error) => {
        throw error;
      },
    });
    expect(isProblem(outcome) && outcome.problem).toBe('no-site');
  });
});

it('an hour in universal time is not of the site’s clocks', async () => {
  const deps = await realDeps({ clubSiteText: 'Calgary' });
  const said = async (line: string): Promise<unknown> => {
    const outcome = await runLine(deps, line, {
      asker: { ...ODALYS, memberId: 'console:ute', displayName: 'Ute' },
      nowUtcMs: NOW_UTC_MS,
      onError: (error) => {
        throw error;
      },
    });
    return isProblem(outcome) ? outcome.message : outcome.data['utc'];
  };
  expect(await said('altitude of vega at 03:20 UT')).toBe(await said('altitude vega at:2026-11-28T03:20Z'));
});

describe('a place that was named, where no site is known', () => {
  const MINUTE_MS = 60_000;
  const talk = async (member: string, lines: readonly (readonly [line: string, afterMin: number])[]) => {
    const deps = await realDeps({ clubSiteText: null });
    const asker: Asker = { ...ODALYS, memberId: `console:${member}`, displayName: member };
    let said = '';
    for (const [line, afterMin] of lines) {
      const outcome = await runLine(deps, line, {
        asker,
        nowUtcMs: NOW_UTC_MS + afterMin * MINUTE_MS,
        onError: (error) => {
          throw error;
        },
      });
      said = isProblem(outcome) ? outcome.problem : outcome.notes.join(' ');
    }
    return said;
  };

  it('is meant for what is asked next, and the answer says so; how to keep it is said once', async () => {
    const first = await talk('ida', [
      ['is jupiter up', 0],
      ['is jupiter up from Leeds', 1],
    ]);
    expect(first).toMatch(/Leeds.*my site is Leeds/u);
    const next = await talk('ida', [
      ['is jupiter up from Leeds', 1],
      ['up mars', 2],
    ]);
    expect(next).toMatch(/Leeds.*as you said before/u);
    expect(next).not.toMatch(/my site is/u);
    // Half a day later it is another talk.
    expect(
      await talk('ida', [
        ['is jupiter up from Leeds', 1],
        ['is mars up from Leeds', 800],
      ]),
    ).toMatch(/my site is Leeds/u);
    expect(
      await talk('jo', [
        ["i'm in Leeds, is jupiter up", 0],
        ['tonight', 1],
      ]),
    ).toMatch(/Site: my site \(your site\)/u);
  });

  it('is no longer meant a while later', async () =>
    expect(
      await talk('kit', [
        ['is jupiter up', 0],
        ['Leeds', 0],
        ['tonight', 15],
      ]),
    ).toBe('no-site'));

  it('alone is asked about', async () => expect(await talk('lou', [['Leeds', 0]])).toBe('missing-option'));

  it('with gear told beside it is kept, and what keeps the gear is said', async () =>
    expect(await talk('mae', [['I am at Ely England on a GEM with a 11 inch SCT', 0]])).toMatch(
      /Ely, England.*evening are for the 11 inch.*gear german/u,
    ));
});
