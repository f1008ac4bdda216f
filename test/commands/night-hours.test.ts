/** Hours, days and names that are said are used, or it is said that they are not. */
import { describe, expect, it } from 'vitest';
import { wordsOf } from './an-evening-in-york.js';
import { realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 27, 19, 5);
const deps = {
  york: await realDeps({ clubSiteText: '53.96,-1.08' }),
  serena: await realDeps({ clubSiteText: '-29.9,-71.25' }),
};

const told = (site: keyof typeof deps, line: string): Promise<string> => wordsOf(deps[site], line, EVENING);

describe('what is said of the hour, the day and the target', () => {
  it.each([
    // The 27th is a Friday: "next Saturday" is no tomorrow; common practice, no source.
    ['york', 'whats up next saturday', /night of Sat 5 Dec/u],
    ['york', 'whats up on saturday', /night of Sat 28 Nov/u],
    ['serena', 'Saturn 2230 alt az', /27 Nov 2026, 22:30/u],
    ['serena', 'alignment stars 2200, not Fomalhaut', /^Stars to align on, Fri 27 Nov 2026, 22:00.*\n(?!.*Fomalhaut)/u],
    // astropy 8.0: Uranus and the Sun are 180° apart in longitude on 25 Nov 2026 at 23 h UTC.
    ['york', 'Uranus opposition passed?', /^What is coming: planets\nUranus was at opposition on Wed 25 Nov 2026/u],
    ['serena', 'SCP alt here', /Polar axis: 29\.9° high/u],
    ['serena', 'what do i type for the crab nebula', /^M 1.*\n.*\nJ2000: 05h 34m 32s/u],
    // Full on 24 Dec 2026 at 01:28 UTC: almanacs, from memory; asked for the evening of that day.
    ['york', 'on 24/12 is the moon full?', /\d\d? h after full Moon/u],
    ['serena', 'Moon-Jupiter conj next', /Moon and Jupiter/u],
    ['serena', 'southern cross', /^Southern Cross, night of/u],
    ['serena', 'Fornax A in 14in', /^NGC 1316 \(Fornax A\)/u],
    // astropy 8.0: Jupiter's refracted height passes 30° at La Serena on 28 Nov 2026 at 07:20 UTC.
    ['serena', 'Jupiter altitude 30 when', /\nAbove 30° from 04:2\d UTC/u],
    ['serena', 'sigma octantis on the clock at 22:00', /σ Octantis stands at 1:36 on the clock/u],
    // Espenak's catalogue of transits of Mercury (NASA): 13 November 2032, 06:41 to 11:07 UT; from memory.
    ['york', 'mercury transit next', /begins Sat 13 Nov 2032, 06:4[12] UTC and ends 11:0[67] UTC/u],
    ['york', 'when does venus transit', /^Venus, night of/u],
    ['serena', 'we have seen a light moving quick, no sound, ufo?', /is a satellite/u],
    ['york', 'what is the big crater with rays on the moon, down', /^Tycho on the Moon/u],
    ['serena', 'Tarantula, 3h of subs from when', /^NGC 2070.*\n(?!At 03:00)/u],
  ] as const)('%s: %s', async (site, line, pattern) => expect(await told(site, line)).toMatch(pattern));
});
