/** The Moon's passes by a planet and a star against PyEphem 4.2.1 (topocentric, no air, steps of five minutes). */
import { describe, expect, it } from 'vitest';
import { moonMeetings } from '../../bot/ahead/moon-meetings.js';
import { MS_PER_DAY, MS_PER_HOUR } from '../../bot/ground/durations.js';
import { horizontalOf } from '../../bot/sky/place.js';
import { SUN } from '../../bot/sky/twilight.js';
import type { Observer, SkyBody } from '../../bot/sky/types.js';

const FEN: Observer = { latitudeDeg: 52.4, longitudeDeg: 0.26, elevationM: 0 };
const JUPITER: SkyBody = { kind: 'solarSystem', body: 'Jupiter' };
const SATURN: SkyBody = { kind: 'solarSystem', body: 'Saturn' };
/** J2000, Hipparcos. */
const SPICA: SkyBody = { kind: 'fixed', raHoursJ2000: 13.4199, decDegJ2000: -11.161 };
const NOW = Date.UTC(2026, 10, 27, 18);
const span = { startUtcMs: NOW, endUtcMs: NOW + 100 * MS_PER_DAY };

describe('the Moon by a planet or a star', () => {
  it.each([
    ['Jupiter', JUPITER, 0, Date.UTC(2026, 10, 30, 8, 10), 1.848],
    ['Jupiter', JUPITER, 1, Date.UTC(2026, 11, 27, 16, 0), 2.16],
    ['Spica', SPICA, 0, Date.UTC(2026, 11, 4, 18, 5), 3.029],
    ['Saturn', SATURN, 0, Date.UTC(2026, 11, 18, 6, 25), 5.497],
  ])('%s, pass %#', (_name, body, pass, utcMs, separationDeg) => {
    const found = moonMeetings(body, FEN, span, 2)[pass];
    expect(Math.abs((found?.utcMs ?? 0) - utcMs)).toBeLessThan(MS_PER_HOUR / 2);
    expect(Math.abs((found?.separationDeg ?? 0) - separationDeg)).toBeLessThan(0.02);
  });

  it('is told for an hour at which both are up and the Sun is down', () => {
    for (const { seen } of moonMeetings(JUPITER, FEN, span, 3)) {
      if (seen === null) continue;
      expect(seen.altitudeDeg).toBeGreaterThan(4.9);
      expect(horizontalOf(SUN, FEN, seen.utcMs).altitudeDeg).toBeLessThan(-5);
    }
  });
});
