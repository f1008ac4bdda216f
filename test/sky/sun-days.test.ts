/** The Sun's days and the turns of the year against other reckonings. */
import { describe, expect, it } from 'vitest';
import { MS_PER_DAY, MS_PER_HOUR } from '../../bot/ground/durations.js';
import { venusBrightest } from '../../bot/sky/inner-brightest.js';
import { nextSun, sunDay, yearTurns } from '../../bot/sky/sun-days.js';
import type { Observer } from '../../bot/sky/types.js';

const FEN: Observer = { latitudeDeg: 52.4, longitudeDeg: 0.26, elevationM: 0 };
const NORTH: Observer = { latitudeDeg: 69.65, longitudeDeg: 18.96, elevationM: 0 };
const MINUTE_MS = 60_000;

describe('the Sun at a place', () => {
  it('comes back to the far north when PyEphem 4.2.1 has it back (horizon −50′, no air)', () => {
    const back = nextSun(NORTH, 'rise', Date.UTC(2026, 10, 28)) ?? 0;
    expect(Math.abs(back - Date.UTC(2027, 0, 15, 10, 35, 17))).toBeLessThan(2 * MINUTE_MS);
  });

  it('is up for as long as PyEphem 4.2.1 has it on the shortest day', () => {
    const startUtcMs = Date.UTC(2026, 11, 21);
    const { riseUtcMs, setUtcMs, lengthMs } = sunDay(FEN, { startUtcMs, endUtcMs: startUtcMs + MS_PER_DAY });
    expect(Math.abs((riseUtcMs ?? 0) - Date.UTC(2026, 11, 21, 8, 6, 52))).toBeLessThan(10_000);
    expect(Math.abs((setUtcMs ?? 0) - Date.UTC(2026, 11, 21, 15, 47, 11))).toBeLessThan(10_000);
    expect(lengthMs / MS_PER_HOUR).toBeCloseTo(7.672, 2);
  });

  it('is up all day, or not at all, beyond the polar circle', () => {
    const of = (month: number): number =>
      sunDay(NORTH, { startUtcMs: Date.UTC(2026, month, 21), endUtcMs: Date.UTC(2026, month, 22) }).lengthMs;
    expect(of(5)).toBe(MS_PER_DAY);
    expect(of(11)).toBe(0);
  });
});

describe('the turns of the year', () => {
  it('are where PyEphem 4.2.1 has them', () => {
    const turns = yearTurns(Date.UTC(2026, 10, 27));
    const expected = [
      Date.UTC(2026, 11, 21, 20, 50, 0),
      Date.UTC(2027, 2, 20, 20, 24, 32),
      Date.UTC(2027, 5, 21, 14, 10, 50),
    ];
    expected.forEach((utcMs, i) =>
      expect(Math.abs((turns[i]?.utcMs ?? 0) - utcMs), turns[i]?.turn).toBeLessThan(MINUTE_MS),
    );
    expect(turns.map(({ turn }) => turn)).toEqual([
      'December solstice',
      'March equinox',
      'June solstice',
      'September equinox',
    ]);
  });
});

describe('Venus at its greatest brilliancy', () => {
  // Dates as almanacs gave them: from memory. The peak is flat, and they differ among themselves by some days.
  it.each([
    ['2020-04-28', '2020-04-10'],
    ['2021-12-04', '2021-11-20'],
    ['2023-07-07', '2023-07-01'],
    ['2023-09-18', '2023-09-10'],
    ['2025-02-16', '2025-02-01'],
  ])('falls within five days of %s', (published, askedOn) => {
    const { utcMs, magnitude } = venusBrightest(Date.parse(askedOn));
    expect(Math.abs(utcMs - Date.parse(published)) / MS_PER_DAY).toBeLessThan(5);
    expect(magnitude).toBeLessThan(-4.5);
  });

  it('is told though it has just been', () => {
    const asked = Date.UTC(2026, 10, 30);
    expect(new Date(venusBrightest(asked).utcMs).toISOString().slice(0, 7)).toBe('2026-11');
  });
});
