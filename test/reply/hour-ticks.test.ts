/** The hours under a chart against the clocks of the zone database, as the platform's own Intl knows them. */
import { describe, expect, it } from 'vitest';
import { hourTicks } from '../../bot/reply/chart-frame.js';

const HOUR = 3_600_000;
const hourIn = (utcMs: number, zone: string): number =>
  Number(new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', hourCycle: 'h23' }).format(utcMs));

describe('the whole hours of a night', () => {
  it.each([
    ['Europe/London', Date.UTC(2026, 11, 12, 12)],
    // Clocks go back, and forward, in the night.
    ['Europe/London', Date.UTC(2026, 9, 24, 12)],
    ['Europe/London', Date.UTC(2026, 2, 28, 12)],
    ['Australia/Lord_Howe', Date.UTC(2026, 3, 4, 2)],
    ['Asia/Kathmandu', Date.UTC(2026, 5, 1, 6, 15)],
    ['America/St_Johns', Date.UTC(2026, 0, 3, 15, 30)],
  ])('in %s are those of its clocks', (zone, startUtcMs) => {
    const ticks = hourTicks(startUtcMs + 1, startUtcMs + 24 * HOUR - 1, zone);
    expect(ticks.length).toBeGreaterThanOrEqual(23);
    expect(ticks.map(({ hour }) => hour)).toEqual(ticks.map(({ utcMs }) => hourIn(utcMs, zone)));
  });
});
