/**
 * Whether a flip comes before an hour, and whether on the way from one target to another. Which stars stand east and west of the meridian, and
 * when one crosses it, follows from the sidereal time: Meeus, Astronomical Algorithms, 2nd ed., eq. 12.4, and the stars' J2000 right
 * ascensions (Hipparcos catalogue), some 1.5 minutes being left for precession.
 */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { answer, realDeps } from './real-deps.js';

const LONGITUDE_DEG = -70.66;
const EVENING = Date.UTC(2026, 10, 27, 1, 0);

/** Local mean sidereal time in hours. */
const siderealHours = (utcMs: number): number => {
  const days = utcMs / 86_400_000 + 2_440_587.5 - 2_451_545;
  const hours = (280.460_618_37 + 360.985_647_366_29 * days + LONGITUDE_DEG) / 15;
  return ((hours % 24) + 24) % 24;
};

/** The first minute from the evening on at which a right ascension is on the meridian, as the site's clocks (UTC−3) have it. */
const clockAtMeridian = (raHours: number): number => {
  let utcMs = EVENING;
  const behind = (at: number): number => (raHours - siderealHours(at) + 24) % 24;
  while (behind(utcMs) > 1 / 60) utcMs += 30_000;
  return utcMs;
};

let deps: Deps;
beforeAll(async () => {
  deps = await realDeps({ clubSiteText: `-33.45,${LONGITUDE_DEG}` });
});

const said = async (line: string): Promise<string> => (await answer(deps, line, EVENING)).summary;

const MINUTE = 60_000;

describe('a flip before an hour', () => {
  it('is reckoned from now until then', async () => {
    const reply = await answer(deps, 'will M42 need a meridian flip before 3am', EVENING);
    expect(reply.summary).toMatch(/^Yes, before 03:00/u);
    // M 42 at 5 h 35 m.
    expect(Math.abs(Date.parse(reply.data['meridianUtc'] as string) - clockAtMeridian(5.588))).toBeLessThan(3 * MINUTE);
  });

  it('is a plain no where it comes later, or has been', async () => {
    // Betelgeuse at 5 h 55 m comes 20 minutes after M 42; Achernar at 1 h 38 m stood there before 23:00.
    expect(await said('will betelgeuse flip before 2am')).toMatch(/^No, not before 02:00.* at 03:1\d/u);
    expect((await answer(deps, 'meridian Achernar at:23:30 before:01:00', EVENING)).summary).toMatch(
      /^No, not before 01:00.*crossed the meridian .* ago/u,
    );
  });
});

describe('a flip on the way', () => {
  it.each([
    // Sidereal time at 23:00 there is 1 h 43 m: past Achernar (1 h 38 m), before Canopus (6 h 24 m) and Rigel (5 h 15 m).
    ['slew from achernar to canopus at 23:00, will it flip', /^It flips on the way/u],
    [
      'going to canopus from rigel at 11pm, which side of the pier',
      /^No flip on the way: Rigel and Canopus are both east/u,
    ],
    ['from achernar to canopus at 22:00 does the mount go through the meridian', /^No flip on the way/u],
  ])('%s', async (line, expected) => {
    expect(siderealHours(Date.UTC(2026, 10, 27, 2, 0))).toBeCloseTo(1.72, 1);
    expect(await said(line)).toMatch(expected);
  });

  it('is none on a mount without one', async () => {
    expect(await said('meridian Canopus from:Achernar at:23:00 mount:altaz')).toMatch(
      /^No flip: an alt-azimuth mount/u,
    );
  });
});

describe('what has crossed the meridian', () => {
  it('is told first as past', async () => {
    const { facts } = await answer(deps, 'meridian Achernar at:23:30', EVENING);
    expect(facts.find(({ label }) => label === 'Meridian')?.value).toMatch(
      /^passed 0 h 3\d min ago|^passed 3\d min ago/u,
    );
  });
});
