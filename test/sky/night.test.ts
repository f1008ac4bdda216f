/** Nights by local mean noon, also where the clock is a day away from the longitude. */
import { describe, expect, it } from 'vitest';
import { isWithinEphemeris } from '../../bot/sky/ephemeris-range.js';
import { localDateOfNight, nightOf } from '../../bot/sky/night.js';

const date = (year: number, month: number, day: number) => ({ year, month, day });

describe('the night of a date', () => {
  it('runs from local mean noon to the next', () => {
    expect(nightOf(date(2026, 11, 25), 0)).toEqual({
      startUtcMs: Date.UTC(2026, 10, 25, 12),
      endUtcMs: Date.UTC(2026, 10, 26, 12),
    });
    expect(nightOf(date(2026, 11, 25), -120).startUtcMs).toBe(Date.UTC(2026, 10, 25, 20));
    expect(nightOf(date(2026, 11, 25), 150).startUtcMs).toBe(Date.UTC(2026, 10, 25, 2));
  });

  it('begins exactly where the one before ends', () => {
    for (const longitude of [0.12, -114.07, 179.999, -33.333]) {
      expect(nightOf(date(2024, 2, 29), longitude).startUtcMs).toBe(nightOf(date(2024, 2, 28), longitude).endUtcMs);
      expect(localDateOfNight(nightOf(date(2024, 2, 29), longitude).startUtcMs, longitude)).toEqual(date(2024, 2, 29));
      expect(localDateOfNight(nightOf(date(2024, 2, 29), longitude).startUtcMs - 1, longitude)).toEqual(
        date(2024, 2, 28),
      );
    }
  });

  it('follows the clock where the date line is bent: UTC+14 at 157° west', () => {
    const offset = 14 * 60;
    const night = nightOf(date(2026, 11, 25), -157.4, offset);
    // Civil noon of the 25th there is 22:00 UTC of the 24th; mean noon is half an hour later.
    expect(night.startUtcMs).toBe(Date.UTC(2026, 10, 24, 22, 29, 36));
    expect(localDateOfNight(night.startUtcMs, -157.4, offset)).toEqual(date(2026, 11, 25));
  });

  it('is not moved by an ordinary zone', () => {
    expect(nightOf(date(2026, 11, 25), -114.07, -7 * 60)).toEqual(nightOf(date(2026, 11, 25), -114.07));
    expect(nightOf(date(2026, 11, 25), 75.9, 8 * 60)).toEqual(nightOf(date(2026, 11, 25), 75.9));
  });
});

describe('the years vouched for', () => {
  it('are 1900 to 2100', () => {
    expect([Date.UTC(1900, 0, 1), Date.UTC(2100, 11, 31)].map(isWithinEphemeris)).toEqual([true, true]);
    expect([Date.UTC(1900, 0, 1) - 1, Date.UTC(2101, 0, 1), NaN].map(isWithinEphemeris)).toEqual([false, false, false]);
  });
});
