/**
 * When two planets meet. Jupiter and Saturn: 21 December 2020, 0.1°, and 31 October 2040, 1.1° (Meeus, "Astronomical Tables of the Sun, Moon
 * and Planets", from memory). The core of the Milky Way stands opposite the Sun in mid June, by its right ascension of 17 h 46 m.
 */
import { describe, expect, it } from 'vitest';
import { pairMeetings } from '../../bot/ahead/pair-meetings.js';
import { coreSeason } from '../../bot/evening/milky-way-core.js';

const OSLO = { latitudeDeg: 59.91, longitudeDeg: 10.75, elevationM: 20 };
const SANTIAGO = { latitudeDeg: -33.45, longitudeDeg: -70.66, elevationM: 500 };
const NOW = Date.UTC(2026, 10, 27, 17);
const DAY = 86_400_000;

describe('two planets', () => {
  it('meet when the tables say, before and after', () => {
    const { last, next } = pairMeetings(['Jupiter', 'Saturn'], OSLO, NOW);
    expect(Math.abs((last?.utcMs ?? 0) - Date.UTC(2020, 11, 21, 18))).toBeLessThan(DAY);
    expect(last?.separationDeg).toBeCloseTo(0.1, 1);
    expect(Math.abs((next?.utcMs ?? 0) - Date.UTC(2040, 9, 31))).toBeLessThan(2 * DAY);
    expect(next?.separationDeg).toBeCloseTo(1.1, 1);
  });
});

describe('the core of the Milky Way', () => {
  it('is in the dark in the months about its opposition, and not about its conjunction in December', () => {
    const season = coreSeason(SANTIAGO, Date.UTC(2026, 11, 18));
    expect(season?.isNow).toBe(false);
    const begins = season?.beginsUtcMs ?? 0;
    const ends = season?.endsUtcMs ?? 0;
    expect(Math.abs((begins + ends) / 2 - Date.UTC(2027, 5, 18))).toBeLessThan(10 * DAY);
    expect(coreSeason(SANTIAGO, Date.UTC(2027, 5, 20))?.isNow).toBe(true);
  });

  it('never rises high enough far north', () => {
    expect(coreSeason(OSLO, NOW)).toBeNull();
  });
});
