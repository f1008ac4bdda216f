/** The ways past the Sun's warning that were once open, each by the example that showed it. Places of the Sun: `sunAt` (Astronomical Almanac). */
import { beforeAll, describe, expect, it } from 'vitest';
import type { Deps } from '../../bot/commands/core/command.js';
import { whatToSay } from '../../bot/reminders/what-to-say.js';
import type { Reply } from '../../bot/reply/reply.js';
import { sunSafety } from '../../bot/sky/sun-safety.js';
import { sunAtWorst } from '../../bot/sky/sun-span.js';
import type { Reminder } from '../../bot/store/store.js';
import { answer, realDeps } from '../commands/real-deps.js';
import { altitudeOf, sunAt } from './sun-reader.js';

const COMMON = 'site:52.71,0.12';
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});
const asked = (line: string, utc: string): Promise<Reply> => answer(deps, line, Date.parse(utc));
const words = ({ cautions, notes }: Reply): string => [...cautions, ...notes].join(' ');

describe('the Sun is warned of', () => {
  it('1. where the tube landed, not only where it was sent; and by day a mount that points wrongly is sent to no star', async () => {
    const noon = '2026-06-20T12:00:00Z';
    const onSun = await asked(`astray Vega landed:Sun ${COMMON}`, noon);
    expect(onSun.level).toBe('danger');
    const beside = await asked(`astray Arcturus landed:60,178 lst:12:00:00 ${COMMON}`, noon);
    expect(beside.level).toBe('danger');
    expect(words(beside)).toContain('where the tube landed');
    for (const reply of [onSun, beside]) {
      expect(words(reply)).not.toContain('Send it to');
      expect((reply.data.nextObservation as { kind: string } | null)?.kind).not.toBe('landed');
    }
    const night = await asked(`astray Mirach landed:"12 degrees east of it" ${COMMON}`, '2026-11-25T20:00:00Z');
    expect(night.level).toBe('info');
  });

  it('2. at every hour that meridian names, by the worst of the time it is followed', async () => {
    // Antares stands 5° from the Sun early in December, and crosses the meridian by day.
    const antares = await asked(`meridian Antares at:2026-12-02T03:00Z ${COMMON}`, '2026-12-02T03:00:00Z');
    expect(antares.level).toBe('danger');
    expect(words(antares)).toMatch(/5° from Antares at the meridian/u);
    expect((await asked(`meridian Sun at:2026-12-02T03:00Z ${COMMON}`, '2026-12-02T03:00:00Z')).level).toBe('danger');
  });

  it('3. at the hours by day that up names, on another night too', async () => {
    const reply = await asked(`up "05:50:00 +10:00" ${COMMON} on:2026-06-20`, '2026-11-25T20:00:00Z');
    expect(['caution', 'danger']).toContain(reply.level);
  });

  it('4. on the way at any axis order and speed ratio, unless the speeds are known', async () => {
    const at = '2026-06-20T10:00:00Z';
    const line = `sun "06:00:00 +06:00" from:"06:06:00 +64:00" ${COMMON}`;
    const any = await asked(line, at);
    const known = await asked(`${line} speeds:3,3`, at);
    const least = (reply: Reply): number => (reply.data.path as { minimumSeparationDeg: number }).minimumSeparationDeg;
    expect(least(any)).toBeLessThanOrEqual(least(known) + 0.01);
    expect(words(any)).toContain('whichever axis goes first or up to four times faster');
    expect(words(known)).toContain('3° and 3° a second');
  });

  it('5. of a list for tonight asked before sunrise', async () => {
    const reply = await asked(`tonight ${COMMON}`, '2026-06-20T03:10:00Z');
    for (const { when } of reply.pointsAt) expect('utcMs' in when ? when.utcMs : when.fromUtcMs).toBeGreaterThan(0);
    expect(reply.pointsAt.length).toBe((reply.data.picks as unknown[]).length);
  });

  it('6. by a reminder that comes late: it says that it was true then', () => {
    const reminder = {
      kind: 'target',
      dueUtcMs: 0,
      staleUtcMs: null,
      repeat: null,
      text: 'Vega is up.',
    } as unknown as Reminder;
    expect(whatToSay(reminder, 60_000).say).toBe('Vega is up.');
    expect(whatToSay(reminder, 40 * 60_000).say).toContain('see where the Sun is now before you point');
  });

  it('7. in the coordinates of Sun, Mercury and Venus', async () => {
    const at = '2026-06-20T10:00:00Z';
    expect((await asked('epoch Sun', at)).level).toBe('danger');
    const mercury = await asked('epoch Mercury', at);
    expect(mercury.level).toBe('caution');
    expect(words(mercury)).toContain('not with the Sun up');
    expect((await asked('epoch Vega', at)).level).toBe('info');
  });

  it('8. just after its setting from a height: the horizon dips there (The Nautical Almanac: 1.76′ √h)', async () => {
    const body = { kind: 'solarSystem', body: 'Venus' } as const;
    const high = { latitudeDeg: 28.76, longitudeDeg: -17.88, elevationM: 2390 };
    const low = { ...high, elevationM: 0 };
    const [upHigh, upLow] = [high, low].map((observer) => {
      const from = Date.UTC(2026, 11, 1, 17, 30);
      const minutes = Array.from({ length: 120 }, (_, i) => from + i * 60_000);
      return minutes.filter((utcMs) => sunSafety(body, observer, utcMs).isSunUp).length;
    });
    // 1.76′ √2390 is 1.43°, at some 13.3° of altitude an hour there: between six and seven minutes.
    expect(upHigh! - upLow!).toBeGreaterThanOrEqual(6);
    expect(upHigh! - upLow!).toBeLessThanOrEqual(8);
    expect(
      sunAtWorst({ altitudeDeg: 1, azimuthDeg: 246 }, high, {
        startUtcMs: Date.UTC(2026, 11, 1, 18, 12),
        endUtcMs: Date.UTC(2026, 11, 1, 18, 12),
      }).isSunUp,
    ).toBe(true);
    const justSet = await asked('sun "16:40:00 -22:00" site:52.71,0.12 at:2026-12-02T15:54Z', '2026-12-02T15:54:00Z');
    expect(justSet.summary).toContain('only just set');
  });

  it('9. by day beyond 45° too: that it is up, and how far', async () => {
    const reply = await asked(`altitude Vega ${COMMON}`, '2026-06-20T08:00:00Z');
    expect(words(reply)).toMatch(/The Sun is up, \d+° from Vega/u);
    expect(reply.level).not.toBe('danger');
  });

  it('10. of another day by that day: nobody reads "the Sun is up" or "sunrise at" of a month ahead as of tonight', async () => {
    // A day before the conjunction of the Sun and Jupiter of 29 July 2026 (from memory).
    const later = await asked(`moons ${COMMON} at:2026-07-28T11:00Z`, '2026-06-20T10:00:00Z');
    expect(later.cautions[0]).toMatch(/^The Sun is up then, 1° from Jupiter\. /u);
    const now = await asked(`moons ${COMMON} at:2026-07-28T11:00Z`, '2026-07-28T11:00:00Z');
    expect(now.cautions[0]).toMatch(/^The Sun is up, 1° from Jupiter\. /u);
    const { cautions } = await asked(`ahead meetings ${COMMON}`, '2026-06-20T10:00:00Z');
    // By the Astronomical Almanac's Sun its upper limb comes up then: the centre 50′ down.
    const sunrise = Date.UTC(2026, 7, 11, 4, 35);
    const sunAltitudeDeg = altitudeOf(sunAt(sunrise), { latitudeDeg: 52.71, longitudeDeg: 0.12, zone: 'UTC' }, sunrise);
    expect(Math.abs(sunAltitudeDeg + 50 / 60)).toBeLessThan(0.1);
    expect(cautions.join(' ')).toContain('Sunrise Tue 11 Aug 2026, 05:35 BST, within the hour after Mercury');
  });
});
